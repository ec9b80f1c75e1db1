import { type Entry, follow, standingEntries } from './follow.ts'
import { readSubjectKey } from './subject.ts'

/** Garments whose pieces are cut, by their numbers: the seq of the entry that cut each. */
export type Cuts = ReadonlyMap<number, number>

/** Of what lies cut and is not sewn yet. */
export function cutsOf(entries: readonly Entry[]): Cuts {
  const cuts = new Map<number, number>()
  for (const { subject, state } of follow(entries).values()) {
    const { kind, n } = readSubjectKey(subject)!
    const by = kind === 'garment' && state === 'cut' ? cutBy(entries, n) : undefined
    if (by !== undefined) cuts.set(n, by)
  }
  return cuts
}

const cutBy = (entries: readonly Entry[], item: number): number | undefined =>
  standingEntries(entries.filter(({ subject }) => subject === String(item))).findLast(
    ({ move }) => move === 'cut',
  )?.seq

/**
 * Whether the pieces that were laid out are still those of the quilt: each lies cut as it was or is sewn by now, and
 * nothing else was cut since. A cut that was taken back and made again is another cut.
 */
export function areStillCut(laid: Cuts, entries: readonly Entry[]): boolean {
  const subjects = follow(entries)
  const isThere = ([item, by]: readonly [number, number]): boolean => {
    const state = subjects.get(String(item))?.state
    return (state === 'cut' || state === 'sewn') && cutBy(entries, item) === by
  }
  return [...laid].every(isThere) && [...cutsOf(entries).keys()].every((item) => laid.has(item))
}

/** Numbers of those of them that are sewn by now. */
export const sewnOf = (laid: Cuts, entries: readonly Entry[]): number[] => {
  const subjects = follow(entries)
  return [...laid.keys()].filter((item) => subjects.get(String(item))?.state === 'sewn')
}

/** An act of showing the laid-out quilt to its customer: it is laid out, they say yes, or wish for a change. */
export interface LaidAct {
  readonly seq: number
  readonly kind: 'laid' | 'yes' | 'change'
  /** The seq of the laying that it answers; of a laying its own. */
  readonly of: number
}

/**
 * What the acts of a pile that were not taken back come to: the newest laying, and the newest answer to it. An answer
 * to an older one counts no more.
 */
export function answeredOf<A extends LaidAct>(
  acts: readonly A[],
): { readonly laid: A | null; readonly answer: A | null } {
  const laid = acts.findLast(({ kind }) => kind === 'laid') ?? null
  const answer = acts.findLast(({ kind, of }) => kind !== 'laid' && of === laid?.seq) ?? null
  return { laid, answer }
}
