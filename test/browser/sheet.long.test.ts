import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { marksOff } from '../../src/photo/look/marked-sheet.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { addGarment, answerAll, pileAnswers, sendFiles, shirt } from '../help/chat.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { plain } from '../help/pictures.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { lookOf, sizesOf, type ToldLane, toldLane } from '../help/told-lane.ts'
import { Walker } from '../help/walker.ts'

/** What the last build wrote. */
const assets = openAssets(new URL('../../dist/assets/', import.meta.url))
const printed = { ...shirt, pattern: { value: 'single' }, print_make: { value: 'screen' } }

let opened: TestStore
let app: TestApp
let lane: ToldLane
let browser: Browser
let page: Page
let faults: string[]

beforeAll(async () => {
  opened = await openSqlite()
  lane = toldLane()
  lane.tells = lookOf()
  lane.measures = sizesOf(10.9, 9.1)
  app = await openApp(opened.store, { clock: Date.now, assets, lane })
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await app?.close()
  await opened?.end()
})
afterEach(async () => {
  expect(faults).toEqual([])
  lane.marked.length = 0
  await page.context().close()
})

type Scheme = 'light' | 'dark'

async function atSheet(
  javaScriptEnabled: boolean,
  width = 390,
  colorScheme: Scheme = 'light',
  comes = javaScriptEnabled,
): Promise<void> {
  const walker = await new Walker(app.url).start()
  await answerAll(walker, pileAnswers)
  await addGarment(walker, printed, 'photos')
  const bytes = await plain(900, 1200, '#1d2a52').jpeg().toBuffer()
  await sendFiles(walker, [{ bytes, name: 'shirt.jpg', type: 'image/jpeg' }])
  await answerAll(walker, printed, 'graphic_size')
  const viewport = { width, height: 844 }
  const context = await browser.newContext({
    javaScriptEnabled,
    viewport,
    colorScheme,
    reducedMotion: 'reduce',
  })
  page = await context.newPage()
  faults = []
  if (!comes) await page.route('**/sheet.client-*.js', (route) => route.abort())
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()))
  await page.goto(app.url + walker.pilePath)
  await page.click('.measure-offer a')
  if (comes) await page.waitForSelector('.sheet-live')
}

const photo = () => page.locator('.sheet-stage input[type=image]')

async function tap(x: number, y: number): Promise<void> {
  const { width, height } = (await photo().boundingBox())!
  await photo().click({ position: { x: x * width, y: y * height } })
}

async function tapFour(): Promise<void> {
  for (const [x, y] of [
    [0.2, 0.2],
    [0.5, 0.2],
    [0.5, 0.6],
    [0.2, 0.6],
  ] as const)
    await tap(x, y)
}

/** The numbers that are sent, percent. */
const numbers = (name: 'x' | 'y') =>
  page
    .locator(`input[type=number][name=${name}]`)
    .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).valueAsNumber))

async function drag(selector: string, dx: number, dy: number): Promise<void> {
  const element = page.locator(selector)
  await element.scrollIntoViewIfNeeded()
  const { x, y, width, height } = (await element.boundingBox())!
  await page.mouse.move(x + width / 2, y + height / 2)
  await page.mouse.down()
  await page.mouse.move(x + width / 2 + dx, y + height / 2 + dy, { steps: 4 })
  await page.mouse.up()
}

