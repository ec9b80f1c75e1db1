import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import { type CutSheet, cutSheet, type PanelCuts } from '../../src/papers/cut-sheet.ts'
import { toSvg } from '../../src/papers/drawing.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { shopKnowledge } from '../help/bench-garments.ts'
import { holedPanels, kinds, pictureFront } from '../help/cut-panels.ts'

/** What lies between the margins of Letter, px at 96 to the inch, as the teardown sheets are taken. */
const paper = { width: 733, height: 900 }

const own = `body{margin:0;padding:8px;font-family:var(--word-face);color:var(--ink);background:var(--paper);font-size:8.5pt;line-height:1.25}
h1{font-size:14pt;margin:0}h2{font-size:11pt;margin:8px 0 2px}p{margin:2px 0}.caution{border:1.5px dashed var(--ink);padding:2px 6px}
.cut{display:flex;gap:5mm;flex-wrap:wrap}.cut svg{display:block}.beside svg{width:92mm}.beside ol{width:90mm}.page svg{width:180mm}.page ol{columns:2;width:180mm}ol{margin:0;padding:0;list-style:none}li{break-inside:avoid}`

const panelHtml = ({ heading, drawing, room, alt, list, notes }: PanelCuts): string =>
  `<h2>${heading}</h2><div class="cut ${room}"><span class="picture">${toSvg(drawing, alt)}</span><ol>${[
    ...notes.map((words) => `<li><em>${words}</em></li>`),
    ...list.map(({ number, words }) => `<li><b>${number}.</b> ${words}</li>`),
  ].join('')}</ol></div>`

const sheetHtml = (title: string, sheet: CutSheet, css: string): string =>
  `<style>${css}${own}</style><body><h1>${title}</h1><p class="caution">${sheet.caution} ${sheet.before}</p><p>${sheet.legend}</p>${sheet.panels.map(panelHtml).join('')}<p>${sheet.pieces.map(({ words }) => words).join(' · ')}</p></body>`

/** How every kind is cut, and a picture's front; as printed, and one in dark colours. */
export async function photographCuts(
  browser: Browser,
  assets: URL,
  folder: string,
  code: string,
): Promise<string[]> {
  const css = readFileSync(new URL(openAssets(assets, '').path('desk.css'), assets), 'utf8')
  const language = shopKnowledge().languages.get(code)!
  const { say } = language
  const sheets = [
    ...kinds.map((kind) => ({
      title: say(`intake.kind.options.${kind}`),
      panels: holedPanels(kind, ({ name }) => say(`trade.panels.${name}`)),
    })),
    { title: '14 1/2', panels: [pictureFront(say('trade.panels.front'))] },
  ].filter(({ panels }) => panels.length > 0)
  const page = await browser.newPage({ viewport: paper })
  const taken: string[] = []
  const take = async (path: string) => {
    await page.screenshot({ path, fullPage: true })
    taken.push(path)
  }
  for (const [n, { title, panels }] of sheets.entries()) {
    await page.setContent(sheetHtml(title, cutSheet({ panels, language }), css))
    await page.emulateMedia({ media: 'print' })
    await take(join(folder, `cut-${code}-${String(n + 1).padStart(2, '0')}.png`))
  }
  await page.emulateMedia({ media: 'screen', colorScheme: 'dark' })
  await take(join(folder, `cut-${code}-dark.png`))
  await page.context().close()
  return taken
}
