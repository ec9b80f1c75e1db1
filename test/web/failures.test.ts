import Fastify, { type FastifyInstance } from 'fastify'
import { IntlMessageFormat } from 'intl-messageformat'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { Failure, type FailureCode, failures } from '../../src/base/failures.ts'
import { asFailure, failureSentence, handleFailures, sayWhenAgain } from '../../src/web/errors.ts'
import { language, readPageWords } from '../../src/words/words.ts'
import { sources, withoutComments } from '../help/tree.ts'

const codes = Object.keys(failures) as FailureCode[]
const pages = readPageWords()
const languages = [...pages].map(([code, words]) => language(code, words))

interface Node {
  readonly type: number
  readonly value?: string
  readonly options?: Readonly<Record<string, { readonly value: readonly Node[] }>>
}

// In a parsed message 0 is plain text and 7 the # of a plural; all else names a gap.
const gapsIn = (nodes: readonly Node[]): string[] =>
  nodes.flatMap(({ type, value, options }) => [
    ...(type === 0 || type === 7 ? [] : [value!]),
    ...Object.values(options ?? {}).flatMap((option) => gapsIn(option.value)),
  ])

const gapsOf = (text: string): Set<string> =>
  new Set(gapsIn(new IntlMessageFormat(text, 'en').getAst() as readonly Node[]))

interface Thrown {
  readonly file: string
  readonly code: string
  /** Names of the details; null where they are not written out. */
  readonly names: readonly string[] | null
}

