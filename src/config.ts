import { z } from 'zod'
import { Failure } from './base/failures.ts'
import { type Folders, foldersOf } from './folders.ts'

const blank = (value: unknown) => (value === '' ? undefined : value)

/** Settings by their names in the environment. Every one has a default that serves a small shop. */
const settings = z.object({
  PORT: z.preprocess(blank, z.coerce.number().int().min(0).max(65535).default(8080)),
  HOST: z.preprocess(blank, z.string().default('127.0.0.1')),
  DATABASE_URL: z.preprocess(
    blank,
    z
      .string()
      .regex(/^postgres(ql)?:\/\//)
      .optional(),
  ),
  PUBLIC_URL: z.preprocess(blank, z.url({ protocol: /^https?$/ }).optional()),
  LOG_LEVEL: z.preprocess(
    blank,
    z.enum(['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent']).default('info'),
  ),
})

export interface Config extends Folders {
  readonly port: number
  readonly host: string
  readonly databaseUrl: string | undefined
  readonly publicUrl: string | undefined
  readonly logLevel: z.infer<typeof settings>['LOG_LEVEL']
}

/** Reads settings. Throws `setting_invalid` with the setting's name and what is wrong with it. */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const read = settings.safeParse(environment)
  if (!read.success) {
    const issue = read.error.issues[0]!
    throw new Failure('setting_invalid', {
      setting: String(issue.path[0]),
      message: issue.message,
    })
  }
  const { PORT, HOST, DATABASE_URL, PUBLIC_URL, LOG_LEVEL } = read.data
  return {
    port: PORT,
    host: HOST,
    ...foldersOf(environment),
    databaseUrl: DATABASE_URL,
    publicUrl: PUBLIC_URL?.replace(/\/$/, ''),
    logLevel: LOG_LEVEL,
  }
}
