import { setTimeout as pause } from 'node:timers/promises'
import type { Page } from 'playwright-core'
import { type DemoGarment, pileAnswers } from '../demo/pile.ts'
import { photoOf, replyOf } from '../demo/reply.ts'
import type { Fields } from './walker.ts'

/** Presses buttons and fills in forms, each with the page that follows. */
export interface Hand {
  press(page: Page, act: string): Promise<void>
  reply(page: Page, asked: Asked, fields: Fields): Promise<void>
}

export interface Journey {
  readonly base: string
  readonly language?: string
  readonly garments: readonly DemoGarment[]
  readonly ofPile?: Readonly<Record<string, Fields>>
  /** How it is done; with a mouse where nothing else is said. */
  readonly hand?: Hand
  /** Told of every page as it is reached, before anything is done on it. */
  readonly onPage?: (place: string) => Promise<void>
}

/** A click or a key that leads to another page, loaded or put in place of the old one, and that page whole. */
export async function turn(page: Page, act: () => Promise<unknown>): Promise<void> {
  await page.evaluate(() => document.getElementById('main')?.setAttribute('data-left', ''))
  await act()
  // Asked for from outside: in a page without scripts nothing waits.
  const patience = Date.now() + 30_000
  while (!(await page.evaluate(isWhole).catch(() => false))) {
    if (Date.now() > patience) throw new Error(`no other page came after ${page.url()}`)
    await pause(20)
  }
}

/** Another page than the one that was left, with its pictures. */
const isWhole = (): boolean =>
  document.readyState === 'complete' &&
  [...document.images].every(({ loading, complete }) => loading === 'lazy' || complete) &&
  document.querySelector('#main:not([data-left])') !== null

export interface Asked {
  readonly id: string
  readonly kind: string
  readonly optional: boolean
}

export const askedOn = (page: Page): Promise<Asked | null> =>
  page.evaluate(() => {
    const form = document.querySelector<HTMLFormElement>('form[data-question]')
    if (!form) return null
    const { question, kind, optional } = form.dataset
    return { id: question!, kind: kind!, optional: optional !== undefined }
  })

/** Walks a pile from hello to packing list with clicks and typing, as a visitor does. */
export async function drive(page: Page, journey: Journey): Promise<void> {
  const { base, language = 'en', garments, ofPile = pileAnswers, hand = mouse } = journey
  const reached = async (place: string) => journey.onPage?.(place)
  const press = (act: string) => hand.press(page, act)
  const answerAll = async (garment: DemoGarment | null) => {
    for (let asked = await askedOn(page); asked; asked = await askedOn(page)) {
      await reached(asked.id)
      const sendsPhoto = asked.kind === 'photo' && hand === mouse && garment?.photo
      if (sendsPhoto) await sendPhoto(page, garment)
      else await hand.reply(page, asked, replyOf(asked, garment, ofPile))
    }
  }

  await page.goto(`${base}/?lang=${language}`)
  await reached('start')
  await press('start')
  await answerAll(null)
  for (const [n, garment] of garments.entries()) {
    await reached(`gather-${n}`)
    await press('add-garment')
    await answerAll(garment)
  }
  await reached(`gather-${garments.length}`)
  await press('confirm-pile')
  await answerAll(null)
  await reached('review')
  await press('confirm-pile')
  await reached('confirmed')
}

const mouse: Hand = {
  press: (page, act) => turn(page, () => page.click(`[data-act=${act}]`)),
  async reply(page, asked, fields) {
    if (fields.act === 'skip') return send(page, 'skip')
    if (fields.act === 'ask') {
      const unfolded = await page.isVisible('#field-note')
      if (!unfolded) await page.click('details:has(#field-note) summary')
      await page.fill('#field-note', String(fields.note))
      return send(page, 'ask')
    }
    const tapped = await tapOf(page, fields)
    if (tapped) return turn(page, () => page.click(tapped))
    await fill(page, asked.kind, fields)
    return send(page, 'answer')
  },
}

/** The one answer that sends itself at a tap; null: there is none, or no script to send it. */
async function tapOf(page: Page, fields: Fields): Promise<string | null> {
  const [value, ...more] = list(fields.value)
  if (value === undefined || more.length > 0) return null
  const sends = await page.evaluate((wanted) => {
    const hint = document.getElementById('tap-hint')
    const ticked = [...document.querySelectorAll<HTMLInputElement>('[name=value]:checked')]
    const alone = ticked.every((one) => one.type === 'radio')
    const row = document.getElementById(`value-${wanted}`)?.closest('[data-sends]')
    return hint !== null && !hint.hidden && row !== null && row !== undefined && alone
  }, value)
  return sends ? `label[for="value-${value}"]` : null
}

async function sendPhoto(page: Page, garment: DemoGarment): Promise<void> {
  const buffer = await photoOf(garment)
  await page.setInputFiles('#field-photo', { name: 'it.jpg', mimeType: 'image/jpeg', buffer })
  await send(page, 'answer')
}

/** Presses a button of the question's form that can be seen: one stands above only for Enter. */
export const send = (page: Page, act: 'answer' | 'skip' | 'ask'): Promise<void> =>
  turn(page, () => page.click(`form[data-question] button[name=act][value=${act}]:not(.unseen)`))

async function fill(page: Page, kind: string, fields: Fields): Promise<void> {
  if (kind === 'many' || kind === 'symbols') return tick(page, list(fields.value))
  const typed = kind === 'number' || kind === 'text' || kind === 'contact'
  for (const [name, given] of Object.entries(fields)) {
    const [value = ''] = list(given)
    if (typed || name === 'words') await page.fill(`#field-${name}`, value)
    else await page.click(`label[for="${name}-${value}"]`)
  }
}

export const list = (given: string | readonly string[] | undefined): readonly string[] =>
  given === undefined ? [] : typeof given === 'string' ? [given] : given

/** Ticks these boxes, and takes the tick from every other. */
async function tick(page: Page, wanted: readonly string[]): Promise<void> {
  const ticked = await page
    .locator('form[data-question] [name=value]:checked')
    .evaluateAll((boxes) => boxes.map((box) => (box as HTMLInputElement).value))
  const wrong = (one: string) => wanted.includes(one) !== ticked.includes(one)
  for (const value of new Set([...wanted, ...ticked].filter(wrong))) {
    await page.click(`label[for="value-${value}"]`)
  }
}
