import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Locator, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { contrast } from '../../src/web/embed/dress.ts'
import { samples } from '../gallery/samples.ts'
import { writeGallery } from '../gallery/write.ts'
import { openBrowser } from '../help/browser.ts'
import { complaintsInForcedColours, cutOff, sideways, unfold } from '../help/eyes.ts'

const place = mkdtempSync(join(tmpdir(), 'seen-'))
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

// The pages of trouble differ in their sentences alone.
const distinct = Object.keys(samples).filter(
  (name) => !name.startsWith('trouble-') || name === 'trouble-fault',
)

type Media = NonNullable<Parameters<Page['emulateMedia']>[0]>

async function open(name: string, media: Media, width = 390, height = 844): Promise<void> {
  await page.setViewportSize({ width, height })
  await page.emulateMedia({
    colorScheme: 'light',
    forcedColors: 'none',
    reducedMotion: 'reduce',
    ...media,
  })
  await page.goto(new URL(`${name}.en.html`, folder).href)
  await page.evaluate(() => document.fonts.ready)
}

const forced: readonly Media[] = [
  { forcedColors: 'active', colorScheme: 'light' },
  { forcedColors: 'active', colorScheme: 'dark' },
]

/** What WCAG 2.2 asks of marks that are not words (1.4.11), and of a focus that is seen. */
const enough = 3

interface Pixels {
  readonly colours: readonly string[]
  readonly width: number
}

async function pixelsOf(shot: Buffer): Promise<Pixels> {
  const { data, info } = await sharp(shot).removeAlpha().raw().toBuffer({ resolveWithObject: true })
  const colours = Array.from(
    { length: info.width * info.height },
    (_, at) => `#${data.subarray(at * 3, at * 3 + 3).toString('hex')}`,
  )
  return { colours, width: info.width }
}

/** How strongly the darkest and the lightest of what is shown differ, by WCAG's contrast ratio. */
async function contrastIn(shown: Locator): Promise<number> {
  const { colours } = await pixelsOf(await shown.screenshot())
  const distinctOnes = [...new Set(colours)]
  const first = distinctOnes[0]!
  const far = distinctOnes.toSorted((a, b) => contrast(b, first) - contrast(a, first))[0]!
  return Math.max(...distinctOnes.map((one) => contrast(one, far)))
}

test.each(distinct)(
  'zoomed to 400 %% the page %s neither scrolls sideways nor cuts words',
  async (name) => {
    // A window of 1280 by 844 px has room for 320 by 211.
    await open(name, {}, 320, 211)
    await unfold(page)
    expect(await sideways(page)).toBeLessThanOrEqual(0)
    expect(await cutOff(page)).toEqual([])
  },
)

test.each(distinct)('in forced colours the page %s is whole', async (name) => {
  for (const media of forced) {
    await open(name, media)
    await unfold(page)
    expect(await complaintsInForcedColours(page)).toEqual([])
  }
})

test('in forced colours the sign of every grade is seen', async () => {
  const met = new Set<string>()
  for (const media of forced) {
    for (const name of ['gather-full', 'choice-twelve-tags', 'review']) {
      await open(name, media)
      await unfold(page)
      const signs = page.locator('.grade:has(.picture svg):visible')
      for (let at = 0; at < (await signs.count()); at += 1) {
        const sign = signs.nth(at)
        const grade = (await sign.getAttribute('class'))!
        met.add(grade)
        const seen = await contrastIn(sign.locator('.picture'))
        expect([grade, media.colorScheme, seen >= enough]).toEqual([grade, media.colorScheme, true])
      }
    }
  }
  expect([...met].filter((one) => /grade-(sound|care|eyes|home)/.test(one)).length).toBe(4)
})

/** So many of the pixels around a thing change clearly when it takes the focus. */
async function changedByFocus(thing: Locator): Promise<{ changed: number; edge: number }> {
  await thing.scrollIntoViewIfNeeded()
  const box = (await thing.boundingBox())!
  const clip = { x: box.x - 6, y: box.y - 6, width: box.width + 12, height: box.height + 12 }
  const inside = { ...clip, x: Math.max(0, clip.x), y: Math.max(0, clip.y) }
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur())
  const before = await pixelsOf(await page.screenshot({ clip: inside }))
  // By the keyboard, as whoever needs to see it goes about.
  await page.keyboard.press('Shift')
  await thing.evaluate((one: HTMLElement) => one.focus({ focusVisible: true } as FocusOptions))
  const after = await pixelsOf(await page.screenshot({ clip: inside }))
  const changed = before.colours.filter(
    (colour, at) => contrast(colour, after.colours[at]!) >= enough,
  ).length
  return { changed, edge: 2 * (box.width + box.height) }
}

const controls: readonly (readonly [name: string, selector: string])[] = [
  ['choice', 'button[value=answer]:not(.unseen)'],
  ['choice', 'summary:visible'],
  ['choice', '.aside-link'],
  ['text-line', '#field-value'],
  ['gather', '[data-act=add-garment]'],
  ['confirmed', 'main a:visible'],
]

test.each(controls)(
  'what has the focus is seen on %s (%s), in forced colours too',
  async (name, selector) => {
    for (const media of [{}, { colorScheme: 'dark' as const }, ...forced]) {
      await open(name, media)
      const { changed, edge } = await changedByFocus(page.locator(selector).first())
      // Half of a line of one pixel around it, at least: links lie over several lines.
      expect([media, changed >= edge / 2]).toEqual([media, true])
    }
  },
)

test('a focus that is not shown is found', async () => {
  await page.setContent('<button id="b" style="outline:none">Go on</button>')
  const { changed, edge } = await changedByFocus(page.locator('#b'))
  expect(changed).toBeLessThan(edge / 2)
})

test.each(distinct)('where motion is unwanted nothing moves on %s', async (name) => {
  await open(name, { reducedMotion: 'reduce' })
  const moving = await page.evaluate(
    () =>
      [...document.querySelectorAll('*')].filter((one) => {
        const { animationName, animationDuration, transitionDuration } = getComputedStyle(one)
        const long = (times: string) =>
          times.split(',').some((time) => Number.parseFloat(time) > 0.01)
        return (animationName !== 'none' && long(animationDuration)) || long(transitionDuration)
      }).length,
  )
  expect(moving).toBe(0)
})
