import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { owner as account, signIn } from '../help/desk-door.ts'
import {
  complaints,
  complaintsInForcedColours,
  sideways,
  smallTargets,
  unfold,
} from '../help/eyes.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { lookOf, toldLane } from '../help/told-lane.ts'
import { confirmPile, said } from '../help/workshop.ts'
import { agreed, reviewed } from '../story/agree.ts'
import { broughtHome, received, worked } from '../story/custody.ts'
import { lookedUp } from '../story/owner.ts'
import { addBench, type People, type Story, strangerTo } from '../story/people.ts'

const assets = openAssets(new URL('../../dist/assets/', import.meta.url))
const languages = ['en', 'es'] as const

let browser: Browser
const opened: TestStore[] = []
const apps: TestApp[] = []

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  for (const app of apps) await app.close()
  for (const store of opened) await store.end()
})

/** A workshop of its own with a confirmed pile of four, and everybody who walks its story. */
async function begin(language: string): Promise<{ app: TestApp; people: People; key: string }> {
  const store = await openSqlite()
  opened.push(store)
  const lane = toldLane()
  lane.tells = lookOf()
  const app = await openApp(store.store, { clock: Date.now, assets, lane })
  apps.push(app)
  await addAccount(app.store, Date.now, { ...account, role: 'owner' })
  const shirt = { kind: said('button-shirt'), size: said('XL') }
  const key = await confirmPile(app.conversation, [
    { ...shirt, name: said('Dad’s blue flannel') },
    { kind: said('tshirt'), size: said('L'), name: said('Regatta T-shirt') },
    { ...shirt, name: said('Sunday shirt') },
    { ...shirt, kind: said('uniform'), name: said('Lifeboat uniform') },
  ])
  const [owner, bench, customer] = await Promise.all(
    [1, 2, 3].map(() => strangerTo(browser, language)),
  )
  const people = { owner: owner!, bench: bench!, customer: customer! }
  await signIn(people.owner, app.url)
  await people.customer.goto(`${app.url}/i/${key}/language/${language}`)
  return { app, people, key }
}

/** What different readers would stumble over on a page, a line each; with what was typed still in it. */
async function flaws(page: Page): Promise<string[]> {
  await unfold(page)
  const found: string[] = []
  // A window of 1280 px at 400 % has room for 320.
  for (const width of [1280, 390, 320]) {
    await page.setViewportSize({ width, height: 844 })
    const wide = await sideways(page)
    if (wide > 0) found.push(`${wide} px too wide at ${width}`)
  }
  found.push(...(await smallTargets(page)))
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme })
    found.push(...(await complaints(page)).map((one) => `${colorScheme}: ${one}`))
  }
  await page.emulateMedia({ forcedColors: 'active' })
  found.push(...(await complaintsInForcedColours(page)).map((one) => `forced colours: ${one}`))
  await page.emulateMedia({ forcedColors: 'none' })
  return found
}

test.each(languages)(
  'a pile is reviewed, agreed, received, sewn and brought home in %s, on pages that are fit for every reader',
  async (language) => {
    const { app, people, key } = await begin(language)
    const found: string[] = []
    const look = async (page: Page, name: string) => {
      expect([name, await page.getAttribute('html', 'lang')]).toEqual([name, language])
      found.push(...(await flaws(page)).map((flaw) => `${name}: ${flaw}`))
    }
    await addBench(people.owner, people.bench, app.url, look)
    const story: Story = { ...people, base: app.url, pile: `${app.url}/i/${key}`, number: 1, look }
    for (const part of [reviewed, agreed, received, worked, broughtHome, lookedUp])
      await part(story)

    expect(found).toEqual([])
    const entries = await app.store.db.selectFrom('custody').select(['subject', 'state']).execute()
    expect(Object.fromEntries(entries.map(({ subject, state }) => [subject, state]))).toEqual({
      1: 'home-with-quilt',
      '1-L1': 'returned',
      2: 'held',
      3: 'missing',
      4: 'held',
      F1: 'returned',
      P1: 'unpacked',
      P2: 'isolated',
      Q1: 'packed',
      X1: 'set-apart',
    })
  },
  600_000,
)
