import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { type DemoGarment, garments } from '../demo/pile.ts'
import { openBrowser } from '../help/browser.ts'
import { askedOn, drive } from '../help/driver.ts'
import { enter, keyboard, reach } from '../help/keys.ts'
import { type RunningServer, startServer } from '../help/server.ts'

let server: RunningServer
let browser: Browser
let page: Page

beforeAll(async () => {
  server = await startServer({ env: { LOG_LEVEL: 'silent' } })
  browser = await openBrowser()
  page = await browser.newPage({
    viewport: { width: 1280, height: 844 },
    reducedMotion: 'reduce',
  })
})
afterAll(async () => {
  await browser?.close()
  await server?.remove()
})

const focused = () =>
  page.evaluate(() => document.activeElement?.id || document.activeElement?.localName)

/** One of which everything is told, and one of which nearly everything is left to a person. */
const two: readonly DemoGarment[] = [
  garments[0]!,
  {
    name: 'Blanket from the boat house',
    answers: { kind: { value: 'blanket' }, label: { found: 'none', words: '' } },
  },
]

test('two garments are walked from hello to packing list by keyboard alone', async () => {
  const met: string[] = []
  await drive(page, {
    base: server.url,
    garments: two,
    hand: keyboard,
    onPage: async (place) => {
      // A first page is read from its top; after a step reading goes on where something is said.
      if (place !== 'start') expect({ place, at: await focused() }).toEqual({ place, at: 'title' })
      met.push(place)
    },
  })
  expect(await page.locator('[data-pile=confirmed]').count()).toBe(1)
  expect(await page.locator('[data-garment]').count()).toBe(2)
  for (const place of ['recipient', 'label', 'stretch', 'gather-2', 'contact', 'review']) {
    expect(met).toContain(place)
  }
}, 120_000)

test('the first stop leads past the head, and back again', async () => {
  await page.goto(server.url)
  await page.keyboard.press('Tab')
  expect(await page.locator('a.skip').evaluate((link) => link.getBoundingClientRect().top)).toBe(0)
  await page.keyboard.press('Enter')
  expect(await focused()).toBe('main')
  await reach(page, '[data-act=start]')
  await reach(page, 'a.skip', 'Shift+Tab')
})

test('an answer that is missing is told at once, and its link leads to the field', async () => {
  await page.goto(server.url)
  await keyboard.press(page, 'start')
  await reach(page, 'button[value=answer]')
  await enter(page)
  expect(await focused()).toBe('errors')
  await reach(page, '#errors a')
  await page.keyboard.press('Enter')
  expect(await focused()).toBe('field-value')
  await keyboard.reply(page, (await askedOn(page))!, { value: 'adult' })
  expect(await focused()).toBe('title')
})
