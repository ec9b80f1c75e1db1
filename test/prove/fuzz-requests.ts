import type { Chance } from '../help/chance.ts'

/** What of an OpenAPI document requests are made from. */
export interface Document {
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>
}

interface Schema {
  readonly type?: string | readonly string[]
  readonly enum?: readonly unknown[]
  readonly const?: unknown
  readonly properties?: Readonly<Record<string, Schema>>
  readonly items?: Schema
  readonly anyOf?: readonly Schema[]
  readonly minimum?: number
  readonly maximum?: number
  readonly maxLength?: number
}

interface Operation {
  readonly parameters?: readonly {
    readonly name: string
    readonly in: string
    readonly schema?: Schema
  }[]
  readonly requestBody?: {
    readonly content: Readonly<Record<string, { readonly schema?: Schema }>>
  }
}

export interface FuzzRequest {
  readonly method: string
  readonly path: string
  readonly headers: Readonly<Record<string, string>>
  readonly body: Buffer | null
}

/** Values that are there, by the names of parameters and fields: keys of piles, numbers, questions. */
export type Known = Readonly<Record<string, readonly string[]>>

/** Whoever is signed in, with what forms of theirs carry. */
export interface Session {
  readonly cookie: string
  readonly csrf: string
}

const strange: readonly string[] = [
  '',
  ' ',
  '0',
  '-1',
  '1e309',
  '9007199254740993',
  '2147483648',
  'NaN',
  'null',
  'undefined',
  'true',
  '[]',
  '{}',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  '../../etc/passwd',
  '..%2f..%2f',
  "' or 1=1 --",
  '"; drop table pile; --',
  '<script>alert(1)</script>',
  '{{7*7}}',
  '%{7*7}',
  '%00',
  '\u0000',
  'a\u0000b',
  '\ud800',
  '\udfff\ud800',
  '\u202e\u200b\ufeff',
  '🪡'.repeat(70),
  'ÅǺ́́́',
  'a'.repeat(300),
  'a'.repeat(5000),
  'x'.repeat(70_000),
  '2026-02-30',
  '99999-12-31',
  '-271821-04-20',
  '1,5',
  '0.1.2',
  '\r\nset-cookie: a=b',
  'http://127.0.0.1/',
]

const types = [
  'application/x-www-form-urlencoded',
  'application/x-www-form-urlencoded; charset=utf-16',
  'application/json',
  'multipart/form-data; boundary=xx',
  'multipart/form-data',
  'text/plain',
  'application/octet-stream',
  '',
  'a/b/c',
]

const languages = ['es', 'en', 'de, *;q=0.1', 'x'.repeat(400), ';;;', '*', 'es-419,es;q=x']

/** Half a surrogate cannot be written in UTF-8 by itself; its three bytes are sent as they would be. */
const percent = (text: string): string =>
  [...text]
    .map((sign) =>
      /[\ud800-\udfff]/.test(sign) && sign.length === 1 ? '%ED%A0%80' : encodeURIComponent(sign),
    )
    .join('')

