import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** What axe finds wrong on a page, a line each; with `rule` by that rule alone. */
export async function complaints(page: Page, rule?: string): Promise<string[]> {
  await page.evaluate(axe)
  const results = await page.evaluate(
    (only) =>
      (globalThis as unknown as { axe: { run(options: object): Promise<AxeResults> } }).axe.run(
        only ? { runOnly: [only] } : { resultTypes: ['violations'] },
      ),
    rule,
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

/** What can be pressed and is lower or narrower than 44 px. An option's whole label is its target. */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const pressed =
      'a, button, summary, textarea, .option label, input:not([type=hidden]):not(.option input)'
    return [...document.querySelectorAll<HTMLElement>(pressed)]
      .filter((each) => !each.matches('.skip') && each.checkVisibility())
      .map((each) => ({ each, box: each.getBoundingClientRect() }))
      .filter(({ box }) => box.height < 43.5 || box.width < 43.5)
      .map(({ each, box }) => `${each.outerHTML.slice(0, 80)} ${box.width} × ${box.height}`)
  })
