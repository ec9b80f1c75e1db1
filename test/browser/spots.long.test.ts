import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { addGarment, answerAll, pileAnswers, sendFiles, shirt } from '../help/chat.ts'
import { turn } from '../help/driver.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { plain } from '../help/pictures.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { lookOf, toldLane } from '../help/told-lane.ts'
import { Walker } from '../help/walker.ts'

/** What the last build wrote. */
const assets = openAssets(new URL('../../dist/assets/', import.meta.url))
const holed = { ...shirt, kind: { value: 'tshirt' }, wear: { value: 'holes' } }

let opened: TestStore
let app: TestApp
let browser: Browser
let page: Page
let faults: string[]

beforeAll(async () => {
  opened = await openSqlite()
  const lane = toldLane()
  lane.tells = lookOf()
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
  await page.context().close()
})

async function atSpots(javaScriptEnabled: boolean, width = 390): Promise<void> {
  const walker = await new Walker(app.url).start()
  await answerAll(walker, pileAnswers)
  await addGarment(walker, holed, 'photos')
  const bytes = await plain(700, 500, '#1d2a52').jpeg().toBuffer()
  await sendFiles(walker, [{ bytes, name: 'shirt.jpg', type: 'image/jpeg' }])
  await answerAll(walker, holed, 'spots')
  const viewport = { width, height: 844 }
  const context = await browser.newContext({ javaScriptEnabled, viewport, reducedMotion: 'reduce' })
  page = await context.newPage()
  faults = []
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()))
  await page.goto(app.url + walker.pilePath)
}

const values = () =>
  page
    .locator('input[name=spot]')
    .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value.replace(/^[^:]*:/, '')))
const question = () => page.getAttribute('form[data-question]', 'data-question')

async function press(x: number, y: number): Promise<void> {
  const cells = page.locator('.spot-cells')
  const { width, height } = (await cells.boundingBox())!
  await cells.click({ position: { x: x * width, y: y * height } })
}

async function tap(x: number, y: number): Promise<void> {
  const back = page.waitForResponse((answer) => answer.request().method() === 'POST')
  await press(x, y)
  await back
}

test('a tap marks the very place without leaving the page, and a second one takes it away', async () => {
  await atSpots(true)
  await page.evaluate(() => document.body.setAttribute('data-same', ''))
  await tap(0.5, 0.5)
  await page.waitForSelector('.spot-list li')
  const [value] = await values()
  const [x, y, what] = value!.split(':')
  expect(Number(x)).toBeCloseTo(0.5, 1)
  expect(Number(y)).toBeCloseTo(0.5, 1)
  expect(what).toBe('hole')
  expect(await page.inputValue('#part-1')).toBe('front')
  expect(await page.textContent('#live')).toContain('One spot is marked')
  await page.selectOption('#part-1', 'back')
  await page.click('label[for=what-thin]')
  await tap(0.2, 0.2)
  await page.waitForSelector('.spot-list li:nth-child(2)')
  expect(await page.inputValue('#part-1')).toBe('back')
  expect(await page.isChecked('#what-thin')).toBe(true)
  await tap(0.2, 0.2)
  await page.waitForSelector('.spot-list li:nth-child(2)', { state: 'detached' })
  expect(await values()).toEqual([value])
  expect(await page.getAttribute('body', 'data-same')).toBe('')
  await page.click('.go button[value=answer]')
  await page.waitForSelector('form[data-question=story]')
})

test('keys choose a place, row by row and place by place, and mark it', async () => {
  await atSpots(true)
  await page.focus('#cell-1-0')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('ArrowRight')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('cell-1-13')
  expect(await values()).toEqual([])
  await page.keyboard.press('Enter')
  await page.waitForSelector('.spot-list li')
  expect(await values()).toEqual(['0.25:0.625:hole'])
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('cell-1-13')
  await page.click('button[name=unmark]')
  await page.waitForSelector('.spot-list', { state: 'detached' })
})

test('a mark that the server cannot be asked for now is sent with the page', async () => {
  await atSpots(true)
  await page.route('**/spots', (route) => route.abort(), { times: 1 })
  await turn(page, () => press(0.5, 0.5))
  expect(await values()).toHaveLength(1)
  faults = faults.filter((fault) => !fault.includes('ERR_FAILED'))
})

test('without a script a place is chosen and the button pressed', async () => {
  await atSpots(false)
  await page.locator('.spot-cells input').nth(14).click()
  await turn(page, () => page.click('button[name=mark]'))
  expect(await values()).toEqual(['0.417:0.625:hole'])
  await turn(page, () => page.click('.go button[value=answer]'))
  expect(await question()).toBe('story')
})

test.each([320, 390])('at %i px nothing is too small, cut off or complained of', async (width) => {
  await atSpots(true, width)
  await tap(0.5, 0.5)
  await page.waitForSelector('.spot-list li')
  await unfold(page)
  expect(await complaints(page)).toEqual([])
  expect(await smallTargets(page)).toEqual([])
  expect(await sideways(page)).toBeLessThanOrEqual(0)
})
