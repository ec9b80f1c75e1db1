import { createHash, createHmac } from 'node:crypto'

/** A request as it came, its header names in lower case. */
export interface SignedRequest {
  readonly method: string
  /** As it stands in the request line, percent-encoded. */
  readonly path: string
  /** Without the question mark, percent-encoded. */
  readonly query: string
  readonly headers: Readonly<Record<string, string>>
}

/** What an `Authorization` header of `AWS4-HMAC-SHA256` says. */
export interface Claim {
  readonly accessKeyId: string
  readonly day: string
  readonly region: string
  readonly signed: readonly string[]
  readonly signature: string
}

const hex = (data: string) => createHash('sha256').update(data).digest('hex')
const hmac = (key: string | Buffer, data: string) => createHmac('sha256', key).update(data).digest()

/** Null: the header is none of this scheme. */
export function claimOf(authorization: string): Claim | null {
  const found =
    /^AWS4-HMAC-SHA256 Credential=([^/]+)\/(\d{8})\/([^/]+)\/s3\/aws4_request, ?SignedHeaders=([^,]+), ?Signature=([0-9a-f]{64})$/.exec(
      authorization,
    )
  if (!found) return null
  const [, accessKeyId, day, region, signed, signature] = found
  return {
    accessKeyId: accessKeyId!,
    day: day!,
    region: region!,
    signed: signed!.split(';'),
    signature: signature!,
  }
}

/**
 * The signature that a request must bear, after "Authenticating Requests: Using the Authorization Header (AWS
 * Signature Version 4)" of the Amazon S3 API Reference. Written for the tests alone, from that page.
 */
export function signatureOf(
  { method, path, query, headers }: SignedRequest,
  { day, region, signed }: Pick<Claim, 'day' | 'region' | 'signed'>,
  secretAccessKey: string,
): string {
  const sortedQuery = query
    .split('&')
    .filter(Boolean)
    .map((part) => (part.includes('=') ? part : `${part}=`))
    .sort()
    .join('&')
  const canonical = [
    method,
    path,
    sortedQuery,
    ...signed.map((name) => `${name}:${(headers[name] ?? '').trim()}`),
    '',
    signed.join(';'),
    headers['x-amz-content-sha256'] ?? '',
  ].join('\n')
  const scope = `${day}/${region}/s3/aws4_request`
  const toSign = ['AWS4-HMAC-SHA256', headers['x-amz-date'] ?? '', scope, hex(canonical)].join('\n')
  const key = [day, region, 's3', 'aws4_request'].reduce<string | Buffer>(
    hmac,
    `AWS4${secretAccessKey}`,
  )
  return hmac(key, toSign).toString('hex')
}
