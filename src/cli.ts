#!/usr/bin/env node
import { Failure } from './base/failures.ts'
import { told } from './commands/output.ts'
import { verbs } from './commands/verbs.ts'

/** The command line: one verb, JSON on standard output, a failure as JSON on standard error. */
async function run([verb = '', ...rest]: readonly string[]): Promise<number> {
  if (!Object.hasOwn(verbs, verb)) {
    throw new Failure('unknown_verb', { verb, verbs: Object.keys(verbs).join(', ') })
  }
  return verbs[verb]!(rest)
}

try {
  process.exitCode = await run(process.argv.slice(2))
} catch (error) {
  process.stderr.write(`${JSON.stringify({ error: told(error) })}\n`)
  process.exitCode = error instanceof Failure && error.status < 500 ? 2 : 1
}
