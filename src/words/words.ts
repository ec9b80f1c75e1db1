import { readdirSync, readFileSync } from 'node:fs'
import { IntlMessageFormat } from 'intl-messageformat'
import { parse } from 'yaml'
import { Failure } from '../base/failures.ts'

/** A sentence by its dotted key, its gaps filled. Throws where the key is missing: a page never shows a key. */
export type Say = (key: string, gaps?: Record<string, string | number>) => string

export interface Language {
  readonly code: string
  /** For numbers, money and days: the language as it is written where the shop is, "es-US". */
  readonly locale: string
  readonly say: Say
  readonly has: (key: string) => boolean
}

type Tree = { readonly [key: string]: string | Tree }

/** One tree of sentences as dotted keys: `{ a: { b: 'x' } }` gives `a.b`. */
export function flatten(tree: Tree, prefix = ''): Map<string, string> {
  const flat = new Map<string, string>()
  for (const [key, value] of Object.entries(tree)) {
    if (typeof value === 'string') {
      flat.set(prefix + key, value)
      continue
    }
    for (const [inner, text] of flatten(value, `${prefix}${key}.`)) flat.set(inner, text)
  }
  return flat
}

/** Sentences in ICU message form. Formats are made once, when first said. */
export function language(
  code: string,
  sentences: ReadonlyMap<string, string>,
  locale = code,
): Language {
  const formats = new Map<string, IntlMessageFormat>()
  const formatOf = (key: string): IntlMessageFormat => {
    const known = formats.get(key)
    if (known) return known
    const text = sentences.get(key)
    if (text === undefined) throw new Failure('words_missing', { key, language: code })
    const format = new IntlMessageFormat(text, locale, undefined, { ignoreTag: true })
    formats.set(key, format)
    return format
  }
  return {
    code,
    locale,
    has: (key) => sentences.has(key),
    say: (key, gaps = {}) => String(formatOf(key).format(gaps)),
  }
}

// Beside this file in the sources; the compiled program reads the same files.
const folder = new URL('../../src/words/', import.meta.url)

/** Every text of pages and papers: one `<code>.yaml` in this folder makes a language. */
export function readPageWords(from: URL = folder): Map<string, Map<string, string>> {
  const files = readdirSync(from).filter((file) => /^[a-z]{2}(-[A-Z]{2})?\.yaml$/.test(file))
  return new Map(
    files.map((file) => [
      file.replace('.yaml', ''),
      flatten(parse(readFileSync(new URL(file, from), 'utf8')) as Tree),
    ]),
  )
}

/** Keys that some language lacks, as `language: key`. */
export function missingWords(
  languages: ReadonlyMap<string, ReadonlyMap<string, string>>,
): string[] {
  const all = new Set([...languages.values()].flatMap((sentences) => [...sentences.keys()]))
  return [...languages].flatMap(([code, sentences]) =>
    [...all].filter((key) => !sentences.has(key)).map((key) => `${code}: ${key}`),
  )
}
