import { mkdirSync, writeFileSync } from 'node:fs'
import { bundle } from '../../src/web/assets/bundle.ts'
import { renderPage } from '../../src/web/chat/render.tsx'
import type { ChatPage, Frame } from '../../src/web/chat/view.ts'
import { language, readPageWords } from '../../src/words/words.ts'
import { type Files, frame, samples } from './samples.ts'

export interface Shown {
  readonly name: string
  readonly language: string
  readonly page: ChatPage
  readonly html: string
}

export const plain: Files = {
  style: 'chat.css',
  script: 'chat.js',
  spotScript: 'spots.js',
  sheetScript: 'sheet.js',
  framedScript: 'framed.js',
}

/** Every sample in every language, with the given style and scripts. */
export function shown(files = plain): Shown[] {
  return [...readPageWords()].flatMap(([code, sentences]) => {
    const { say } = language(code, sentences)
    return Object.entries(samples).map(([name, page]) => ({
      name,
      language: code,
      page,
      html: renderPage(page, around(page, frame(code, files)), say),
    }))
  })
}

/** Before a pile is begun there is nothing to come back to. */
const around = (page: ChatPage, whole: Frame): Frame =>
  page.page === 'start' ? { ...whole, saveHref: null } : whole

/** The gallery as files to be opened in a browser: `<name>.<language>.html`. */
export async function writeGallery(folder: URL): Promise<Shown[]> {
  mkdirSync(folder, { recursive: true })
  const manifest = await bundle(new URL('assets/', folder))
  const built = Object.entries(plain).map(([name, file]) => [name, `assets/${manifest[file]}`])
  const pages = shown(Object.fromEntries(built) as Record<keyof Files, string>)
  for (const { name, language: code, html } of pages) {
    writeFileSync(new URL(`${name}.${code}.html`, folder), html)
  }
  for (const [n, colour] of ['#6d87a5', '#a8b5a0', '#c9a58b'].entries()) {
    writeFileSync(new URL(`photo-${n + 1}.svg`, folder), swatch(colour))
  }
  return pages
}

const swatch = (colour: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="96" height="96"><rect width="96" height="96" fill="${colour}"/><path d="M0 24H96M0 72H96M24 0V96M72 0V96" stroke="#fff" stroke-width="8" opacity=".35"/></svg>`
