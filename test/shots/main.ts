import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { argv } from 'node:process'
import { fileURLToPath } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { garments, pileAnswers } from '../demo/pile.ts'
import { openBrowser } from '../help/browser.ts'
import { signIn, welcome } from '../help/desk-door.ts'
import { askedOn, drive, send, turn } from '../help/driver.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { builtAssets, photographKnowledge } from './knowledge.ts'
import { photographQuilts } from './quilts.ts'
import { contactSheets } from './sheet.ts'
import { photographSheets } from './sheets.ts'
import { photographStories } from './story.ts'

/** A picture of every page, as files and on contact sheets, and the papers printed, from a server of its own. */

const folder = fileURLToPath(new URL('../../test/.out/shots/', import.meta.url))
const tell = (line: string): void => void process.stdout.write(`${line}\n`)

/** Takes a picture of each place once, into a set of that name. */
class Album {
  readonly sets = new Map<string, string[]>()

  async take(page: Page, set: string, place: string): Promise<void> {
    const taken = this.sets.get(set) ?? []
    this.sets.set(set, taken)
    const path = join(folder, set, `${String(taken.length + 1).padStart(2, '0')}-${place}.png`)
    await page.screenshot({ path, fullPage: true })
    taken.push(path)
  }

  /** The page as it is printed, on Letter paper. */
  async print(page: Page, set: string, place: string): Promise<void> {
    const path = join(folder, set, `${place}.pdf`)
    await page.pdf({ path, format: 'Letter', printBackground: false })
    tell(`  ${path}`)
  }
}

const height = 844
const ofPile = {
  ...pileAnswers,
  quilts: { value: 'several' },
  quilt_count: { value: '2' },
  sharing: { value: 'must-in-all' },
}
/** Between garments the page is much the same; these show it empty, begun and full. */
const gathers = ['gather-0', 'gather-1', `gather-${garments.length}`]

async function photograph(
  album: Album,
  browser: Browser,
  server: RunningServer,
  eyes: { readonly language: string; readonly width: number; readonly dark: boolean },
): Promise<void> {
  const { language, width, dark } = eyes
  const set = `${language}-${width}`
  const page = await browser.newPage({ viewport: { width, height }, reducedMotion: 'reduce' })
  const seen = new Set<string>()
  const look = async (place: string) => {
    if (seen.has(place) || (place.startsWith('gather') && !gathers.includes(place))) return
    seen.add(place)
    await album.take(page, set, place)
    if (!dark) return
    await page.emulateMedia({ colorScheme: 'dark' })
    await album.take(page, `${set}-dark`, place)
    await page.emulateMedia({ colorScheme: 'light' })
  }
  const onPage = async (place: string) => {
    await look(place)
    const asked = await askedOn(page)
    if (asked?.kind !== 'contact' && asked?.kind !== 'label') return
    if (seen.has(`refused-${asked.kind}`)) return
    await send(page, 'answer')
    await look(`refused-${asked.kind}`)
  }
  await drive(page, { base: server.url, language, garments, ofPile, onPage })

  const pile = page.url()
  const beside = { paper: `${pile}/paper`, keep: `${pile}/keep`, lost: `${server.url}/nowhere` }
  for (const [place, url] of Object.entries(beside)) {
    await page.goto(url)
    await look(place)
    if (place === 'paper') await album.print(page, set, place)
  }
  await page.context().close()
}

async function photographDesk(
  album: Album,
  browser: Browser,
  server: RunningServer,
): Promise<void> {
  for (const width of [1280, 390]) {
    const page = await browser.newPage({ viewport: { width, height }, reducedMotion: 'reduce' })
    const look = (place: string) => album.take(page, `desk-${width}`, place)
    if (width === 1280) {
      await page.goto(server.ownerUrl()!)
      await look('welcome')
      await welcome(page, server.ownerUrl()!)
    } else {
      await page.goto(`${server.url}/desk`)
      await look('sign-in')
      await signIn(page, server.url)
    }
    await look('queue')
    await turn(page, () => page.click('.queue .entry a'))
    await look('pile')
    const pile = page.url()
    await turn(page, () => page.click('article form .verdict:visible'))
    await look('decided')
    await page.goto(`${pile}/plan?costs=1`)
    await look('plan')
    await turn(page, () => page.getByText('Open all on this page').click())
    if (width === 1280) await album.print(page, 'desk-1280', 'plan')
    await page.goto(`${pile}/what-if?try=without:1&try=size:crib,more:background`)
    await look('what-if')
    await page.goto(`${server.url}/desk?list=nobody`)
    await look('queue-decided')
    await page.goto(`${server.url}/desk/nowhere`)
    await look('lost')
    await page.context().close()
  }
}

async function photographPages(browser: Browser): Promise<void> {
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  const server = await startServer({ env: { LOG_LEVEL: 'silent' } })
  try {
    const album = new Album()
    await photograph(album, browser, server, { language: 'en', width: 390, dark: true })
    await photograph(album, browser, server, { language: 'en', width: 1280, dark: false })
    await photograph(album, browser, server, { language: 'es', width: 390, dark: false })
    await photographDesk(album, browser, server)
    for (const [set, files] of album.sets) {
      tell(`${set}: ${files.length} pages`)
      for (const sheet of await contactSheets(files, join(folder, `sheet-${set}`)))
        tell(`  ${sheet}`)
    }
  } finally {
    await server.remove()
  }
}

const browser = await openBrowser()
try {
  if (argv[2] === 'knowledge') await photographKnowledge(browser, folder, tell)
  else if (argv[2] === 'quilts') await photographQuilts(browser, builtAssets, folder, tell)
  else if (argv[2] === 'sheets') await photographSheets(browser, folder, tell)
  else if (argv[2] === 'story') await photographStories(browser, folder, tell, argv[3])
  else {
    await photographPages(browser)
    await photographStories(browser, folder, tell)
  }
} finally {
  await browser.close()
}
