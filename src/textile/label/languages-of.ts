import { labelLanguages } from '../languages/all.ts'
import type { LanguageCode } from '../languages/types.ts'
import type { Item } from './items.ts'
import type { Role } from './vocabulary.ts'

// Small words are shared by too many languages to tell one.
const telling: ReadonlySet<Role> = new Set<Role>([
  'fibre',
  'section',
  'iron',
  'ironNot',
  'noSteam',
  'wash',
  'washNot',
  'handWash',
  'bleach',
  'bleachNot',
  'tumble',
  'tumbleNot',
  'flatDry',
  'lineDry',
  'dryClean',
  'dryCleanNot',
])

/** The fewest languages that between them have all the words that were read. */
export function languagesOf(items: readonly Item[]): LanguageCode[] {
  const words = new Map<string, Set<LanguageCode>>()
  for (const { term, text } of items) {
    if (!term) continue
    const codes = term.roles.flatMap(({ role, languages }) => (telling.has(role) ? languages : []))
    if (codes.length > 0) words.set(text, new Set([...(words.get(text) ?? []), ...codes]))
  }
  const open = [...words.values()]
  const found: LanguageCode[] = []
  while (open.some((codes) => !found.some((code) => codes.has(code)))) {
    const left = open.filter((codes) => !found.some((code) => codes.has(code)))
    const counts = labelLanguages.map(({ code }) => left.filter((codes) => codes.has(code)).length)
    found.push(labelLanguages[counts.indexOf(Math.max(...counts))]!.code)
  }
  return found
}
