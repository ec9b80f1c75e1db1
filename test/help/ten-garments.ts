import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect } from 'vitest'
import { readFlow } from '../../src/flow/read.ts'
import { type DemoGarment, garments, pileAnswers } from '../demo/pile.ts'
import { openBrowser } from './browser.ts'
import { type Asked, askedOn, drive, send, turn } from './driver.ts'
import { complaints, sideways, smallTargets, unfold } from './eyes.ts'
import { readYaml } from './knowledge.ts'
import { type RunningServer, startServer } from './server.ts'

/** Ten garments as unlike as can be: every grade, every kind of label, and every question in turn. */
const ten = garments
  .filter(({ name }) => !/Choir|Work jeans|apron|uniform/.test(name))
  .map((garment) => (garment.name === 'Swim club suit' ? halfRead(garment) : garment))
  .map((garment) => (garment.name === 'Grey fishing jumper' ? photographed(garment) : garment))

/** A label whose shares do not add up is read back to the customer. */
function halfRead(garment: DemoGarment): DemoGarment {
  const label = { found: 'words', words: '82% polyamide' }
  return { ...garment, answers: { ...garment.answers, label } }
}

/** Between two garments the page only grows; it is looked at empty, begun and full. */
const gathers = ['gather-0', 'gather-1', `gather-${ten.length}`]

const ofPile = {
  ...pileAnswers,
  quilts: { value: 'several' },
  quilt_count: { value: '2' },
  sharing: { value: 'must-in-all' },
  at_hand: { value: '10' },
}

/** What has holes and a photo is asked to be marked. */
function photographed(garment: DemoGarment): DemoGarment {
  return { ...garment, photo: [96, 100, 108] }
}

let server: RunningServer
let browser: Browser
/** A window at the server's address in which no script of ours runs. */
let glass: Page

/** Starts what the walks of a test file share, and ends it after them. */
export function standReady(): void {
  beforeAll(start)
  afterAll(async () => {
    await browser?.close()
    await server?.remove()
  })
}

async function start(): Promise<void> {
  server = await startServer({ env: { LOG_LEVEL: 'silent' } })
  browser = await openBrowser()
  glass = await browser.newPage({ reducedMotion: 'reduce' })
  await glass.route('**/*.js', (route) => route.abort())
  await glass.goto(server.url)
}

/** One visitor: a window, with or without script, and what was met in it. */
interface Visitor {
  readonly page: Page
  readonly context: BrowserContext
  readonly script: boolean
  readonly width: number
  readonly met: Set<string>
}

const height = 844

/** axe needs timers, which a page without script has not: it looks at the same markup in a window that has. */
async function wrongOn({ page, script, width }: Visitor): Promise<string[]> {
  if (script) return complaints(page)
  await glass.setViewportSize({ width, height })
  await glass.setContent(await page.content(), { waitUntil: 'load' })
  return complaints(glass)
}

/** What must hold on any page; `place` names it where it does not. */
async function inspect(visitor: Visitor, place: string): Promise<void> {
  const { page } = visitor
  if (visitor.met.has(place)) return
  visitor.met.add(place)

  const counts = await page.evaluate(() => ({
    headings: document.querySelectorAll('h1').length,
    questions: document.querySelectorAll('form[data-question]').length,
    mains: document.querySelectorAll('main').length,
  }))
  const asked = (await askedOn(page)) !== null
  expect({ place, ...counts }).toEqual({ place, headings: 1, questions: asked ? 1 : 0, mains: 1 })
  await unfold(page)
  expect({ place, small: await smallTargets(page) }).toEqual({ place, small: [] })
  expect({ place, sideways: (await sideways(page)) > 0 }).toEqual({ place, sideways: false })
  const wrong = await wrongOn(visitor)
  expect({ place, wrong }).toEqual({ place, wrong: [] })
}

/** On a phone the question is on the first screen, however many garments there are. */
async function beginsOnFirstScreen({ page, width }: Visitor, place: string): Promise<void> {
  await page.setViewportSize({ width: 390, height })
  const top = await page.evaluate(() => document.querySelector('h1')!.getBoundingClientRect().top)
  expect({ place, onFirstScreen: top < height / 2 }).toEqual({ place, onFirstScreen: true })
  await page.setViewportSize({ width, height })
}

