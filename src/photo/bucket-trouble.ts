import { S3ServiceError } from 's3mini'
import { Failure } from '../base/failures.ts'

/** What the store answered; null where it did not answer. */
const answerOf = (error: unknown): { status: number; code: string } | null =>
  error instanceof S3ServiceError
    ? {
        status: error.status,
        code: /<Code>(\w+)<\/Code>/.exec(error.body ?? '')?.[1] ?? error.serviceCode ?? '',
      }
    : null

/** A trouble that may be over in a moment: no whole answer came, or one that says so. */
export function passes(error: unknown): boolean {
  const answer = answerOf(error)
  return answer === null || answer.status >= 500 || answer.status === 429
}

/** The trouble in a few words. Never the store's own: those quote the key and the signature. */
function inShort(error: unknown): string {
  const answer = answerOf(error)
  if (answer) return `answers ${answer.status} ${answer.code}`.trim()
  if (!(error instanceof Error)) return 'does not answer'
  const { cause, name, message } = error
  const { code } = (cause ?? {}) as { code?: unknown }
  return `does not answer: ${typeof code === 'string' ? code : `${name}, ${message}`}`
}

export const unavailable = (error: unknown): Failure =>
  error instanceof Failure
    ? error
    : new Failure('store_unavailable', {}, { cause: new Error(`the store ${inShort(error)}`) })

/** The setting that an error of S3 speaks of (Amazon S3 API Reference, "Error responses"). */
const blamed: Readonly<Record<string, readonly [setting: string, message: string]>> = {
  NoSuchBucket: ['PHOTOS_URL', 'the store has no such bucket'],
  InvalidAccessKeyId: ['S3_ACCESS_KEY_ID', 'the store does not know it'],
  SignatureDoesNotMatch: ['S3_SECRET_ACCESS_KEY', 'it does not belong to S3_ACCESS_KEY_ID'],
  AccessDenied: [
    'S3_ACCESS_KEY_ID',
    'it may not list, read, write and remove in the bucket of PHOTOS_URL',
  ],
  AuthorizationHeaderMalformed: ['S3_REGION', 'the bucket is in another region'],
  PermanentRedirect: ['S3_REGION', 'the bucket is in another region'],
  TemporaryRedirect: ['S3_REGION', 'the bucket is in another region'],
  RequestTimeTooSkewed: ['S3_ENDPOINT', 'its clock and the one of this machine differ'],
}

/** The same at the start, where the setting that is at fault can be told. */
export function settingAtFault(error: unknown): Failure {
  if (error instanceof Failure) return error
  const [setting, message] = blamed[answerOf(error)?.code ?? ''] ?? [
    'S3_ENDPOINT',
    `it ${inShort(error)}`,
  ]
  return new Failure('setting_invalid', { setting, message })
}
