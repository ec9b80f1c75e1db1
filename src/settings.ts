import { z } from 'zod'
import { Failure } from './base/failures.ts'

export type Environment = Readonly<Record<string, string | undefined>>

/** A setting that is set to nothing is not set. */
export const setting = <T extends z.ZodType>(schema: T) =>
  z.preprocess((value) => (value === '' ? undefined : value), schema)

/** Reads settings by their names. Throws `setting_invalid` with the first that is wrong and what is wrong with it. */
export function readSettings<T extends z.ZodType>(schema: T, environment: Environment): z.infer<T> {
  const read = schema.safeParse(environment)
  if (read.success) return read.data
  const issue = read.error.issues[0]!
  throw new Failure('setting_invalid', {
    setting: String(issue.path[0]),
    message: issue.message,
  })
}
