import type { SourcedFact } from '../../desk/provenance.ts'
import { hottestC } from '../../garment/facts.ts'
import type { Step } from '../../garment/why.ts'
import { kindOf } from '../../intake/sources.ts'
import type { GarmentWhy } from '../../intake/why-garment.ts'
import type { Language } from '../../words/words.ts'
import type { WhyLine, WhySource } from './view-why.ts'

/** A garment's chain, and who reads it. */
export interface Told {
  readonly chain: GarmentWhy
  readonly facts: readonly SourcedFact[]
  readonly language: Language
}

const plainKinds = ['common practice, no source', 'from memory, unverified']

/** A source with its kind; its own words only where they say more than the kind. */
export function sourceWords(
  { figure, source }: { readonly figure: string; readonly source: string },
  { say }: Language,
): WhySource {
  return {
    kind: say(`desk.whys.kinds.${(kindOf(source) ?? 'from memory').replaceAll(' ', '_')}`),
    words: plainKinds.includes(source) ? null : source,
    row: figure,
  }
}

type Cell = Step['when'][string]
type Value = string | number

function valueWords(column: string, value: Value, { say, has }: Language): string {
  if (column === 'ceiling') return say('desk.press.ceiling', { celsius: value })
  const own = `desk.whys.values.${column}.${value}`
  if (has(own)) return say(own)
  if (column === 'kind' || column === 'recipient') return say(`intake.${column}.options.${value}`)
  return say(`desk.facts.${column}.${value}`)
}

const anyOf = (column: string, values: readonly Value[], language: Language): string =>
  new Intl.ListFormat(language.locale, { type: 'disjunction' }).format(
    values.map((value) => valueWords(column, value, language)),
  )

const asList = <T>(value: T | readonly T[]): readonly T[] =>
  Array.isArray(value) ? (value as readonly T[]) : [value as T]

/** What a row asks of one fact. */
function cellWords(column: string, cell: Cell, language: Language): string {
  const { say } = language
  const fact = say(`desk.facts.${column}.name`)
  if (typeof cell !== 'object' || Array.isArray(cell)) {
    const values = anyOf(column, asList(cell as Value | readonly Value[]), language)
    return say('desk.whys.is', { fact, values })
  }
  if ('not' in cell) {
    const values = anyOf(column, asList(cell.not as Value | readonly Value[]), language)
    return say('desk.whys.is_not', { fact, values })
  }
  const { from, to } = cell as { from?: number; to?: number }
  const [least, most] = [from ?? 0, to ?? hottestC].map((end) => valueWords(column, end, language))
  return say('desk.whys.between', { fact, least: least!, most: most! })
}

/** What was found, and who told. */
function foundWords(column: string, value: Value, { facts, language }: Told): string {
  const { say } = language
  const fact = say(`desk.facts.${column}.name`)
  const words = valueWords(column, value, language)
  const told = facts.find((one) => one.fact === column)
  if (!told) return say('desk.whys.found_plain', { fact, value: words })
  return say('desk.because', { fact, value: words, from: say(`desk.from.${told.from}`) })
}

/** A row of a table as a line: what it asks, what it gives, what was found, where it comes from. */
export function stepLine(table: string, step: Step, gives: string, told: Told): WhyLine {
  const { language } = told
  const asks = Object.entries(step.when).map(([column, cell]) => cellWords(column, cell, language))
  const and = new Intl.ListFormat(language.locale, { type: 'conjunction' })
  return {
    rule:
      asks.length === 0
        ? language.say('desk.whys.otherwise', { gives })
        : language.say('desk.whys.rule', { asks: and.format(asks), gives }),
    found: Object.entries(step.found).map(([column, value]) => foundWords(column, value, told)),
    sources: [
      sourceWords({ figure: `tables/${table}/${step.row}`, source: step.source }, language),
    ],
  }
}
