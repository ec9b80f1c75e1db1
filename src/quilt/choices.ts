import type { Facts } from '../garment/facts.ts'
import { sizesOf } from '../garment/garment-sizes.ts'
import type { Grading } from '../garment/grade.ts'
import type { GarmentSize } from '../garment/panels.ts'
import type { PressPlan } from '../garment/press.ts'
import type { Spot } from '../garment/spots.ts'
import { postWeight } from './post-weight.ts'
import type { Rates } from './rates.ts'
import type { Wish } from './wish.ts'

/**
 * What is still open in a pile, as the sets of what each thing may turn out to be: the likely one
 * stands first. To learn a fact is to take a part of its set, so a range over all choices can only
 * shrink as facts firm up.
 */
export interface Choices {
  readonly quilts: readonly Wish[]
  /** How many quilts of the same kind and size the pile makes. */
  readonly alike: number
  readonly garments: readonly GarmentChoices[]
}

export interface Priced {
  /** Its number in the pile, by which a plan calls it. */
  readonly n: number
  readonly kind: Facts['kind']
  readonly size: GarmentSize
  readonly facts: Facts
  /** Holes, stains and thin places that somebody marked. */
  readonly spots?: readonly Spot[]
  readonly grading: Pick<Grading, 'grade' | 'press' | 'layouts'>
}

export interface GarmentChoices {
  readonly n: number
  readonly kind: Facts['kind']
  readonly used: readonly boolean[]
  readonly sizes: readonly GarmentSize[]
  /** What it may weigh in the post. */
  readonly grams: readonly number[]
  readonly wears: readonly Facts['wear'][]
  readonly spots?: readonly Spot[] | undefined
  readonly holds: readonly Hold[]
  /** By layout, whether its cloth may go into it; the likely answer first. */
  readonly suits: Readonly<Record<string, readonly boolean[]>>
}

/** What goes behind the cloth; `class` is null for what is sewn in. */
export interface Hold {
  readonly backing: PressPlan['backing']
  readonly class: string | null
}

/** Facts that may still change whether the cloth is backed, and with what. */
const settlesBacking = [
  'heat',
  'surface',
  'stretch',
  'weight',
  'wear',
  'age',
  'printMake',
  'trims',
] as const

const backingIsOpen = ({ facts, grading: { press } }: Priced): boolean =>
  settlesBacking.some((fact) => facts[fact] === 'unknown') ||
  facts.iron === 'missing' ||
  (press.backing === 'fused' && press.testFirst && facts.test === 'none')

function holdsOf(garment: Priced, classes: readonly string[]): Hold[] {
  const { backing, interfacing } = garment.grading.press
  const likely: Hold = { backing, class: interfacing }
  if (!backingIsOpen(garment)) return [likely]
  const others: Hold[] = [
    { backing: 'none', class: null },
    { backing: 'sewn-in', class: null },
    ...classes.map((name): Hold => ({ backing: 'fused', class: name })),
  ]
  return [likely, ...others]
}

/** Facts that may still change which layouts the cloth suits. */
const settlesFit = [
  'pattern',
  'surface',
  'weight',
  'oneWay',
  'graphic',
  'consent',
  'yield',
] as const

function suitsOf({ facts, grading: { layouts } }: Priced): GarmentChoices['suits'] {
  const open = settlesFit.some((fact) => facts[fact] === 'unknown')
  return Object.fromEntries(
    layouts.map(({ layout, fits }) => [layout, open ? [fits, !fits] : [fits]]),
  )
}

function usedOf({ facts, grading: { grade } }: Priced): boolean[] {
  if (grade === 'home') return [false]
  const open = grade === 'eyes' || facts.graphic === 'unknown' || facts.yield === 'unknown'
  return open ? [true, false] : [true]
}

function sizesOpen({ kind, size }: Priced): readonly GarmentSize[] {
  if (size !== 'unknown') return [size]
  const all = sizesOf(kind)
  const likely = all.includes('M') ? 'M' : all[all.length >> 1]
  return likely ? [likely, ...all.filter((one) => one !== likely)] : ['unknown']
}

/** A garment of unknown size is taken for as heavy as one of its kind in L, and may be any. */
function gramsOf({ kind, size }: Priced, rates: Rates): number[] {
  const all = [size, ...(size === 'unknown' ? sizesOf(kind) : [])]
  return all.map((one) => postWeight(kind, one, rates).grams)
}

/** Everything a garment may turn out to be. */
export const choicesOf = (garment: Priced, rates: Rates): GarmentChoices => ({
  n: garment.n,
  kind: garment.kind,
  used: usedOf(garment),
  sizes: sizesOpen(garment),
  wears: garment.facts.wear === 'unknown' ? ['sound', 'holes'] : [garment.facts.wear],
  spots: garment.spots,
  grams: gramsOf(garment, rates),
  holds: holdsOf(garment, Object.keys(rates.interfacing)),
  suits: suitsOf(garment),
})

const first = <T>(options: readonly T[]): readonly T[] => options.slice(0, 1)

/** Why an estimate is wide, and the choices when only that reason stays open. */
export const widths = {
  'layout-undecided': ({ quilts }: Choices, likely: Choices): Choices => ({
    ...likely,
    quilts: quilts.filter(({ size }) => size === quilts[0]!.size),
  }),
  'quilt-size-undecided': ({ quilts }: Choices, likely: Choices): Choices => ({
    ...likely,
    quilts: quilts.filter(({ layout }) => layout.id === quilts[0]!.layout.id),
  }),
  'needs-a-person': (all: Choices, likely: Choices): Choices =>
    keep(all, likely, ['used', 'suits']),
  'garment-size-unknown': (all: Choices, likely: Choices): Choices =>
    keep(all, likely, ['sizes', 'grams']),
  'wear-unknown': (all: Choices, likely: Choices): Choices => keep(all, likely, ['wears']),
  'backing-undecided': (all: Choices, likely: Choices): Choices => keep(all, likely, ['holds']),
} as const

export type WidthCode = keyof typeof widths

function keep(all: Choices, likely: Choices, parts: readonly (keyof GarmentChoices)[]): Choices {
  return {
    ...likely,
    garments: likely.garments.map((garment, n) => ({
      ...garment,
      ...Object.fromEntries(parts.map((part) => [part, all.garments[n]![part]])),
    })),
  }
}

/** The likely choice of everything. */
export const pinned = ({ quilts, alike, garments }: Choices): Choices => ({
  quilts: first(quilts),
  alike,
  garments: garments.map(({ n, kind, used, sizes, grams, wears, spots, holds, suits }) => ({
    n,
    kind,
    used: first(used),
    sizes: first(sizes),
    grams: first(grams),
    wears: first(wears),
    spots,
    holds: first(holds),
    suits: Object.fromEntries(
      Object.entries(suits).map(([layout, options]) => [layout, first(options)]),
    ),
  })),
})
