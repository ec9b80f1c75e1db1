import { mkdirSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { answerAll, pileAnswers } from '../help/chat.ts'
import { complaints, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'

/** What the last build wrote. */
const assets = openAssets(new URL('../../dist/assets/', import.meta.url))
const line = "dad's blue striped flannel, large, 100 % cotton, hole at the elbow, maybe stretchy"

let opened: TestStore
let app: TestApp
let browser: Browser
let page: Page
let faults: string[]

beforeAll(async () => {
  opened = await openSqlite()
  app = await openApp(opened.store, { clock: Date.now, assets })
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

async function atName(
  javaScriptEnabled: boolean,
  width: number,
  colorScheme: 'light' | 'dark',
): Promise<void> {
  const walker = await new Walker(app.url).start()
  await answerAll(walker, pileAnswers)
  await walker.press('add-garment')
  const viewport = { width, height: 844 }
  const context = await browser.newContext({
    javaScriptEnabled,
    viewport,
    colorScheme,
    reducedMotion: 'reduce',
  })
  page = await context.newPage()
  faults = []
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => message.type() === 'error' && faults.push(message.text()))
  await page.goto(app.url + walker.pilePath)
}

const question = () => page.getAttribute('form[data-question]', 'data-question')
const send = () => page.click('button[name=act][value=answer]')
const shot = async (name: string) => {
  mkdirSync('test/.out/own-words', { recursive: true })
  await page.screenshot({ path: `test/.out/own-words/${name}.png`, fullPage: true })
}

test.each([
  [true, 390, 'light'],
  [false, 390, 'dark'],
  [true, 1280, 'dark'],
  [false, 1280, 'light'],
] as const)(
  'script %s, %i px, %s: a line is read, confirmed, and the rest asked',
  async (script, width, scheme) => {
    await atName(script, width, scheme)
    expect(await question()).toBe('name')
    await shot(`name-${width}-${scheme}`)
    await page.fill('[name=value]', line)
    await send()
    await page.waitForSelector('form[data-question=words_check]')
    await unfold(page)
    await shot(`check-${width}-${scheme}`)
    // What complains is a script itself.
    if (script) expect(await complaints(page)).toEqual([])
    expect(await sideways(page)).toBeLessThanOrEqual(0)
    expect(await smallTargets(page)).toEqual([])
    await page.uncheck('input[value=pattern]')
    await send()
    await page.waitForSelector('form[data-question=label]')
    expect(await page.inputValue('textarea[name=words]')).toBe('100 % cotton')
    await shot(`label-${width}-${scheme}`)
  },
)
