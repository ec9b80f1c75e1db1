import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import type { Facts } from '../../src/garment/facts.ts'
import { teardownSheet } from '../../src/papers/teardown-sheet.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { renderDesk } from '../../src/web/desk/render.tsx'
import { benchGarment, recipientOf, shopKnowledge } from './bench-garments.ts'

const origin = 'http://bench.invalid'

/** The page of an ordinary garment's teardown sheet, as the desk sends it. */
export function teardownHtml(
  kind: Facts['kind'],
  code: string,
  style: string,
  told: Partial<Facts> = {},
): string {
  const language = shopKnowledge().languages.get(code)!
  const garment = benchGarment(kind, language, told)
  const sheet = teardownSheet(garment, recipientOf(kind), language)
  const title = language.say('bench.title', { code: garment.code })
  const frame = {
    shop: 'Lantern Street',
    language: code,
    languages: [],
    style,
    visitor: null,
    sheetScript: '',
    script: '',
    places: [],
    more: [],
    tabs: [],
  }
  return renderDesk(
    {
      page: 'teardown',
      title,
      sheet,
      marked: [],
      spots: [],
      back: { label: title, href: '/desk' },
      record: { label: title, href: '/desk' },
      bench: { label: 'Bench sheet', href: '/desk' },
    },
    frame,
    language.say,
  )
}

/** A page that shows teardown sheets with the styles and fonts of a built folder, and no server. */
export async function openTeardownPages(browser: Browser, assets: URL) {
  const page = await browser.newPage({ viewport: { width: 900, height: 1100 } })
  const style = openAssets(assets).path('desk.css')
  let html = ''
  await page.route(`${origin}/**`, (route) => {
    const { pathname } = new URL(route.request().url())
    if (!pathname.startsWith('/assets/'))
      return route.fulfill({ contentType: 'text/html; charset=utf-8', body: html })
    const body = readFileSync(new URL(pathname.slice('/assets/'.length), assets))
    const contentType = pathname.endsWith('.css') ? 'text/css' : 'font/woff2'
    return route.fulfill({ contentType, body })
  })
  return async (kind: Facts['kind'], code: string, told?: Partial<Facts>): Promise<Page> => {
    html = teardownHtml(kind, code, style, told)
    await page.goto(`${origin}/${code}/${kind}`)
    await page.evaluate(() => document.fonts.ready.then(() => undefined))
    return page
  }
}

/** How many pages a PDF of the browser has: one object of type Page each. */
export const pagesIn = (pdf: Buffer): number =>
  [...pdf.toString('latin1').matchAll(/\/Type\s*\/Page\b(?!s)/g)].length
