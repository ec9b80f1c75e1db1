import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { type ParsedMail, simpleParser } from 'mailparser'
import { parse } from 'node-html-parser'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Letter } from '../../src/mail/letter.ts'
import { openMailFolder, openSmtp } from '../../src/mail/post.ts'
import { type MailServer, openMailServer } from '../help/smtp.ts'

const letter: Letter = {
  id: 'a1b2c3',
  from: { name: 'Lantern Street Quilts', address: 'hello@lantern-street.example' },
  to: { name: 'Ana Ruiz', address: 'ana@ruiz.example' },
  subject: 'A question about the blue flannel',
  parts: [
    { kind: 'say', text: 'Hello Ana,' },
    { kind: 'quote', text: 'Is it stretchy?\nA little is fine.' },
    { kind: 'link', text: 'Answer here', href: 'https://quilts.example/i/KEY/messages' },
  ],
  language: 'en',
  at: Date.UTC(2026, 5, 1, 9, 30),
  stopHref: null,
}

let server: MailServer
const folder = mkdtempSync(join(tmpdir(), 'pieceworth-mail-'))

beforeAll(async () => {
  server = await openMailServer()
})
afterAll(async () => {
  await server.close()
  rmSync(folder, { recursive: true, force: true })
})

async function arriving(changed: Partial<Letter>) {
  const before = server.arrived.length
  const posted = await openSmtp(server.url).send({ ...letter, ...changed })
  expect(posted).toEqual({ sent: true })
  expect(server.arrived.length).toBe(before + 1)
  return server.arrived.at(-1)!
}

/** Names of the header fields as they stand in the raw text, which no parser has touched. */
const fieldsOf = (raw: string): string[] =>
  raw
    .slice(0, raw.indexOf('\r\n\r\n'))
    .replaceAll(/\r\n[ \t]/g, ' ')
    .split('\r\n')
    .map((one) => one.slice(0, one.indexOf(':')).toLowerCase())
    .sort()

const one = (addresses: ParsedMail['to']) => [addresses].flat()[0]!.value

test('a mail arrives from the shop, with its words as text and as HTML', async () => {
  const { mail, to, from } = await arriving({})
  expect(to).toEqual(['ana@ruiz.example'])
  expect(from).toBe('hello@lantern-street.example')
  expect(one(mail.from)).toEqual(
    [{ ...letter.from, group: undefined }].map(({ group: _, ...x }) => x),
  )
  expect(one(mail.replyTo)[0]!.address).toBe(letter.from.address)
  expect(mail.subject).toBe(letter.subject)
  expect(mail.date?.getTime()).toBe(letter.at)
  expect(mail.messageId).toBe('<a1b2c3@lantern-street.example>')
  expect(mail.headers.get('auto-submitted')).toBe('auto-generated')
  expect(mail.text?.trim()).toBe(
    'Hello Ana,\n\n> Is it stretchy?\n> A little is fine.\n\nAnswer here:\nhttps://quilts.example/i/KEY/messages',
  )
  const page = parse(mail.html as string)
  expect(page.querySelector('blockquote')?.text).toBe('Is it stretchy?\nA little is fine.')
  expect(page.querySelector('a')?.getAttribute('href')).toBe(
    'https://quilts.example/i/KEY/messages',
  )
})

test('accents, other scripts and emoji arrive as they were written', async () => {
  const name = 'Zoë Núñez 李 🧵'
  const { mail } = await arriving({
    to: { name, address: 'zoe@quilts.example' },
    subject: `¿Qué camisa? 李 ${'ñandú '.repeat(20)}`,
    parts: [{ kind: 'say', text: 'Él dijo: «sí» 李' }],
  })
  expect(one(mail.to)).toEqual([{ name, address: 'zoe@quilts.example' }])
  expect(mail.subject).toBe(`¿Qué camisa? 李 ${'ñandú '.repeat(20)}`.trim())
  expect(mail.text?.trim()).toBe('Él dijo: «sí» 李')
})

test('only a reminder can be stopped, by one POST where the page is reached over https', async () => {
  // RFC 8058, 3.1: List-Unsubscribe with an HTTPS address, List-Unsubscribe-Post with this very value.
  const plain = await arriving({})
  expect(fieldsOf(plain.raw)).not.toContain('list-unsubscribe')
  const stoppable = await arriving({ stopHref: 'https://quilts.example/stop/abc' })
  expect(stoppable.raw).toMatch(/^List-Unsubscribe: <https:\/\/quilts\.example\/stop\/abc>\r$/m)
  expect(stoppable.raw).toMatch(/^List-Unsubscribe-Post: List-Unsubscribe=One-Click\r$/m)
  const local = await arriving({ stopHref: 'http://127.0.0.1/stop/abc' })
  expect(fieldsOf(local.raw)).toContain('list-unsubscribe')
  expect(fieldsOf(local.raw)).not.toContain('list-unsubscribe-post')
})

const longest = 'very long '.repeat(400)

