import type { WorkingCode } from './workings.ts'

/** Minor units of money, or any other amount. */
export interface Range {
  readonly low: number
  readonly likely: number
  readonly high: number
}

export const lineGroups = {
  work: ['teardown', 'stabilising', 'cutting', 'piecing', 'quilting', 'finishing'],
  materials: ['interfacing', 'top-up', 'backing', 'batting', 'binding', 'thread'],
  post: ['post-there', 'post-back'],
} as const

export type LineGroup = keyof typeof lineGroups
export const lineCodes = Object.values(lineGroups).flat()
export type LineCode = (typeof lineCodes)[number]

export const lineUnits = [
  'garment',
  'piece',
  'square-foot',
  'yard',
  'package',
  'spool',
  'parcel',
] as const

/** How a quantity was counted: the formula's code, and what goes into it and comes out. */
export interface Working {
  readonly code: WorkingCode
  readonly values: Readonly<Record<string, number | string>>
}

/** The likely figure of a line, and what it follows from. */
export interface Counted {
  readonly likely: number
  readonly quantity: number
  /** Null where the things counted differ in price. */
  readonly unitPriceMinor: number | null
  readonly workings: readonly Working[]
}

export interface Line extends Range, Counted {
  readonly code: LineCode
  readonly unit: (typeof lineUnits)[number]
  /** What the line hangs on. */
  readonly because: readonly string[]
}

/** The range over all that may be; the likely one stands first. */
export const range = (options: readonly number[]): Range => ({
  low: Math.min(...options),
  likely: options[0]!,
  high: Math.max(...options),
})

export const sum = (ranges: readonly Range[]): Range => ({
  low: ranges.reduce((total, { low }) => total + low, 0),
  likely: ranges.reduce((total, { likely }) => total + likely, 0),
  high: ranges.reduce((total, { high }) => total + high, 0),
})

/** A range by what becomes of each of its ends. */
export const mapped = ({ low, likely, high }: Range, of: (amount: number) => number): Range => ({
  low: of(low),
  likely: of(likely),
  high: of(high),
})

/** One price for all, or null. */
export const onePrice = (prices: readonly number[]): number | null =>
  new Set(prices).size === 1 ? prices[0]! : null
