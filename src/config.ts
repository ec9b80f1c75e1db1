import { z } from 'zod'
import { type Folders, foldersOf } from './folders.ts'
import { type PhotosAt, readPhotosAt } from './photos-at.ts'
import { type Environment, readSettings, setting } from './settings.ts'

/** As a browser writes one: `https://shop.example`, with nothing after it. */
const origin = z
  .string()
  .regex(/^https?:\/\/[a-z\d.-]+(:\d+)?$/, 'each is https://, a name and perhaps a port')
  .refine((value) => URL.canParse(value) && new URL(value).origin === value, 'is no origin')

const origins = z
  .string()
  .transform((value) => value.split(/[\s,]+/).filter(Boolean))
  .pipe(z.array(origin))

/** Settings by their names in the environment. Every one has a default that serves a small shop. */
const settings = z.object({
  PORT: setting(z.coerce.number().int().min(0).max(65535).default(8080)),
  HOST: setting(z.string().default('127.0.0.1')),
  DATABASE_URL: setting(
    z
      .string()
      .regex(/^postgres(ql)?:\/\//)
      .optional(),
  ),
  SMTP_URL: setting(z.url({ protocol: /^smtps?$/ }).optional()),
  EMBED_ORIGINS: setting(origins.default([])),
  METRICS_TOKEN: setting(
    z
      .string()
      .regex(/^[\x21-\x7e]{16,}$/, 'it is 16 letters, figures and signs or more, without a space')
      .optional(),
  ),
  PUBLIC_URL: setting(z.url({ protocol: /^https?$/ }).optional()),
  LOG_LEVEL: setting(
    z.enum(['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent']).default('info'),
  ),
})

export interface Config extends Folders {
  readonly port: number
  readonly host: string
  readonly databaseUrl: string | undefined
  readonly photosAt: PhotosAt
  readonly publicUrl: string | undefined
  /** Origins of the sites whose pages may hold the intake. */
  readonly embedOrigins: readonly string[]
  /** Where mails go; undefined: each is written as a file. */
  readonly smtpUrl: string | undefined
  /** Whoever bears it may read `/metrics`; undefined: this machine alone. */
  readonly metricsToken: string | undefined
  readonly logLevel: z.infer<typeof settings>['LOG_LEVEL']
}

/** Reads settings. Throws `setting_invalid` with the setting's name and what is wrong with it. */
export function readConfig(environment: Environment): Config {
  const read = readSettings(settings, environment)
  const { PORT, HOST, DATABASE_URL, PUBLIC_URL, EMBED_ORIGINS, SMTP_URL, LOG_LEVEL } = read
  const folders = foldersOf(environment)
  return {
    port: PORT,
    host: HOST,
    ...folders,
    photosAt: readPhotosAt(environment, folders.dataDir),
    databaseUrl: DATABASE_URL,
    publicUrl: PUBLIC_URL?.replace(/\/$/, ''),
    embedOrigins: EMBED_ORIGINS,
    smtpUrl: SMTP_URL,
    metricsToken: read.METRICS_TOKEN,
    logLevel: LOG_LEVEL,
  }
}
