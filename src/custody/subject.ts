import { pileCode } from '../base/tag.ts'
import type { Kind } from './states.ts'

/** One thing that is looked after: of which kind, and its number. A leftover bag has its garment's before it. */
export interface Subject {
  readonly kind: Kind
  /** Of a leftover bag: its garment's; else 0. */
  readonly of: number
  readonly n: number
}

const signs = {
  garment: '',
  leftover: 'L',
  found: 'F',
  extra: 'X',
  parcel: 'P',
  outgoing: 'Q',
} as const satisfies Readonly<Record<Kind, string>>

/** What it goes by within its pile: "3", "3-L1", "F1", "X1", "P1", "Q1". */
export function subjectKey({ kind, of, n }: Subject): string {
  if (kind === 'leftover') return `${of}-L${n}`
  return `${signs[kind]}${n}`
}

/** The short code that stands on its tag, bag or box: "K7-3", "K7-3-L1", "K7-P1". */
export const subjectCode = (pileNumber: number, key: string): string =>
  `${pileCode(pileNumber)}-${key}`

const written = /^(?:([1-9]\d{0,4})(?:-L([1-9]\d{0,3}))?|([FXPQ])([1-9]\d{0,4}))$/

/** Null where it is no such key. */
export function readSubjectKey(key: string): Subject | null {
  const [whole, item, bag, sign, n] = written.exec(key) ?? []
  if (whole === undefined) return null
  if (sign !== undefined) {
    const kind = (Object.keys(signs) as Kind[]).find((one) => signs[one] === sign)!
    return { kind, of: 0, n: Number(n) }
  }
  if (bag === undefined) return { kind: 'garment', of: 0, n: Number(item) }
  return { kind: 'leftover', of: Number(item), n: Number(bag) }
}
