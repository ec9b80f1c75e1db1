import { type Entry, follow, type Standing, standingEntries } from './follow.ts'
import { type Entered, isSound, lacking, type Situation } from './guards.ts'
import type { Guard, Move, MoveName } from './move.ts'
import { moves } from './moves.ts'
import { type State, whereabouts } from './states.ts'
import { readSubjectKey } from './subject.ts'

/** Why a move is not taken. `not-now`: no such move leads on from here; `guard`: something must be so first. */
export type Refusal =
  | { readonly why: 'not-now' }
  | { readonly why: 'guard'; readonly guard: Guard }
  | { readonly why: 'place' }
  | { readonly why: 'reason' }

export interface Asked {
  readonly subject: string
  readonly move: MoveName | 'put'
  /** Where it is afterwards; empty: where it was. */
  readonly place: string
  readonly note: string
}

/** What an admitted move comes to. */
export interface Admitted {
  readonly from: State | null
  readonly to: State
  readonly place: string | null
}

const isHere = (subject: string, state: State): boolean =>
  whereabouts(readSubjectKey(subject)!.kind, state) === 'here'

function targetOf({ to }: Move, standing: Standing | undefined): State | null {
  if (to !== 'before') return to
  return standing?.behind.at(-1) ?? null
}

function putting(asked: Asked, standing: Standing | undefined): Admitted | Refusal {
  if (!standing || !isHere(asked.subject, standing.state)) return { why: 'not-now' }
  if (asked.place === '') return { why: 'place' }
  return { from: standing.state, to: standing.state, place: asked.place }
}

/** Moves of a name that lead on from where the subject stands, whether or not their guards hold. */
function leadingOn(name: MoveName, subject: string, standing: Standing | undefined): Move[] {
  const { kind } = readSubjectKey(subject)!
  return moves.filter(
    (one) =>
      one.kind === kind &&
      one.move === name &&
      (standing ? one.from.includes(standing.state) : one.from.length === 0),
  )
}

/** Whether a move may be made as things stand, and what it comes to. */
export function admit(asked: Asked, situation: Situation): Admitted | Refusal {
  const standing = situation.subjects.get(asked.subject)
  if (asked.move === 'put') return putting(asked, standing)
  const leading = leadingOn(asked.move, asked.subject, standing)
  const move = leading.find((one) => lacking(one, asked.subject, situation).length === 0)
  if (!move) {
    const [first] = leading
    return first
      ? { why: 'guard', guard: lacking(first, asked.subject, situation)[0]! }
      : { why: 'not-now' }
  }
  const to = targetOf(move, standing)
  if (!to) return { why: 'not-now' }
  if (move.reason && asked.note === '') return { why: 'reason' }
  const place = isHere(asked.subject, to) ? asked.place || standing?.place || null : null
  if (isHere(asked.subject, to) && place === null) return { why: 'place' }
  return { from: standing?.state ?? null, to, place }
}

/** A move as a page offers it: open, or shut with what must be so first. */
export interface Offered {
  readonly move: Move
  readonly to: State
  readonly shut: readonly Guard[]
}

/** The moves that lead on from where a subject stands. A parcel to come out of is chosen with the move itself. */
export function offered(subject: string, situation: Situation): Offered[] {
  const standing = situation.subjects.get(subject)
  if (!standing) return []
  const { kind } = readSubjectKey(subject)!
  const all = moves
    .filter((one) => one.kind === kind && one.from.includes(standing.state))
    .flatMap((move) => {
      const to = targetOf(move, standing)
      if (!to) return []
      const shut = lacking(move, subject, situation).filter((guard) => guard !== 'parcel-open')
      return [{ move, to, shut }]
    })
  // Of a thing that is missed one way back alone makes sense.
  return all.filter(({ shut }) => !shut.includes('never-here') && !shut.includes('was-here'))
}

function enteredOf(entries: readonly Entry[]): Entered {
  const subjects = new Set(entries.map(({ subject }) => subject))
  return new Map(
    [...subjects].map((subject) => {
      const standing = standingEntries(entries.filter((one) => one.subject === subject))
      return [subject, new Set(standing.flatMap(({ to }) => to ?? []))]
    }),
  )
}

/**
 * Whether the newest entry of a subject may be taken back: what others rest on must stay. Null: it may not, or
 * there is none.
 */
export function undoing(subject: string, entries: readonly Entry[]): Entry | null {
  const newest = follow(entries).get(subject)?.newest
  if (!newest) return null
  const left = [
    ...entries,
    { ...newest, seq: entries.at(-1)!.seq + 1, move: 'undo' as const, undoes: newest.seq },
  ]
  return isSound(follow(left), enteredOf(left)) ? newest : null
}
