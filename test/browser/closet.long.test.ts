import { mkdirSync } from 'node:fs'
import type { Browser, BrowserContextOptions, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { answerAll, pileAnswers } from '../help/chat.ts'
import { turn } from '../help/driver.ts'
import { complaints, cutOff, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { labelOf, type ToldReader, toldReader } from '../help/label-reader.ts'
import { plain } from '../help/pictures.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { clearLabel, clearLook, Hand, tellOne, tellTen, tenLines } from '../help/tapping.ts'
import { toldLane } from '../help/told-lane.ts'
import { Walker } from '../help/walker.ts'

/** On a machine that does much else. */
const patience = 400_000

/** What the last build wrote. */
const assets = openAssets(new URL('../../dist/assets/', import.meta.url))

let opened: TestStore
let app: TestApp
let browser: Browser
let page: Page
let faults: string[]
let photo: Buffer
const reader: ToldReader = toldReader()

beforeAll(async () => {
  opened = await openSqlite()
  const lane = toldLane()
  lane.tells = clearLook
  app = await openApp(opened.store, { clock: Date.now, assets, labels: reader, lane })
  browser = await openBrowser()
  photo = await plain().jpeg().toBuffer()
})
afterAll(async () => {
  await browser?.close()
  await app?.close()
  await opened?.end()
})
beforeEach(() => {
  faults = []
  reader.tells = labelOf(clearLabel)
})
afterEach(async () => {
  expect(faults).toEqual([])
  await page.context().close()
})

/** Between two garments. */
async function atGather(more: BrowserContextOptions = {}, language = 'en'): Promise<void> {
  const walker = await new Walker(app.url).start(language)
  await answerAll(walker, pileAnswers)
  const viewport = { width: 390, height: 844 }
  const context = await browser.newContext({ hasTouch: true, viewport, ...more })
  page = await context.newPage()
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()))
  await page.goto(app.url + walker.pilePath)
}

const gradesShown = () =>
  page
    .locator('[data-garment][data-grade]')
    .evaluateAll((tags) => tags.map((tag) => tag.getAttribute('data-grade')))

const shot = async (name: string) => {
  mkdirSync('test/.out/closet', { recursive: true })
  await page.screenshot({ path: `test/.out/closet/${name}.png`, fullPage: true })
}

test(
  'a garment with clear photos and label is told in eight taps',
  async () => {
    await atGather()
    const hand = new Hand(page)
    await tellOne(hand, photo, photo)
    expect(await page.getAttribute('body', 'class')).toBe('look-gather')
    expect(await gradesShown()).toEqual(['sound'])
    expect(hand.taps).toBeLessThanOrEqual(8)
  },
  patience,
)

test(
  'ten garments are told in fifty taps, the damp one is kept at home',
  async () => {
    await atGather()
    const hand = new Hand(page)
    const questions = await tellTen(hand, photo)
    expect(await page.getAttribute('body', 'class')).toBe('look-gather')
    const grades = await gradesShown()
    expect(grades).toHaveLength(9)
    expect(await page.locator('.tag-dropped').count()).toBe(1)
    expect(questions.filter((one) => one === 'label')).toHaveLength(9)
    expect(hand.taps).toBeLessThanOrEqual(50)
  },
  patience,
)

test.each([
  ['en', 320, 'light'],
  ['es', 320, 'dark'],
  ['es', 1280, 'light'],
] as const)(
  'pages of many garments hold in %s at %i px, %s',
  async (language, width, scheme) => {
    await atGather({ viewport: { width, height: 844 }, colorScheme: scheme }, language)
    const look = async (name: string) => {
      await shot(`${name}-${language}-${width}-${scheme}`)
      expect(await complaints(page)).toEqual([])
      await unfold(page)
      await shot(`${name}-open-${language}-${width}-${scheme}`)
      expect(await complaints(page)).toEqual([])
      expect(await sideways(page)).toBeLessThanOrEqual(0)
      expect(await cutOff(page)).toEqual([])
      expect(await smallTargets(page)).toEqual([])
    }
    const hand = new Hand(page)
    const focused = () => page.evaluate(() => document.activeElement?.id)
    await hand.go('a[href$="/closet"]')
    expect(await focused()).toBe('title')
    await look('closet')
    await hand.go('.closet-kind[value=tshirt]')
    expect(await page.textContent('#live')).toBe(await page.textContent('.closet-added'))
    await hand.write('#field-lines', tenLines)
    await hand.go('[data-act=add-lines]')
    expect(await focused()).toBe('title')
    await look('screening')
    await page.reload()
    for (const mark of ['history:damp', 'history:body-fluid']) {
      await hand.tap(`[data-mark="${mark}"] summary`)
      const garment = mark === 'history:damp' ? 2 : 3
      await hand.tap(`label[for="mark-${garment}-${mark.replace(':', '-')}"]`)
    }
    await hand.go('[data-act=screened]')
    expect(await page.locator('[data-early]').count()).toBe(2)
    expect(await focused()).toBe('title')
    await look('early')
    await hand.go('.closet-kind[value=jeans]')
    await hand.go('a[href$="/closet/look"]')
    await hand.go('[data-act=screened]')
    expect(await focused()).toBe('title')
    const notice = await page.textContent('.notice')
    expect(await page.textContent('#live')).toBe(notice)
  },
  patience,
)

test('a tap answers, is told aloud, and can be taken back in place', async () => {
  await atGather()
  const hand = new Hand(page)
  await hand.go('[data-act=add-garment]')
  await hand.go('[data-skip]')
  await hand.go('label[for=value-tshirt]')
  expect(await page.getAttribute('form[data-question]', 'data-question')).toBe('size')
  expect(await page.textContent('#live')).toBe(
    'What it is: T-shirt. If that is not right, you can change it.',
  )
  await hand.go('#just a')
  expect(await page.isChecked('#value-tshirt')).toBe(true)
  await hand.go('label[for=value-hoodie]')
  expect(await page.textContent('#just span')).toBe('What it is: Hoodie')
})

test('without a script lines are told and looked over all the same', async () => {
  await atGather({ javaScriptEnabled: false })
  await turn(page, () => page.click('a[href$="/closet"]'))
  await page.fill('#field-lines', '2 x plain grey T-shirt, M\nsomething of hers')
  await turn(page, () => page.click('.closet-kind[value=jeans]'))
  expect(await page.inputValue('#field-lines')).toBe('2 x plain grey T-shirt, M\nsomething of hers')
  await turn(page, () => page.click('[data-act=add-lines]'))
  expect(await page.locator('.alike').count()).toBe(3)
  await page.selectOption('[data-garments="4"] select', '4:dress')
  await turn(page, () => page.click('[data-act=screened]'))
  expect(await page.getAttribute('form[data-question]', 'data-question')).toBe('size')
})
