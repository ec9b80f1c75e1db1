import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { domains, type Facts } from '../../src/garment/facts.ts'
import { bundle } from '../../src/web/assets/bundle.ts'
import { openBrowser } from '../help/browser.ts'
import { complaints, cutOff, sideways } from '../help/eyes.ts'
import { openTeardownPages, pagesIn } from '../help/teardown-pages.ts'

const place = mkdtempSync(join(tmpdir(), 'teardown-'))
let browser: Browser
let open: Awaited<ReturnType<typeof openTeardownPages>>

beforeAll(async () => {
  const assets = pathToFileURL(`${place}/assets/`)
  await bundle(assets)
  browser = await openBrowser()
  open = await openTeardownPages(browser, assets)
})

afterAll(async () => {
  await browser?.close()
  rmSync(place, { recursive: true, force: true })
})

/** All that may be asked of a garment at once: the longest sheet there is. */
const worst: Partial<Facts> = {
  consent: 'part',
  graphic: 'fits',
  weight: 'unknown',
  trims: 'unknown',
  wear: 'unknown',
  printMake: 'sublimated',
  stretch: 'two-way',
}

test.each(['en', 'es'])('in %s every kind fits one sheet of either paper', async (code) => {
  const long: string[] = []
  for (const kind of domains.kind) {
    const page = await open(kind, code)
    for (const format of ['A4', 'Letter'])
      if (pagesIn(await page.pdf({ format, preferCSSPageSize: false })) !== 1)
        long.push(`${kind} ${format}`)
  }
  expect(long).toEqual([])
})

test('the longest sheet takes two pages at most', async () => {
  for (const kind of ['coat', 'dress', 'uniform', 'pyjamas'] as const) {
    const page = await open(kind, 'es', worst)
    for (const format of ['A4', 'Letter'])
      expect(pagesIn(await page.pdf({ format }))).toBeLessThanOrEqual(2)
  }
})

test('on screen, and narrow, nothing of a sheet is cut off and nobody is shut out', async () => {
  for (const kind of ['jeans', 'coat', 'tie', 'other'] as const) {
    const page = await open(kind, 'es')
    for (const width of [390, 900]) {
      await page.setViewportSize({ width, height: 900 })
      expect(await sideways(page)).toBeLessThanOrEqual(0)
      expect(await cutOff(page)).toEqual([])
      expect(await complaints(page)).toEqual([])
    }
  }
})

test('as printed, nothing stands over the edge of the paper', async () => {
  const page = await open('coat', 'en')
  await page.emulateMedia({ media: 'print' })
  // The room between the margins of Letter, the narrower of the two at 96 px an inch.
  await page.setViewportSize({ width: 733, height: 988 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  expect(await cutOff(page)).toEqual([])
  await page.emulateMedia({ media: null })
})
