import { type Grade, type Grading, grades } from './grade.ts'
import { wishOf } from './layout-fit.ts'
import type { Method, PressPlan } from './press.ts'

/** What becomes of a garment: all that an act may better. */
export interface Outcome {
  readonly grade: Grade
  readonly wish: ReturnType<typeof wishOf>
  readonly method: Method
  readonly backing: PressPlan['backing']
  /** °C; null: no iron. */
  readonly ceilingC: number | null
  /** Ids of the layouts that it suits. */
  readonly layouts: readonly string[]
}

/** The weightiest first: the grade, the layout wished for, pressing, backing, heat, more layouts. */
export const gains = ['grade', 'layout', 'press', 'backing', 'heat', 'layouts'] as const
export type Gain = (typeof gains)[number]

export const outcomeOf = (
  { grade, press, layouts }: Grading,
  wished: string | undefined,
): Outcome => ({
  grade,
  wish: wishOf(layouts, wished),
  method: press.method,
  backing: press.backing,
  ceilingC: press.ceilingC,
  layouts: layouts.filter(({ fits }) => fits).map(({ layout }) => layout),
})

/** Cloth that needs no backing does best; a firm bond is better than a cool one, that than sewing. */
function holdRank({ backing, method }: Outcome): number {
  if (backing === 'none') return 3
  if (backing === 'sewn-in') return 0
  return method === 'fuse' ? 2 : 1
}

/** An outcome in figures, higher is better, in the order of `gains`. */
export const ranks = (outcome: Outcome): readonly number[] => [
  -grades.indexOf(outcome.grade),
  outcome.wish === 'misfit' ? 0 : 1,
  outcome.method === 'do-not-press' ? 0 : 1,
  holdRank(outcome),
  outcome.ceilingC ?? 0,
  outcome.layouts.length,
]

/** Below 0 where the first list is smaller at the first place that differs. */
export function compare(a: readonly number[], b: readonly number[]): number {
  const at = a.findIndex((value, i) => value !== b[i])
  return at < 0 ? 0 : a[at]! - b[at]!
}

const keepsLayouts = (now: Outcome, then: Outcome): boolean =>
  now.layouts.every((id) => then.layouts.includes(id))

/**
 * What is better then, where nothing is worse; else nothing. More layouts count while none is wished
 * for. A garment that stays at home is not helped by heat or backing.
 */
export function gainsOf(now: Outcome, then: Outcome): Gain[] {
  const [before, after] = [ranks(now), ranks(then)]
  if (after.some((value, i) => value < before[i]!) || !keepsLayouts(now, then)) return []
  return gains.filter((gain, i) => {
    if (after[i]! <= before[i]!) return false
    if (gain === 'layouts') return now.wish === 'undecided' && now.grade !== 'home'
    return gain === 'grade' || then.grade !== 'home'
  })
}
