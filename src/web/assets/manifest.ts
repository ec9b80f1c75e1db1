import { readFileSync } from 'node:fs'

/** Plain names of styles and scripts, and the hashed names they are served under: `chat.css`. */
export type Manifest = Readonly<Record<string, string>>

export interface Assets {
  /** What is in here may be cached for ever: a name changes with its content. */
  readonly folder: URL
  /** Path of a file by its plain name. Throws where the build made none. */
  readonly path: (name: string) => string
}

// The same place from the sources and from the compiled program.
export const assetsFolder = new URL('../../../dist/assets/', import.meta.url)

/** What the last build wrote, served under `under`. Throws where nothing was built. */
export function openAssets(folder: URL = assetsFolder, under = '/assets/'): Assets {
  const manifest = JSON.parse(readFileSync(new URL('manifest.json', folder), 'utf8')) as Manifest
  return {
    folder,
    path: (name) => {
      const hashed = manifest[name]
      if (!hashed) throw new Error(`The build made no ${name}.`)
      return under + hashed
    },
  }
}
