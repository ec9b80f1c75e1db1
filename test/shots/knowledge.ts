import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Browser } from 'playwright-core'
import { domains } from '../../src/garment/facts.ts'
import { toSvg } from '../../src/papers/drawing.ts'
import { drawings, helpNames } from '../../src/papers/drawings/index.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { openTeardownPages } from '../help/teardown-pages.ts'
import { photographCuts } from './cuts.ts'
import { contactSheets } from './sheet.ts'

/** What the last build wrote; the place is the same from here and from the bundled command. */
export const builtAssets = new URL('../../dist/assets/', import.meta.url)

/** As wide as the room between the margins of Letter, px; a sheet is as tall as it is. */
const paper = { width: 733, height: 600 }

/** Every kind's teardown sheet as it is printed; its file is named by language and kind. */
async function photographSheets(browser: Browser, folder: string, code: string): Promise<string[]> {
  const open = await openTeardownPages(browser, builtAssets)
  const taken: string[] = []
  for (const [i, kind] of domains.kind.entries()) {
    const page = await open(kind, code)
    await page.emulateMedia({ media: 'print' })
    await page.setViewportSize(paper)
    const path = join(folder, `${code}-${String(i + 1).padStart(2, '0')}-${kind}.png`)
    await page.screenshot({ path, fullPage: true })
    taken.push(path)
  }
  return taken
}

const shown = (name: string, wide: boolean): string =>
  `<figure class="${wide ? 'wide' : 'small'}">${toSvg(drawings[name]!, { title: name })}<figcaption>${name}</figcaption></figure>`

/** Every drawing with its name, on light ground and on dark. */
async function photographDrawings(browser: Browser, folder: string): Promise<string[]> {
  const css = readFileSync(
    new URL(openAssets(builtAssets, '').path('desk.css'), builtAssets),
    'utf8',
  )
  const names = Object.keys(drawings).toSorted(
    (a, b) => Number(helpNames.includes(b)) - Number(helpNames.includes(a)),
  )
  const figures = names.map((name) => shown(name, helpNames.includes(name))).join('')
  const own = `body{display:flex;flex-wrap:wrap;gap:12px;padding:12px}figure{margin:0;padding:8px;border:1px solid var(--line)}.wide{width:392px}.small{width:110px}svg{width:100%;height:auto}figcaption{font-size:15px}`
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } })
  await page.setContent(`<style>${css}${own}</style><body>${figures}</body>`)
  const taken: string[] = []
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    const path = join(folder, `drawings-${colorScheme}.png`)
    await page.screenshot({ path, fullPage: true })
    taken.push(path)
  }
  await page.context().close()
  return taken
}

/** Pictures of what the bench knows: all kinds' teardown and cutting sheets, and all drawings. */
export async function photographKnowledge(
  browser: Browser,
  shots: string,
  tell: (line: string) => void,
): Promise<void> {
  if (!existsSync(fileURLToPath(new URL('manifest.json', builtAssets))))
    throw new Error('No styles are built yet: run "npm run build" first.')
  const folder = join(shots, 'knowledge')
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  for (const code of ['en', 'es']) {
    const sheets = await photographSheets(browser, folder, code)
    tell(`teardown sheets, ${code}: ${sheets.length}`)
    for (const sheet of await contactSheets(sheets, join(shots, `sheet-teardown-${code}`)))
      tell(`  ${sheet}`)
    const cuts = await photographCuts(browser, builtAssets, folder, code)
    tell(`cutting sheets, ${code}: ${cuts.length}`)
    for (const sheet of await contactSheets(cuts, join(shots, `sheet-cut-${code}`)))
      tell(`  ${sheet}`)
  }
  for (const picture of await photographDrawings(browser, folder)) tell(`  ${picture}`)
}
