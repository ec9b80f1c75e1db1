import { Failure } from '../base/failures.ts'
import { verbs } from './verbs.ts'

function verbOf(name: string) {
  if (Object.hasOwn(verbs, name)) return verbs[name]!
  throw new Failure('unknown_verb', { verb: name, verbs: Object.keys(verbs).join(', ') })
}

/**
 * Runs one verb: JSON on standard output, a failure as JSON on standard error. Resolves to the exit
 * code: 0; 2 for what was sent and for what the owner's files say; 1 for our own fault. Sentences are
 * loaded where something is refused.
 */
export async function runVerb([name = '', ...given]: readonly string[]): Promise<number> {
  try {
    return await verbOf(name)(given)
  } catch (error) {
    const { told } = await import('./output.ts')
    process.stderr.write(`${JSON.stringify({ error: told(error) })}\n`)
    return error instanceof Failure && (error.status < 500 || error.code === 'flows_invalid')
      ? 2
      : 1
  }
}
