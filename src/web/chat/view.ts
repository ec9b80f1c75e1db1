import type { EstimatePaper } from '../../papers/estimate-paper.ts'
import type { PrintedPage } from '../view-printed.ts'
import type { ClosetPage, ScreeningPage } from './view-closet.ts'
import type { LaidOutPage } from './view-laid-out.ts'
import type { MessagesPage, RemindersPage, Talk } from './view-messages.ts'
import type { Posting } from './view-posting.ts'
import type { FieldError, Question, Swatch } from './view-question.ts'
import type { ShownQuilts } from './view-quilt.ts'
import type { SheetPage } from './view-sheet.ts'
import type { LeavePage, OfferPage, ReceiptPage, StatusShown } from './view-status.ts'
import type { ErasedPage, YoursPage } from './view-yours.ts'

export type * from './view-frame.ts'
export type * from './view-question.ts'

/**
 * What a page of the customer's conversation shows, and nothing else: plain data, in the reader's
 * language, money and dates already written out. Links and form targets are whole paths.
 */

/** A form of one button. `act` is sent as the field `act` and stands in the page as `data-act`. */
export interface Action {
  readonly act:
    | 'start'
    | 'add-garment'
    | 'copy-garment'
    | 'drop-garment'
    | 'restore-garment'
    | 'review-pile'
    | 'confirm-pile'
    | 'mail-link'
  readonly postTo: string
  /** Sent along, for example idem, seq and item. */
  readonly hidden: Readonly<Record<string, string>>
}

export interface Link {
  readonly label: string
  readonly href: string
}

export type Grade = 'sound' | 'care' | 'eyes' | 'home'

export interface Flag {
  readonly severity: 'note' | 'care' | 'stop'
  readonly message: string
  /** What to do about it; null: nothing. */
  readonly next: string | null
}

/** One thing that was asked, and what was said. */
export interface Said {
  readonly question: string
  /** The question's short form: "Stretch". */
  readonly asked: string
  /** The answer in words; also "passed over" or "left to a person". */
  readonly said: string
  /** Where it can be changed; null: no longer. */
  readonly href: string | null
}

export interface Photo {
  readonly id: string
  readonly thumb: string
  /** The larger picture. */
  readonly view: string
  readonly alt: string
}

/** Something the customer can do so that a garment does better. */
export interface BetterStep {
  readonly act: string
  readonly text: string
  /** The answer to change, in its short form and where; null: no longer. */
  readonly link: Link | null
}

export interface Tag {
  /** From 1. */
  readonly n: number
  /** The tag's short code, "K7-2"; null before it has one. */
  readonly code: string | null
  /** "Green check shirt"; falls back to the kind's words or "garment 3". */
  readonly name: string
  /** A kind of `domains.kind` for its silhouette, and in words; null: not known yet. */
  readonly kind: string | null
  readonly kindWords: string | null
  /** Of its cloth; null: nobody has told, and no photo shows it. */
  readonly swatch: Swatch | null
  readonly grade: Grade | null
  /** Why this grade, in one sentence. */
  readonly sentence: string | null
  /** What to do now. */
  readonly next: string | null
  readonly flags: readonly Flag[]
  /** The most helpful first. */
  readonly better: readonly BetterStep[]
  /** What those steps could bring only together; null: no more than each alone. */
  readonly together: string | null
  readonly answers: readonly Said[]
  readonly photos: readonly Photo[]
  /** Questions of it are still open. */
  readonly open: boolean
  /** Where its open questions go on; null: none open, or it is the one being asked. */
  readonly goOnHref: string | null
  readonly dropped: boolean
  readonly actions: readonly Action[]
}

/** How many garments stand, dropped ones not counted. */
export interface Tally {
  readonly garments: number
  readonly byGrade: Readonly<Record<Grade, number>>
  /** What the pile still wants: "A throw wants 8 to 10." */
  readonly advice: string | null
  /** The garments at hand fill the quilt. */
  readonly enough?: boolean
  /** Counted roughly, as its plan is not there yet; from a plan that may still get better; settled. */
  readonly counted: 'roughly' | 'for-now' | 'settled'
  /** The page itself, to count again. */
  readonly againHref: string
}

export interface QuestionPage {
  readonly page: 'question'
  readonly question: Question
  readonly tags: readonly Tag[]
  readonly tally: Tally | null
  /** What was said of the pile itself. */
  readonly pileAnswers: readonly Said[]
  /** For example add-garment and confirm-pile, where they are open now. */
  readonly actions: readonly Action[]
}