/** Requests made from a document by chance: as it asks for them, and changed. */
export function requestMaker(contract: Document, known: Known, chance: Chance) {
  const operations = Object.entries(contract.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ path, method, operation })),
  )

  let session: Session | null = null

  const someValue = (name: string, schema: Schema | undefined): string => {
    if (chance.happens(0.15)) return chance.one(strange)
    const ones = name === 'csrf' && session ? [session.csrf] : known[name]
    if (ones && ones.length > 0 && chance.happens(0.85)) return chance.one(ones)
    const one = schema?.anyOf ? chance.one(schema.anyOf) : schema
    if (one?.const !== undefined) return String(one.const)
    if (one?.enum) return String(chance.one(one.enum))
    if (one?.type === 'integer' || one?.type === 'number') {
      const most = Math.min(one.maximum ?? 20, 1e9)
      return String(chance.whole(Math.max(one.minimum ?? 0, -5), Math.max(most, 1)))
    }
    if (one?.type === 'boolean') return String(chance.happens(0.5))
    return chance.one(['', '1', 'yes', 'Marta', 'The blue one.', '12.50', '2026-07-01', 'none'])
  }

  const fieldsOf = (schema: Schema | undefined): [string, string][] => {
    const fields = Object.entries(schema?.properties ?? {}).flatMap(
      ([name, property]): [string, string][] => {
        if (chance.happens(0.12)) return []
        const times = property.type === 'array' ? chance.whole(0, 3) : chance.happens(0.04) ? 2 : 1
        return Array.from({ length: times }, () => [
          name,
          someValue(name, property.type === 'array' ? property.items : property),
        ])
      },
    )
    for (const name of ['csrf', 'idem', 'act', 'value', 'seq']) {
      if (chance.happens(0.5) && !fields.some(([one]) => one === name)) {
        fields.push([name, someValue(name, undefined)])
      }
    }
    if (chance.happens(0.08)) fields.push([chance.one(strange), chance.one(strange)])
    return fields
  }

  const multipart = (fields: readonly [string, string][]): Buffer => {
    const parts = fields.map(
      ([name, value]) =>
        `--xx\r\ncontent-disposition: form-data; name="${name.replaceAll(/["\r\n]/g, '')}"\r\n\r\n${value}\r\n`,
    )
    if (chance.happens(0.4)) {
      const bytes = chance.one(['', 'GIF89a', '\xff\xd8\xff\xe0 nothing', '<svg/>', 'RIFF0000WEBP'])
      parts.push(
        `--xx\r\ncontent-disposition: form-data; name="photo"; filename="${chance.one(['a.jpg', '', '../a'])}"\r\ncontent-type: image/jpeg\r\n\r\n${bytes}\r\n`,
      )
    }
    const end = chance.happens(0.9) ? '--xx--\r\n' : ''
    return Buffer.from(parts.join('') + end, chance.happens(0.9) ? 'utf8' : 'utf16le')
  }

  return (by: Session | null): FuzzRequest => {
    session = by
    const { path, method, operation } = chance.one(operations)
    const filled = path.replaceAll(/\{(\w+)\}/g, (_, name: string) => {
      const schema = operation.parameters?.find((one) => one.name === name)?.schema
      return percent(someValue(name, schema))
    })
    const query = (operation.parameters ?? [])
      .filter((one) => one.in === 'query' && chance.happens(0.6))
      .map(({ name, schema }) => `${percent(name)}=${percent(someValue(name, schema))}`)
    if (chance.happens(0.03)) query.push(chance.one(['%', '=&=', 'a[]=1', '%E0%A4%A', 'lang=%00']))
    const headers: Record<string, string> = {
      accept: chance.one(['text/html', 'text/html', '*/*', 'application/json', 'x']),
      // Each from elsewhere, as its own limits by address are not what is tried here.
      'x-forwarded-for': `10.${chance.whole(0, 255)}.${chance.whole(0, 255)}.${chance.whole(1, 254)}`,
    }
    if (session) headers.cookie = session.cookie
    if (chance.happens(0.05)) headers.cookie = `pw_desk=${chance.whole(0, 9)}; =; ;;a=%E0%A4%A`
    if (chance.happens(0.1)) headers['accept-language'] = chance.one(languages)
    if (chance.happens(0.05)) headers['accept-encoding'] = chance.one(['br', 'gzip', 'x', '*;q=0'])
    if (chance.happens(0.05)) headers.prefer = 'return=representation'
    if (chance.happens(0.03)) headers.range = chance.one(['bytes=0-1', 'bytes=-1', 'x=1'])
    if (chance.happens(0.03))
      headers.host = chance.one(['a.example', 'x:99999', '127.0.0.1', '[::1'])
    if (chance.happens(0.03)) headers['content-encoding'] = chance.one(['gzip', 'br', 'x'])
    const verb = chance.happens(0.97)
      ? method.toUpperCase()
      : chance.one(['PUT', 'PATCH', 'DELETE', 'OPTIONS', 'HEAD', 'POST', 'GET'])
    let body: Buffer | null = null
    if (verb !== 'GET' && verb !== 'HEAD') {
      const [schema] = Object.values(operation.requestBody?.content ?? {})
      const fields = fieldsOf(schema?.schema)
      const type = chance.happens(0.75) ? types[chance.happens(0.8) ? 0 : 3]! : chance.one(types)
      if (type !== '') headers['content-type'] = type
      if (type.startsWith('multipart')) body = multipart(fields)
      else if (type === 'application/json') {
        body = Buffer.from(
          chance.happens(0.8) ? JSON.stringify(Object.fromEntries(fields)) : '{"a":',
        )
      } else {
        body = Buffer.from(fields.map(([n, v]) => `${percent(n)}=${percent(v)}`).join('&'))
      }
      if (chance.happens(0.03)) body = body.subarray(0, body.length >> 1)
      if (chance.happens(0.01)) body = Buffer.alloc(400_000, 'a=1&')
    }
    const asked = query.length > 0 ? `?${query.join('&')}` : ''
    return { method: verb, path: filled + asked, headers, body }
  }
}
