import { isIP } from 'node:net'
import { z } from 'zod'
import { type MailQuotas, usualMailQuotas } from './desk/mail/mail-quotas.ts'
import { type Folders, foldersOf } from './folders.ts'
import { type PhotosAt, readPhotosAt } from './photos-at.ts'
import { type Environment, readSettings, setting } from './settings.ts'
import { type QuotaSettings, usualQuotas } from './web/quotas.ts'

/** As a browser writes one: `https://shop.example`, with nothing after it. */
const origin = z
  .string()
  .regex(/^https?:\/\/[a-z\d.-]+(:\d+)?$/, 'each is https://, a name and perhaps a port')
  .refine((value) => URL.canParse(value) && new URL(value).origin === value, 'is no origin')

const origins = z
  .string()
  .transform((value) => value.split(/[\s,]+/).filter(Boolean))
  .pipe(z.array(origin))

/** Names of ranges, addresses, and ranges of addresses such as 10.0.0.0/8. */
const isProxy = (value: string): boolean => {
  const [address = '', bits, ...more] = value.split('/')
  if (['loopback', 'linklocal', 'uniquelocal'].includes(value)) return true
  const most = isIP(address) === 4 ? 32 : 128
  return (
    isIP(address) !== 0 &&
    more.length === 0 &&
    (bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) <= most))
  )
}

const proxies = z
  .string()
  .transform((value) => value.split(/[\s,]+/).filter(Boolean))
  .pipe(
    z.array(
      z.string().refine(isProxy, {
        error: 'each is an address, a range such as 10.0.0.0/8, loopback, linklocal or uniquelocal',
      }),
    ),
  )

const count = (usual: number) =>
  setting(
    z.coerce
      .number({ error: 'it is a whole number from 1 up' })
      .int({ error: 'it is a whole number from 1 up' })
      .min(1, { error: 'it is a whole number from 1 up' })
      .max(1_000_000_000, { error: 'it is at most 1000000000' })
      .default(usual),
  )

const logLevels = ['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent'] as const
const aPort = 'it is a whole number from 0 to 65535'
const aDatabase = 'it begins with postgres:// and names a host and a database'

/** Settings by their names in the environment. Every one has a default that serves a small shop. */
const settings = z.object({
  PORT: setting(
    z.coerce
      .number({ error: aPort })
      .int({ error: aPort })
      .min(0, { error: aPort })
      .max(65535, { error: aPort })
      .default(8080),
  ),
  HOST: setting(z.string().default('127.0.0.1')),
  DATABASE_URL: setting(
    z
      .string()
      .regex(/^postgres(ql)?:\/\//, { error: aDatabase })
      .refine((url) => URL.canParse(url), { error: aDatabase })
      .optional(),
  ),
  SMTP_URL: setting(
    z
      .url({ protocol: /^smtps?$/, error: 'it begins with smtp:// or smtps:// and names a host' })
      .optional(),
  ),
  EMBED_ORIGINS: setting(origins.default([])),
  METRICS_TOKEN: setting(
    z
      .string()
      .regex(/^[\x21-\x7e]{16,}$/, 'it is 16 letters, figures and signs or more, without a space')
      .optional(),
  ),
  TRUSTED_PROXIES: setting(proxies.default(['loopback'])),
  INTAKES_PER_ADDRESS: count(usualQuotas.intakesPerAddress),
  INTAKES_PER_DAY: count(usualQuotas.intakesPerDay),
  PHOTOS_PER_ADDRESS: count(usualQuotas.photosPerAddress),
  PHOTOS_PER_DAY: count(usualQuotas.photosPerDay),
  MAILS_PER_ADDRESS: count(usualMailQuotas.perAddress),
  MAILS_PER_DAY: count(usualMailQuotas.perDay),
  LEAVE_SECONDS: setting(
    z.coerce
      .number({ error: 'it is 0 to 300 seconds' })
      .min(0, { error: 'it is 0 to 300 seconds' })
      .max(300, { error: 'it is 0 to 300 seconds' })
      .default(0),
  ),
  PUBLIC_URL: setting(
    z.url({ protocol: /^https?$/, error: 'it begins with https:// and names a host' }).optional(),
  ),
  LOG_LEVEL: setting(
    z.enum(logLevels, { error: `it is one of ${logLevels.join(', ')}` }).default('info'),
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
  /** Proxies that are believed when they say whom a request came from. */
  readonly trustedProxies: readonly string[]
  /** How long a server that is asked to end goes on answering, ms, while `/readyz` already says that it leaves. */
  readonly leaveMs: number
  readonly quotas: QuotaSettings
  readonly mailQuotas: MailQuotas
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
    trustedProxies: read.TRUSTED_PROXIES,
    leaveMs: read.LEAVE_SECONDS * 1000,
    quotas: {
      intakesPerAddress: read.INTAKES_PER_ADDRESS,
      intakesPerDay: read.INTAKES_PER_DAY,
      photosPerAddress: read.PHOTOS_PER_ADDRESS,
      photosPerDay: read.PHOTOS_PER_DAY,
    },
    mailQuotas: { perAddress: read.MAILS_PER_ADDRESS, perDay: read.MAILS_PER_DAY },
    logLevel: LOG_LEVEL,
  }
}
