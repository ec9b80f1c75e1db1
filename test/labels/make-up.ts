import type { FibreKey } from '../../src/textile/fibres.ts'
import { labelLanguages } from '../../src/textile/languages/all.ts'
import type { Section } from '../../src/textile/languages/types.ts'
import type { Chance } from '../help/chance.ts'
import type { DrawnLanguage } from './phrases.ts'
import type { TrueBlock, TrueShare } from './truth.ts'

/** What garments are made of, about as often as it is met. */
const often = {
  cotton: 30,
  polyester: 25,
  viscose: 8,
  polyamide: 8,
  wool: 6,
  acrylic: 5,
  linen: 4,
  modal: 3,
  lyocell: 2,
  silk: 2,
  cashmere: 2,
  virgin_wool: 1,
  acetate: 1,
  mohair: 0.7,
  alpaca: 0.7,
  cupro: 0.5,
  hemp: 0.4,
} satisfies Partial<Record<FibreKey, number>>

/** Fibres that are only ever a little of a cloth. */
const little: readonly FibreKey[] = ['elastane', 'elastane', 'elastane', 'metallised']

const secondParts: readonly Section[] = [
  'lining',
  'lining',
  'rib',
  'filling',
  'sleeve',
  'pocket',
  'collar',
]

const languageOf = new Map(labelLanguages.map((language) => [language.code, language]))

const namesOf = (fibre: FibreKey, language: DrawnLanguage): readonly string[] =>
  languageOf.get(language)!.fibres[fibre]?.names ?? []

export const nameOf = (fibre: FibreKey, language: DrawnLanguage, chance: Chance): string =>
  // The first name is the usual one.
  chance.happens(0.8) ? namesOf(fibre, language)[0]! : chance.one(namesOf(fibre, language))

export const partName = (section: string, language: DrawnLanguage, chance: Chance): string =>
  chance.one(languageOf.get(language)!.sections[section as Section]!.slice(0, 3))

/** The make-up of one garment, of fibres that all the languages name. */
export function drawBlocks(
  chance: Chance,
  languages: readonly DrawnLanguage[],
  { fibres, parts: mayPart = true }: { fibres?: readonly FibreKey[]; parts?: boolean },
): TrueBlock[] {
  const named = (fibre: FibreKey) =>
    (fibres?.includes(fibre) ?? true) &&
    languages.every((language) => namesOf(fibre, language).length > 0)
  const draw = () => drawShares(chance, named)
  if (!mayPart || !chance.happens(0.16)) return [{ section: null, fibres: draw() }]
  const parts = ['body', chance.one(secondParts)]
  return parts.map((section) => ({ section, fibres: draw() }))
}

function drawShares(chance: Chance, named: (fibre: FibreKey) => boolean): TrueShare[] {
  const count = Number(chance.weighed({ 1: 26, 2: 44, 3: 22, 4: 8 }))
  const weights = Object.fromEntries(
    Object.entries(often).filter(([key]) => named(key as FibreKey)),
  )
  const found = new Set<FibreKey>()
  const littles = little.filter(named)
  const last = count > 1 && littles.length > 0 && chance.happens(0.4) ? chance.one(littles) : null
  const most = Math.min(count - (last ? 1 : 0), Object.keys(weights).length)
  while (found.size < most) found.add(chance.weighed(weights) as FibreKey)

  const small = last ? chance.whole(1, 8) : 0
  const percents = parted(chance, 100 - small, found.size)
  const shares = [...found].map((fibre, at) => ({ fibre, percent: percents[at]! }))
  return last ? [...shares, { fibre: last, percent: small }] : shares
}

/** A whole parted into so many shares, the largest first, often in fives. */
function parted(chance: Chance, whole: number, count: number): number[] {
  const step = chance.happens(0.65) ? 5 : 1
  const shares: number[] = []
  let left = whole
  for (let others = count - 1; others > 0; others--) {
    const most = left - others * 5
    const least = Math.max(5, Math.ceil(left / (others + 1)))
    const share = Math.round(chance.whole(least, Math.max(least, most)) / step) * step
    shares.push(Math.min(most, Math.max(5, share)))
    left -= shares.at(-1)!
  }
  return [...shares, left].sort((a, b) => b - a)
}
