import { type ColourWord, isColourWord } from '../base/colour-words.ts'
import type { Replies } from '../flow/grammar.ts'
import { implied } from '../garment/derive.ts'
import type { FactName, Facts, Known, Size } from '../garment/facts.ts'
import { heatOf } from '../textile/heat.ts'
import type { Block } from '../textile/reading.ts'
import { ironOf, readingOf, readingStands } from './label.ts'
import { amount, chosen, labelValue, ticked } from './replies.ts'
import { type FactSet, knownOf, lastSet, setLabel } from './set-facts.ts'
import { type DeskSpots, factsOfSpots, type MarkedSpot, spotsTold } from './spots.ts'

/** What the customer's replies tell of one garment. `at` gives the time of a reply, ms UTC. */
export interface Told {
  readonly known: Partial<Record<FactName, readonly Known[]>>
  readonly blocks: readonly Block[]
  readonly size: Size
  /** Longer side of a single graphic in inches; null: none, or not measured. */
  readonly graphicInches: number | null
  readonly mustUse: boolean
  /** Of the cloth, in the order in which they are offered. */
  readonly colours: readonly ColourWord[]
  /** The cloth has more colours than are told, or none that stands out. */
  readonly manyColours: boolean
  /** Of photos, in the order in which they were answered. */
  readonly photoIds: readonly string[]
  /** Marked on those photos, the customer's first. */
  readonly spots: readonly MarkedSpot[]
}

/** The first of the marks that was ticked; the list runs from the gravest. */
const gravest = <T extends string>(
  marks: readonly string[],
  order: readonly (readonly [mark: string, value: T])[],
): T | undefined => order.find(([mark]) => marks.includes(mark))?.[1]

const soils = [
  ['chemical', 'chemical'],
  ['damp', 'mould'],
  ['pests', 'pests'],
  ['body-fluid', 'body-fluid'],
  ['stained', 'soiled'],
] as const

const washes = [
  ['scent', 'never'],
  ['unwashed', 'unwashed'],
  ['softener', 'softener'],
] as const

const ages = [
  ['historic', 'historic'],
  ['old', 'old'],
] as const

const trimmings = [
  ['glued-trims', 'glued'],
  ['melting-trims', 'meltable'],
  ['hard-trims', 'removable'],
] as const

const consents = [
  ['no-cut', 'no-cut'],
  ['keep-a-spot', 'part'],
] as const

function printMakeOf(replies: Replies): string | undefined {
  const pattern = chosen(replies, 'pattern')
  if (pattern === 'solid') return 'none'
  if (pattern === 'stripe-check') return 'in-cloth'
  return chosen(replies, 'print_make')
}

function graphicOf(replies: Replies, fitsAFrame: (inches: number) => boolean): string | undefined {
  const pattern = chosen(replies, 'pattern')
  if (pattern === undefined) return undefined
  if (pattern !== 'single') return 'none'
  const longer = amount(replies, 'graphic_size')
  if (longer === undefined) return undefined
  return fitsAFrame(longer) ? 'fits' : 'too-large'
}

/** What is said of wear and soil, whatever is marked on photos. */
export function saidOfCloth(replies: Replies): Pick<Facts, 'wear' | 'soil'> {
  const history = ticked(replies, 'history')
  return {
    wear: (chosen(replies, 'wear') ?? 'unknown') as Facts['wear'],
    soil: history.length === 0 ? 'unknown' : (gravest(history, soils) ?? 'clean'),
  }
}

/** What people of the workshop made of one garment. */
export interface AtDesk {
  readonly spots?: DeskSpots
  /** In the order in which they were set. */
  readonly facts?: readonly FactSet[]
}

/**
 * `fitsAFrame`: whether some layout can frame a graphic whose longer side is so many inches. `desk`: what the
 * workshop made of the garment.
 */
export function tell(
  replies: Replies,
  at: (question: string) => number,
  fitsAFrame: (inches: number) => boolean,
  { spots: deskSpots, facts: set = [] }: AtDesk = {},
): Told {
  const known: Partial<Record<FactName, Known[]>> = {}
  const put = (fact: FactName, question: string, value: string | undefined): void => {
    if (value === undefined) return
    known[fact] = [...(known[fact] ?? []), { value, source: 'said', at: at(question) }]
  }

  const saidKind = chosen(replies, 'kind')
  put('kind', 'kind', saidKind)
  const kindSet = lastSet(set, 'kind')
  const kind = (kindSet?.value ?? saidKind) as Facts['kind'] | undefined
  if (kind) {
    for (const [fact, value] of Object.entries(implied(kind))) {
      known[fact as FactName] = [{ value, source: 'implied', at: kindSet?.at ?? at('kind') }]
    }
  }

  const reading = readingOf(replies)
  const saidBlocks = reading && readingStands(replies, reading) ? reading.blocks : []
  const iron = ironOf(replies)
  put('iron', 'label', iron)
  put('heat', 'label', heatOf(saidBlocks, iron).heat)
  const label = labelValue(replies)
  put('labelDoubt', 'label', label && (label.doubted ? 'yes' : 'no'))

  put('surface', 'surface', chosen(replies, 'surface'))
  put('stretch', 'stretch', chosen(replies, 'stretch'))
  put('weight', 'weight', chosen(replies, 'weight'))
  put('wear', 'wear', chosen(replies, 'wear'))
  put('pattern', 'pattern', chosen(replies, 'pattern'))
  put('printMake', 'print_make', printMakeOf(replies))
  put('graphic', 'graphic_size', graphicOf(replies, fitsAFrame))

  const history = ticked(replies, 'history')
  if (history.length > 0) {
    put('soil', 'history', saidOfCloth(replies).soil)
    put('wash', 'history', gravest(history, washes) ?? 'washed')
    put('age', 'history', gravest(history, ages) ?? 'modern')
    put('bleed', 'history', history.includes('bleeds') ? 'bleeds' : 'untested')
  }

  const photoIds = ticked(replies, 'photos')
  const spots = spotsTold(replies, { kind, photoIds, at: at('spots'), desk: deskSpots })
  for (const { fact, known: one } of factsOfSpots(spots, saidOfCloth(replies))) {
    const before = known[fact] ?? []
    // A mark is the later word, though the answer may have been sent again since.
    const since = Math.max(one.at, ...before.map((other) => other.at))
    known[fact] = [...before, { ...one, at: since }]
  }

  const details = ticked(replies, 'details')
  if (details.length > 0) {
    put('trims', 'details', gravest(details, trimmings) ?? (known.trims ? undefined : 'none'))
    put('consent', 'details', gravest(details, consents) ?? 'yes')
    put('oneWay', 'details', details.includes('one-way') ? 'yes' : 'no')
  }

  const labelSet = setLabel(set)
  for (const [fact, ones] of knownOf(set, labelSet)) known[fact] = [...(known[fact] ?? []), ...ones]

  const coloursSet = lastSet(set, 'colours')?.value.split(' ')
  const colours = coloursSet ?? ticked(replies, 'colours')

  return {
    known,
    blocks: labelSet?.blocks ?? saidBlocks,
    size: (lastSet(set, 'size')?.value ?? chosen(replies, 'size') ?? 'unknown') as Size,
    graphicInches: amount(replies, 'graphic_size') ?? null,
    mustUse: details.includes('must-use'),
    colours: colours.filter(isColourWord),
    manyColours: colours.includes('many-colours'),
    photoIds,
    spots,
  }
}
