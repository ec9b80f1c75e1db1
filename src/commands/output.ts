import { readFileSync } from 'node:fs'
import { Failure } from '../base/failures.ts'
import { troubleCode } from '../store/trouble.ts'
import { language, readPageWords } from '../words/words.ts'
import { print } from './print.ts'

/** The failure of anything thrown: its code and its sentence in English, the commands' language. */
export function told(error: unknown): { code: string; message: string } {
  if (!(error instanceof Failure)) {
    return { code: 'internal', message: error instanceof Error ? error.message : String(error) }
  }
  const english = language('en', readPageWords().get('en') ?? new Map())
  const details = error.code === 'store_unavailable' ? { why: troubleCode(error) } : error.details
  return { code: error.code, message: english.say(sentenceOf(error), details) }
}

/** Who types a command is told which field or fact it was, and what to look at; a page's sentence speaks of the page. */
function sentenceOf({ code, details }: Failure): string {
  if (code === 'store_unavailable' || code === 'busy') return `commands.${code}`
  if (code !== 'bad_input') return `failures.${code}`
  if ('why' in details) return 'commands.why'
  return 'allowed' in details ? 'commands.allowed' : 'failures.bad_input'
}

/** A JSON file's value. Throws `bad_input` where it cannot be read. */
export const readJson = (file: string): unknown =>
  readable(file, () => JSON.parse(readFileSync(file, 'utf8')))

/** A file as it is. Throws `bad_input` where it cannot be read. */
export const readBytes = (file: string): Uint8Array => readable(file, () => readFileSync(file))

function readable<T>(file: string, read: () => T): T {
  try {
    return read()
  } catch (error) {
    throw new Failure('bad_input', { field: file, why: (error as Error).message }, { cause: error })
  }
}

/**
 * One file prints its answer; several print a line each, so that a refusal of one costs no other.
 * Throws what the single file's work throws.
 */
export async function eachFile(
  files: readonly string[],
  work: (file: string) => Promise<object> | object,
): Promise<number> {
  if (files.length === 0) throw new Failure('bad_input', { field: 'file', why: 'name a file' })
  if (files.length === 1) {
    print(await work(files[0]!))
    return 0
  }
  for (const file of files) {
    try {
      print({ file, ok: true, ...(await work(file)) })
    } catch (error) {
      print({ file, ok: false, error: told(error) })
    }
  }
  return 0
}
