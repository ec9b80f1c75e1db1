import type { MoveName } from './move.ts'
import { type State, whereabouts } from './states.ts'
import { readSubjectKey } from './subject.ts'

/** One entry as it was appended. Entries are never edited; a mistake is mended by one that names it. */
export interface Entry {
  /** Its place in the order, from 1, within its pile. */
  readonly seq: number
  /** The subject's key. */
  readonly subject: string
  readonly move: MoveName | 'put' | 'undo'
  /** Null: it was born, or its birth is taken back. */
  readonly from: State | null
  readonly to: State | null
  /** Null: it is not in the house. */
  readonly place: string | null
  /** The key of what it came out of: a parcel, or the garment a thing was found in; null: of nothing. */
  readonly via: string | null
  /** The seq of the entry that it takes back; null: it takes back none. */
  readonly undoes: number | null
}

/** A subject as its entries leave it. */
export interface Standing {
  readonly subject: string
  readonly state: State
  readonly place: string | null
  /** The seq of its newest entry, one that takes back included. */
  readonly last: number
  /** The entry that would be taken back: the newest that stands. */
  readonly newest: Entry
  /** States to come back to: the one it was isolated, missed or withdrawn in, the innermost last. */
  readonly behind: readonly State[]
  /** The key of what it came out of; null: of nothing. */
  readonly via: string | null
}

/** States that remember the one before them. */
const remembering: readonly State[] = ['isolated', 'missing', 'withdrawn']

/** The entries of one subject that were not taken back. */
export function standingEntries(entries: readonly Entry[]): Entry[] {
  const gone = new Set(entries.flatMap(({ undoes }) => undoes ?? []))
  return entries.filter(({ seq, move }) => move !== 'undo' && !gone.has(seq))
}

function behindOf(entries: readonly Entry[]): State[] {
  let behind: State[] = []
  for (const { move, from, to } of entries) {
    if (move === 'put') continue
    if (from !== null && to === behind.at(-1) && remembering.includes(from)) {
      behind = behind.slice(0, -1)
    } else if (from !== null && to !== null && remembering.includes(to)) {
      behind = [...behind, from]
    } else behind = []
  }
  return behind
}

/** Null where nothing stands: it was never born, or that was taken back. */
export function standOf(entries: readonly Entry[]): Standing | null {
  const standing = standingEntries(entries)
  const newest = standing.at(-1)
  if (!newest || newest.to === null) return null
  const { subject } = newest
  const { kind } = readSubjectKey(subject)!
  const here = whereabouts(kind, newest.to) === 'here'
  return {
    subject,
    state: newest.to,
    place: here ? newest.place : null,
    last: entries.at(-1)!.seq,
    newest,
    behind: behindOf(standing),
    via: standing.findLast(({ via }) => via !== null)?.via ?? null,
  }
}

/** The subjects of a pile by their keys, as the entries leave them. */
export function follow(entries: readonly Entry[]): ReadonlyMap<string, Standing> {
  const bySubject = new Map<string, Entry[]>()
  for (const entry of entries) {
    const there = bySubject.get(entry.subject)
    if (there) there.push(entry)
    else bySubject.set(entry.subject, [entry])
  }
  return new Map(
    [...bySubject].flatMap(([subject, ones]) => {
      const standing = standOf(ones)
      return standing ? [[subject, standing] as const] : []
    }),
  )
}
