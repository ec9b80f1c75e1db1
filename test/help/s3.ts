import { createHash } from 'node:crypto'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { BucketSettings } from '../../src/photo/bucket.ts'
import { claimOf, signatureOf } from './signature-v4.ts'

export const s3Keys = {
  accessKeyId: 'AKIDINVENTED00000001',
  secretAccessKey: 'an/invented+secret/of+the+tests/0000',
  region: 'eu-test-1',
}

export const s3Bucket = 'shop.photos'

/** The settings that lead to it. */
export const bucketAt = ({ url }: Pick<S3, 'url'>, bucket = s3Bucket): BucketSettings => ({
  ...s3Keys,
  address: `${url}/${bucket}`,
  prefix: 'kept/here',
})

/**
 * What goes wrong with a request. `cut`: the connection ends unanswered; `lost`: it ends after the work was done;
 * `silent`: no answer ever; `half`: the answer ends half way; `stuck`: it stops there and stays; `spoiled`: the
 * last byte arrives changed; `none`: nothing; else a status with a code of S3.
 */
export type Fault =
  | 'cut'
  | 'lost'
  | 'silent'
  | 'half'
  | 'stuck'
  | 'spoiled'
  | 'none'
  | readonly [status: number, code: string]

/**
 * A store in memory that speaks as much of S3 as photos need, and believes no one who does not sign. Tried once with
 * botocore 1.29.27, which reads, writes, lists and removes here, and is refused with another secret.
 */
export interface S3 {
  readonly url: string
  readonly objects: Map<string, Buffer>
  /** Each request that came, `PUT key`. */
  readonly came: string[]
  /** What goes wrong with the next requests of that method (any of them without one), in order. */
  fails(faults: readonly Fault[], method?: string): void
  /** Anyone may read. */
  open: boolean
  /** Whether a key may look into the bucket; without it what is absent is refused. */
  mayList: boolean
  /** Nobody listens any more, until `back`. */
  down(): Promise<void>
  back(): Promise<void>
  close(): Promise<void>
}

interface Answer {
  readonly status: number
  readonly body?: Buffer
  readonly type?: string
}

const refused = (status: number, code: string): Answer => ({
  status,
  type: 'application/xml',
  body: Buffer.from(`<?xml version="1.0" encoding="UTF-8"?><Error><Code>${code}</Code></Error>`),
})

/** Nobody looks at which objects there are. */
const listed: Answer = {
  status: 200,
  type: 'application/xml',
  body: Buffer.from('<ListBucketResult><IsTruncated>false</IsTruncated></ListBucketResult>'),
}

const quarterHourMs = 15 * 60 * 1000

/** What is wrong with how a request is signed; null: nothing. */
function unsigned(request: IncomingMessage, body: Buffer): Answer | null {
  const headers = request.headers as Record<string, string>
  if (!headers.authorization) return refused(403, 'AccessDenied')
  const claim = claimOf(headers.authorization)
  if (!claim) return refused(400, 'AuthorizationHeaderMalformed')
  if (claim.accessKeyId !== s3Keys.accessKeyId) return refused(403, 'InvalidAccessKeyId')
  if (claim.region !== s3Keys.region) return refused(400, 'AuthorizationHeaderMalformed')
  const mustBeSigned = Object.keys(headers).filter((name) => /^(host|x-amz-.*)$/.test(name))
  if (mustBeSigned.some((name) => !claim.signed.includes(name))) return refused(403, 'AccessDenied')
  const at = (headers['x-amz-date'] ?? '').replace(
    /^(\d{4})(\d\d)(\d\d)T(\d\d)(\d\d)(\d\d)Z$/,
    '$1-$2-$3T$4:$5:$6Z',
  )
  if (!(Math.abs(Date.now() - Date.parse(at)) < quarterHourMs))
    return refused(403, 'RequestTimeTooSkewed')
  const content = headers['x-amz-content-sha256']
  const isTheirs = content === createHash('sha256').update(body).digest('hex')
  if (content !== 'UNSIGNED-PAYLOAD' && !isTheirs) return refused(400, 'XAmzContentSHA256Mismatch')
  const [path = '', query = ''] = request.url!.split('?')
  const method = request.method!
  const due = signatureOf({ method, path, query, headers }, claim, s3Keys.secretAccessKey)
  return due === claim.signature ? null : refused(403, 'SignatureDoesNotMatch')
}

