import { type HTMLElement, NodeType, parse } from 'node-html-parser'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { type Knowledge, wordsOf } from '../../src/intake/knowledge.ts'
import { sessionCookie } from '../../src/web/desk/cookies.ts'
import { language } from '../../src/words/words.ts'
import { type DemoGarment, garments, pileAnswers } from '../demo/pile.ts'
import { photoOf, replyOf } from '../demo/reply.ts'
import { sayYes, sendOffer, takePile } from '../help/agreeing.ts'
import { flowsFolder, learnAt, openApp, type TestApp } from '../help/app.ts'
import { sendFiles } from '../help/chat.ts'
import type { Visitor } from '../help/desk-visitor.ts'
import { readPdf } from '../help/read-pdf.ts'
import { signedIn } from '../help/signed-in.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'
import type { App } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

/**
 * A made-up language: English between marks, with Esperanto's numbers, months and lists, which come from the
 * Unicode CLDR by Intl. What a page, mail or paper says without marks did not come from a file of words.
 */
const code = 'eo'
const marked = (text: string): string => `«${text}»`

/** What Intl says of this language here: the "and" of lists, months and minutes. */
const byIntl = [
  ...new Intl.ListFormat(code).format(['1', '2']).split(/[12 ]/),
  ...Array.from({ length: 12 }, (_, month) =>
    new Intl.DateTimeFormat(code, { month: 'long', timeZone: 'UTC' }).format(
      Date.UTC(2026, month, 1),
    ),
  ),
  ...Array.from({ length: 12 }, (_, month) =>
    new Intl.DateTimeFormat(code, { month: 'short', timeZone: 'UTC' }).format(
      Date.UTC(2026, month, 1),
    ),
  ),
  ...new Intl.NumberFormat(code, { style: 'unit', unit: 'minute', unitDisplay: 'long' })
    .format(2)
    .split(/[\d\s]/),
  'USD',
].filter((word) => word.length > 1)

function inThirdLanguage(): Knowledge {
  const knowledge = learnAt('2026-06-01')
  const english = wordsOf(readFlowsFolder(flowsFolder)).get('en')!
  const words = new Map([...english].map(([key, text]) => [key, marked(text)]))
  const { shop } = knowledge
  return {
    ...knowledge,
    shop: {
      ...shop,
      languages: [code],
      tagline: { [code]: marked(shop.tagline.en!) },
      policies: shop.policies.map(({ en }) => ({ [code]: marked(en!) })),
    },
    languages: new Map([[code, language(code, words, `${code}-US`)]]),
  }
}

const reason = 'As it was told to us'
const pile: readonly DemoGarment[] = garments.slice(0, 8)

/** A name where there is little room for it. */
const cutShort = (name: string): string[] =>
  Array.from({ length: name.length - 1 }, (_, n) => `${name.slice(0, n + 1).trimEnd()}…`)

/** What people are called and what they wrote. */
const theirs = [
  ...pile.flatMap(({ name }) => [name, ...cutShort(name)]),
  ...[...pile.map(({ answers }) => answers), pileAnswers]
    .flatMap((answers) => Object.values(answers).flatMap((fields) => Object.values(fields).flat()))
    .filter((text) => text.includes(' ')),
  ...[
    'Marta Quillfeather',
    'Ana Ruiz',
    'Ida',
    reason,
    'Lantern Street Quilts',
    '8 Lantern Street',
    'Millbrook',
  ],
].toSorted((one, other) => other.length - one.length)

/** Addresses, files and the numbers of tags: the same in every language. */
const names = /https?:\/\/\S+|[\w.-]+@[\w.-]+|[\w./-]+\.(?:ya?ml|csv)|\b[A-Z]\d+(?:-\d+)?\b/g

/** What is left of a text once everything marked and everything that is no language is taken away. */
function unmarked(text: string): string {
  let left = text
  for (let before = ''; before !== left; ) {
    before = left
    left = left.replaceAll(/«[^«»]*»/g, ' ')
  }
  for (const own of theirs) left = left.replaceAll(own, ' ')
  left = left.replaceAll(names, ' ')
  const words = left.match(/\p{L}{2,}/gu) ?? []
  return words.some((word) => !byIntl.includes(word)) ? left.replaceAll(/\s+/g, ' ').trim() : ''
}

/** Sources are told in the words of those who wrote them, and lines to copy are the same everywhere. */
const asWritten = '.why-source, code, script, style, textarea'

/** Where a page holds words that are not its text; what a script may have to say among them. */
const heard = [
  ...['alt', 'aria-label', 'title', 'placeholder'],
  ...['data-sending', 'data-offline', 'data-busy', 'data-sent', 'data-reading', 'data-failed'],
]

