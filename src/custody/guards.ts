import type { Standing } from './follow.ts'
import type { Guard, Move } from './move.ts'
import type { State } from './states.ts'
import { readSubjectKey } from './subject.ts'

/** What the customer wants done with the cloth that is left over; null: they have not said. */
export const leftoverChoices = ['return', 'keep-for-repair', 'give-away', 'discard'] as const

export type LeftoverChoice = (typeof leftoverChoices)[number]

/** What the records say of one garment before it is cut. */
export interface CutRecord {
  /** A photo of it is kept. */
  readonly photo: boolean
  /** The customer lets it be cut, whole or but for marked spots. */
  readonly consent: boolean
  /** Accounts' ids; null: nobody. */
  readonly askedBy: string | null
  readonly releasedBy: string | null
}

const nothingRecorded: CutRecord = {
  photo: false,
  consent: false,
  askedBy: null,
  releasedBy: null,
}

/** What is known of a pile outside of its entries. */
export interface PileFacts {
  /** The workshop accepted it. */
  readonly accepted: boolean
  /** Numbers of garments that were declined, or that wait for an answer. */
  readonly notTaken: readonly number[]
  /** The finished quilt was signed off, and what the customer then chose; null: it was not. */
  readonly signedOff: { readonly leftovers: LeftoverChoice } | null
  /** By the garment's number. */
  readonly cutting: ReadonlyMap<number, CutRecord>
  /** Numbers of garments that an incident stopped. */
  readonly stopped: readonly number[]
  /** Numbers of garments whose pieces, as they are cut, the customer has seen laid out and said yes to. */
  readonly seen: readonly number[]
}

/** What stands when a move is asked for. */
export interface Situation {
  readonly pile: PileFacts
  readonly subjects: ReadonlyMap<string, Standing>
  /** The key of the parcel that the move names; null: none. */
  readonly via: string | null
}

/** What is asked before a blade touches a garment. */
export interface CutFacts extends CutRecord {
  readonly accepted: boolean
  readonly taken: boolean
}

export const cutLacks = ['accepted', 'taken', 'photo', 'consent', 'asked', 'released'] as const

export type CutLack = (typeof cutLacks)[number]

/** What is still lacking before a garment may be cut, in the order in which it is seen to. */
export const lackingToCut = (facts: CutFacts): CutLack[] => {
  const { accepted, taken, photo, consent, askedBy, releasedBy } = facts
  const there: Readonly<Record<CutLack, boolean>> = {
    accepted,
    taken,
    photo,
    consent,
    asked: askedBy !== null,
    released: releasedBy !== null && releasedBy !== askedBy,
  }
  return cutLacks.filter((one) => !there[one])
}

/** Whether a garment may be cut: nothing is lacking, and two different people said so. */
export const mayCut = (facts: CutFacts): boolean => lackingToCut(facts).length === 0

/** What is asked of one garment of a pile before it is cut. */
export const cutFacts = (pile: PileFacts, item: number): CutFacts => ({
  accepted: pile.accepted,
  taken: !pile.notTaken.includes(item),
  ...(pile.cutting.get(item) ?? nothingRecorded),
})

/** States in which a garment's cloth is apart and in the house. */
const apartStates: readonly State[] = ['torn-down', 'stabilised', 'cut', 'sewn', 'withdrawn']

/** States of a garment that has passed the box check, in the house. */
const checked: readonly State[] = ['held', ...apartStates]

const openParcel: readonly State[] = ['arrived', 'unpacked']

function parentOf(subject: string, { subjects }: Situation): Standing | undefined {
  const { of } = readSubjectKey(subject)!
  return subjects.get(String(of))
}

/** Things that were found in a garment. Only what is in the house has a place. */
const foundIn = (garment: string, subjects: ReadonlyMap<string, Standing>): Standing[] =>
  [...subjects.values()].filter(
    ({ subject, via }) => via === garment && readSubjectKey(subject)!.kind === 'found',
  )

/** Numbers of the garments whose pieces lie cut and are not sewn. */
const cutAmong = (subjects: ReadonlyMap<string, Standing>): number[] =>
  [...subjects.values()].flatMap(({ subject, state }) => {
    const { kind, n } = readSubjectKey(subject)!
    return kind === 'garment' && state === 'cut' ? [n] : []
  })

/** A garment that was withdrawn may never have been taken apart. */
function isApart(parent: Standing | undefined): boolean {
  if (!parent || !apartStates.includes(parent.state)) return false
  const state = parent.state === 'withdrawn' ? parent.behind.at(-1) : parent.state
  return state !== undefined && apartStates.includes(state)
}

function holds(guard: Guard, subject: string, situation: Situation): boolean {
  const { pile, subjects, via } = situation
  const { kind, of, n } = readSubjectKey(subject)!
  const item = kind === 'leftover' ? of : n
  const taken = !pile.notTaken.includes(item)
  const choice = pile.signedOff?.leftovers ?? null
  const before = subjects.get(subject)?.behind[0] ?? null
  switch (guard) {
    case 'accepted':
      return pile.accepted
    case 'taken':
      return taken
    case 'may-cut':
      return mayCut(cutFacts(pile, item))
    case 'not-stopped':
      return !pile.stopped.includes(item)
    case 'quilt-seen':
      return cutAmong(subjects).every((one) => pile.seen.includes(one))
    case 'found-gone':
      return foundIn(subject, subjects).every(({ place }) => place === null)
    case 'signed-off':
      return pile.signedOff !== null
    case 'choice-return':
      return choice === 'return' || choice === 'keep-for-repair'
    case 'choice-repair':
      return choice === 'keep-for-repair'
    case 'choice-give':
      return choice === 'give-away'
    case 'choice-discard':
      return choice === 'discard'
    case 'parcel-open':
      return via !== null && openParcel.includes(subjects.get(via)?.state ?? 'missing')
    case 'never-here':
      return before === 'expected'
    case 'was-here':
      return before !== null && before !== 'expected'
    case 'parent-apart':
      return isApart(parentOf(subject, situation))
    case 'parent-here':
      return via !== null && checked.includes(subjects.get(via)?.state ?? 'missing')
    case 'not-needed':
      return !pile.accepted || !taken || pile.signedOff !== null
  }
}

/** The guards of a move that do not hold. */
export const lacking = (move: Move, subject: string, situation: Situation): Guard[] =>
  move.guards.filter((guard) => !holds(guard, subject, situation))

/** The states that the standing entries of each subject once led to. */
export type Entered = ReadonlyMap<string, ReadonlySet<State>>

/**
 * Whether everything still makes sense beside each other: no bag of leftovers whose garment was never taken
 * apart, nothing out of a parcel that never came, nothing found in a garment that was never checked.
 */
export const isSound = (subjects: ReadonlyMap<string, Standing>, entered: Entered): boolean =>
  [...subjects.values()].every(({ subject, via }) => {
    const { kind, of } = readSubjectKey(subject)!
    if (kind === 'leftover') return entered.get(String(of))?.has('torn-down') ?? false
    if (via === null) return true
    return entered.get(via)?.has(kind === 'found' ? 'held' : 'arrived') ?? false
  })
