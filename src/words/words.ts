import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
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

const sources = new URL('../../src/words/', import.meta.url)
/** The compiled program has the same sentences beside this file, as the build left them. */
const built = import.meta.url.endsWith('.js') ? new URL('./', import.meta.url) : null

type PageWords = Map<string, Map<string, string>>

function readEach(from: URL, ending: string, read: (text: string) => Map<string, string>) {
  const named = new RegExp(`^([a-z]{2}(?:-[A-Z]{2})?)\\.${ending}$`)
  const codes = readdirSync(from).flatMap((file) => named.exec(file)?.[1] ?? [])
  return new Map(
    codes.map((code) => [code, read(readFileSync(new URL(`${code}.${ending}`, from), 'utf8'))]),
  )
}

/** Sentences as they are written: one `<code>.yaml` in the folder makes a language. */
export const readWritten = (from: URL): PageWords =>
  readEach(from, 'yaml', (text) => flatten(parse(text) as Tree))

/** Every text of pages and papers. */
export const readPageWords = (): PageWords =>
  built
    ? readEach(built, 'json', (text) => new Map(Object.entries(JSON.parse(text))))
    : readWritten(sources)

/** For the build: leaves the sentences ready to be read, as reading YAML takes a start longer than all else. */
export function leavePageWords(): void {
  if (!built) return
  for (const code of readPageWords().keys()) rmSync(new URL(`${code}.json`, built))
  for (const [code, sentences] of readWritten(sources)) {
    writeFileSync(new URL(`${code}.json`, built), JSON.stringify(Object.fromEntries(sentences)))
  }
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