test('four taps, a handle, the glass, keys and undo move the corners; they are measured by', async () => {
  await atSheet(true)
  await tapFour()
  const [x0, y0] = [await numbers('x'), await numbers('y')]
  for (const [n, at] of [20, 50, 50, 20].entries()) expect(Math.abs(x0[n]! - at)).toBeLessThan(0.5)
  for (const [n, at] of [20, 20, 60, 60].entries()) expect(Math.abs(y0[n]! - at)).toBeLessThan(0.5)
  expect(await page.textContent('#sheet-told')).toContain('All four are marked.')
  expect(await page.getAttribute('input[name=coarse]', 'value')).toBe('yes')

  const { width } = (await photo().boundingBox())!
  await drag('.sheet-handle.sheet-active', 35, 0)
  const dragged = (await numbers('x'))[3]!
  expect(dragged - x0[3]!).toBeCloseTo((100 * 35) / width, 0)
  await drag('.sheet-glass', 40, 0)
  const slid = (await numbers('x'))[3]!
  expect(slid - dragged).toBeCloseTo((-100 * 10) / width, 0)

  for (const n of [0, 1, 2, 3]) {
    await page.locator('.sheet-handle').nth(n).focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Shift+ArrowDown')
  }
  expect((await numbers('x'))[0]! - x0[0]!).toBeCloseTo(0.1, 2)
  expect((await numbers('y'))[0]! - y0[0]!).toBeCloseTo(0.75, 2)
  expect(await page.textContent('#sheet-told')).toContain('Corner 4:')
  expect(await page.inputValue('input[name=coarse]')).toBe('')
  await page.click('[data-sheet-act=last]')
  expect((await numbers('y'))[3]! - y0[3]!).toBeCloseTo(0, 2)

  await page.click('label[for=sheet-letter]')
  await page.click('[data-sheet-act=measure]')
  await page.waitForSelector('form[data-question=graphic_size]')
  expect(await page.inputValue('input[name=value]')).toBe('11')
  expect(lane.marked[0]!.marked.off).toBe(marksOff.fine)
  await page.click('.measure-offer a')
  await page.waitForSelector('.sheet-live')
  expect((await numbers('x')).every(Number.isFinite)).toBe(true)
})

test('who has keys alone puts four corners there and moves them, or types where they are', async () => {
  await atSheet(true)
  await page.click('.sheet-numbers summary')
  await page.focus('[data-sheet-act=frame]')
  await page.keyboard.press('Enter')
  expect(await numbers('x')).toEqual([35, 65, 65, 35])
  const label = await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))
  expect(label).toBe('Corner 1')
  await page.keyboard.press('ArrowLeft')
  expect((await numbers('x'))[0]).toBeCloseTo(34.9, 5)
  await page.fill('#corner-x-2', '70.5')
  const left = await page
    .locator('.sheet-handle')
    .nth(1)
    .evaluate((one) => (one as HTMLElement).style.left)
  expect(left).toBe('70.5%')
  await page.click('[data-sheet-act=clear]')
  expect((await numbers('x')).every(Number.isNaN)).toBe(true)
})

test('without a script the photo is a button: a press a corner, and it may be shown larger', async () => {
  await atSheet(false)
  const click = async (x: number, y: number) => Promise.all([page.waitForEvent('load'), tap(x, y)])
  await click(0.2, 0.2)
  await click(0.5, 0.2)
  await Promise.all([page.waitForEvent('load'), page.click('[data-sheet-act=larger]')])
  expect((await photo().boundingBox())!.width).toBe(1056)
  await click(0.5, 0.6)
  await click(0.2, 0.6)
  const x = await numbers('x')
  for (const [n, at] of [20, 50, 50, 20].entries()) expect(Math.abs(x[n]! - at)).toBeLessThan(0.5)
  await page.click('label[for=sheet-a4]')
  await Promise.all([page.waitForEvent('load'), page.click('[data-sheet-act=measure]')])
  expect(await page.inputValue('input[name=value]')).toBe('11')
})

test.each([
  [320, 'light'],
  [390, 'light'],
  [390, 'dark'],
  [1280, 'light'],
] as const)(
  'at %i px, %s, nothing is too small, cut off or complained of',
  async (width, scheme) => {
    await atSheet(true, width, scheme)
    await tapFour()
    await looksWell()
  },
)

test.each([
  [320, 'light'],
  [390, 'dark'],
] as const)('nor at %i px, %s, where its script does not come', async (width, scheme) => {
  await atSheet(true, width, scheme, false)
  await tap(0.2, 0.2)
  await page.waitForSelector('.sheet-outline g')
  await looksWell()
  await page.click('[data-sheet-act=larger]')
  await page.waitForSelector('.sheet-scroll[tabindex]')
  await looksWell()
  faults = faults.filter((fault) => !fault.includes('ERR_FAILED'))
})

async function looksWell(): Promise<void> {
  await unfold(page)
  expect(await complaints(page)).toEqual([])
  expect(await smallTargets(page)).toEqual([])
  expect(await sideways(page)).toBeLessThanOrEqual(0)
}
