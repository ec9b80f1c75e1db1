import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { writeGallery } from '../gallery/write.ts'
import { openBrowser } from '../help/browser.ts'

const place = mkdtempSync(join(tmpdir(), 'niceties-'))
let browser: Browser
let server: Server
let address: string
let received: { path: string; body: string }[]
/** Lets the answer to a sent form go. */
let answer: () => void

beforeAll(async () => {
  await writeGallery(pathToFileURL(`${place}/`))
  server = createServer(async (request, response) => {
    if (request.method === 'GET') {
      response.setHeader('content-type', typeOf(request.url!))
      // The policy the pages are served under.
      response.setHeader('content-security-policy', "default-src 'self'")
      response.end(read(request.url!))
      return
    }
    let body = ''
    for await (const part of request) body += String(part)
    received.push({ path: request.url!, body })
    await new Promise<void>((done) => {
      answer = done
    })
    response.setHeader('content-type', 'text/html')
    response.end(read('/gather.en.html'))
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  browser = await openBrowser()
})

function read(url: string): Buffer | string {
  const path = url.split('?')[0]!
  const file = path.startsWith('/assets/') ? join('assets', basename(path)) : basename(path)
  try {
    return readFileSync(join(place, file))
  } catch {
    return ''
  }
}

function typeOf(url: string): string {
  if (url.endsWith('.css')) return 'text/css'
  if (url.endsWith('.js')) return 'text/javascript'
  if (url.endsWith('.svg')) return 'image/svg+xml'
  return 'text/html'
}

afterAll(async () => {
  await browser?.close()
  server?.closeAllConnections()
  server?.close()
  rmSync(place, { recursive: true })
})

let context: BrowserContext
let page: Page
let faults: string[]

async function start(javaScriptEnabled: boolean): Promise<void> {
  context = await browser.newContext({ javaScriptEnabled, viewport: { width: 390, height: 844 } })
  page = await context.newPage()
  faults = []
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text())
  })
}

beforeEach(async () => {
  received = []
  await start(true)
})
afterEach(async () => {
  expect(faults).toEqual([])
  await context.close()
})

const open = (name: string) => page.goto(`${address}/${name}.en.html`)
const focused = () => page.evaluate(() => document.activeElement?.id)

test('without a script an answer is sent whole', async () => {
  await context.close()
  await start(false)
  await open('choice')
  await page.check('#value-much')
  await page.click('button[value=answer]', { noWaitAfter: true })
  await expect.poll(() => received.length).toBe(1)
  expect(received[0]).toEqual({
    path: '/i/sample/answer',
    body: 'idem=idem-2&seq=12&value=much&act=answer&note=',
  })
  answer()
})

test('without a script a person can be asked', async () => {
  await context.close()
  await start(false)
  await open('choice-first')
  await page.click('text=Ask a person instead')
  await page.fill('#field-note', 'Is it safe?')
  await page.click('button[value=ask]', { noWaitAfter: true })
  await expect.poll(() => received.length).toBe(1)
  expect(new URLSearchParams(received[0]!.body).get('act')).toBe('ask')
  expect(new URLSearchParams(received[0]!.body).get('note')).toBe('Is it safe?')
  answer()
})

test('Enter in a field answers; it never skips or asks', async () => {
  await open('text-line')
  await page.press('#field-value', 'Enter', { noWaitAfter: true })
  await expect.poll(() => received.length).toBe(1)
  expect(new URLSearchParams(received[0]!.body).get('act')).toBe('answer')
  answer()
})

test('a second tap while the first is under way sends nothing', async () => {
  await open('choice')
  const disabled = await page.evaluate(async () => {
    const button = document.querySelector<HTMLButtonElement>('button[value=answer]')!
    button.click()
    await new Promise((done) => setTimeout(done, 50))
    button.click()
    return button.getAttribute('aria-disabled')
  })
  expect(disabled).toBe('true')
  await expect.poll(() => received.length).toBe(1)
  answer()
  await page.waitForSelector('body.look-gather')
  expect(received.length).toBe(1)
})

/** So long nothing came. */
const nothingSent = async () => {
  await page.waitForTimeout(150)
  expect(received).toEqual([])
}

test('a tap on an answer sends it, once, and the sentence above says so', async () => {
  await open('choice')
  expect(await page.textContent('#tap-hint')).toBe(
    'A tap on an answer is enough. You can change it after.',
  )
  expect(await page.isVisible('#tap-hint')).toBe(true)
  expect(await page.getAttribute('#field-value', 'aria-describedby')).toBe('help tap-hint')
  expect(await page.getAttribute('.just a', 'href')).toBe('/i/sample/q/3/wear')
  await page.click('label[for=value-much]', { clickCount: 2, noWaitAfter: true })
  await expect.poll(() => received.length).toBe(1)
  expect(received[0]!.body).toBe('idem=idem-2&seq=12&value=much&note=&act=answer')
  answer()
  await page.waitForSelector('body.look-gather')
  expect(received.length).toBe(1)
})

test('an answer that was chosen before is sent by a tap too', async () => {
  await open('choice')
  await page.click('label[for=value-little]', { noWaitAfter: true })
  await expect.poll(() => received.length).toBe(1)
  expect(new URLSearchParams(received[0]!.body).get('value')).toBe('little')
  answer()
})

test('keys choose an answer and send nothing; Enter sends it', async () => {
  await open('choice')
  await page.focus('#value-little')
  await page.keyboard.press('ArrowDown')
  await page.keyboard.press('Space')
  expect(await page.isChecked('#value-much')).toBe(true)
  await nothingSent()
  await page.keyboard.press('Enter')
  await expect.poll(() => received.length).toBe(1)
  answer()
})