/** The names of an object written at `from`, or null where that is no plain object. */
function namesAt(text: string, from: number): string[] | null {
  const open = /^\s*,\s*\{/.exec(text.slice(from))
  if (!open) return /^\s*,?\s*\)/.test(text.slice(from)) ? [] : null
  const parts = ['']
  let depth = 0
  const rest = text.slice(from + open[0].length).replaceAll(/`[^`]*`|'[^'\n]*'/g, '""')
  for (const sign of rest) {
    if (depth === 0 && sign === '}') break
    if ('([{'.includes(sign)) depth += 1
    if (')]}'.includes(sign)) depth -= 1
    if (depth === 0 && sign === ',') parts.push('')
    else parts[parts.length - 1] += sign
  }
  const names = parts.map((part) => part.trim()).filter((part) => part !== '')
  if (names.some((part) => part.startsWith('...'))) return null
  return names.map((part) => /^\w+/.exec(part)![0])
}

/** `new Failure('code', …)`, and the reader's `refuse('code', …)`, which adds the question. */
const thrown: Thrown[] = sources().flatMap(({ path, text }) => {
  const plain = withoutComments(text)
  return [...plain.matchAll(/(new Failure|\w\.refuse)\(\s*'([a-z_]+)'/g)].map((found) => {
    const names = namesAt(plain, found.index + found[0].length)
    const adds = found[1] !== 'new Failure' ? ['question'] : []
    return { file: path, code: found[2]!, names: names && [...names, ...adds] }
  })
})

describe('the catalogue of failures', () => {
  test('every throw is found', () => {
    expect(thrown.length).toBeGreaterThan(60)
    expect(thrown.filter(({ code }) => !Object.hasOwn(failures, code))).toEqual([])
  })

  test.each(codes)('%s can happen', (code) => {
    const text = sources()
      .filter(({ path }) => path !== 'src/base/failures.ts')
      .map((file) => withoutComments(file.text))
      .join('\n')
    // Thrown, told by the name of what went wrong, or why a child process refuses.
    const ways = [
      `(?:Failure|\\.refuse)\\(\\s*'${code}'`,
      `^\\s*\\w+: '${code}',$`,
      `\\{ code: '${code}'`,
    ]
    const said = new RegExp(ways.join('|'), 'm')
    expect(text).toMatch(said)
  })

  test.each(languages.map(({ code }) => code))('every code has a sentence in %s', (code) => {
    expect(codes.filter((one) => !pages.get(code)!.has(`failures.${one}`))).toEqual([])
  })

  test.each(languages.map(({ code }) => code))(
    'no sentence in %s is for a code that is gone',
    (code) => {
      const told = [...pages.get(code)!.keys()].filter((key) => key.startsWith('failures.'))
      expect(told.filter((key) => !Object.hasOwn(failures, key.slice('failures.'.length)))).toEqual(
        [],
      )
    },
  )

  test('the gaps of each sentence are filled wherever its code is thrown', () => {
    const wrong = thrown.flatMap(({ file, code, names }) =>
      [...pages].flatMap(([tongue, words]) =>
        [...gapsOf(words.get(`failures.${code}`)!)]
          .filter((gap) => names !== null && !names.includes(gap))
          .map((gap) => `${file} throws ${code} without ${gap} (${tongue})`),
      ),
    )
    expect(wrong).toEqual([])
  })

  test('the sentences of one code have the same gaps in every language', () => {
    const wrong = codes.filter((code) => {
      const gaps = [...pages.values()].map((words) =>
        [...gapsOf(words.get(`failures.${code}`)!)].sort().join(),
      )
      return new Set(gaps).size > 1
    })
    expect(wrong).toEqual([])
  })
})

const foreign = [
  ['FST_ERR_CTP_BODY_TOO_LARGE', 413, 'too_large'],
  ['FST_REQ_FILE_TOO_LARGE', 413, 'too_large'],
  ['FST_FILES_LIMIT', 413, 'too_many_photos'],
  ['FST_PARTS_LIMIT', 413, 'bad_input'],
  ['FST_FIELDS_LIMIT', 413, 'bad_input'],
  ['FST_PROTO_VIOLATION', 400, 'bad_input'],
  ['FST_ERR_CTP_INVALID_MEDIA_TYPE', 415, 'bad_input'],
  ['FST_ERR_CTP_INVALID_JSON_BODY', 400, 'bad_input'],
  ['FST_ERR_VALIDATION', 400, 'bad_input'],
  ['', 404, 'not_found'],
  ['', 405, 'method_not_allowed'],
  ['', 429, 'too_many_requests'],
  ['', 503, 'busy'],
  ['', 418, 'bad_input'],
  ['', 502, 'internal'],
  ['', undefined, 'internal'],
] as const

describe('what others throw', () => {
  test.each(foreign)(
    '%s with status %s becomes %s, and has its sentence',
    (code, statusCode, ours) => {
      const cause = Object.assign(new Error('theirs'), { code, statusCode })
      const failure = asFailure(cause)
      expect(failure).toMatchObject({ code: ours, cause })
      for (const one of languages) expect(failureSentence(failure, one)).toMatch(/\w.*[.?!]$/)
    },
  )

  test.each([undefined, null, 'text', 7])('a thrown %s is our fault', (value) => {
    expect(asFailure(value)).toMatchObject({ code: 'internal', cause: value })
  })
})

describe('a failure over HTTP', () => {
  let app: FastifyInstance
  const heard: string[] = []

  beforeAll(async () => {
    app = Fastify()
    sayWhenAgain(app)
    handleFailures(app, {
      language: async () => languages.find(({ code }) => code === 'es')!,
      page: (_, { code }, { code: tongue }) => `<p>${code} ${tongue}`,
      failed: (code) => heard.push(code),
    })
    app.get('/refused/:what', async () => {
      throw new Failure('too_many_items', { most: 300 })
    })
    app.post('/refused/:what', async () => {
      throw Object.assign(new Error('select secret from row'), { detail: 'a row' })
    })
    app.get('/busy', async () => {
      throw new Failure('busy')
    })
    await app.ready()
  })
  afterAll(() => app.close())

  const get = (url: string, accept = 'application/json') =>
    app.inject({ method: 'GET', url, headers: { accept } })

  // RFC 9457, section 3: members of a problem details object and its media type.
  test('a program gets problem details as in RFC 9457', async () => {
    const response = await get('/refused/it')
    expect(response.statusCode).toBe(409)
    expect(response.headers['content-type']).toMatch(/^application\/problem\+json/)
    expect(response.json()).toEqual({
      type: 'about:blank',
      title: expect.stringContaining('300'),
      status: 409,
      code: 'too_many_items',
      request: expect.any(String),
    })
    expect(heard).toContain('too_many_items')
  })

  test('a browser gets a page in the language that is asked for', async () => {
    const response = await get('/refused/it', 'text/html,application/xhtml+xml;q=0.9,*/*;q=0.8')
    expect(response.statusCode).toBe(409)
    expect(response.headers['content-type']).toBe('text/html; charset=utf-8')
    expect(response.body).toBe('<p>too_many_items es')
  })

  test('a fault says nothing of its cause', async () => {
    const response = await app.inject({ method: 'POST', url: '/refused/it' })
    expect(response.statusCode).toBe(500)
    expect(response.json()).toMatchObject({ code: 'internal', status: 500 })
    expect(response.body).not.toMatch(/secret|row/)
  })

  test('who is to come back later is told when', async () => {
    const response = await get('/busy')
    expect(response.statusCode).toBe(503)
    expect(response.headers['retry-after']).toBe('5')
  })

  // RFC 9110, section 15.5.6: a 405 names the methods that are allowed.
  test('a wrong method is told from a wrong address, and told the right ones', async () => {
    const wrong = await app.inject({ method: 'DELETE', url: '/refused/it?x=1' })
    expect(wrong.statusCode).toBe(405)
    expect(wrong.headers.allow).toBe('GET, HEAD, POST')
    expect(wrong.json()).toMatchObject({ code: 'method_not_allowed' })
    expect((await get('/nowhere')).json()).toMatchObject({ code: 'not_found', status: 404 })
  })
})