const wrongAnswers: Readonly<Record<string, (page: Page) => Promise<unknown>>> = {
  choice: async () => {},
  confirm: async () => {},
  many: async (page) => {
    // "None of these", the first, comes last: alone it would be sent by the tap.
    for (const option of (await page.locator('.option label').all()).reverse()) await option.click()
  },
  symbols: async () => {},
  label: async () => {},
  contact: async () => {},
  number: (page) => page.fill('#field-value', '9999'),
  photo: (page) =>
    page.setInputFiles('#field-photo', {
      name: 'it.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('not a picture'),
    }),
}

/** Sends a wrong answer once for each kind of question; the page that comes back is looked at too. */
async function refuseOnce(visitor: Visitor, { id, kind }: Asked): Promise<void> {
  const wrong = wrongAnswers[kind]
  const place = `refused-${kind}`
  if (!wrong || visitor.met.has(place)) return
  await wrong(visitor.page)
  await send(visitor.page, 'answer')
  expect(await askedOn(visitor.page)).toMatchObject({ id })
  expect(await visitor.page.textContent('#errors')).toMatch(/\w/)
  await inspect(visitor, place)
}

async function onPage(visitor: Visitor, place: string): Promise<void> {
  if (place.startsWith('gather') && !gathers.includes(place)) return
  const asked = await askedOn(visitor.page)
  const crowded = visitor.met.has(`gather-${ten.length}`)
  if (asked && crowded && visitor.width === 320) await beginsOnFirstScreen(visitor, place)
  await inspect(visitor, place)
  if (asked) await refuseOnce(visitor, asked)
}

/** Pages beside the way: the paper, the link to keep, and what goes wrong. */
async function lookBeside(visitor: Visitor): Promise<void> {
  const { page } = visitor
  const pile = page.url()
  for (const [place, url] of [
    ['paper', `${pile}/paper`],
    ['keep', `${pile}/keep`],
    ['nowhere', `${server.url}/nowhere`],
    ['unknown link', `${server.url}/i/${'a'.repeat(32)}`],
  ] as const) {
    await page.goto(url)
    await inspect(visitor, place)
  }
}

/** A second window still asks what the first has answered and confirmed. */
async function answerTooLate(visitor: Visitor, late: Page): Promise<void> {
  await turn(late, () => late.click('form[data-question] button[value=answer]'))
  expect(await late.getAttribute('main', 'data-trouble')).toBe('stale')
  await inspect({ ...visitor, page: late }, 'too late')
}

export interface Walk {
  readonly script: boolean
  /** Of the window, in CSS pixels. */
  readonly width: number
}

/** One walk may be slow: every page on its way is looked at. */
export const patience = 240_000

/** Walks ten garments from hello to the packing list and looks at every page; gives what each was graded. */
export async function walkTen({ script, width }: Walk): Promise<string[]> {
  const context = await browser.newContext({
    javaScriptEnabled: script,
    viewport: { width, height },
    reducedMotion: 'reduce',
  })
  const faults: string[] = []
  context.on('weberror', (error) => faults.push(error.error().message))
  const visitor = {
    page: await context.newPage(),
    context,
    script,
    width,
    met: new Set<string>(),
  }
  const late = await context.newPage()

  await drive(visitor.page, {
    base: server.url,
    garments: ten,
    ofPile,
    onPage: async (place) => {
      await onPage(visitor, place)
      if (place === 'contact') await late.goto(visitor.page.url())
    },
  })

  expect(await visitor.page.locator('[data-pile=confirmed]').count()).toBe(1)
  const grades = await visitor.page
    .locator('[data-garment]')
    .evaluateAll((rows) =>
      rows.map((row) => `${row.getAttribute('data-garment')} ${row.getAttribute('data-grade')}`),
    )
  await answerTooLate(visitor, late)
  await lookBeside(visitor)

  for (const question of questions()) expect(visitor.met).toContain(question)
  for (const kind of Object.keys(wrongAnswers)) expect(visitor.met).toContain(`refused-${kind}`)
  expect(faults).toEqual([])
  await context.close()
  return grades.sort()
}

const questions = (): string[] =>
  readFlow(readYaml('intake/flow.yaml')).parts.flatMap((part) => part.questions.map(({ id }) => id))
