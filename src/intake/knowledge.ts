import { Failure } from '../base/failures.ts'
import type { Flow } from '../flow/grammar.ts'
import { flowHash } from '../flow/pin.ts'
import { readFlow, readTable } from '../flow/read.ts'
import type { Source } from '../flow/source.ts'
import { compileTable, decide } from '../flow/table.ts'
import { type Act, readActs } from '../garment/better-acts.ts'
import { columns, type Facts } from '../garment/facts.ts'
import { type Grading, grade, type PileFacts } from '../garment/grade.ts'
import { rememberGradings } from '../garment/gradings.ts'
import type { Knowledge as GradingKnowledge } from '../garment/knowledge.ts'
import { type Layout, readLayout } from '../quilt/layout.ts'
import { interfacingsOf, type Rates, ratesAt, readRates } from '../quilt/rates.ts'
import { flatten, type Language, language, readPageWords } from '../words/words.ts'
import type { FlowsFolder } from './flows-folder.ts'
import type { Days } from './proofs.ts'
import { readShop, type Shop } from './shop.ts'

/** All a shop knows: its flow, its tables, its layouts and rates, and its words. */
export interface Knowledge {
  readonly shop: Shop
  readonly flow: Flow
  readonly flowHash: string
  readonly layouts: readonly Layout[]
  readonly rates: readonly Rates[]
  readonly grading: GradingKnowledge
  /** What may be found out or done to better a garment. */
  readonly acts: readonly Act[]
  readonly grade: (facts: Facts, pile: PileFacts) => Grading
  /** Pages' words as they are; the flow's under `intake.`, the tables' under `trade.`. */
  readonly languages: ReadonlyMap<string, Language>
}

type Words = ReadonlyMap<string, ReadonlyMap<string, string>>

const flatWords = (source: Source) => flatten((source.value ?? {}) as Parameters<typeof flatten>[0])

/** Sentences of every language that the shop speaks, from pages, flow and tables together. */
export function wordsOf(folder: FlowsFolder, pages: Words = readPageWords()): Words {
  const codes = new Set([...pages.keys(), ...folder.words.intake.keys()])
  return new Map(
    [...codes].map((code) => {
      const all = new Map(pages.get(code))
      for (const subject of ['intake', 'trade'] as const) {
        const source = folder.words[subject].get(code)
        if (!source) continue
        for (const [key, text] of flatWords(source)) all.set(`${subject}.${key}`, text)
      }
      return [code, all]
    }),
  )
}

/** The tables as one question: which rows of the named table match these facts? */
function decider(sources: readonly Source[]): GradingKnowledge['decide'] {
  const tables = new Map(
    sources.map((source) => {
      const table = readTable(source.value, source)
      return [table.table, compileTable(table, columns())]
    }),
  )
  return (name, facts) => {
    const table = tables.get(name)
    if (!table) throw new Failure('flows_invalid', { file: 'tables', line: 1, why: `no ${name}` })
    return decide(table, facts)
  }
}

/** A refusal of one file's content, told with the file's name. */
function inFile<T>(file: string, read: () => T): T {
  try {
    return read()
  } catch (error) {
    if (!(error instanceof Failure) || 'file' in error.details) throw error
    throw new Failure('flows_invalid', { file, line: 1, why: error.details.why ?? error.message })
  }
}

export const layoutsOf = (folder: FlowsFolder): Layout[] =>
  folder.layouts.map((source) => inFile(source.file, () => readLayout(source.value)))

export const ratesOf = (folder: FlowsFolder): Rates[] =>
  inFile('rates', () => readRates(folder.rates.map(({ value }) => value)))

/** The days on which the interfacings of a day are on sale: those of its rates. */
export function onSale(folder: FlowsFolder, day: string): Days {
  const rates = ratesOf(folder)
  const { from } = ratesAt(rates, day)
  return { from, until: rates.find((later) => later.from > from)?.from ?? null }
}

/**
 * What the folder says, ready for use. Throws `flows_invalid` with file, line and what is wrong.
 * `today` (YYYY-MM-DD) chooses the interfacings on sale.
 */
export function learn(folder: FlowsFolder, today: string): Knowledge {
  const flow = readFlow(folder.flow.value, folder.flow)
  const layouts = layoutsOf(folder)
  const rates = ratesOf(folder)
  const grading: GradingKnowledge = {
    decide: decider(folder.tables),
    interfacings: interfacingsOf(ratesAt(rates, today)),
    layouts,
  }
  const shop = readShop(folder.shop.value)
  return {
    shop,
    flow,
    flowHash: flowHash(flow),
    layouts,
    rates,
    grading,
    acts: readActs(folder.better.value),
    grade: rememberGradings((facts, pile) => grade(facts, pile, grading)),
    languages: new Map(
      [...wordsOf(folder)].map(([code, all]) => [
        code,
        language(code, all, `${code}-${shop.region}`),
      ]),
    ),
  }
}
