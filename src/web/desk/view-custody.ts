import type { Link, Photo } from './view.ts'

/** A box of a form that is ticked or chosen. */
export interface Ticked {
  readonly value: string
  readonly label: string
}

/** What a form of these pages brings along. */
export interface CustodyForm {
  readonly postTo: string
  readonly csrf: string
  readonly idem: string
  /** Places that are in use, to choose from. */
  readonly places: readonly string[]
}

export interface LocatedLine {
  readonly code: string
  readonly href: string
  readonly name: string
  readonly customer: string | null
  /** "checked and held · shelf 2". */
  readonly at: string
  /** "Marta, 12 Mar, 14:03". */
  readonly moved: string
}

export interface CustodyHomePage {
  readonly page: 'custody-home'
  readonly title: string
  readonly lead: string
  readonly asked: string
  /** Null: nothing was asked. */
  readonly found: { readonly heading: string; readonly more: boolean } | null
  readonly lines: readonly LocatedLine[]
  readonly overdue: readonly { readonly text: string; readonly href: string }[]
  readonly apart: readonly LocatedLine[]
  readonly waiting: readonly LocatedLine[]
  readonly links: readonly Link[]
}

export interface CustodyMapPage {
  readonly page: 'custody-map'
  readonly title: string
  readonly maps: readonly {
    readonly kind: string
    readonly svg: string
    readonly legend: readonly string[]
  }[]
  readonly back: Link
}

/** A move that can be made now. */
export interface MoveForm {
  readonly move: string
  readonly label: string
  readonly caution: string | null
  /** Null: no place is asked for. */
  readonly place: { readonly label: string; readonly required: boolean } | null
  readonly why: boolean
  /** Parcels that it may come out of; empty: none is asked for. */
  readonly parcels: readonly Ticked[]
  /** What may be said of how it looks; empty: that is not asked. */
  readonly conditions: readonly Ticked[]
  readonly hint: string | null
}

export interface HistoryLine {
  readonly seq: number
  readonly what: string
  readonly by: string
  readonly note: string
  readonly undone: boolean
  readonly photo: Photo | null
}

export interface SubjectPage {
  readonly page: 'custody'
  readonly title: string
  readonly code: string
  readonly name: string
  readonly kind: string
  readonly at: string
  readonly since: string
  readonly by: string
  /** What the box check said of it; null: nothing. */
  readonly checked: string | null
  readonly isolated: boolean
  readonly cautions: readonly string[]
  readonly links: readonly Link[]
  readonly form: CustodyForm & { readonly seen: number }
  readonly refused: string | null
  /** What was typed with the move that was refused. */
  readonly typed: { readonly move: string; readonly place: string; readonly note: string } | null
  readonly moves: readonly MoveForm[]
  readonly shut: readonly string[]
  readonly takeBack: boolean
  readonly history: readonly HistoryLine[]
}

export interface ParcelLine {
  readonly code: string
  readonly href: string
  readonly state: string
  readonly facts: readonly string[]
  /** `first`: it is what comes next. */
  readonly check: (Link & { readonly first: boolean }) | null
}

export interface CustodyPilePage {
  readonly page: 'custody-pile'
  readonly title: string
  readonly garments: readonly LocatedLine[]
  readonly others: readonly LocatedLine[]
  readonly parcels: readonly ParcelLine[]
  readonly form: CustodyForm
  readonly conditions: readonly Ticked[]
  readonly cautions: readonly string[]
  readonly refused: string | null
  readonly typed: Readonly<Record<string, string>>
  /** Null: the reader may not sign off. */
  readonly signOff: {
    readonly postTo: string
    /** Null: it is not signed off. */
    readonly signed: string | null
    readonly told: string
    readonly choices: readonly Ticked[]
    readonly chosen: string
  } | null
  readonly links: readonly Link[]
}

export interface BoxFact {
  readonly name: string
  readonly label: string
  readonly hint: string | null
  /** Null: it is written in words. */
  readonly options: readonly Ticked[] | null
  readonly value: string
}

export interface BoxGarment {
  readonly n: number
  readonly code: string
  readonly name: string
  /** "T-shirt · L · worn thin". */
  readonly told: string
  /** What it was found to be before; null: nobody has looked. */
  readonly before: string | null
  readonly photo: Photo | null
  readonly result: string
  readonly seen: number
  readonly factsSeen: number
  readonly facts: readonly BoxFact[]
  readonly conditions: readonly string[]
  readonly note: string
}

export interface BoxCheckPage {
  readonly page: 'box-check'
  readonly title: string
  readonly lead: string
  /** Why there is no form; null: there is. */
  readonly closed: string | null
  readonly cautions: readonly string[]
  readonly refused: string | null
  readonly form: CustodyForm & { readonly parcel: string }
  readonly results: readonly Ticked[]
  readonly conditions: readonly Ticked[]
  readonly garments: readonly BoxGarment[]
  readonly place: string
  readonly extra: { readonly note: string; readonly conditions: readonly string[] }
  readonly back: Link
}

export interface BoxChangedPage {
  readonly page: 'box-changed'
  readonly title: string
  readonly lines: readonly string[]
  readonly nothing: string | null
  readonly plan: Link | null
  readonly planHint: string | null
  readonly back: Link
}

export interface CountPage {
  readonly page: 'count'
  readonly title: string
  readonly lead: string
  readonly form: CustodyForm
  readonly places: readonly {
    readonly place: string
    readonly things: readonly (Ticked & { readonly href: string })[]
  }[]
  readonly newest: { readonly line: string; readonly missing: readonly Link[] } | null
  readonly notSeen: string
  readonly earlier: readonly string[]
}

export type CustodyPage =
  | CustodyHomePage
  | CustodyMapPage
  | CustodyPilePage
  | SubjectPage
  | BoxCheckPage
  | BoxChangedPage
  | CountPage
