import pino, { type DestinationStream, type Logger, type LoggerOptions, symbols } from 'pino'

/** Field names that may hold a person's data or a key, wherever they stand in a logged object. */
const personal = [
  'name',
  'email',
  'phone',
  'contact',
  'address',
  'note',
  'story',
  'words',
  'value',
  'password',
  'token',
  'key',
  'link',
  'cookie',
  'authorization',
  'set-cookie',
  'csrf',
]

const paths = personal.flatMap((field) => {
  const step = field.includes('-') ? `["${field}"]` : `.${field}`
  const top = field.includes('-') ? `["${field}"]` : field
  return [top, `*${step}`, `*.*${step}`, `*.*.*${step}`]
})

/**
 * Of an error what says where it happened. Not its other fields: a database's may quote a row, a
 * parser's what was sent.
 */
function plainError(error: unknown): object {
  if (!(error instanceof Error)) return { type: typeof error }
  const { name, message, stack, cause } = error
  const { code } = error as { code?: unknown }
  return {
    type: name,
    message,
    ...(typeof code === 'string' && { code }),
    stack,
    ...(cause !== undefined && { cause: plainError(cause) }),
  }
}

const options = (level: string): LoggerOptions => ({
  level,
  base: null,
  timestamp: pino.stdTimeFunctions.isoTime,
  serializers: { err: plainError },
  redact: { paths, censor: '[left out]' },
})

/** The one log: JSON lines on standard error. Standard output belongs to the commands' answers. */
export const openLog = (
  level: string,
  to: DestinationStream = pino.destination({ fd: 2, sync: false }),
): Logger => pino(options(level), to)

export type Log = Logger

/** What every line of a logger bears, as it stands in the line. */
type Bearing = Logger & { [symbols.chindingsSym]: string }

/**
 * The log of one request, whose lines bear its id. `child` would look for personal fields in it as in what a person
 * sent, at each request; an id is ours (`newId`), and nothing in it needs escaping.
 */
export function logOf(log: Logger, reqId: string): Logger {
  const own = Object.create(log) as Bearing
  own[symbols.chindingsSym] = `${(log as Bearing)[symbols.chindingsSym]},"reqId":"${reqId}"`
  return own
}