/** Every text that is read or heard on a page. */
function textsOf(html: string): string[] {
  const page = parse(html)
  for (const element of page.querySelectorAll(asWritten)) element.remove()
  const texts: string[] = []
  const visit = (element: HTMLElement): void => {
    for (const name of heard) {
      const value = element.getAttribute(name)
      if (value) texts.push(value)
    }
    for (const child of element.childNodes) {
      if (child.nodeType === NodeType.TEXT_NODE) texts.push(child.text)
      else if (child.nodeType === NodeType.ELEMENT_NODE) visit(child as HTMLElement)
    }
  }
  for (const element of page.querySelectorAll('html')) visit(element)
  return texts
}

let opened: TestStore
let app: TestApp
let owner: Visitor
/** Each text without marks, with the first place where it stood. */
const found = new Map<string, string>()
let looked = 0

function look(place: string, texts: readonly string[]): void {
  looked += texts.length
  for (const text of texts) {
    const left = unmarked(text)
    if (left && !found.has(left)) found.set(left, place)
  }
}

async function answerAll(walker: Walker, garment: DemoGarment | null): Promise<void> {
  for (let { question } = walker; question; { question } = walker) {
    look(question.id, textsOf(walker.html))
    if (question.kind === 'photo' && garment?.photo) {
      const bytes = await photoOf(garment)
      await sendFiles(walker, [{ bytes, name: 'it.jpg', type: 'image/jpeg' }])
    } else {
      await walker.send(replyOf(question, garment, pileAnswers))
    }
    if (walker.status !== 200) throw new Error(`${question.id}: ${walker.text('.errors')}`)
  }
}

let key: string

beforeAll(async () => {
  opened = await openSqlite()
  app = await openApp(opened.store, { clock, knowledge: inThirdLanguage() })
  owner = await signedIn(opened.store, clock, app.app as App, { name: 'Ida', role: 'owner' })
  const walker = await new Walker(app.url).start(code)
  await answerAll(walker, null)
  for (const garment of pile) {
    await walker.press('add-garment')
    await answerAll(walker, garment)
    look('gather', textsOf(walker.html))
  }
  await walker.press('confirm-pile')
  await answerAll(walker, null)
  look('review', textsOf(walker.html))
  await walker.press('confirm-pile')
  key = walker.pilePath.split('/')[2]!
  await takePile(owner, 1, reason)
  await sendOffer(owner, 1)
})
afterAll(async () => {
  await app?.close()
  await opened?.end()
})

const addressOf = (route: string): string =>
  route.replaceAll(/:(\w+)(?:\([^)]*\))?/g, (_, name: string) => {
    const known: Record<string, string> = { key, code, question: 'kind', version: '2' }
    return known[name] ?? '1'
  })

test('no page says a word that is not in the files of words', async () => {
  const routes = app.app.guarded.filter(({ method }) => method === 'GET')
  let pages = 0
  for (const { url } of routes) {
    const answer = await owner.get(addressOf(url), { accept: 'text/html' })
    if (!answer.type.startsWith('text/html')) continue
    pages += 1
    look(url, textsOf(answer.body))
  }
  expect(pages).toBeGreaterThan(40)
  expect(looked).toBeGreaterThan(5_000)
  expect([...found]).toEqual([])
})

test('no mail does', async () => {
  // The first version is what the customer saw on confirming.
  const yes = await sayYes({ app: app.app as App }, key, 2)
  expect(yes.status).toBe(303)
  const mails = await opened.store.db.selectFrom('mail').select(['subject', 'body']).execute()
  expect(mails.length).toBeGreaterThan(1)
  for (const { subject, body } of mails) {
    const texts: string[] = []
    JSON.parse(body, (_, value) => {
      if (typeof value === 'string') texts.push(value)
      return value
    })
    look('mail', [subject, ...texts])
  }
  expect([...found]).toEqual([])
})

test('no paper does', async () => {
  const routes = app.app.guarded.filter(({ url }) => url.endsWith('.pdf'))
  const cookie = `${sessionCookie}=${owner.cookies.get(sessionCookie)}`
  let papers = 0
  for (const { url } of routes) {
    const paths = url.includes(':name')
      ? ['packing', 'tags', 'keepsake'].map((name) => addressOf(url.replace(':name', name)))
      : [addressOf(url)]
    for (const path of paths) {
      const answer = await app.app.inject({ url: path, headers: { cookie } })
      if (!String(answer.headers['content-type']).startsWith('application/pdf')) continue
      papers += 1
      const { pages } = await readPdf(answer.rawPayload)
      look(path, [pages.map(({ words }) => words).join(' ')])
    }
  }
  expect(papers).toBeGreaterThan(2)
  expect([...found]).toEqual([])
})
