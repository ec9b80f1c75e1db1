import { readdirSync, readFileSync } from 'node:fs'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../..', import.meta.url))

export interface TextFile {
  /** From the project's root, with forward slashes: `src/flow/read.ts`. */
  readonly path: string
  readonly text: string
}

/** The text files of a folder of the project whose names end like one of `endings`. */
export const filesIn = (folder: string, endings: readonly string[]): TextFile[] =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((file) => ({
      path: relative(root, file).replaceAll('\\', '/'),
      text: readFileSync(file, 'utf8'),
    }))
    .filter(({ path }) => !path.includes('/.out/'))

export const sources = (): TextFile[] => filesIn('src', ['.ts', '.tsx'])

/** A source without its comments, so that prose about a thing is not taken for the thing. */
export const withoutComments = (text: string): string =>
  text.replaceAll(/\/\*[\s\S]*?\*\//g, '').replaceAll(/(^|\s)\/\/.*$/gm, '$1')
