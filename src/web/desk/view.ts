/** What a page of the desk shows: plain data in the reader's language, dates and money written out. */

import type { EstimatePaper } from '../../papers/estimate-paper.ts'
import type { TeardownSheet } from '../../papers/teardown-sheet.ts'
import type { Flag as CustomerFlag, Grade, Photo, Said } from '../chat/view.ts'
import type { MarkedPhoto } from '../chat/view-question.ts'
import type { PrintedPage } from '../view-printed.ts'
import type { AgreeCard, AgreementPage, CalendarPage, DeskOfferPage } from './view-agree.ts'
import type { ArrangePage } from './view-arrange.ts'
import type { BenchPage } from './view-bench.ts'
import type { CustodyPage } from './view-custody.ts'
import type { FactsPage } from './view-facts.ts'
import type { KeptPage } from './view-kept.ts'
import type { DeskThread, MailsPage, PileMessagesPage, WrittenPage } from './view-messages.ts'
import type { OwnerPage } from './view-owner.ts'
import type { PlanPage } from './view-plan.ts'
import type { QueueEntry, QueuePage } from './view-queue.ts'
import type { LaidOutPage, RecordPage } from './view-record.ts'
import type { DeskSheetPage } from './view-sheet.ts'
import type { DeskSpotsShown, SpotsPage } from './view-spots.ts'
import type { WhatIfPage } from './view-what-if.ts'
import type { WhyLine, WhyPart } from './view-why.ts'

export type { Grade, Photo, Said, WhyLine, WhyPart }

export interface Link {
  readonly label: string
  readonly href: string
}

export interface Decided {
  readonly verdict: string
  readonly words: string
  readonly reason: string
  /** "Marta, 12 Mar, 14:03". */
  readonly by: string
}

export interface VerdictButton {
  readonly value: string
  readonly label: string
  readonly standing: boolean
  /** It is taken with a reason alone. */
  readonly reasoned: boolean
}

/** A form that decides, with what was typed when it was refused. */
export interface DecisionForm {
  readonly postTo: string
  readonly csrf: string
  readonly seen: number
  readonly reason: string
  readonly error: string | null
  readonly buttons: readonly VerdictButton[]
  readonly hint: string
  /** Whether asking may send the reason to the customer, and how they get it; null: not of this. */
  readonly send: string | null
  /** What stands, then what stood before it, newest first. */
  readonly standing: Decided | null
  readonly history: readonly Decided[]
}

/** To decide of one reason, and what stands. */
export interface FlagForm {
  /** Null: the pile is decided. */
  readonly postTo: string | null
  readonly csrf: string
  readonly seen: number
  readonly standing: Decided | null
  readonly buttons: readonly { readonly value: string; readonly label: string }[]
}

export interface StaffFlag {
  readonly severity: CustomerFlag['severity']
  readonly lead: string
  readonly message: string
  /** "Wear: shattered (customer)". */
  readonly because: readonly string[]
  readonly why: readonly WhyLine[]
  /** Null: it holds nothing up. */
  readonly decide: FlagForm | null
}

/** A label's photo beside what was read on it and what the customer made of that. */
export interface DeskLabel {
  /** Null: it is there no more. */
  readonly photo: Photo | null
  /** "The customer sent these words unchanged." */
  readonly verdict: string
  /** Read with doubt and sent on unchanged: the words are to be checked. */
  readonly doubted: boolean
  /** Words under a heading each: as they were read, and as they were sent where those differ. */
  readonly words: readonly {
    readonly heading: string
    readonly lines: readonly { readonly text: string; readonly differs: boolean }[]
  }[]
}

export interface FactLine {
  readonly name: string
  readonly value: string
  readonly from: string
  /** Colours that the value tells of, `#rrggbb`. */
  readonly swatch?: readonly string[]
}

/** What it would come to if a fact turned out so; at best, where the act tells of others too. */
export interface DeskChance {
  /** "Soil: clean". */
  readonly turned: string
  readonly grade: string
  readonly press: string
}

/** Something that might be found out or done so that a garment does better. */
export interface DeskBetter {
  readonly act: string
  readonly text: string
  /** Who does it. */
  readonly by: string
  /** "Ironing line: no label". */
  readonly now: readonly string[]
  readonly chances: readonly DeskChance[]
}

/** What was seen on a photo of a garment. */
export interface PhotoShows {
  readonly sentence: string
  /** What the customer says instead; null: the same, or nothing. */
  readonly otherwise: string | null
}

