import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { samples } from '../gallery/samples.ts'
import { writeGallery } from '../gallery/write.ts'
import { openBrowser } from '../help/browser.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'

const place = mkdtempSync(join(tmpdir(), 'gallery-'))
const folder = pathToFileURL(`${place}/`)
let browser: Browser
let page: Page

beforeAll(async () => {
  await writeGallery(folder)
  browser = await openBrowser()
  page = await browser.newPage()
})
afterAll(async () => {
  await browser?.close()
  rmSync(place, { recursive: true })
})

interface Eyes {
  readonly width: number
  readonly colorScheme?: 'light' | 'dark'
  readonly forcedColors?: 'active' | 'none'
  readonly language?: string
}

/** Shows a sample in the one page all tests share: a new page each time takes ten times as long. */
async function open(name: string, eyes: Eyes): Promise<void> {
  const { width, language = 'en', colorScheme = 'light', forcedColors = 'none' } = eyes
  await page.setViewportSize({ width, height: 844 })
  await page.emulateMedia({ reducedMotion: 'reduce', colorScheme, forcedColors })
  await page.goto(new URL(`${name}.${language}.html`, folder).href)
  await page.evaluate(() => document.fonts.ready)
}

test('axe complains where there is something to complain of', async () => {
  await page.setContent('<img src="x"><input><p style="color:#999">pale</p>')
  const found = (await complaints(page)).join()
  for (const rule of ['image-alt', 'label', 'color-contrast', 'html-has-lang']) {
    expect(found).toContain(rule)
  }
})

const names = Object.keys(samples)
// The pages of trouble differ in their sentences alone.
const distinct = names.filter((name) => !name.startsWith('trouble-') || name === 'trouble-fault')

test.each(distinct)('on a phone the page %s is fit for every reader', async (name) => {
  await open(name, { width: 390 })
  await unfold(page)
  expect(await complaints(page)).toEqual([])
  expect(await smallTargets(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await complaints(page, 'color-contrast')).toEqual([])
})

test.each(distinct)('at 320 px the page %s never scrolls sideways', async (name) => {
  for (const language of ['en', 'es']) {
    await open(name, { width: 320, language })
    await unfold(page)
    expect(await sideways(page)).toBeLessThanOrEqual(0)
  }
})

test.each(['choice', 'kind', 'label-refused', 'gather', 'review', 'confirmed'])(
  'on a wide page and in Spanish %s gives axe nothing to complain of',
  async (name) => {
    await open(name, { width: 1280, language: 'es' })
    await unfold(page)
    expect(await complaints(page)).toEqual([])
  },
)

test.each(names.filter((name) => samples[name]!.page === 'question'))(
  'the question of %s begins in the upper half of a phone',
  async (name) => {
    await open(name, { width: 390 })
    const below = await page.evaluate(
      () => document.querySelector('h1')!.getBoundingClientRect().bottom,
    )
    expect(below).toBeLessThan(422)
  },
)

test('on a wide page the tags stand left of the question', async () => {
  await open('choice', { width: 1280 })
  const [tag, question] = await page.evaluate(() =>
    ['.thread', 'h1'].map((place) => document.querySelector(place)!.getBoundingClientRect()),
  )
  expect(tag!.right).toBeLessThan(question!.left)
  expect(Math.abs(tag!.top - question!.top)).toBeLessThan(100)
})

test('the faces are the ones we ship', async () => {
  await open('choice', { width: 390 })
  const loaded = await page.evaluate(() =>
    [...document.fonts].filter(({ status }) => status === 'loaded').map(({ family }) => family),
  )
  expect(loaded.join()).toContain('Fraunces Variable')
  expect(loaded.join()).toContain('Atkinson Hyperlegible Next Variable')
})

test('a tag slides onto the thread, and where motion is unwanted nothing moves', async () => {
  await open('choice', { width: 390 })
  const moving = () =>
    page.evaluate(() => getComputedStyle(document.querySelector('.tag:last-child')!).animationName)
  expect(await moving()).toBe('none')
  await page.emulateMedia({ reducedMotion: 'no-preference' })
  expect(await moving()).toBe('tie')
})

test('with forced colours a chosen answer still differs from the others', async () => {
  await open('choice', { width: 390, forcedColors: 'active' })
  const outlines = await page.evaluate(() =>
    [...document.querySelectorAll('.option label')].map(
      (label) => getComputedStyle(label).outlineStyle,
    ),
  )
  expect(outlines).toEqual(['none', 'solid', 'none', 'none'])
})

test('paper is black on white, in a dark room too', async () => {
  await open('confirmed-paper', { width: 800, colorScheme: 'dark' })
  const [ground, words] = await page.evaluate(() => {
    const { backgroundColor, color } = getComputedStyle(document.body)
    return [backgroundColor, color]
  })
  expect(ground).toBe('rgb(255, 255, 255)')
  expect(words).toBe('rgb(0, 0, 0)')
})

test('in print only what the paper needs is left', async () => {
  await open('confirmed', { width: 800 })
  const shown = () =>
    page.evaluate(() =>
      ['.checklist', '.foot', '.papers', '.keep'].map(
        (part) => document.querySelector<HTMLElement>(part)!.offsetHeight > 0,
      ),
    )
  expect(await shown()).toEqual([true, true, true, true])
  await page.emulateMedia({ media: 'print' })
  expect(await shown()).toEqual([true, false, false, false])
  await page.emulateMedia({ media: 'screen' })
})
