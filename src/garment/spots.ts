import type { Facts } from './facts.ts'

/** What may be marked on the picture of a garment: cloth that is cut around. */
export const spotKinds = ['hole', 'stain', 'thin'] as const
export type SpotKind = (typeof spotKinds)[number]

/** A part of a garment as a person names it. Left and right are the wearer's. */
export type Part =
  | 'front'
  | 'back'
  | 'left-front'
  | 'right-front'
  | 'left-sleeve'
  | 'right-sleeve'
  | 'left-leg-front'
  | 'right-leg-front'
  | 'left-leg-back'
  | 'right-leg-back'
  | 'cloth'
  | 'wide-end'
  | 'narrow-end'

/** A hole, a stain or a thin place, and the part it lies in; null: nobody knows which. */
export interface Spot {
  readonly what: SpotKind
  readonly part: Part | null
}

/** Parts by the name of the panel they become, in the order in which that panel's copies are told. */
type Parts = Readonly<Record<string, readonly Part[]>>

const closed: Parts = {
  front: ['front'],
  back: ['back'],
  sleeve: ['left-sleeve', 'right-sleeve'],
}
// The pocketed front is told last, and a breast pocket sits on the wearer's left.
const open: Parts = {
  'half-front': ['right-front', 'left-front'],
  back: ['back'],
  sleeve: ['left-sleeve', 'right-sleeve'],
}
const trunk: Parts = { front: ['front'], back: ['back'] }
const legs: Parts = {
  leg: ['left-leg-front', 'right-leg-front', 'left-leg-back', 'right-leg-back'],
}
const flat: Parts = { cloth: ['cloth'] }

const byKind: Readonly<Record<Facts['kind'], Parts>> = {
  tshirt: closed,
  'long-sleeve': closed,
  polo: closed,
  jersey: closed,
  sweatshirt: closed,
  hoodie: closed,
  jumper: closed,
  thermal: closed,
  'button-shirt': open,
  blouse: open,
  jeans: legs,
  trousers: legs,
  skirt: { cloth: ['front', 'back'] },
  dress: trunk,
  pyjamas: open,
  'baby-suit': trunk,
  blanket: flat,
  tie: { 'tie-end': ['wide-end', 'narrow-end'] },
  scarf: flat,
  apron: flat,
  uniform: open,
  swimwear: trunk,
  coat: open,
  other: {},
}

/** The parts that a kind of garment is taken apart into; empty where only looking tells. */
export const partsOf = (kind: Facts['kind']): readonly Part[] => Object.values(byKind[kind]).flat()

/** The part that each copy of a panel is, by the panel's name and its place among those of that name. */
export const partAt = (kind: Facts['kind'], panel: string, copy: number): Part | null =>
  byKind[kind][panel]?.[copy] ?? null
