import { isColourWord } from '../base/colour-words.ts'
import { Failure } from '../base/failures.ts'
import { domains, type FactName, type Known, sizes } from '../garment/facts.ts'
import { heatOf, ironFact } from '../textile/heat.ts'
import type { Block } from '../textile/reading.ts'
import { readingOfWords } from './label.ts'

/** Facts that follow from others: nobody sets them. */
const counted = ['yield', 'labelDoubt'] as const

type Counted = (typeof counted)[number]

/** Beside the facts of the tables: the size, the label's words, and the colours. */
export type SettableFact = Exclude<FactName, Counted> | 'size' | 'label' | 'colours'

export const settableFacts: readonly SettableFact[] = [
  ...(Object.keys(domains) as FactName[]).filter(
    (fact): fact is Exclude<FactName, Counted> => !counted.some((one) => one === fact),
  ),
  'size',
  'label',
  'colours',
]

/** A fact that the workshop set of one garment. `at` is milliseconds UTC. */
export interface FactSet {
  readonly fact: SettableFact
  /**
   * A value of the fact's domain; a size; a label's words as they stand, empty where there is no label; words for
   * colours with a space between them.
   */
  readonly value: string
  readonly source: 'staff' | 'bench'
  readonly at: number
}

/** Characters. */
export const longestLabel = 2000

function isValueOf(fact: SettableFact, value: string): boolean {
  if (fact === 'label') return value.length <= longestLabel
  if (fact === 'size') return sizes.some((size) => size === value)
  if (fact === 'colours') {
    return value.split(' ').every((word) => word === 'many-colours' || isColourWord(word))
  }
  return domains[fact].some((one) => one === value)
}

/** A fact and value as a form sends them. Throws `answer_not_offered`. */
export function readFactSet(
  fact: string,
  value: string,
): { readonly fact: SettableFact; readonly value: string } {
  const known = settableFacts.find((one) => one === fact)
  if (!known || !isValueOf(known, value)) throw new Failure('answer_not_offered')
  return { fact: known, value }
}

/** The one that stands: the bench has the garment in its hands, and of one source the later counts. */
export function lastSet(set: readonly FactSet[], fact: SettableFact): FactSet | undefined {
  const ones = set.filter((one) => one.fact === fact)
  return ones.findLast(({ source }) => source === 'bench') ?? ones.at(-1)
}

/** What follows from a label's words that were set. */
export interface SetLabel {
  readonly blocks: readonly Block[]
  readonly known: readonly (readonly [FactName, Known])[]
}

/** Null where nobody set any. A person has read them, so that they count without doubt. */
export function setLabel(set: readonly FactSet[]): SetLabel | null {
  const label = lastSet(set, 'label')
  if (!label) return null
  const { value: words, source, at } = label
  const reading = words === '' ? null : readingOfWords(words)
  const blocks = reading?.blocks ?? []
  const iron = reading ? ironFact(reading) : 'missing'
  const fact = (name: FactName, value: string) => [name, { value, source, at }] as const
  return {
    blocks,
    known: [fact('iron', iron), fact('heat', heatOf(blocks, iron).heat), fact('labelDoubt', 'no')],
  }
}

const isOfTables = (fact: SettableFact): fact is Exclude<FactName, Counted> =>
  Object.hasOwn(domains, fact)

/** What is known of each fact by what was set; one that was set by itself stands above the label's. */
export function knownOf(
  set: readonly FactSet[],
  label: SetLabel | null,
): ReadonlyMap<FactName, readonly Known[]> {
  const known = new Map<FactName, Known[]>()
  const put = (fact: FactName, one: Known) => known.set(fact, [...(known.get(fact) ?? []), one])
  for (const [fact, one] of label?.known ?? []) put(fact, one)
  for (const { fact, value, source, at } of set) {
    if (isOfTables(fact)) put(fact, { value, source, at })
  }
  return known
}
