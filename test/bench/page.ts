import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Browser, Page } from 'playwright-core'
import { z } from 'zod'
import { openBrowser } from '../help/browser.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { Walker } from '../help/walker.ts'
import { middle, timesOf } from './readings.ts'

const given = z.tuple([z.coerce.number().int().positive().default(20)])

/** As a phone far from a mast has it: four times slower, 1.6 Mbit/s each way, 150 ms there and back. */
const throttle = { slower: 4, bytesPerSecond: (1.6 * 1_000_000) / 8, latencyMs: 150 }

/**
 * How long a customer on a slow phone waits, by the browser's own throttling: until the first question is painted in
 * a browser that never was here, side by side with a bare page of one line, and until an answer's next question stands
 * on the page. The built product, in a process of its own.
 */
export async function benchPage(told: readonly string[]): Promise<void> {
  const [rounds] = given.parse([told[0]])
  const server = await startServer({ env: { LOG_LEVEL: 'silent' } })
  const bare = await serveBare()
  const browser = await openBrowser()
  try {
    const [ours, theirs]: [number[], number[]] = [[], []]
    for (let n = 0; n < rounds; n += 1) {
      const { pilePath } = await new Walker(server.url).start()
      ours.push(await paintedIn(browser, server.url + pilePath))
      theirs.push(await paintedIn(browser, bare.url))
    }
    const answered = await answersIn(browser, server, rounds)
    process.stdout.write(
      `${throttle.slower} times slower, ${(throttle.bytesPerSecond * 8) / 1e6} Mbit/s, ${throttle.latencyMs} ms; ${rounds} rounds\n` +
        `first question painted: ${timesOf(ours)}\n` +
        `a bare page painted: ${timesOf(theirs)}\n` +
        `median to median: ${(middle(ours) / middle(theirs)).toFixed(2)}\n` +
        `an answer, until the server has said that it has it: ${timesOf(answered.map(({ told }) => told))}\n` +
        `an answer, until the next question stands there: ${timesOf(answered.map(({ shown }) => shown))}\n`,
    )
  } finally {
    await browser.close()
    bare.close()
    await server.remove()
  }
}

async function serveBare(): Promise<{ url: string; close: () => void }> {
  const server = createServer((_, response) => {
    response.setHeader('content-type', 'text/html')
    response.end('<!doctype html><html lang="en"><title>Bare</title><p>One line</p></html>')
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const { port } = server.address() as AddressInfo
  return { url: `http://127.0.0.1:${port}/`, close: () => server.close() }
}

/** A window of a browser that has nothing in its cache. */
async function slowPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } })
  const page = await context.newPage()
  const devtools = await context.newCDPSession(page)
  await devtools.send('Network.enable')
  await devtools.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: throttle.latencyMs,
    downloadThroughput: throttle.bytesPerSecond,
    uploadThroughput: throttle.bytesPerSecond,
  })
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: throttle.slower })
  return page
}

/** ms from the wish for the page to its first words on the screen. */
async function paintedIn(browser: Browser, url: string): Promise<number> {
  const page = await slowPage(browser)
  await page.goto(url)
  const painted = await page.evaluate(
    () =>
      new Promise<number>((done) => {
        new PerformanceObserver((list) => {
          const first = list.getEntriesByName('first-contentful-paint')[0]
          if (first) done(first.startTime)
        }).observe({ type: 'paint', buffered: true })
      }),
  )
  await page.context().close()
  return painted
}

/** ms from a press on the button. */
interface Answered {
  /** The page lets go of what it kept in case the answer got lost. */
  readonly told: number
  /** The next question is in the page, and its scripts are at work. */
  readonly shown: number
}

/** One answer after the other. */
async function answersIn(
  browser: Browser,
  server: RunningServer,
  rounds: number,
): Promise<Answered[]> {
  const page = await slowPage(browser)
  const took: Answered[] = []
  while (took.length < rounds) {
    const { pilePath } = await new Walker(server.url).start()
    await page.goto(server.url + pilePath)
    // The first three questions of a pile are choices.
    for (let n = 0; n < 3 && took.length < rounds; n += 1) {
      took.push(
        await page.evaluate(
          () =>
            new Promise<Answered>((done) => {
              document.querySelector<HTMLElement>('form[data-question] .option label')!.click()
              const from = performance.now()
              let told = Number.NaN
              const { removeItem } = Storage.prototype
              Storage.prototype.removeItem = function (key) {
                told = performance.now() - from
                removeItem.call(this, key)
              }
              const shown = () => {
                Storage.prototype.removeItem = removeItem
                done({ told, shown: performance.now() - from })
              }
              addEventListener('pieceworth:shown', shown, { once: true })
              document.querySelector<HTMLElement>('.go button[value=answer]')!.click()
            }),
        ),
      )
    }
  }
  await page.context().close()
  return took
}
