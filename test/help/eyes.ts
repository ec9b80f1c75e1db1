import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults, RunOptions } from 'axe-core'
import type { Page } from 'playwright-core'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe finds wrong on a page, a line each; with `rule` by that rule alone. */
export const complaints = (page: Page, rule?: string): Promise<string[]> =>
  ask(page, rule ? { runOnly: [rule] } : {})

/**
 * In forced colours the reader's own palette stands, and axe cannot see it: it goes by the property
 * -webkit-text-fill-color, whose computed value stays the page's.
 */
export const complaintsInForcedColours = (page: Page): Promise<string[]> =>
  ask(page, { rules: { 'color-contrast': { enabled: false } } })

async function ask(page: Page, options: RunOptions): Promise<string[]> {
  await page.evaluate(axe)
  const results = await page.evaluate(
    (given) =>
      (globalThis as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run(
        given,
      ),
    { ...options, resultTypes: ['violations'] } as RunOptions,
  )
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ target }) => `${id}: ${help} (${target.join(' ')})`),
  )
}

/** Opens everything that is folded, so that it is looked at too. */
export const unfold = (page: Page): Promise<void> =>
  page.evaluate(() => {
    for (const details of document.querySelectorAll('details')) details.open = true
  })

/** So many px the page is wider than its window. */
export const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - innerWidth)

/** What can be pressed and is lower or narrower than 44 px. The whole label of an option or a choice is its target. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const pressed =
      'a, button, summary, textarea, .option label, .choice, input:not([type=hidden]):not(.option input, .choice input)'
    return [...document.querySelectorAll<HTMLElement>(pressed)]
      .filter((each) => !each.matches('.skip, .unseen') && each.checkVisibility())
      .map((each) => ({ each, box: each.getBoundingClientRect() }))
      .filter(({ box }) => box.height < 43.5 || box.width < 43.5)
      .map(({ each, box }) => `${each.outerHTML.slice(0, 80)} ${box.width} × ${box.height}`)
  })

/** Words that do not fit where they stand, or stand outside the window; a line each. */
export const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const speaks = (each: Element) =>
      [...each.childNodes].some(
        ({ nodeType, textContent }) => nodeType === 3 && textContent?.trim(),
      )
    const fits = (each: Element) => {
      const { overflowX, overflowY } = getComputedStyle(each)
      const wide = overflowX !== 'visible' && each.scrollWidth > each.clientWidth + 1
      const high = overflowY === 'hidden' && each.scrollHeight > each.clientHeight + 1
      const { left, right } = each.getBoundingClientRect()
      return !wide && !high && left >= -1 && right <= innerWidth + 1
    }
    return [...document.body.querySelectorAll<HTMLElement>('*')]
      .filter((each) => each.checkVisibility() && speaks(each))
      .filter((each) => !each.closest('.unseen, .skip, svg') && !fits(each))
      .map((each) => each.outerHTML.slice(0, 100))
  })
