import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { ownerLink } from '../../src/desk/once-links.ts'
import { openPlans } from '../../src/planning/plans.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import { bundle } from '../../src/web/assets/bundle.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openBrowser } from '../help/browser.ts'
import { complaints, cutOff, sideways, smallTargets, unfold } from '../help/eyes.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const place = mkdtempSync(join(tmpdir(), 'desk-'))
const clock = () => Date.UTC(2026, 5, 1, 9)

const garments: readonly Script[] = [
  { name: said("Dad's blue flannel"), kind: said('button-shirt') },
  {
    name: said('Choir sweatshirt'),
    kind: said('sweatshirt'),
    pattern: said('single'),
    print_make: said('film'),
    details: { asked: 'The sleeves are signed. Can they stay whole?' },
  },
  { name: said('Grandmother’s silk scarf'), kind: said('scarf'), wear: said('shattered') },
  { name: said('Donaudampfschifffahrtsgesellschaftskapitänsmütze'), kind: said('other') },
]

let store: Store
let workshop: Workshop
let browser: Browser
let page: Page
let url: string
let token: string

beforeAll(async () => {
  const assets = pathToFileURL(`${place}/assets/`)
  await bundle(assets)
  store = await openStore({ dataDir: join(place, 'data') })
  await migrate(store)
  workshop = await openWorkshop(store, clock, {
    assets: openAssets(assets),
    plans: openPlans({ log: openLog('silent') }),
  })
  token = (await ownerLink(store, clock))!
  await confirmPile(workshop.conversation, garments, { not_to_cut: said('The signed sleeves.') })
  await confirmPile(workshop.conversation, garments.slice(0, 1))
  url = await workshop.app.listen({ port: 0, host: '127.0.0.1' })
  browser = await openBrowser()
  page = await browser.newPage({ bypassCSP: true, locale: 'en-US' })
})
afterAll(async () => {
  await browser?.close()
  await workshop?.close()
  await store?.close()
  rmSync(place, { recursive: true, force: true })
})

/** Looks at the page that is open as different readers do. */
async function look(): Promise<void> {
  await unfold(page)
  for (const width of [320, 390, 800, 1280]) {
    await page.setViewportSize({ width, height: 844 })
    expect([width, await sideways(page)]).toEqual([width, 0])
  }
  await page.emulateMedia({ colorScheme: 'light' })
  expect(await complaints(page)).toEqual([])
  expect(await smallTargets(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await complaints(page)).toEqual([])
  await page.emulateMedia({ colorScheme: 'light' })
}

/** Goes on with the Tab key until the place described has the focus. */
async function tabTo(selector: string): Promise<void> {
  for (let press = 0; press < 200; press++) {
    await page.keyboard.press('Tab')
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return
  }
  throw new Error(`the Tab key never reaches ${selector}`)
}

test('the owner’s first visit is fit for every reader', async () => {
  await page.goto(`${url}/desk/welcome/${token}`)
  await look()
})

test('the owner makes the account by keyboard alone', async () => {
  await page.goto(`${url}/desk/welcome/${token}`)
  await tabTo('#field-name')
  await page.keyboard.type('Ida Lantern')
  await tabTo('#field-email')
  await page.keyboard.type('ida@lantern-street.example')
  await tabTo('#field-password')
  await page.keyboard.type('needle and thimble')
  await page.keyboard.press('Enter')
  await page.waitForURL(`${url}/desk`)
  expect(await page.textContent('.visitor')).toBe('Ida Lantern')
})

test('the queue is fit for every reader', async () => {
  await page.goto(`${url}/desk`)
  await look()
})

test('a pile is fit for every reader, in both languages', async () => {
  await page.goto(`${url}/desk/piles/1`)
  await look()
  await page.goto(`${url}/desk/piles/1?lang=es`)
  await look()
  await page.goto(`${url}/desk/piles/1?lang=en`)
})

test('what is known of a garment is set right, on a page fit for every reader in both languages', async () => {
  const facts = `${url}/desk/piles/1/garments/1/facts`
  await page.goto(`${facts}?lang=es`)
  await look()
  await page.goto(`${facts}?lang=en`)
  await page.selectOption('#set-wear', 'thin')
  await page.click('button[value=try]')
  expect(await page.locator('.set-effect').isVisible()).toBe(true)
  expect(await page.inputValue('#set-wear')).toBe('thin')
  await look()
  await page.fill('#set-reason', 'Thin at both elbows on the second photo.')
  await page.click('button[value=save]')
  await page.waitForURL(`${url}/desk/piles/1#garment-1`)
  await page.goto(facts)
  expect(await page.locator('.fact-sets li').count()).toBe(1)
  await look()
})

test('arrow keys go through the queue, and a digit decides of the garment that has the focus', async () => {
  await page.goto(`${url}/desk`)
  const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '')
  await tabTo('.queue a')
  const first = await focused()
  await page.keyboard.press('ArrowDown')
  expect(await focused()).not.toBe(first)
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Home')
  expect(await focused()).toBe(first)
  await page.keyboard.press('Enter')
  await page.waitForURL(/\/desk\/piles\/\d$/)

  await page.goto(`${url}/desk/piles/1`)
  await page.goto(`${url}/desk/piles/1#garment-4`)
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('garment-4')
  // To ask wants a reason: the key leads to where it is written, and there digits are digits.
  await page.keyboard.press('3')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('decide-4-reason')
  await page.keyboard.type('Are 2 sleeves signed?')
  expect(await page.inputValue('#decide-4-reason')).toBe('Are 2 sleeves signed?')
  await page.goto(`${url}/desk/piles/1?again=1#garment-4`)
  await page.keyboard.press('2')
  await page.waitForURL(`${url}/desk/piles/1#garment-4`)
  expect(await page.textContent('#garment-4 .standing strong')).toContain('care')
})

