import type { Question } from './grammar.ts'
import type { Walk } from './walk.ts'

/** A part that is asked once. */
export interface PartWalk extends Walk {
  readonly part: string
}

/** One item of the repeated part, with its number from 1. */
export interface Item extends Walk {
  readonly n: number
  readonly dropped: boolean
}

/** Where the conversation stands. Parts are named by id; `item` is 0 outside the repeated part. */
export type Place =
  | {
      readonly at: 'question'
      readonly part: string
      readonly item: number
      readonly question: Question
    }
  | { readonly at: 'gather'; readonly part: string }
  | { readonly at: 'end' }

export interface Followed {
  /** The parts that are asked once, in the flow's order. */
  readonly parts: readonly PartWalk[]
  /** Items of the repeated part by number, dropped ones too. */
  readonly items: readonly Item[]
  readonly closed: boolean
  readonly place: Place
}

/** An item that is told to its end and still in. */
export const isComplete = (item: Item): boolean => !item.dropped && item.open === null
