import { setTimeout as pause } from 'node:timers/promises'
import type { Browser, BrowserContext, Page, Route } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import type { Act } from '../../src/flow/grammar.ts'
import { openStore } from '../../src/store/open.ts'
import { openBrowser } from '../help/browser.ts'
import { addGarment, answerAll, pileAnswers, shirt } from '../help/chat.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { Walker } from '../help/walker.ts'
import { random } from '../help/xorshift.ts'

const minute = 60_000

let server: RunningServer
let browser: Browser
let context: BrowserContext
let page: Page
let pile: string
let faults: string[]

beforeAll(async () => {
  server = await startServer({ env: { LOG_LEVEL: 'silent' } })
  browser = await openBrowser()
}, minute)
afterAll(async () => {
  await browser?.close()
  await server?.remove()
})

beforeEach(async () => {
  const walker = await new Walker(server.url).start()
  await answerAll(walker, pileAnswers)
  await addGarment(walker, shirt)
  pile = walker.pilePath
  context = await browser.newContext({ viewport: { width: 390, height: 844 } })
  page = await context.newPage()
  faults = []
  page.on('pageerror', (error) => faults.push(error.message))
})
afterEach(async () => {
  await context.close()
  expect(faults).toEqual([])
})

const nameAt = () => `${pile}/1/name`

/** Opens the garment's name, to be changed. */
async function open(): Promise<void> {
  await page.goto(server.url + nameAt())
  await page.evaluate(() => document.body.setAttribute('data-same', ''))
}

async function send(name: string): Promise<void> {
  await page.fill('#field-value', name)
  await page.click('form[data-question=name] button[value=answer]:not(.unseen)')
}

/** What the garment was called, in the order the server took it. */
async function taken(): Promise<string[]> {
  const store = await openStore({ dataDir: server.dataDir })
  try {
    const rows = await store.db.selectFrom('act').select('act').orderBy('seq').execute()
    return rows
      .map(({ act }) => JSON.parse(act) as Act)
      .flatMap((act) => (act.act === 'answer' && act.question === 'name' ? [act.reply] : []))
      .flatMap((reply) => ('given' in reply ? [String(reply.given)] : []))
  } finally {
    await store.close()
  }
}

const arrived = () => page.waitForSelector('form[data-question=name]', { state: 'detached' })
const wire = () => page.locator('#wire')
const aloud = () => page.textContent('#live')

/** Goes back to the name without loading a page. */
async function again(): Promise<void> {
  await page
    .locator(`a[href="${nameAt()}"]`)
    .first()
    .evaluate((link) => {
      for (let fold = link.closest('details'); fold; fold = fold.parentElement!.closest('details'))
        fold.open = true
      ;(link as HTMLAnchorElement).click()
    })
  await page.waitForSelector('form[data-question=name]')
}

test(
  'of 200 answers over a bad network none is lost or doubled, and no page is loaded',
  async () => {
    const below = random(20_261_129)
    const late: (() => Promise<unknown>)[] = []
    let met = { none: 0, unsent: 0, unheard: 0, doubled: 0, late: 0, slow: 0, busy: 0, gateway: 0 }
    let fault: keyof typeof met = 'none'

    const answerOnce = async (route: Route) => {
      const of = fault
      fault = 'none'
      met = { ...met, [of]: met[of] + 1 }
      const fetched = () => route.fetch({ maxRedirects: 0 })
      if (of === 'unsent') return route.abort('connectionreset')
      if (of === 'busy') return route.fulfill({ status: 503, headers: { 'retry-after': '1' } })
      if (of === 'gateway') return route.fulfill({ status: 502, body: 'bad gateway' })
      if (of === 'unheard') {
        await fetched()
        return route.abort('connectionreset')
      }
      if (of === 'doubled') {
        const [, response] = await Promise.all([fetched(), fetched()])
        return route.fulfill({ response })
      }
      if (of === 'slow') await pause(300)
      // A copy that the network holds back and lets go after later answers.
      if (of === 'late') {
        const { url, body, headers } = copyOf(route)
        late.push(() => fetch(url, { method: 'POST', body, headers, redirect: 'manual' }))
      }
      return route.continue()
    }
    await page.route(
      (url) => url.pathname === nameAt(),
      (route) => (route.request().method() === 'POST' ? answerOnce(route) : route.continue()),
    )

    await open()
    const kinds = Object.keys(met) as (keyof typeof met)[]
    const sent: string[] = []
    for (let n = 0; n < 200; n += 1) {
      if (n > 0) await again()
      fault = below(2) === 0 ? 'none' : kinds[1 + below(kinds.length - 1)]!
      const held = fault === 'late' ? undefined : late.shift()
      sent.push(`Name ${n}`)
      await send(`Name ${n}`)
      await arrived()
      await held?.()
    }
    expect(await page.getAttribute('body', 'data-same')).toBe('')
    expect((await taken()).filter((one) => /^Name \d/.test(one))).toEqual(sent)
    expect(Math.min(...Object.values(met))).toBeGreaterThan(0)
  },
  10 * minute,
)

