import type { Finding } from '../flow/finding.ts'
import type { Db } from '../store/schema.ts'
import { countImpacts, type ImpactCounts, largestFirst, type PileImpact } from './impact.ts'
import { agreedPiles, countToTry, pilesToTry } from './piles-to-try.ts'
import type { PileToTry, Said, Trying } from './try-flows.ts'

/** What a draft changes, over every pile that is not decided. */
export interface ImpactReport {
  /** YYYY-MM-DD: `when-changed` prices are those of this day. */
  readonly day: string
  /** Piles there were to look at; fewer were where the time was up. */
  readonly total: number
  readonly cutOff: boolean
  readonly counts: ImpactCounts
  /** The largest first. */
  readonly changes: readonly PileImpact[]
  /** Changed piles that are counted and not listed. */
  readonly unlisted: number
  /** Numbers of piles whose agreed offer stands, whatever files say. */
  readonly agreed: readonly number[]
  /** The draft's words for what the changes name. */
  readonly said: Said
}

/** A report, or what the start would refuse the files for. */
export type TriedReport =
  | { readonly findings: readonly Finding[]; readonly report: null }
  | { readonly findings: readonly []; readonly report: ImpactReport }

/** Something that compares piles: here, or on a thread of its own. Null: its time was up, or it failed. */
export interface Compares {
  readonly day: string
  readonly said: Said
  of(piles: readonly PileToTry[]): Promise<readonly ReturnType<Trying['of']>[] | null>
}

/** So many changed piles are listed. */
const mostListed = 200

function wordsFor(impacts: readonly PileImpact[], said: Said): Said {
  const keys = new Set(
    impacts.flatMap(({ garments, layout }) => [
      ...(layout ? [layout.from, layout.to] : []).map((id) => `trade.layouts.${id}`),
      ...garments.flatMap(({ flags, fits }) => [
        ...[...flags.came, ...flags.gone].map((code) => `trade.flags.${code}.message`),
        ...[...fits.came, ...fits.gone].map((id) => `trade.layouts.${id}`),
      ]),
    ]),
  )
  return Object.fromEntries(
    Object.entries(said).map(([code, all]) => [
      code,
      Object.fromEntries(
        Object.entries(all).filter(([key]) =>
          [...keys].some((one) => key === one || key.startsWith(`${one}.`)),
        ),
      ),
    ]),
  )
}

/** Compares every undecided pile, the newest first, as long as `compares` answers. */
export async function impactReport(db: Db, compares: Compares): Promise<ImpactReport> {
  const total = await countToTry(db)
  const impacts: PileImpact[] = []
  const looked = { piles: 0, garments: 0 }
  let cutOff = false
  for await (const piles of pilesToTry(db)) {
    const found = await compares.of(piles)
    if (!found) {
      cutOff = true
      break
    }
    looked.piles += found.length
    for (const { impact, garments } of found) {
      looked.garments += garments
      if (impact) impacts.push(impact)
    }
  }
  const changes = impacts.toSorted(largestFirst).slice(0, mostListed)
  return {
    day: compares.day,
    total,
    cutOff,
    counts: countImpacts(impacts, looked),
    changes,
    unlisted: impacts.length - changes.length,
    agreed: await agreedPiles(db),
    said: wordsFor(changes, compares.said),
  }
}
