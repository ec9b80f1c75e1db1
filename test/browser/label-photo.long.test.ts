import type { Browser, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import type { LabelWords } from '../../src/photo/label-words.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { addGarment, answerAll, pileAnswers, shirt } from '../help/chat.ts'
import { labelOf, type ToldReader, toldReader } from '../help/label-reader.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'

const clear = labelOf(['60% COTTON', '40% POLYESTER', 'WARM IRON'])
const words = '60% COTTON\n40% POLYESTER\nWARM IRON'

/** What the last build wrote. */
const assets = openAssets(new URL('../../dist/assets/', import.meta.url))

let opened: TestStore
let app: TestApp
let reader: ToldReader
let browser: Browser
let page: Page
let faults: string[]

beforeAll(async () => {
  opened = await openSqlite()
  reader = toldReader()
  app = await openApp(opened.store, { clock: Date.now, labels: reader, assets })
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await app?.close()
  await opened?.end()
})

beforeEach(() => {
  reader.tells = clear
})
afterEach(async () => {
  expect(faults).toEqual([])
  await page.context().close()
})

async function atLabel(javaScriptEnabled = true): Promise<void> {
  const walker = await new Walker(app.url).start()
  await answerAll(walker, pileAnswers)
  await addGarment(walker, shirt, 'label')
  const context = await browser.newContext({
    javaScriptEnabled,
    viewport: { width: 390, height: 844 },
  })
  page = await context.newPage()
  faults = []
  page.on('pageerror', (error) => faults.push(error.message))
  await page.goto(app.url + walker.pilePath)
}

const choose = async (width = 600, height = 400) =>
  page.setInputFiles('#field-photo', {
    name: 'label.jpg',
    mimeType: 'image/jpeg',
    buffer: await sharp({
      create: {
        width,
        height,
        channels: 3,
        background: '#ddd',
        noise: { type: 'gaussian', mean: 200, sigma: 50 },
      },
    })
      .jpeg()
      .toBuffer(),
  })

const question = () => page.getAttribute('form[data-question]', 'data-question')

/** A reading that lasts until it is let go. */
function held(): (told: LabelWords) => void {
  let go: (told: LabelWords) => void = () => {}
  const told = new Promise<LabelWords>((resolve) => {
    go = resolve
  })
  reader.tells = told
  return go
}

test('a photo is read as soon as it is chosen, says so, and leads to what was read', async () => {
  await atLabel()
  const go = held()
  await page.check('#iron-cool')
  await choose()
  await page.waitForSelector('#label-reading:not([hidden])')
  expect(await page.textContent('#live')).toBe('Reading the label …')
  go(clear)
  await page.waitForSelector('#label-read')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('label-read')
  expect(await page.inputValue('#field-words')).toBe(words)
  expect(await page.isChecked('#found-words')).toBe(true)
  expect(await page.isChecked('#iron-cool')).toBe(true)
  await page.click('.go button[value=answer]')
  await page.waitForSelector('form[data-question=photos]')
})

test('a sure reading is confirmed where it stands', async () => {
  await atLabel()
  await choose()
  await page.click('#label-read button')
  await page.waitForSelector('form[data-question=photos]')
})

test.each([true, false])('a person may be asked with the photo, script or none: %s', async (js) => {
  await atLabel(js)
  reader.tells = new Failure('label_unread')
  await choose()
  if (js) await page.waitForSelector('#error-photo')
  await page.click('details:has(#field-note) > summary')
  await page.fill('#field-note', 'Is this wool?')
  await page.click('button[value=ask]')
  await page.waitForSelector('form[data-question=photos]')
  await page.goto(page.url().replace(/\/?$/, '/1/label'))
  expect(await page.locator('.label-taken img').count()).toBe(1)
})

test('what is typed while it is read stays', async () => {
  await atLabel()
  const go = held()
  await choose()
  await page.waitForSelector('#label-reading:not([hidden])')
  await page.fill('#field-words', '100% linen')
  go(clear)
  await page.waitForSelector('#label-read')
  expect(await page.inputValue('#field-words')).toBe('100% linen')
})

test('what was typed before stands below the words that were read', async () => {
  await atLabel()
  await page.fill('#field-words', '100% linen')
  await choose()
  await page.waitForSelector('#label-read')
  expect(await page.inputValue('#field-words')).toBe(words)
  expect(await page.textContent('.typed-before')).toContain('100% linen')
})

test('a big photo is made smaller on its way', async () => {
  await atLabel()
  reader.given.length = 0
  await choose(3000, 2000)
  await page.waitForSelector('#label-read', { timeout: 20_000 })
  expect((await sharp(reader.given[0]).metadata()).width).toBe(2048)
})

test('a reading that fails says so, and the words can be typed', async () => {
  await atLabel()
  reader.tells = new Failure('label_unread')
  await choose()
  await page.waitForSelector('#error-photo')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('error-photo')
  await page.fill('#field-words', '100% cotton, warm iron')
  await page.click('.go button[value=answer]')
  await page.waitForSelector('form[data-question=photos]')
})

test('a server that is not there leaves the page as it is', async () => {
  await atLabel()
  await page.fill('#field-words', '100% cotton, warm iron')
  await page.route('**/label', (route) => route.abort())
  await choose()
  await page.waitForSelector('#label-reading.refusal')
  await page.unroute('**/label')
  expect(await page.inputValue('#field-words')).toBe('100% cotton, warm iron')
  await page.click('.go button[value=answer]')
  await page.waitForSelector('form[data-question=photos]')
})

test('a reading that takes too long is waited for no longer', async () => {
  await atLabel()
  await page.clock.install()
  const go = held()
  await choose()
  await page.waitForSelector('#label-reading:not([hidden])')
  await page.clock.fastForward(65_000)
  await page.waitForSelector('#label-reading.refusal')
  go(clear)
  await page.fill('#field-words', '100% cotton, warm iron')
  await page.click('.go button[value=answer]')
  await page.waitForSelector('form[data-question=photos]')
})

test('another photo is read after the first', async () => {
  await atLabel()
  await choose()
  await page.waitForSelector('#label-read[data-verdict=sure]')
  reader.tells = labelOf([], { faults: ['blurred'] })
  await choose(500, 300)
  await page.waitForSelector('#label-read[data-verdict=none]')
  expect(await page.textContent('#label-read')).toContain('hold the phone still')
  expect(await page.inputValue('#field-words')).toBe(words)
})

test('Enter answers, and never has the photo read', async () => {
  await atLabel()
  await page.fill('#field-words', '100% cotton, warm iron')
  await page.focus('#found-words')
  await page.keyboard.press('Enter')
  await page.waitForSelector('form[data-question=photos]')
})

test('without a script the button brings the page back with what was read', async () => {
  await atLabel(false)
  await page.check('#iron-cool')
  await choose()
  await page.click('button[value=read-label]')
  expect(await question()).toBe('label')
  expect(await page.inputValue('#field-words')).toBe(words)
  expect(await page.isChecked('#iron-cool')).toBe(true)
  expect(await page.textContent('#label-read')).toContain('Is that right?')
  await page.click('.go button[value=answer]')
  expect(await question()).toBe('photos')
})