function copyOf(route: Route): { url: string; body: string; headers: Record<string, string> } {
  const request = route.request()
  return {
    url: request.url(),
    body: request.postData()!,
    headers: { 'content-type': 'application/x-www-form-urlencoded', accept: 'text/html' },
  }
}

test(
  'offline for a minute: it is said, the answer is kept, and goes out by itself',
  async () => {
    await open()
    await context.setOffline(true)
    await send('Name offline')
    await wire().waitFor()
    expect(await wire().textContent()).toContain('No connection right now')
    expect(await aloud()).toContain('No connection right now')
    expect(await page.inputValue('#field-value')).toBe('Name offline')
    await pause(minute)
    expect(await wire().isVisible()).toBe(true)
    await context.setOffline(false)
    await arrived()
    expect(await taken()).toContain('Name offline')
    expect(await aloud()).toBe('Your answer has arrived.')
  },
  3 * minute,
)

test('a slow network is told as sending, beside the button and aloud; a second press sends nothing', async () => {
  await page.route('**/1/name', async (route) => {
    if (route.request().method() === 'POST') await pause(2500)
    await route.continue()
  })
  await open()
  await send('Name slow')
  await wire().waitFor()
  expect(await wire().textContent()).toBe('Sending your answer…')
  expect(await aloud()).toBe('Sending your answer…')
  await page.evaluate(() => document.querySelector<HTMLElement>('.go .button.main')!.click())
  await arrived()
  expect((await taken()).filter((one) => one === 'Name slow')).toHaveLength(1)
})

test(
  'a server that dies in mid-answer and comes back gets the answer once',
  async () => {
    await open()
    let killed = false
    await page.route('**/1/name', async (route) => {
      if (killed || route.request().method() !== 'POST') return route.continue()
      killed = true
      await route.fetch({ maxRedirects: 0 })
      await server.kill()
      await route.abort('connectionreset')
    })
    await send('Name through a kill')
    await wire().waitFor()
    server = await server.restart()
    await arrived()
    expect((await taken()).filter((one) => one === 'Name through a kill')).toHaveLength(1)
  },
  2 * minute,
)

test('what was not acknowledged when the page was left goes out when the pile is opened again', async () => {
  await open()
  await context.setOffline(true)
  await send('Name left behind')
  await wire().waitFor()
  await page.close()
  await context.setOffline(false)
  page = await context.newPage()
  await page.goto(server.url + pile)
  await expect.poll(async () => await taken(), { timeout: 10_000 }).toContain('Name left behind')
  await expect.poll(() => page.evaluate(() => localStorage.length)).toBe(0)
})

test('back leads to the answer that was given, and forward again', async () => {
  await open()
  await send('Name one')
  await arrived()
  await page.goBack()
  await page.waitForSelector('form[data-question=name]')
  expect(await page.inputValue('#field-value')).toBe('Name one')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('title')
  await page.goForward()
  await arrived()
  expect(await page.getAttribute('body', 'data-same')).toBe('')
})

test('a refused answer stays on its page with what to do, and the reading begins there', async () => {
  await open()
  await page.evaluate(() => {
    const field = document.querySelector<HTMLTextAreaElement>('#field-value')!
    field.value = 'y'.repeat(500)
  })
  await page.click('form[data-question=name] button[value=answer]:not(.unseen)')
  await page.waitForSelector('#errors')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('errors')
  expect(new URL(page.url()).pathname).toBe(nameAt())
  expect(await page.title()).toMatch(/^Please look again: /)
})
