import { Writable } from 'node:stream'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { openLog } from '../../src/base/log.ts'
import { addGarment, answerAll, pileAnswers, shirt } from '../help/chat.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { Walker } from '../help/walker.ts'

const secrets = {
  name: 'Perpetua Quillon',
  email: 'perpetua@quillon.example',
  phone: '+1 555 0100 777',
  note: 'the stain is from the ferry accident',
  label: '100% cotton warm iron Zanzibarine',
  garment: 'Wedding waistcoat of Uncle Bartleby',
  story: 'He wore it in the lighthouse in 1974',
  untaken: 'a number nobody can read, the size of Bartleby',
  cookie: 'cookie-monogram-99',
  password: 'open-sesame-waistcoat',
  token: 'bearer-of-waistcoats',
}

describe('the log of a running server at its most talkative', () => {
  let server: RunningServer
  let key: string
  let pile: string

  beforeAll(async () => {
    server = await startServer({ env: { LOG_LEVEL: 'trace' } })
    const walker = new Walker(server.url, {
      cookie: `desk=${secrets.cookie}`,
      authorization: `Bearer ${secrets.token}`,
    })
    await walker.start()
    pile = walker.pilePath
    key = pile.split('/')[2]!
    await answerAll(walker, pileAnswers, 'at_hand')
    await walker.send({ value: secrets.untaken })
    expect(walker.status).toBe(422)
    await answerAll(await walker.open(pile), pileAnswers)
    const told = {
      ...shirt,
      name: { value: secrets.garment },
      label: { found: 'words', words: secrets.label },
      wear: { act: 'ask', note: secrets.note },
      story: { value: secrets.story },
    }
    await addGarment(walker, told)
    await walker.press('confirm-pile')
    await answerAll(walker, {
      leftovers: { value: 'return' },
      contact: { name: secrets.name, email: secrets.email, phone: secrets.phone },
    })
    for (const path of [
      `${pile}/photos/none/view`,
      `/i/${key.slice(1)}`,
      `${pile}/nowhere/at/all`,
    ]) {
      await walker.open(path)
      expect(walker.status).toBe(404)
    }
    await walker.open(`/nowhere?email=${secrets.email}`)
    await walker.open('/desk/sign-in', {
      method: 'POST',
      body: new URLSearchParams({ email: secrets.email, password: secrets.password }),
    })
    await walker.open(`${pile}/1/label`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: `{"words":"${secrets.label}`,
    })
    expect(walker.status).toBe(400)
    await server.stop()
  })
  afterAll(() => server?.remove())

  const lines = () =>
    server
      .stderr()
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => JSON.parse(line) as Record<string, unknown>)

  test.each(Object.keys(secrets) as (keyof typeof secrets)[])('it holds no %s', (what) => {
    const said = server.stdout() + server.stderr()
    expect(said).not.toContain(secrets[what])
    expect(said).not.toContain(encodeURIComponent(secrets[what]))
    for (const word of secrets[what].split(' ').filter((part) => part.length > 8)) {
      expect(said).not.toContain(word)
    }
  })

  test('it holds no key of a link, whole or cut', () => {
    const said = server.stdout() + server.stderr()
    expect(said).not.toContain(key)
    expect(said).not.toContain(key.slice(1))
    expect(said).not.toContain(key.slice(0, 16))
  })

  test('a line a request names the pattern of its route, not its address', () => {
    const requests = lines().filter(({ msg }) => msg === 'request')
    expect(requests.length).toBeGreaterThan(30)
    for (const one of requests) {
      expect(Object.keys(one).sort()).toEqual(
        ['level', 'method', 'ms', 'msg', 'reqId', 'route', 'status', 'time'].sort(),
      )
    }
    const routes = new Set(requests.map(({ route }) => route))
    expect([...routes]).toEqual(
      expect.arrayContaining(['/i/:key', '/i/:key/:item/:question', '/i/:key/garments', 'none']),
    )
  })

  test('a refused answer is logged by its code and question, and nothing else of it', () => {
    const refused = lines().find(({ msg }) => msg === 'answer refused')
    expect(refused).toMatchObject({ code: 'not_a_number', question: 'at_hand' })
  })

  test('what it tells people goes to the one stream, and the log to the other', () => {
    expect(server.stdout()).toMatch(/^listening http\S+\nmake the owner's account here/)
    expect(lines().length).toBeGreaterThan(30)
  })
})

describe('a line of the log', () => {
  const secret = 'xyzzy-9'

  function logged(write: (log: ReturnType<typeof openLog>) => void): Record<string, unknown> {
    let text = ''
    const to = new Writable({
      write(part, _, done) {
        text += part
        done()
      },
    })
    write(openLog('trace', to))
    return JSON.parse(text)
  }

  const fields = ['name', 'email', 'phone', 'contact', 'address', 'note', 'story', 'words', 'value']
  const keys = ['password', 'token', 'key', 'link', 'cookie', 'authorization', 'set-cookie', 'csrf']

  test.each([...fields, ...keys])('leaves out a %s at the top and three levels down', (field) => {
    const shapes = [
      { [field]: secret },
      { a: { [field]: secret } },
      { a: { b: { [field]: secret } } },
      { a: { b: { c: { [field]: secret } } } },
      { list: [{ [field]: secret }] },
      { [field]: { inside: secret } },
      { request: { headers: { [field]: [secret] } } },
    ]
    for (const shape of shapes) {
      expect(JSON.stringify(logged((log) => log.info(shape, 'said')))).not.toContain(secret)
    }
  })

  test('keeps what is nobody’s', () => {
    expect(logged((log) => log.warn({ route: '/i/:key', status: 200 }, 'request'))).toMatchObject({
      route: '/i/:key',
      status: 200,
      msg: 'request',
    })
  })

  test('tells of an error where it happened, and nothing a database or parser adds', () => {
    const cause = Object.assign(new Error('duplicate row'), {
      code: '23505',
      detail: `Key (email)=(${secret}) exists`,
      parameters: [secret],
    })
    const error = Object.assign(new Failure('busy', {}, { cause }), { row: { text: secret } })
    const line = logged((log) => log.error({ err: error }, 'refused'))
    expect(JSON.stringify(line)).not.toContain(secret)
    expect(line.err).toMatchObject({
      type: 'Failure',
      code: 'busy',
      message: 'busy',
      stack: expect.stringContaining('log.test'),
      cause: { code: '23505', message: 'duplicate row' },
    })
  })

  test('a thrown thing that is no error says only what it is', () => {
    expect(logged((log) => log.error({ err: secret }, 'refused')).err).toEqual({ type: 'string' })
  })
})
