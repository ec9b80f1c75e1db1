import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { garments } from '../demo/pile.ts'
import { openBrowser } from '../help/browser.ts'
import { drive } from '../help/driver.ts'
import { complaints, complaintsInForcedColours, cutOff, sideways, unfold } from '../help/eyes.ts'
import { type RunningServer, startServer } from '../help/server.ts'

let server: RunningServer
let browser: Browser
let page: Page

beforeAll(async () => {
  server = await startServer({ env: { LOG_LEVEL: 'silent' } })
  browser = await openBrowser()
  page = await browser.newPage()
})
afterAll(async () => {
  await browser?.close()
  await server?.remove()
})

type Media = NonNullable<Parameters<Page['emulateMedia']>[0]>

interface State extends Media {
  readonly width: number
  readonly height: number
}

const plain = { media: 'screen', colorScheme: 'light', forcedColors: 'none' } as const
const wide = { width: 1280, height: 844 }

const states: Readonly<Record<string, State>> = {
  // A window of 1280 px at 200 % has room for 640.
  'zoomed to 200 %': { width: 640, height: 422 },
  // At 400 % for 320, and few lines.
  'zoomed to 400 %': { width: 320, height: 211 },
  dark: { ...wide, colorScheme: 'dark' },
  'in forced colours': { ...wide, forcedColors: 'active' },
  'in forced colours, dark': { ...wide, forcedColors: 'active', colorScheme: 'dark' },
  'without motion': { ...wide, reducedMotion: 'reduce' },
}

/** A4 less the usual edges of a printer, in CSS px. */
const printed: State = { width: 718, height: 1047, media: 'print' }

async function wrongIn({ width, height, ...media }: State): Promise<object> {
  await page.setViewportSize({ width, height })
  await page.emulateMedia({ ...plain, reducedMotion: 'no-preference', ...media })
  // What slides or fades has come to rest.
  await page.evaluate(() => Promise.all(document.getAnimations().map((one) => one.finished)))
  return {
    axe: await (media.forcedColors ? complaintsInForcedColours(page) : complaints(page)),
    sideways: Math.max(0, await sideways(page)),
    cut: await cutOff(page),
  }
}

const nothing = { axe: [], sideways: 0, cut: [] }

/** One page of each make; the others differ from these in their words. */
const places = ['start', 'kind', 'label', 'history', 'photos', 'contact', 'review', 'confirmed']

test('each make of page is whole zoomed, dark, in forced colours and without motion', async () => {
  const met = new Set<string>()
  const some = garments.filter(({ name }) => /flannel|dancing|Rain/.test(name))
  await drive(page, {
    base: server.url,
    garments: some,
    onPage: async (place) => {
      if (met.has(place) || ![...places, `gather-${some.length}`].includes(place)) return
      met.add(place)
      await unfold(page)
      for (const [state, seen] of Object.entries(states)) {
        expect({ place, state, ...(await wrongIn(seen)) }).toEqual({ place, state, ...nothing })
      }
      await page.setViewportSize(wide)
      await page.emulateMedia(plain)
    },
  })
  expect(met.size).toBe(places.length + 1)
}, 180_000)

test('the packing list and the paper are whole in print', async () => {
  const pile = page.url()
  for (const url of [pile, `${pile}/paper`]) {
    await page.goto(url)
    expect({ url, ...(await wrongIn(printed)) }).toEqual({ url, ...nothing })
  }
})

test('what is cut off is found', async () => {
  await page.goto('about:blank')
  await page.setContent(
    '<p style="width:60px;overflow:hidden;white-space:nowrap">a sentence that is cut</p>',
  )
  expect(await cutOff(page)).toHaveLength(1)
})
