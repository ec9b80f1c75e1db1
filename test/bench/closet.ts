import type { Browser, Page } from 'playwright-core'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { openBrowser } from '../help/browser.ts'
import { answerAll, pileAnswers } from '../help/chat.ts'
import { labelOf, toldReader } from '../help/label-reader.ts'
import { plain } from '../help/pictures.ts'
import { openSqlite } from '../help/stores.ts'
import { clearLabel, clearLook, Hand, tellOne, tellTen } from '../help/tapping.ts'
import { toldLane } from '../help/told-lane.ts'
import { Walker } from '../help/walker.ts'

/**
 * Seconds. A tap is a thought and a touch, a character a key: the keystroke-level model of Card, Moran and Newell
 * (1980) has 1.35, 1.1 and 0.28, from memory, unverified. A picture: our own guess.
 */
const each = { tap: 1.35 + 1.1, character: 0.28, picture: 5 }

const secondsOf = ({ taps, typed, pictures, waitedMs }: Hand): number =>
  taps * each.tap + typed * each.character + pictures * each.picture + waitedMs / 1000

const line = (name: string, hand: Hand): string =>
  `${name}: ${hand.taps} taps, ${hand.typed} characters typed, ${hand.pictures} pictures, ${(hand.waitedMs / 1000).toFixed(1)} s waited for pages, ${secondsOf(hand).toFixed(0)} s in all\n`

async function atGather(browser: Browser, app: TestApp): Promise<Page> {
  const walker = await new Walker(app.url).start()
  await answerAll(walker, pileAnswers)
  const viewport = { width: 390, height: 844 }
  const page = await (await browser.newContext({ hasTouch: true, viewport })).newPage()
  await page.goto(app.url + walker.pilePath)
  return page
}

/** Taps, and seconds of a scripted person, for one garment and for ten; label and photo are told as clear ones. */
export async function benchCloset(): Promise<void> {
  const opened = await openSqlite()
  const [labels, lane] = [toldReader(), toldLane()]
  labels.tells = labelOf(clearLabel)
  lane.tells = clearLook
  const assets = openAssets(new URL('../../dist/assets/', import.meta.url))
  const app = await openApp(opened.store, { clock: Date.now, assets, labels, lane })
  const browser = await openBrowser()
  try {
    const photo = await plain().jpeg().toBuffer()
    const one = new Hand(await atGather(browser, app))
    await tellOne(one, photo, photo)
    const ten = new Hand(await atGather(browser, app))
    await tellTen(ten, photo)
    process.stdout.write(
      `counted for each: ${each.tap} s a tap, ${each.character} s a character, ${each.picture} s a picture\n`,
    )
    process.stdout.write(line('one garment (asked: 8 taps, 60 s)', one))
    process.stdout.write(line('ten garments (asked: 50 taps)', ten))
  } finally {
    await browser.close()
    await app.close()
    await opened.end()
  }
}
