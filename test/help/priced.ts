import type { Facts, Size } from '../../src/garment/facts.ts'
import { grade } from '../../src/garment/grade.ts'
import type { Priced } from '../../src/quilt/choices.ts'
import type { GivenPieces } from '../../src/quilt/settled.ts'
import { plainShirt } from './garments.ts'
import { knowledge } from './knowledge.ts'

/** A garment as an estimate takes it. */
export function priced(facts: Facts, size: Size, n = 1): Priced {
  const grading = grade(facts, { recipient: 'adult' }, knowledge)
  return { n, kind: facts.kind, size, facts, grading }
}

export const shirt = (told: Partial<Facts> = {}, size: Size = 'L', n = 1): Priced =>
  priced({ ...plainShirt, ...told }, size, n)

/** Shirts alike, numbered from 1. */
export const shirts = (count: number, told: Partial<Facts> = {}): Priced[] =>
  Array.from({ length: count }, (_, i) => shirt(told, 'L', i + 1))

/** Squares that a garment gives to the first quilt, as cut. */
export const squaresOf = (
  garment: number,
  count: number,
  side = 6.5,
  role = 'focal',
): GivenPieces => ({ garment, role, size: { w: side, h: side }, count, quilt: 0 })