export interface DeskPhoto extends MarkedPhoto {
  /** What was seen on it. */
  readonly shows: PhotoShows | null
  /** What the customer says that it shows: "The front". */
  readonly side: string | null
  /** The sheet that it is measured by, who marked it, and the way to mark one; null: nobody looked at it. */
  readonly sheet: { readonly lines: readonly string[]; readonly open: Link } | null
}

export interface DeskGarment {
  readonly n: number
  readonly code: string
  readonly name: string
  readonly kind: string
  readonly kindWords: string
  readonly grade: Grade | null
  /** It holds up accepting the pile. */
  readonly waits: boolean
  readonly flags: readonly StaffFlag[]
  readonly noted: readonly StaffFlag[]
  /** The most helpful first. */
  readonly better: readonly DeskBetter[]
  readonly together: string | null
  readonly press: readonly FactLine[]
  readonly facts: readonly FactLine[]
  /** What was reckoned beside the flags, each with its why. */
  readonly reckoned: readonly WhyPart[]
  readonly answers: readonly Said[]
  /** What taking it, and leaving it out, would do to the quilt: a sentence each. */
  readonly prospects: readonly string[]
  readonly thread: DeskThread
  readonly photos: readonly DeskPhoto[]
  readonly spots: DeskSpotsShown
  /** Null where none of it was read off a photo. */
  readonly label: DeskLabel | null
  readonly form: DecisionForm
  readonly next: Link | null
  /** To set right what is known of it. */
  readonly set: Link
  /** Its teardown sheet; null: not graded yet. */
  readonly teardown: Link | null
  /** What if it were left out, or taken; null: neither changes the plan. */
  readonly whatIf: Link | null
}

export interface Effect {
  readonly title: string
  readonly sentences: readonly string[]
  /** Whether it follows from the plan, or was counted roughly. */
  readonly counted: string
  /** To look again, where the plan is not there yet or may change. */
  readonly again: Link | null
  /** By size, or by part of the quilt. */
  readonly pieces: {
    readonly by: 'size' | 'part'
    readonly rows: readonly {
      readonly name: string
      readonly have: number
      readonly want: number
    }[]
  }
  readonly grades: readonly { readonly grade: Grade; readonly count: number }[]
  readonly estimate: {
    readonly likely: string
    /** Null: nothing is open. */
    readonly range: string | null
    readonly was: string | null
  } | null
  readonly lines: EstimatePaper | null
}

export interface PilePage {
  readonly page: 'pile'
  readonly title: string
  readonly quilt: string
  readonly plan: Link
  readonly whatIf: Link
  /** Where its garments and parcels are, and the laid-out quilt; none: it was not accepted. */
  readonly custody: readonly Link[]
  /** To print: lists and the estimate as PDF, the rest as pages first. */
  readonly papers: readonly Link[]
  readonly lines: readonly string[]
  readonly contact: { readonly name: string; readonly email: string; readonly phone: string } | null
  readonly notToCut: string | null
  readonly answers: readonly Said[]
  readonly thread: DeskThread
  readonly messages: Link
  readonly kept: Link
  /** A refusal of a form on this page, told on top too. */
  readonly refused: { readonly sentence: string; readonly href: string } | null
  readonly looking: readonly DeskGarment[]
  readonly others: readonly DeskGarment[]
  readonly form: DecisionForm
  readonly effect: Effect
  readonly agree: AgreeCard
  readonly waiting: readonly QueueEntry[]
}

export interface TeardownPage {
  readonly page: 'teardown'
  readonly title: string
  readonly sheet: TeardownSheet
  /** Photos with marks, and a line for each mark. */
  readonly marked: readonly MarkedPhoto[]
  readonly spots: readonly string[]
  readonly back: Link
  /** What the bench writes down of it. */
  readonly record: Link
  /** Everything the bench wants of this garment, with its cuts and its places. */
  readonly bench: Link
}

export interface DoorPage {
  readonly page: 'sign-in' | 'welcome' | 'password'
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
  readonly email: string
  readonly name: string
  readonly error: string | null
}

export interface TroublePage {
  readonly page: 'trouble'
  readonly sentence: string
  readonly code: string
  readonly toName: string
  readonly way: Link
}

export type DeskPage =
  | QueuePage
  | BenchPage
  | OwnerPage
  | PilePage
  | PlanPage
  | PileMessagesPage
  | WrittenPage
  | MailsPage
  | KeptPage
  | ArrangePage
  | WhatIfPage
  | DeskOfferPage
  | AgreementPage
  | CalendarPage
  | TeardownPage
  | PrintedPage
  | FactsPage
  | SpotsPage
  | DeskSheetPage
  | RecordPage
  | LaidOutPage
  | CustodyPage
  | DoorPage
  | TroublePage
