import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { type Hand, list, turn } from './driver.ts'

/** Where the keyboard is: whether it can be seen there, and what for. */
interface Spot {
  readonly what: string
  readonly seen: boolean
}

/** What has the focus. An option's ring stands on its label; the box itself is drawn by us. */
const spot = (page: Page): Promise<Spot> =>
  page.evaluate(() => {
    const focused = document.activeElement as HTMLInputElement
    const ringed = [focused, ...(focused.labels ?? [])].map((each) => getComputedStyle(each))
    const ring = ringed.some(
      ({ outlineStyle, outlineWidth, boxShadow }) =>
        (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2) || boxShadow !== 'none',
    )
    const { top, bottom } = (focused.labels?.[0] ?? focused).getBoundingClientRect()
    const inWindow = bottom > 0 && top < innerHeight
    return { what: focused.outerHTML.slice(0, 120), seen: ring && inWindow }
  })

const at = (page: Page, selector: string): Promise<boolean> =>
  page.evaluate((wanted) => document.activeElement?.matches(wanted) === true, selector)

/** More stops than any page of ours has. */
const patience = 120

/** Presses a key until the focus is there; it must be seen at every stop on the way. */
export async function reach(page: Page, selector: string, key = 'Tab'): Promise<void> {
  for (let stops = 0; stops < patience; stops++) {
    await page.keyboard.press(key)
    const { what, seen } = await spot(page)
    expect({ what, seen }).toEqual({ what, seen: true })
    if (await at(page, selector)) return
  }
  throw new Error(`${key} never reached ${selector} on ${page.url()}`)
}

/** The key that leads there: a page may have a field above the one that is filled in first. */
const towards = (page: Page, selector: string): Promise<string> =>
  page.evaluate((wanted) => {
    const there = document.querySelector(wanted)
    const way = there && document.activeElement?.compareDocumentPosition(there)
    return way && way & Node.DOCUMENT_POSITION_PRECEDING ? 'Shift+Tab' : 'Tab'
  }, selector)

export const enter = (page: Page): Promise<void> => turn(page, () => page.keyboard.press('Enter'))

/** Into a group of radios with Tab, then along it with the arrows. */
async function chooseOne(page: Page, name: string, value: string): Promise<void> {
  await reach(page, `input[name=${name}]`)
  await page.keyboard.press('Space')
  const wanted = `input[name=${name}][value="${value}"]`
  for (let stops = 0; !(await at(page, wanted)); stops++) {
    if (stops > patience) throw new Error(`the arrows never reached ${value}`)
    await page.keyboard.press('ArrowDown')
  }
  expect(await page.isChecked(wanted)).toBe(true)
}

async function fill(page: Page, kind: string, fields: Parameters<Hand['reply']>[2]): Promise<void> {
  for (const [name, given] of Object.entries(fields)) {
    const values = list(given).filter((value) => value !== '')
    for (const value of values) {
      if (kind === 'choice' || kind === 'confirm' || name === 'found') {
        await chooseOne(page, name, value)
      } else if (kind === 'many' || kind === 'symbols') {
        await reach(page, `input[name=${name}][value="${value}"]`)
        await page.keyboard.press('Space')
      } else {
        const field = `#field-${name}`
        await reach(page, field, await towards(page, field))
        await page.keyboard.type(value)
      }
    }
  }
}

/** A visitor who has a keyboard and nothing else. */
export const keyboard: Hand = {
  async press(page, act) {
    await reach(page, `[data-act=${act}]`)
    await enter(page)
  },
  async reply(page, { kind }, fields) {
    const { act = 'answer', note } = fields
    if (act === 'ask') {
      await reach(page, 'details:has(#field-note) summary')
      await page.keyboard.press('Enter')
      await reach(page, '#field-note')
      await page.keyboard.type(String(note))
    }
    if (act === 'answer') await fill(page, kind, fields)
    await reach(page, `form[data-question] button[name=act][value=${act}]`)
    await enter(page)
  },
}
