/** A figure that the work rests on, and where it comes from. */
export interface Figure {
  /** Where it stands and what it is of, parted by slashes: `fibres/cotton/iron`. */
  readonly figure: string
  readonly value: unknown
  readonly unit?:
    | 'in'
    | 'm'
    | '°C'
    | 'g'
    | 'percent'
    | 'times'
    | 'pieces'
    | 'garments'
    | 'blocks'
    | 'letters'
    | 'minor units'
    | 'days'
    | 'weeks'
    | 'months'
    | 'years'
  /** A published source with its edition; or one that says it is secondary, practice, or from memory. */
  readonly source: string
}

/** Prices and terms need no source outside the shop. */
export const ownPrice = "the shop's own price"
export const ownTerm = "the shop's own term"

export const practice = 'common practice, no source'
export const memory = 'from memory, unverified'