test('the plan of a pile is fit for every reader, in both languages, and on paper', async () => {
  await page.goto(`${url}/desk/piles/2/plan?open=all&lang=es`)
  await look()
  await page.goto(`${url}/desk/piles/2/plan?open=all&lang=en`)
  await look()
  expect(await page.locator('.plan-cut svg').count()).toBeGreaterThan(0)
  expect(await cutOff(page)).toEqual([])
  await page.emulateMedia({ media: 'print' })
  // The room between the margins of Letter, the narrower of the two at 96 px an inch.
  await page.setViewportSize({ width: 733, height: 988 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  expect(await cutOff(page)).toEqual([])
  await page.emulateMedia({ media: null })
})

test('what if, and what would save cloth, are fit for every reader, in both languages, and on paper', async () => {
  for (const language of ['es', 'en']) {
    await page.goto(`${url}/desk/piles/2/what-if?try=without:1&try=size:crib&lang=${language}`)
    await look()
    expect(await cutOff(page)).toEqual([])
    await page.goto(`${url}/desk/piles/2/plan?costs=1&lang=${language}`)
    await look()
  }
  await page.goto(`${url}/desk/piles/2/what-if?try=layout:framed-panels,size:twin&try=size:full`)
  await page.selectOption('#way-size', 'size:queen')
  await page.click('.way-form button')
  expect(await page.locator('.ways thead th').count()).toBe(4)
  await page.emulateMedia({ media: 'print' })
  await page.setViewportSize({ width: 733, height: 988 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  expect(await cutOff(page)).toEqual([])
  await page.emulateMedia({ media: null })
})

test('a quilt’s pieces change places by keyboard alone, on pages fit for every reader', async () => {
  const quilt = `${url}/desk/piles/2/quilt/1`
  // Until it is laid the page says so, and is looked at again.
  await expect
    .poll(
      async () => {
        await page.goto(quilt)
        return page.getAttribute('main', 'data-quilts')
      },
      { timeout: 20_000 },
    )
    .toBe('drawn')
  await page.goto(`${quilt}?lang=es`)
  await look()
  await page.goto(`${quilt}?lang=en`)
  const cloth = () => page.locator('.arrange-row a').allTextContents()
  const before = await cloth()
  const at = before.findIndex((name) => name.includes('flannel'))
  await tabTo('#arrange-piece')
  await page.selectOption('#arrange-piece', { index: at })
  await tabTo('.arrange-panel .button.second')
  await page.keyboard.press('Enter')
  await page.waitForURL(/\?piece=\d+#chosen$/)
  await look()
  await tabTo('#arrange-piece')
  await tabTo('.arrange-panel form[method="get"] .button')
  await page.keyboard.press('Enter')
  await page.waitForURL(/&with=\d+#chosen$/)
  await tabTo('.arrange-swap .button')
  await page.keyboard.press('Enter')
  await page.waitForURL(/\?moved=/)
  const after = await cloth()
  expect(after.filter((name, n) => name !== before[n])).toHaveLength(2)
  await look()
  expect(await cutOff(page)).toEqual([])
  await page.emulateMedia({ media: 'print' })
  await page.setViewportSize({ width: 733, height: 988 })
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  expect(await cutOff(page)).toEqual([])
  expect(await page.locator('.arrange-panel').isVisible()).toBe(false)
  expect(await page.locator('.arrange-row').first().isVisible()).toBe(true)
  await page.emulateMedia({ media: null })
})

test('a link to a garment’s cuts opens them without a script', async () => {
  await page.goto(`${url}/desk/piles/2/plan`)
  expect(await page.locator('.plan-cut svg').first().isVisible()).toBe(false)
  await page.locator('.plan-how').first().click()
  await page.waitForURL(/#cut-1$/)
  expect(await page.locator('.plan-cut svg').first().isVisible()).toBe(true)
})

test('on paper a pile takes the whole width, and what is closed or pressed is left out', async () => {
  await page.goto(`${url}/desk/piles/1`)
  await page.emulateMedia({ media: 'print' })
  // Wide enough for the screen's columns, as A4 across is.
  await page.setViewportSize({ width: 1024, height: 700 })
  const reasons = await page.locator('.reasons').first().boundingBox()
  expect(reasons!.width).toBeGreaterThan(700)
  expect(await page.locator('.what-waits').isVisible()).toBe(false)
  expect(await page.locator('.decision form').first().isVisible()).toBe(false)
  expect(await page.locator('details.told:not([open])').first().isVisible()).toBe(false)
  expect(await sideways(page)).toBeLessThanOrEqual(0)
  await page.emulateMedia({ media: null })
})

test('what waits, what it is and what it does stand beside each other on a wide page', async () => {
  await page.setViewportSize({ width: 1280, height: 900 })
  await page.goto(`${url}/desk/piles/1`)
  const left = (selector: string) =>
    page.locator(selector).evaluate((it) => it.getBoundingClientRect().x)
  const columns = [
    await left('.what-waits'),
    await left('.what-it-is'),
    await left('.what-it-does'),
  ]
  expect(columns).toEqual(columns.toSorted((a, b) => a - b))
  expect(new Set(columns).size).toBe(3)
})

test('a garment is decided by keyboard alone', async () => {
  await page.goto(`${url}/desk/piles/1`)
  await tabTo('#decide-3-reason')
  await page.keyboard.type('It falls apart; better framed at home')
  await tabTo('#decide-3 [value="decline"]')
  await page.keyboard.press('Enter')
  await page.waitForURL(`${url}/desk/piles/1#garment-3`)
  expect(await page.textContent('#garment-3 .standing')).toContain('Ida Lantern')
})

test('a refusal is fit for every reader and leads to its form', async () => {
  await page.goto(`${url}/desk/piles/1`)
  await page.click('#decide-2 [value="ask"]')
  await page.click('[role="alert"] a')
  expect(new URL(page.url()).hash).toBe('#decide-2')
  expect(await page.getAttribute('#decide-2-reason', 'aria-invalid')).toBe('true')
  await look()
})

test('a page that is not there and the door are fit for every reader', async () => {
  await page.goto(`${url}/desk/piles/77`)
  await look()
  await page.goto(`${url}/desk`)
  await page.click('.tools button')
  await page.waitForURL(`${url}/desk/sign-in`)
  await look()
})
