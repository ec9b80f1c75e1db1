import { canonical } from '../base/ids.ts'
import { grades } from '../garment/grade.ts'
import type { PressPlan } from '../garment/press.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Garment, Pile } from '../intake/pile.ts'
import { priced } from '../intake/priced.ts'
import { toPlan } from '../intake/to-plan.ts'
import type { Estimate } from '../quilt/estimate.ts'
import { type PriceChange, priceChange } from '../quilt/price-change.ts'
import { ratesAt } from '../quilt/rates.ts'
import type { PileStatus } from '../store/schema.ts'
import { declinedOf, gradeDecided, type Verdicts } from './consequences.ts'

/*
 * What other files of the owner's would change in a pile: the same acts, derived by what is live and by a draft,
 * side by side. Pure.
 */

/** Null before it is graded. */
type GradeName = (typeof grades)[number] | null

export interface PressTold {
  readonly method: PressPlan['method']
  readonly backing: PressPlan['backing']
  readonly interfacing: string | null
  readonly ceilingC: number | null
}

/** Codes that are there by the draft alone, and by what is live alone. */
export interface Turned {
  readonly came: readonly string[]
  readonly gone: readonly string[]
}

export interface GarmentImpact {
  readonly n: number
  readonly code: string
  readonly name: string | null
  readonly kind: string
  /** The same on both sides where other things change. */
  readonly grade: { readonly from: GradeName; readonly to: GradeName }
  readonly flags: Turned
  /** Ids of layouts that suit it. */
  readonly fits: Turned
  /** Null: pressed as before. */
  readonly press: { readonly from: PressTold; readonly to: PressTold } | null
}

/** Minor units of `currency`, likely figures. */
export interface PriceImpact {
  /** Whether the price changes as soon as the draft is live, or with the pile's next change on that day or later. */
  readonly when: 'at-once' | 'when-changed'
  readonly from: number
  readonly to: number
  readonly lines: PriceChange['lines']
  readonly currency: string
}

export interface PileImpact {
  readonly number: number
  readonly status: PileStatus
  readonly garments: readonly GarmentImpact[]
  /** The layout that it is counted for; null: the same. */
  readonly layout: { readonly from: string; readonly to: string } | null
  /** Whether something else is asked of the planning. */
  readonly plan: boolean
  readonly price: PriceImpact | null
  /** Why it could not be reckoned by the draft; null: it could. */
  readonly fails: string | null
}

/** A pile by what is live and by the draft. */
export interface BothWays {
  readonly live: Pile
  readonly draft: Pile
}

export interface Beside {
  readonly live: Knowledge
  readonly draft: Knowledge
  /** YYYY-MM-DD: prices of this day are compared where those of the pile's own day stay. */
  readonly day: string
}

function turned(before: readonly string[], after: readonly string[]): Turned {
  return {
    came: [...new Set(after)].filter((one) => !before.includes(one)),
    gone: [...new Set(before)].filter((one) => !after.includes(one)),
  }
}

const nothing = ({ came, gone }: Turned): boolean => came.length === 0 && gone.length === 0

const codes = ({ grading }: Garment): string[] => grading?.flags.map(({ code }) => code) ?? []

const fitting = ({ grading }: Garment): string[] =>
  grading?.layouts.filter(({ fits }) => fits).map(({ layout }) => layout) ?? []

const pressOf = ({ grading }: Garment): PressTold | null =>
  grading && {
    method: grading.press.method,
    backing: grading.press.backing,
    interfacing: grading.press.interfacing,
    ceilingC: grading.press.ceilingC,
  }

const same = (a: unknown, b: unknown): boolean => canonical(a) === canonical(b)

function garmentImpact(live: Garment, draft: Garment): GarmentImpact | null {
  if (live.dropped || !live.grading || !draft.grading) return null
  const grade = { from: live.grading.grade, to: draft.grading.grade }
  const flags = turned(codes(live), codes(draft))
  const fits = turned(fitting(live), fitting(draft))
  const [from, to] = [pressOf(live)!, pressOf(draft)!]
  const press = same(from, to) ? null : { from, to }
  if (grade.from === grade.to && nothing(flags) && nothing(fits) && !press) return null
  const { n, code, name, facts } = live
  return { n, code, name, kind: facts.kind, grade, flags, fits, press }
}

