import {
  domains,
  type FactName,
  type Facts,
  type Known,
  type Source,
  scales,
  untold,
} from './facts.ts'

type Kind = Facts['kind']

const jersey = { surface: 'knit', stretch: 'little', weight: 'medium' } as const
const fleece = { surface: 'knit', stretch: 'little', weight: 'heavy' } as const
const shirting = { surface: 'woven', stretch: 'none', weight: 'medium' } as const

/**
 * What a kind of garment surely is; the customer may say otherwise. A fact that is not here is asked.
 * Common practice, no source: where a kind comes in several cloths, the one that wants more care.
 */
const byKind: Readonly<Record<Kind, Partial<Facts>>> = {
  tshirt: jersey,
  'long-sleeve': jersey,
  polo: { ...jersey, trims: 'removable' },
  jersey: { surface: 'knit', weight: 'medium' },
  sweatshirt: fleece,
  hoodie: { ...fleece, trims: 'removable' },
  jumper: { stretch: 'much' },
  thermal: { surface: 'knit', stretch: 'much', weight: 'medium' },
  'button-shirt': { ...shirting, trims: 'removable' },
  blouse: { weight: 'fine' },
  jeans: { surface: 'woven', stretch: 'little', weight: 'heavy', trims: 'removable' },
  trousers: { trims: 'removable' },
  skirt: {},
  dress: {},
  pyjamas: { weight: 'medium' },
  'baby-suit': { ...jersey, trims: 'removable' },
  blanket: {},
  tie: { surface: 'woven', stretch: 'bias', weight: 'fine' },
  scarf: {},
  apron: shirting,
  uniform: { ...shirting, trims: 'removable' },
  swimwear: { surface: 'knit', stretch: 'two-way', weight: 'medium' },
  coat: { trims: 'removable' },
  other: {},
}

export const implied = (kind: Kind): Partial<Facts> => byKind[kind]

/**
 * Weakest first. What the customer answers stands above a reading or a measurement, since those
 * are shown as a confirmation and never overrule an answer by themselves.
 */
const strength: readonly Source[] = [
  'implied',
  'measured',
  'read',
  'said',
  'confirmed',
  'staff',
  'bench',
]

const decided = ({ source }: Known): boolean => source === 'staff' || source === 'bench'

const later = (best: Known, next: Known): Known => {
  const step = strength.indexOf(next.source) - strength.indexOf(best.source)
  return step > 0 || (step === 0 && next.at >= best.at) ? next : best
}

/** Facts of which the worst that anybody told holds until staff decide. */
const cautious = ['heat', 'iron', 'soil'] as const satisfies readonly FactName[]

const isCautious = (fact: FactName): fact is (typeof cautious)[number] =>
  (cautious as readonly string[]).includes(fact)

/** The latest word of each source, so that a changed answer replaces the one before it. */
const latestOfEach = (known: readonly Known[]): Known[] =>
  strength
    .map((source) => known.filter((one) => one.source === source))
    .filter((told) => told.length > 0)
    .map((told) => told.reduce(later))

function worst(fact: (typeof cautious)[number], known: readonly Known[]): string | undefined {
  const scale: readonly string[] = scales[fact]
  const told = new Set(latestOfEach(known).map(({ value }) => value))
  return scale.findLast((value) => told.has(value))
}

function settle(fact: FactName, known: readonly Known[]): string {
  if (known.length === 0) return untold[fact]
  const strongest = known.reduce(later)
  if (!isCautious(fact) || decided(strongest)) return strongest.value
  return worst(fact, known) ?? strongest.value
}

/** The facts that stand, from everything known of each. What nobody told counts as not told. */
export function resolve(known: Readonly<Partial<Record<FactName, readonly Known[]>>>): Facts {
  const names = Object.keys(domains) as FactName[]
  return Object.fromEntries(names.map((fact) => [fact, settle(fact, known[fact] ?? [])])) as Facts
}
