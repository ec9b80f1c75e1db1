import type { Browser, Page } from 'playwright-core'
import { turn } from '../help/driver.ts'

/** Who walks a pile's story, each with a browser's cookies of their own. */
export interface People {
  readonly owner: Page
  readonly bench: Page
  readonly customer: Page
}

/** Told of every page of the story as it is reached, filled in where it has a form. */
export type Look = (page: Page, name: string) => Promise<void>

export interface Story extends People {
  /** The workshop's address. */
  readonly base: string
  /** The customer's own link. */
  readonly pile: string
  readonly number: number
  readonly look: Look
}

const password = 'bobbins and pins'

/** A page of somebody else's browser, which asks for that language. */
export async function strangerTo(browser: Browser, locale: string): Promise<Page> {
  const context = await browser.newContext({ locale, reducedMotion: 'reduce', bypassCSP: true })
  context.setDefaultTimeout(15_000)
  return context.newPage()
}

/** The owner adds somebody for the bench, who sets a password by the link that is handed over. */
export async function addBench(owner: Page, bench: Page, base: string, look: Look): Promise<void> {
  await owner.goto(`${base}/desk/people`)
  await owner.fill('#field-name', 'Bo Anders')
  await owner.fill('#field-email', 'bo@lantern-street.example')
  await owner.selectOption('#field-role', 'bench')
  await turn(owner, () => owner.click('main form:has(#field-name) button'))
  await look(owner, 'people')
  await bench.goto(await owner.inputValue('#handed'))
  await bench.fill('#field-password', password)
  await look(bench, 'bench-welcome')
  await turn(bench, () => bench.click('main form button[type=submit]'))
}

/** Opens a page of the workshop. */
export const open = (page: Page, { base }: Pick<Story, 'base'>, path: string): Promise<unknown> =>
  page.goto(`${base}${path}`)

/** Opens the form of an act or a move on a page, fills it in by field names and, where told so, sends it. */
export async function fillIn(
  page: Page,
  act: string,
  fields: Readonly<Record<string, string>> = {},
): Promise<() => Promise<void>> {
  const form = page.locator(`form:has(input[name=act][value="${act}"])`).first()
  const folded = page.locator('details.move', { has: form }).last()
  if (await folded.count()) {
    if ((await folded.getAttribute('open')) === null) await folded.locator('> summary').click()
  } else {
    const inside = form.locator('details')
    if (await inside.count()) await inside.locator('summary').first().click()
  }
  for (const [name, value] of Object.entries(fields)) {
    const field = form.locator(`[name="${name}"]`)
    const type = await field.first().getAttribute('type')
    const tag = await field.first().evaluate((one) => one.tagName)
    if (tag === 'SELECT') await field.selectOption(value)
    else if (type === 'radio' || type === 'checkbox') {
      for (const one of value.split(','))
        await form.locator(`[name="${name}"][value="${one}"]`).check()
    } else await field.fill(value)
  }
  return () => turn(page, () => form.locator('button[type=submit]').click())
}

export async function make(
  page: Page,
  act: string,
  fields: Readonly<Record<string, string>> = {},
): Promise<void> {
  const send = await fillIn(page, act, fields)
  await send()
}