const keyIn = (url: string): { bucket: string; key: string } => {
  const [bucket = '', ...key] = decodeURIComponent(
    new URL(url, 'http://x').pathname.slice(1),
  ).split('/')
  return { bucket, key: key.join('/') }
}

async function bodyOf(request: IncomingMessage): Promise<Buffer> {
  const parts: Buffer[] = []
  for await (const part of request) parts.push(part as Buffer)
  return Buffer.concat(parts)
}

function send(reply: ServerResponse, { status, body, type }: Answer, method: string): void {
  reply.writeHead(status, {
    ...(type && { 'content-type': type }),
    'content-length': body?.length ?? 0,
  })
  reply.end(method === 'HEAD' ? undefined : body)
}

export async function startS3(): Promise<S3> {
  const objects = new Map<string, Buffer>()
  const came: string[] = []
  const faults: { fault: Fault; method: string | undefined }[] = []

  function work(method: string, key: string, body: Buffer, md5: string | undefined): Answer {
    if (key === '') return s3.mayList ? listed : refused(403, 'AccessDenied')
    if (method === 'PUT') {
      const sum = createHash('md5').update(body).digest('base64')
      if (md5 !== undefined && md5 !== sum) return refused(400, 'BadDigest')
      objects.set(key, body)
      return { status: 200 }
    }
    if (method === 'DELETE') {
      objects.delete(key)
      return { status: 204 }
    }
    const found = objects.get(key)
    if (found) return { status: 200, body: found, type: 'image/jpeg' }
    return s3.mayList ? refused(404, 'NoSuchKey') : refused(403, 'AccessDenied')
  }

  async function answer(request: IncomingMessage, reply: ServerResponse): Promise<void> {
    const method = request.method!
    const { bucket, key } = keyIn(request.url!)
    came.push(`${method} ${key}`)
    const at = faults.findIndex((one) => one.method === undefined || one.method === method)
    const fault = at < 0 ? null : faults.splice(at, 1)[0]!.fault
    if (fault === 'cut') return void request.socket.destroy()
    if (fault === 'silent') return
    const sent = await bodyOf(request)
    if (typeof fault === 'object' && fault) return send(reply, refused(...fault), method)
    const body = Buffer.from(sent)
    if (fault === 'spoiled' && body.length > 0) body[body.length - 1]! ^= 1
    const trusted = s3.open && method === 'GET' ? null : unsigned(request, body)
    const headers = request.headers as Record<string, string>
    const done =
      trusted ??
      (bucket === s3Bucket
        ? work(method, key, body, headers['content-md5'])
        : refused(404, 'NoSuchBucket'))
    if (fault === 'lost') return void request.socket.destroy()
    if (fault !== 'half' && fault !== 'stuck') return send(reply, done, method)
    reply.writeHead(done.status, { 'content-length': done.body?.length ?? 0 })
    reply.write(done.body?.subarray(0, done.body.length / 2) ?? '', () => {
      if (fault === 'half') request.socket.destroy()
    })
  }

  const server = createServer((request, reply) => {
    // A client that ends the connection while it still sends is one of the faults.
    answer(request, reply).catch(() => request.socket.destroy())
  })
  const listen = (port: number) =>
    new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve))
  const down = () =>
    new Promise<void>((resolve) => {
      server.close(() => resolve())
      server.closeAllConnections()
    })
  await listen(0)
  const { port } = server.address() as AddressInfo
  const s3: S3 = {
    url: `http://127.0.0.1:${port}`,
    objects,
    came,
    open: false,
    mayList: true,
    fails: (next, method) => faults.push(...next.map((fault) => ({ fault, method }))),
    down,
    back: () => listen(port),
    close: async () => {
      if (server.listening) await down()
    },
  }
  return s3
}
