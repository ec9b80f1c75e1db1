import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { play } from '../demo/play.ts'
import { welcome } from '../help/desk-door.ts'
import { startServer } from '../help/server.ts'
import { agreed, reviewed } from '../story/agree.ts'
import { broughtHome, received, worked } from '../story/custody.ts'
import { lookedUp, owned } from '../story/owner.ts'
import { addBench, type Story, strangerTo } from '../story/people.ts'
import { photographPapers } from './papers.ts'
import { contactSheets } from './sheet.ts'

const widths = [390, 1280] as const

/** Pictures of one page for each width, light and dark, into sets of the language's own. */
export class StoryAlbum {
  readonly sets = new Map<string, string[]>()
  readonly #folder: string
  readonly #language: string
  readonly #dark: boolean

  constructor(folder: string, language: string, dark: boolean) {
    this.#folder = folder
    this.#language = language
    this.#dark = dark
  }

  readonly look = async (page: Page, name: string): Promise<void> => {
    for (const width of widths) {
      await page.setViewportSize({ width, height: 844 })
      for (const scheme of this.#dark ? (['dark', 'light'] as const) : (['light'] as const)) {
        await page.emulateMedia({ colorScheme: scheme })
        const set = `story-${this.#language}-${width}${scheme === 'dark' ? '-dark' : ''}`
        const taken = this.sets.get(set) ?? []
        this.sets.set(set, taken)
        const path = join(
          this.#folder,
          set,
          `${String(taken.length + 1).padStart(2, '0')}-${name}.png`,
        )
        await page.screenshot({ path, fullPage: true })
        taken.push(path)
      }
    }
  }
}

/** Walks a pile from the queue until everything is home again, and takes a picture of each page. */
async function photographStory(
  browser: Browser,
  folder: string,
  tell: (line: string) => void,
  { language, dark }: { readonly language: string; readonly dark: boolean },
): Promise<void> {
  const server = await startServer({ env: { LOG_LEVEL: 'silent' } })
  const album = new StoryAlbum(folder, language, dark)
  try {
    const [owner, bench, customer] = await Promise.all(
      [1, 2, 3].map(() => strangerTo(browser, language)),
    )
    const people = { owner: owner!, bench: bench!, customer: customer! }
    const base = server.url
    await welcome(people.owner, server.ownerUrl()!)
    await album.look(people.owner, 'queue-nothing')
    await addBench(people.owner, people.bench, base, album.look)
    const walker = await play(base, language)
    const story: Story = {
      ...people,
      base,
      pile: base + walker.pilePath,
      number: 1,
      look: album.look,
    }
    const parts = { reviewed, agreed, received, worked, broughtHome, lookedUp, owned }
    for (const [name, part] of Object.entries(parts)) {
      await part(story)
      tell(`  ${language}: ${name}`)
    }
    album.sets.set(
      `papers-${language}`,
      await photographPapers(story, join(folder, `papers-${language}`)),
    )
  } finally {
    for (const [set, files] of album.sets) {
      tell(`${set}: ${files.length} pages`)
      for (const sheet of await contactSheets(files, join(folder, `sheet-${set}`)))
        tell(`  ${sheet}`)
    }
    await server.remove()
  }
}

/** The story in English, light and dark, and in Spanish. */
export async function photographStories(
  browser: Browser,
  folder: string,
  tell: (line: string) => void,
  only?: string,
): Promise<void> {
  for (const eyes of [
    { language: 'en', dark: true },
    { language: 'es', dark: false },
  ]) {
    if (!only || only === eyes.language) await photographStory(browser, folder, tell, eyes)
  }
}