/** What a plan follows from, with what staff decided; lightness of cloth, which no file changes, left out. */
function askedOf(pile: Pile, verdicts: Verdicts): unknown {
  const asked = toPlan(
    { pile, cloths: [] },
    {
      standing: ({ n, grading }) => {
        const verdict = verdicts.get(n)
        if (verdict === 'decline') return 'declined'
        return verdict ? gradeDecided[verdict] : (grading?.grade ?? null)
      },
    },
  )
  return { layout: asked.layout.id, size: asked.size, pile: asked.pile }
}

function priceImpact(
  from: Estimate | null,
  to: Estimate | null,
  when: PriceImpact['when'],
): PriceImpact | null {
  if (!from || !to) return null
  const { lines, totalMinor, currency } = priceChange(from, to)
  if (lines.length === 0 && totalMinor === 0 && from.currency === currency) return null
  return { when, from: from.total.likely, to: to.total.likely, lines, currency }
}

/** A pile whose price stays as it is keeps the rates of the day it last changed; asked of `day` it may have others. */
function priceOf({ live, draft }: BothWays, verdicts: Verdicts, beside: Beside) {
  const without = declinedOf(verdicts)
  const atOnce = priceImpact(
    live.priced(null, { without }),
    draft.priced(null, { without }),
    'at-once',
  )
  if (atOnce || same(beside.live.rates, beside.draft.rates)) return atOnce
  const onDay = (pile: Pile, { rates, layouts }: Knowledge) =>
    priced(
      { garments: pile.garments, wish: pile.wish, rates: ratesAt(rates, beside.day) },
      layouts,
      null,
      { without },
    )
  return priceImpact(onDay(live, beside.live), onDay(draft, beside.draft), 'when-changed')
}

/** What the draft changes in a pile; null: nothing. */
export function pileImpact(
  { number, status }: Pick<PileImpact, 'number' | 'status'>,
  both: BothWays,
  verdicts: Verdicts,
  beside: Beside,
): PileImpact | null {
  const { live, draft } = both
  const garments = live.garments.flatMap(
    (garment, i) => garmentImpact(garment, draft.garments[i]!) ?? [],
  )
  const ids = { from: live.wish.layout.id, to: draft.wish.layout.id }
  const layout = ids.from === ids.to ? null : ids
  const plan = !same(askedOf(live, verdicts), askedOf(draft, verdicts))
  const price = priceOf(both, verdicts, beside)
  if (garments.length === 0 && !layout && !plan && !price) return null
  return { number, status, garments, layout, plan, price, fails: null }
}

const rank = (grade: GradeName): number => (grade === null ? 0 : grades.indexOf(grade))

/** By how many grades a garment falls; below zero it rises. */
export const fallOf = ({ grade }: GarmentImpact): number => rank(grade.to) - rank(grade.from)

const gradeSteps = ({ garments }: PileImpact): number =>
  garments.reduce((sum, garment) => sum + Math.abs(fallOf(garment)), 0)

const priceStep = ({ price }: PileImpact): number => (price ? Math.abs(price.to - price.from) : 0)

/** Larger changes first: what fails, then grades by how far they move, then money, then how many garments. */
export const largestFirst = (a: PileImpact, b: PileImpact): number =>
  Number(b.fails !== null) - Number(a.fails !== null) ||
  gradeSteps(b) - gradeSteps(a) ||
  priceStep(b) - priceStep(a) ||
  b.garments.length - a.garments.length ||
  a.number - b.number

export interface ImpactCounts {
  readonly piles: number
  readonly garments: number
  readonly changed: number
  readonly regraded: number
  readonly better: number
  readonly worse: number
  /** Garments whose grade stays and whose reasons are others. */
  readonly reasons: number
  readonly pressed: number
  readonly fits: number
  readonly plans: number
  readonly repriced: number
  readonly fails: number
}

/** Counts over some changed piles of so many that were looked at. */
export function countImpacts(
  impacts: readonly PileImpact[],
  looked: { readonly piles: number; readonly garments: number },
): ImpactCounts {
  const garments = impacts.flatMap((one) => one.garments)
  const count = (is: (one: GarmentImpact) => boolean) => garments.filter(is).length
  return {
    ...looked,
    changed: impacts.length,
    regraded: count((one) => fallOf(one) !== 0),
    better: count((one) => fallOf(one) < 0),
    worse: count((one) => fallOf(one) > 0),
    reasons: count((one) => fallOf(one) === 0 && !nothing(one.flags)),
    pressed: count(({ press }) => press !== null),
    fits: count(({ fits }) => !nothing(fits)),
    plans: impacts.filter(({ plan }) => plan).length,
    repriced: impacts.filter(({ price }) => price !== null).length,
    fails: impacts.filter(({ fails }) => fails !== null).length,
  }
}
