import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import sharp from 'sharp'
import { garments } from '../demo/pile.ts'
import { answerAll, pileAnswers } from '../help/chat.ts'
import { welcome } from '../help/desk-door.ts'
import { askedOn, drive, send, turn } from '../help/driver.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { tenLines } from '../help/tapping.ts'
import { Walker } from '../help/walker.ts'
import { contactSheets } from './sheet.ts'

type Media = NonNullable<Parameters<Page['emulateMedia']>[0]>

/** A way to look at pages: a window, what the reader's machine wants, a language. */
interface Eyes extends Media {
  readonly width: number
  readonly height: number
  readonly language: 'en' | 'es'
}

const plain = {
  language: 'en',
  colorScheme: 'light',
  forcedColors: 'none',
  reducedMotion: 'reduce',
} as const
const phone = { width: 390, height: 844 }
const desk = { width: 1280, height: 844 }

const sheets: Readonly<Record<string, Eyes>> = {
  phone: { ...plain, ...phone },
  tablet: { ...plain, width: 820, height: 1180 },
  desk: { ...plain, ...desk },
  dark: { ...plain, ...phone, colorScheme: 'dark' },
  'desk-dark': { ...plain, ...desk, colorScheme: 'dark' },
  spanish: { ...plain, ...phone, language: 'es' },
  // A window of 1280 px at 200 % has room for 640.
  'zoom-200': { ...plain, width: 640, height: 422 },
  'forced-colours': { ...plain, ...phone, forcedColors: 'active' },
}

/** One page of each make; those between differ from these in their words. */
const places = [
  ...['start', 'recipient', 'layout_wish', 'name', 'kind', 'label', 'refused-label', 'photos'],
  ...['wear', 'history', 'stretch', 'pattern', 'colours', 'graphic_size', 'details'],
  ...['gather-0', 'gather-3', 'contact', 'refused-contact', 'review', 'confirmed'],
]

// Without photos: the story's pictures show what photos tell.
const some = garments
  .filter(({ name }) => /flannel|sweat|dancing/i.test(name))
  .map(({ name, answers }) => ({ name, answers }))

/** A picture of a page under a line that says which it is. */
async function labelled(page: Page, shot: Buffer, words: string, path: string): Promise<string> {
  const { width, height } = await sharp(shot).metadata()
  const size = Math.round(20 * Math.max(1, width / 640))
  await page.setViewportSize({ width, height: 2 * size })
  await page.setContent(
    `<body style="margin:0;background:#fff;color:#000;font:bold ${size}px/${2 * size}px sans-serif;padding-left:8px">${words}</body>`,
  )
  const label = await page.screenshot()
  await sharp({ create: { width, height: height + 2 * size, channels: 3, background: '#ffffff' } })
    .composite([
      { input: label, left: 0, top: 0 },
      { input: shot, left: 0, top: 2 * size },
    ])
    .png()
    .toFile(path)
  return path
}

/** Pictures of pages by the sheet they go on. */
class Shots {
  readonly taken = new Map<string, string[]>()
  readonly #folder: string
  readonly #labels: Page

  constructor(folder: string, labels: Page) {
    this.#folder = folder
    this.#labels = labels
  }

  /** Looks at the page in every way of that language. */
  async take(page: Page, place: string, language: string): Promise<void> {
    for (const [name, { width, height, language: spoken, ...media }] of Object.entries(sheets)) {
      if (spoken !== language) continue
      await page.setViewportSize({ width, height })
      await page.emulateMedia(media)
      const shot = await page.screenshot({ fullPage: true })
      const files = this.taken.get(name) ?? []
      this.taken.set(name, files)
      const n = String(files.length + 1).padStart(2, '0')
      const path = join(this.#folder, `${name}-${n}-${place}.png`)
      files.push(await labelled(this.#labels, shot, `${place} · ${name} ${width} px`, path))
    }
    await page.setViewportSize(phone)
    await page.emulateMedia(plain)
  }
}

async function customerPages(
  shots: Shots,
  page: Page,
  base: string,
  language: string,
): Promise<void> {
  const seen = new Set<string>()
  const look = async (place: string) => {
    if (seen.has(place) || !places.includes(place)) return
    seen.add(place)
    await shots.take(page, place, language)
  }
  const onPage = async (place: string) => {
    await look(place)
    const asked = await askedOn(page)
    if (asked?.kind !== 'contact' && asked?.kind !== 'label') return
    if (seen.has(`refused-${asked.kind}`)) return
    await send(page, 'answer')
    await look(`refused-${asked.kind}`)
  }
  await drive(page, { base, language, garments: some, onPage })
  const pile = page.url()
  const beside = { paper: `${pile}/paper`, keep: `${pile}/keep`, lost: `${base}/nowhere` }
  for (const [place, url] of Object.entries(beside)) {
    await page.goto(url)
    await shots.take(page, place, language)
  }
}

/** Many garments at once: lines told, looked over, and what is told early. */
async function closetPages(shots: Shots, page: Page, base: string, language: string) {
  const walker = await new Walker(base).start(language)
  await answerAll(walker, pileAnswers)
  await page.goto(`${base}${walker.pilePath}/closet`)
  await shots.take(page, 'closet', language)
  await page.fill('#field-lines', tenLines)
  await turn(page, () => page.click('[data-act=add-lines]'))
  await page.click('[data-mark="history:damp"] summary')
  await page.check('input[name=mark][value$=":history:damp"]')
  await shots.take(page, 'closet-look', language)
  await turn(page, () => page.click('[data-act=screened]'))
  await shots.take(page, 'closet-early', language)
}

async function deskPages(shots: Shots, page: Page, base: string, language: string): Promise<void> {
  await page.goto(`${base}/desk?lang=${language}`)
  await shots.take(page, 'queue', language)
  await turn(page, () => page.click('.queue .entry a'))
  await shots.take(page, 'pile', language)
  const pile = page.url().split(/[?#]/)[0]!
  const others = {
    plan: `${pile}/plan`,
    facts: `${pile}/garments/1/facts`,
    messages: `${base}/desk/messages`,
    calendar: `${base}/desk/calendar`,
    numbers: `${base}/desk/numbers`,
    files: `${base}/desk/files`,
    embed: `${base}/desk/embed`,
    shop: `${base}/desk/shop`,
  }
  for (const [place, url] of Object.entries(others)) {
    await page.goto(url)
    await shots.take(page, place, language)
  }
}

/** Contact sheets of customers' pages and the desk's, one for each way to look at them. */
export async function photographSheets(
  browser: Browser,
  shots: string,
  tell: (line: string) => void,
): Promise<void> {
  const folder = join(shots, 'sheets')
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  const server: RunningServer = await startServer({ env: { LOG_LEVEL: 'silent' } })
  try {
    const all = new Shots(folder, await browser.newPage())
    const visitor = () => browser.newPage({ viewport: phone, reducedMotion: 'reduce' })
    for (const language of ['en', 'es']) {
      await customerPages(all, await visitor(), server.url, language)
      await closetPages(all, await visitor(), server.url, language)
      tell(`customers' pages, ${language}`)
    }
    const staff = await visitor()
    await welcome(staff, server.ownerUrl()!)
    for (const language of ['en', 'es']) {
      await deskPages(all, staff, server.url, language)
      tell(`the desk's pages, ${language}`)
    }
    for (const [name, files] of all.taken) {
      tell(`${name}: ${files.length} pages`)
      for (const sheet of await contactSheets(files, join(shots, `sheet-${name}`)))
        tell(`  ${sheet}`)
    }
  } finally {
    await server.remove()
  }
}