/** Between two garments: what there is, and what may be done. */
export interface GatherPage {
  readonly page: 'gather'
  /** What was written, where something was. */
  readonly talk?: Talk | null
  readonly tags: readonly Tag[]
  readonly tally: Tally
  readonly pileAnswers: readonly Said[]
  /** add-garment, review-pile and confirm-pile, where they are allowed. */
  readonly actions: readonly Action[]
  /** Where many garments are told at once. */
  readonly closetHref?: string
  /** Null: no garment is told yet. */
  readonly quilts: ShownQuilts | null
  /** What must be said of the quilt itself, such as a baby's sleep. */
  readonly cautions: readonly string[]
}

export interface ReviewPage {
  readonly page: 'review'
  readonly tags: readonly Tag[]
  readonly tally: Tally
  readonly pileAnswers: readonly Said[]
  readonly cautions: readonly string[]
  readonly estimate: EstimatePaper | null
  readonly quilts: ShownQuilts
  /** Things still open, with where to do them. */
  readonly open: readonly Link[]
  readonly confirm: Action | null
  readonly backHref: string
}

/** One garment of the packing checklist. */
export interface Packed {
  readonly n: number
  readonly code: string
  readonly name: string
  readonly kind: string | null
  readonly grade: Grade
  /** What to do before it goes into the box, in order. */
  readonly steps: readonly string[]
  readonly photo: Photo | null
}

export interface ConfirmedPage {
  readonly page: 'confirmed'
  /** Null on paper. */
  readonly status: StatusShown | null
  readonly talk?: Talk | null
  /** The pile's short code. */
  readonly pile: string
  readonly confirmedOn: string
  readonly packed: readonly Packed[]
  /** Wait: a person looks before these are posted. */
  readonly waiting: readonly Packed[]
  readonly keptHome: readonly {
    readonly n: number
    readonly name: string
    readonly reason: string
    readonly next: string | null
  }[]
  /** How to pack the box, in order. */
  readonly packing: readonly string[]
  readonly address: readonly string[]
  readonly cautions: readonly string[]
  readonly estimate: EstimatePaper | null
  /** As they stood on confirming; null: none was drawn. */
  readonly quilts: ShownQuilts | null
  /** To say that it was posted, and what was said so far; null on paper. */
  readonly posting: Posting | null
  /** What happens next, in order. */
  readonly ahead: readonly string[]
  readonly keepLink: string
  /** The same page as plain paper, and papers to fetch. */
  readonly papers: readonly Link[]
  /** True: shown as paper, for the printer. */
  readonly print: boolean
}

export interface StartPage {
  readonly page: 'start'
  readonly start: Action
  /** Sentences of the shop on the first page; may be empty. */
  readonly welcome: readonly string[]
}

export interface SavePage {
  readonly page: 'save'
  readonly keepLink: string
  /** How long the link works, in words. */
  readonly holds: string
  readonly mail: Action | null
  readonly email: string
  readonly errors: readonly FieldError[]
  /** The address the link was mailed to just now. */
  readonly mailedTo: string | null
  /** What is kept, and how to erase it. */
  readonly yoursHref: string
  readonly backHref: string
}

/** A refusal or a fault of a whole page: the sentence says what happened, the ways what to do. */
export interface TroublePage {
  readonly page: 'trouble'
  readonly trouble: 'not-found' | 'gone' | 'stale' | 'too-many' | 'refused' | 'fault' | 'busy'
  /** The failure's code, small print for whoever helps. */
  readonly code: string
  readonly toName: string
  readonly sentence: string
  readonly ways: readonly Link[]
}

/** What a stranger sees who scans a garment's tag: whose it is, and nothing of the garment. */
export interface TagPage {
  readonly page: 'tag'
  readonly shop: string
  readonly email: string
  readonly phone: string
  readonly address: readonly string[]
}

export type ChatPage =
  | QuestionPage
  | SheetPage
  | GatherPage
  | ClosetPage
  | ScreeningPage
  | ReviewPage
  | ConfirmedPage
  | OfferPage
  | ReceiptPage
  | LeavePage
  | LaidOutPage
  | YoursPage
  | ErasedPage
  | StartPage
  | SavePage
  | TagPage
  | PrintedPage
  | MessagesPage
  | RemindersPage
  | TroublePage
