import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { readWords, type WordsReading } from '../../../src/garment/words/read-words.ts'

/** A line of the phrases' files: what it says, as `fact` → value; `asked` may be told in doubt, never surely. */
export interface Phrase {
  readonly language: string
  readonly line: string
  readonly said: ReadonlyMap<string, string>
  readonly asked: ReadonlyMap<string, string>
  readonly name: string | null
}

export const halves = ['development', 'held-out'] as const
export type Half = (typeof halves)[number]

function phraseOf(row: string): Phrase {
  const [language = '', line = '', told = ''] = row.split('\t')
  const [facts = '', name = null] = told.split(/\s?name=/)
  const pairs = facts.split(' ').filter((one) => one !== '')
  const of = (isAsked: boolean) =>
    new Map(
      pairs
        .map((pair) => pair.split('=') as [string, string])
        .filter(([fact]) => fact.endsWith('?') === isAsked)
        .map(([fact, value]) => [fact.replace('?', ''), value]),
    )
  return { language, line, said: of(false), asked: of(true), name }
}

/** The phrases of one half; lines that begin with # are remarks. */
export const phrasesOf = (half: Half): Phrase[] =>
  readFileSync(fileURLToPath(new URL(`phrases-${half}.txt`, import.meta.url)), 'utf8')
    .split('\n')
    .filter((row) => row !== '' && !row.startsWith('#'))
    .map(phraseOf)

/** What the reader told, written as the phrases' files write it. */
export function toldIn({
  facts,
  mustUse,
}: WordsReading): { fact: string; value: string; sure: boolean }[] {
  const plain = Object.entries(facts).map(([fact, { value, sure }]) => ({
    fact,
    value:
      fact === 'fibres'
        ? sharesIn(value as NonNullable<WordsReading['facts']['fibres']>['value'])
        : String(value),
    sure,
  }))
  return mustUse ? [...plain, { fact: 'mustUse', value: 'yes', sure: mustUse.sure }] : plain
}

const sharesIn = (blocks: NonNullable<WordsReading['facts']['fibres']>['value']): string =>
  blocks
    .flatMap(({ fibres }) =>
      fibres.map(({ fibre, percent }) => (percent === null ? fibre : `${fibre}:${percent}`)),
    )
    .join(',')

/** Counts of one fact, language or half. */
export interface Count {
  /** Told surely, and of these right. */
  filled: number
  right: number
  /** Said plainly in a line, and of these told surely and right; in doubt and right. */
  present: number
  found: number
  askedRight: number
}

const none = (): Count => ({ filled: 0, right: 0, present: 0, found: 0, askedRight: 0 })

export interface Score {
  readonly all: Count
  readonly byFact: ReadonlyMap<string, Count>
  readonly byLanguage: ReadonlyMap<string, Count>
  /** Told surely and wrong, and said plainly and not found, one sentence each. */
  readonly wrong: readonly string[]
  readonly missed: readonly string[]
}

/** Holds readings against what the lines say. A fact that is filled and not said counts as wrong. */
export function score(phrases: readonly Phrase[]): Score {
  const all = none()
  const byFact = new Map<string, Count>()
  const byLanguage = new Map<string, Count>()
  const wrong: string[] = []
  const missed: string[] = []
  const at = (counts: Map<string, Count>, name: string): Count => {
    const count = counts.get(name) ?? none()
    counts.set(name, count)
    return count
  }
  for (const { language, line, said, asked } of phrases) {
    const told = toldIn(readWords(line))
    for (const { fact, value, sure } of told) {
      if (!sure) continue
      const counts = [all, at(byFact, fact), at(byLanguage, language)]
      for (const count of counts) count.filled += 1
      if (said.get(fact) === value) for (const count of counts) count.right += 1
      else
        wrong.push(
          `${fact}=${value} (${said.get(fact) ?? `${asked.get(fact) ?? 'nothing'}?`}): ${line}`,
        )
    }
    for (const [fact, value] of said) {
      const counts = [all, at(byFact, fact), at(byLanguage, language)]
      for (const count of counts) count.present += 1
      const own = told.find((one) => one.fact === fact && one.value === value)
      if (own?.sure) for (const count of counts) count.found += 1
      else {
        if (own) for (const count of counts) count.askedRight += 1
        missed.push(`${fact}=${value}${own ? ' (in doubt)' : ''}: ${line}`)
      }
    }
  }
  return { all, byFact, byLanguage, wrong, missed }
}

export const percent = (part: number, whole: number): number =>
  whole === 0 ? 100 : (100 * part) / whole
