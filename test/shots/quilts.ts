import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser } from 'playwright-core'
import sharp from 'sharp'
import { quiltPicture } from '../../src/papers/quilt-picture.ts'
import { quiltSizes } from '../../src/quilt/layout.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { shopKnowledge } from '../help/bench-garments.ts'
import { nine, sampleQuilt } from '../help/sample-quilt.ts'
import { contactSheets } from './sheet.ts'

const own = `body{margin:0;padding:12px;background:var(--cloth)}figure{margin:0;width:600px}svg{width:100%;height:auto}figcaption{color:var(--ink)}`

/** Woven cloth of that colour as a photo may show it: a weave, and light from one side. */
async function clothPhoto(colour: string): Promise<string> {
  const weave = `<svg xmlns="http://www.w3.org/2000/svg" width="192" height="192"><defs><pattern id="w" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(3)"><rect width="8" height="8" fill="${colour}"/><path d="M0 0L8 8M-2 6L2 10M6 -2L10 2" stroke="#000" stroke-opacity=".16" stroke-width="1.5"/></pattern><linearGradient id="l"><stop stop-color="#fff" stop-opacity=".16"/><stop offset="1" stop-opacity=".16"/></linearGradient></defs><rect width="192" height="192" fill="url(#w)"/><rect width="192" height="192" fill="url(#l)"/></svg>`
  const jpeg = await sharp(Buffer.from(weave)).jpeg({ quality: 88 }).toBuffer()
  return `data:image/jpeg;base64,${jpeg.toString('base64')}`
}

/** Quilts of every layout and size from nine garments, three of them photographed, one in dark colours. */
export async function photographQuilts(
  browser: Browser,
  assets: URL,
  shots: string,
  tell: (line: string) => void,
): Promise<void> {
  const folder = join(shots, 'quilts')
  rmSync(folder, { recursive: true, force: true })
  mkdirSync(folder, { recursive: true })
  const css = readFileSync(new URL(openAssets(assets, '').path('chat.css'), assets), 'utf8')
  const photographed = new Map<string, string>()
  for (const n of [1, 2, 6]) photographed.set(String(n), await clothPhoto(nine[n - 1]!.colour))
  const page = await browser.newPage({ viewport: { width: 624, height: 400 } })
  const taken: string[] = []
  for (const layout of shopKnowledge().layouts) {
    for (const size of quiltSizes) {
      const { quilt } = sampleQuilt(layout, size)
      const cloths = quilt.cloths.map((cloth) => {
        const photo = String(cloth.garment)
        return { ...cloth, photo: photographed.has(photo) ? photo : null }
      })
      const look = { name: 'quilt', addressOf: (photo: string) => photographed.get(photo) ?? null }
      const svg = quiltPicture({ ...quilt, cloths }, look, { title: null })
      const isDark = taken.length === 1
      await page.emulateMedia({ colorScheme: isDark ? 'dark' : 'light' })
      await page.setContent(
        `<style>${css}${own}</style><body><figure>${svg}<figcaption>${layout.id}, ${size}: ${quilt.pieces.length}</figcaption></figure>`,
      )
      const path = join(folder, `${layout.id}-${size}.png`)
      await page.screenshot({ path, fullPage: true })
      taken.push(path)
    }
  }
  await page.context().close()
  tell(`quilts: ${taken.length}`)
  for (const sheet of await contactSheets(taken, join(shots, 'sheet-quilts'))) tell(`  ${sheet}`)
}
