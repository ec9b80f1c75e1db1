/**
 * What the frame and the page around it say to each other. The page speaks once, in the frame's name, which lives as
 * long as the frame does and needs no storage; the frame speaks by messages to that page's origin alone.
 */

/** How the frame is dressed, each part as the page wrote it; what is not understood is left out. */
export interface Theme {
  /** Of threads and of the one button that goes on: `#rrggbb`. */
  readonly accent?: string
  /** What the intake lies on: `#rrggbb`. A dark one turns the whole frame dark. */
  readonly ground?: string
  /** Families of letters that the reader's machine has, as CSS writes them. */
  readonly font?: string
  /** How round corners are, 0 to 24 px. */
  readonly corner?: string
}

/** In the frame's name, as JSON. */
export interface Told extends Theme {
  /** The origin of the page around the frame. */
  readonly around: string
  /** Whether a page of ours was shown in this frame before. */
  readonly later?: true
}

/** What the frame says of the page that it shows, under the key `pieceworth`. */
export interface Shown {
  /** Of the whole page, in px. */
  readonly height: number
  /** Where to come back to: a pile's own path; null where the page is of no pile. */
  readonly pile: string | null
  /** The pile that was asked for is not there any more. */
  readonly lost: boolean
  readonly title: string
  /** It is not the first page in this frame. */
  readonly later: boolean
}

export const pilePath = /^\/i\/[\w-]{16,128}(?=\/|$)/