test('what a program presses for its user is chosen and not sent', async () => {
  await open('choice')
  await page.evaluate(() => {
    const label = document.querySelector<HTMLElement>('label[for=value-much]')!
    const about = { bubbles: true, isPrimary: true, width: 1, height: 1, pressure: 0, detail: 1 }
    label.dispatchEvent(new PointerEvent('pointerdown', about))
    label.dispatchEvent(new MouseEvent('click', { ...about, cancelable: true }))
  })
  expect(await page.isChecked('#value-much')).toBe(true)
  await nothingSent()
})

test('a tap sends nothing while a question to a person is begun', async () => {
  await open('choice')
  await page.click('text=Ask a person instead')
  await page.fill('#field-note', 'Is a little the same as some?')
  await page.click('label[for=value-much]')
  await nothingSent()
  expect(await page.inputValue('#field-note')).toBe('Is a little the same as some?')
})

test('of a list a tap sends "none of these" alone', async () => {
  await open('many')
  await page.click('label[for=value-none]')
  await nothingSent()
  for (const value of ['none', 'stained', 'softener']) await page.click(`label[for=value-${value}]`)
  await page.click('label[for=value-scent]')
  await page.click('label[for=value-scent]')
  await nothingSent()
  await page.click('label[for=value-none]', { noWaitAfter: true })
  await expect.poll(() => received.length).toBe(1)
  expect(new URLSearchParams(received[0]!.body).getAll('value')).toEqual(['none'])
  answer()
})

test('what was typed outlives a reload, and is gone once it was sent', async () => {
  await open('text')
  await page.fill('#field-value', 'He wore it every market day.')
  await page.reload()
  expect(await page.inputValue('#field-value')).toBe('He wore it every market day.')
  await page.click('button[value=answer]', { noWaitAfter: true })
  await expect.poll(() => received.length).toBe(1)
  answer()
  await page.waitForSelector('body.look-gather')
  await open('text')
  expect(await page.inputValue('#field-value')).toBe('')
})

test.each([
  ['label-refused', 'errors'],
  ['choice', 'title'],
  ['gather', 'title'],
  ['start', ''],
])('on the page %s reading starts at the %s', async (name, id) => {
  await open(name)
  expect(await focused()).toBe(id)
})

test('a link of the error summary leads to its field', async () => {
  await open('contact')
  await page.click('#errors a')
  expect(await focused()).toBe('field-email')
})

test('a wide page opens the folded tags, a phone leaves them folded', async () => {
  await open('choice-twelve-tags')
  expect(await page.getAttribute('.fold', 'open')).toBeNull()
  await page.setViewportSize({ width: 1280, height: 844 })
  await page.reload()
  expect(await page.getAttribute('.fold', 'open')).not.toBeNull()
})

const noisy = (width: number, height: number) => {
  const noise = { type: 'gaussian', mean: 128, sigma: 60 } as const
  return sharp({ create: { width, height, channels: 3, background: '#777', noise } })
    .jpeg()
    .toBuffer()
}

test('a big photo is made smaller before it travels, a small one stays as it is', async () => {
  const big = await noisy(3000, 2000)
  const little = await noisy(300, 200)
  expect(big.length).toBeGreaterThan(1_500_000)

  await open('photo')
  await page.setInputFiles('#field-photo', [
    { name: 'big.jpg', mimeType: 'image/jpeg', buffer: big },
    { name: 'little.jpg', mimeType: 'image/jpeg', buffer: little },
  ])
  const sizes = () =>
    page.evaluate(async () => {
      const { files } = document.querySelector<HTMLInputElement>('#field-photo')!
      return Promise.all(
        [...files!].map(async (file) => ({
          size: file.size,
          width: (await createImageBitmap(file)).width,
        })),
      )
    })
  await expect.poll(async () => (await sizes())[0]!.width, { timeout: 20_000 }).toBe(2048)
  const [first, second] = await sizes()
  expect(first!.size).toBeLessThan(big.length)
  expect(second!.size).toBe(little.length)
})

test('a photo that the browser cannot read travels as it is', async () => {
  // This browser knows no HEVC; what lies behind the picture makes it a big one.
  const photo = readFileSync(new URL('../photo/shirt.heic', import.meta.url))
  const heic = Buffer.concat([photo, Buffer.alloc(2_000_000)])
  const jpeg = await noisy(3000, 2000)
  await open('photo')
  await page.setInputFiles('#field-photo', [
    { name: 'shirt.heic', mimeType: 'image/heic', buffer: heic },
    { name: 'big.jpg', mimeType: 'image/jpeg', buffer: jpeg },
  ])
  const chosen = () =>
    page.evaluate(() =>
      [...document.querySelector<HTMLInputElement>('#field-photo')!.files!].map(
        ({ name, size, type }) => ({ name, size, type }),
      ),
    )
  await expect
    .poll(async () => (await chosen())[1]!.size, { timeout: 20_000 })
    .toBeLessThan(jpeg.length)
  expect((await chosen())[0]).toEqual({ name: 'shirt.heic', size: heic.length, type: 'image/heic' })
})

test('a picture that is still laid comes by itself, and what was opened stays open', async () => {
  await open('gather')
  const fold = page.locator('#quilts')
  await fold.locator('summary').click()
  expect(await fold.locator('svg[role=img]').count()).toBe(0)
  const later = read('gather-full.en.html').toString()
  await page.route('**/gather.en.html', (route) =>
    route.fulfill({ contentType: 'text/html', body: later }),
  )
  await fold.locator('svg[role=img]').waitFor()
  expect(await fold.evaluate((one: HTMLDetailsElement) => one.open)).toBe(true)
  expect(await page.textContent('h1')).toBe('6 garments so far')
})