const hostile = [
  'Ana\r\nBcc: all@evil.example',
  'Ana\nX-Evil: 1\n\n<b>body</b>',
  'Ana\u2028Bcc: all@evil.example',
  '"a" <b@evil.example>',
  'a@evil.example, b@evil.example',
  'Ana: x@evil.example;',
  '=?utf-8?q?Ana=0D=0ABcc:_all@evil.example?=',
  '\u202egro.live\u202c',
  '<script>alert(1)</script>',
  '\u0000\u0007',
  '',
]

test.each([...hostile, longest])(
  'a name and a subject of %.40j add no field, no recipient and no markup',
  async (text) => {
    const usual = fieldsOf((await arriving({})).raw)
    const { mail, raw, to } = await arriving({
      to: { name: text, address: 'ana@ruiz.example' },
      subject: text,
      parts: [
        { kind: 'say', text },
        { kind: 'quote', text },
        { kind: 'link', text: 'x', href: 'https://quilts.example/i/"><script>' },
      ],
    })
    expect(fieldsOf(raw).filter((field) => field !== 'subject')).toEqual(
      usual.filter((field) => field !== 'subject'),
    )
    expect(to).toEqual(['ana@ruiz.example'])
    expect(one(mail.to).map(({ address }) => address)).toEqual(['ana@ruiz.example'])
    expect(mail.bcc).toBeUndefined()
    const tags = parse(mail.html as string)
      .querySelectorAll('*')
      .map(({ tagName }) => tagName)
    expect(new Set(tags)).toEqual(
      new Set([
        'HTML',
        'HEAD',
        'META',
        'BODY',
        'P',
        'BLOCKQUOTE',
        'A',
        ...(text.includes('\n') ? ['BR'] : []),
      ]),
    )
    // RFC 5322, 2.1.1: no line is longer than 998 characters.
    expect(Math.max(...raw.split('\r\n').map((line) => line.length))).toBeLessThanOrEqual(998)
  },
)

test.each([
  'ana@ruiz.example\r\nRCPT TO:<b@evil.example>',
  'ana@ruiz.example, b@evil.example',
  '"a" <b@evil.example>',
  '<ana@ruiz.example>',
  'ana ruiz@ruiz.example',
  'ana@ruiz.example\u0000',
  'ana',
  '',
])('an address of %j is none, at every try', async (address) => {
  const before = server.arrived.length
  const sent = await openSmtp(server.url).send({ ...letter, to: { name: 'Ana', address } })
  expect(sent).toEqual({ sent: false, trouble: 'address', lasting: true })
  expect(server.arrived.length).toBe(before)
})

test('whatever is in a name, it stays in the name', async () => {
  const post = openMailFolder(folder)
  await fc.assert(
    fc.asyncProperty(fc.string({ unit: 'binary', maxLength: 60 }), async (text) => {
      const id = 'property'
      const sent = await post.send({
        ...letter,
        id,
        subject: text,
        to: { ...letter.to, name: text },
      })
      expect(sent).toEqual({ sent: true })
      const mail = await simpleParser(readFileSync(join(folder, `${id}.eml`)))
      expect(one(mail.to).map(({ address }) => address)).toEqual(['ana@ruiz.example'])
      expect(mail.text).toContain('Is it stretchy?')
      expect(mail.cc).toBeUndefined()
      expect(mail.bcc).toBeUndefined()
    }),
    { numRuns: 60 },
  )
})

test('without a mail server a mail is a whole file that nobody else may read', async () => {
  const post = openMailFolder(join(folder, 'new'))
  expect(await post.send(letter)).toEqual({ sent: true })
  expect(readdirSync(join(folder, 'new'))).toEqual(['a1b2c3.eml'])
  const file = join(folder, 'new', 'a1b2c3.eml')
  expect(statSync(file).mode & 0o077).toBe(0)
  const bytes = readFileSync(file)
  expect(bytes.toString('latin1').replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
  const mail = await simpleParser(bytes)
  expect(mail.subject).toBe(letter.subject)
  expect(mail.text).toContain('https://quilts.example/i/KEY/messages')
})

test('a server that is away, is busy or knows no such person is told apart by a code', async () => {
  const send = () => openSmtp(server.url).send(letter)
  server.refuseNext = { code: 451, message: 'ana@ruiz.example later' }
  expect(await send()).toEqual({ sent: false, trouble: 'EMESSAGE 451', lasting: false })
  server.refuseNext = { code: 554, message: 'ana@ruiz.example never' }
  expect(await send()).toEqual({ sent: false, trouble: 'EMESSAGE 554', lasting: true })
  server.unknown = 'ana@ruiz.example'
  expect(await send()).toEqual({ sent: false, trouble: 'EENVELOPE 550', lasting: true })
  server.unknown = null
  // Port 1 of this machine: nobody listens there.
  const away = await openSmtp('smtp://127.0.0.1:1').send(letter)
  expect(away).toEqual({ sent: false, trouble: expect.stringMatching(/^E\w+$/), lasting: false })
})
