import type { Insertable, Kysely, Selectable } from 'kysely'
import type { Flag, Json } from './columns.ts'
import type { LeavingTable, MilestoneTable, OfferTable, PaymentTable } from './schema-agreement.ts'
import type { BenchTables } from './schema-bench.ts'
import type { CustodyTables } from './schema-custody.ts'
import type { FlagDecisionTable, WaitingTable } from './schema-desk.ts'
import type { KeepingTables } from './schema-keeping.ts'
import type { MailTable, MessageTable, ReminderStopTable } from './schema-mail.ts'
import type { SheetTables } from './schema-sheets.ts'

/**
 * The tables as both stores hold them: text, integer and bigint columns only. Columns ending in `at`
 * (and `need_by`) are milliseconds UTC, read as numbers. A `Json` column holds JSON as text.
 */
export interface Database extends CustodyTables, BenchTables, SheetTables, KeepingTables {
  flow_version: FlowVersionTable
  counter: CounterTable
  pile: PileTable
  pile_link: PileLinkTable
  act: ActTable
  standing: StandingTable
  garment: GarmentTable
  waiting: WaitingTable
  agreed: AgreedTable
  note: NoteTable
  photo: PhotoTable
  account: AccountTable
  session: SessionTable
  once_link: OnceLinkTable
  decision: DecisionTable
  flag_decision: FlagDecisionTable
  plan_mark: PlanMarkTable
  mail: MailTable
  reminder_stop: ReminderStopTable
  message: MessageTable
  flow_draft: FlowDraftTable
  offer: OfferTable
  payment: PaymentTable
  milestone: MilestoneTable
  leaving: LeavingTable
  use_count: UseCountTable
}

/** The whole store, or a transaction on it. */
export type Db = Kysely<Database>

interface FlowVersionTable {
  hash: string
  body: Json
  first_used_at: number
}

/** How often something was done until its window ends: `what` is a hash. */
interface UseCountTable {
  what: string
  until_at: number
  uses: number
}

/** Running numbers shown to people. */
interface CounterTable {
  name: string
  value: number
}

export const pileStatuses = ['open', 'confirmed', 'decided', 'withdrawn'] as const
export type PileStatus = (typeof pileStatuses)[number]

interface PileTable {
  id: string
  number: number
  language: string
  flow_hash: string
  status: PileStatus
  /** The last act's; 0 before the first. */
  seq: number
  started_at: number
  changed_at: number
  confirmed_at: number | null
}

interface PileLinkTable {
  key_hash: string
  pile_id: string
  made_at: number
  expires_at: number
  revoked_at: number | null
  /** The mail that told it; null: it was shown on a page. */
  mail_id: string | null
}

/** Who acted: the customer, or a member of staff by account id. */
export type Who = 'customer' | `staff:${string}`

/** What happened, in order: the truth that everything about a pile is derived from. */
interface ActTable {
  pile_id: string
  seq: number
  /** Idempotency key: the same key on the same pile is the same act. */
  idem: string
  who: Who
  act: Json
  at: number
}

/** Where a pile's conversation stands: derived from its acts, of an open one up to where its customer last rested. */
interface StandingTable {
  pile_id: string
  seq: number
  place: Json
  tally: Json
  summary: Json
  garments: number
  /** How many garments wait for a person's eyes. */
  needs_eyes: number
  contact_name: string | null
  need_by: number | null
}

/** One garment of a pile: derived from the pile's acts, as `standing` is. */
interface GarmentTable {
  pile_id: string
  item: number
  tag: string
  name: string
  kind: string
  grade: string | null
  flags: Json
  facts: Json
  dropped: Flag
}

/** What was agreed, frozen as it was shown. */
interface AgreedTable {
  pile_id: string
  version: number
  kind: 'confirmed' | 'offer'
  /** A paper in each language. */
  body: Json
  /** The same in numbers; null: it was kept before they were. */
  figures: Json | null
  at: number
}

/** A customer's question to a person. */
interface NoteTable {
  id: string
  pile_id: string
  item: number
  question: string
  text: string
  at: number
  settled_at: number | null
  settled_by: string | null
}

/** What a photo shows of its garment, as it was told. */
export const photoSides = ['front', 'back', 'close-up'] as const
export type PhotoSide = (typeof photoSides)[number]

interface PhotoTable {
  id: string
  pile_id: string
  item: number | null
  question: string | null
  /** The name of its file in the photo store. */
  hash: string
  width: number
  height: number
  bytes: number
  /** The colours of the cloth it shows; null: it was kept before they were looked at. */
  cloth: Json | null
  /** What was read on it, where it shows a label; null: nobody tried, or the trying failed. */
  label: Json | null
  /** What it shows of a garment; null: nobody looked, or the looking failed. */
  look: Json | null
  /** Its focal length in terms of 35 mm film, mm, as its own file told it; null: it told none. */
  focal35: number | null
  /** Null: nobody told. */
  shows: PhotoSide | null
  /** 0 while it is a draft: received, but the form around it is not yet accepted. */
  kept: Flag
  at: number
  removed_at: number | null
}

/** What an account may do. `bench`: everything of garments, nothing of prices and addresses. */
export const roles = ['owner', 'staff', 'bench'] as const
export type Role = (typeof roles)[number]

interface AccountTable {
  id: string
  /** Lower case. */
  email: string
  name: string
  role: Role
  password_hash: string
  made_at: number
  disabled_at: number | null
  /** When the person was last at the desk, to the minute; null: not since that is written down. */
  seen_at: number | null
}

interface SessionTable {
  token_hash: string
  account_id: string
  csrf: string
  made_at: number
  seen_at: number
  expires_at: number
}

/** A link that works once: the owner's first sign-in, a new password. */
interface OnceLinkTable {
  token_hash: string
  purpose: string
  account_id: string | null
  made_at: number
  expires_at: number
  used_at: number | null
}

/** What staff decided of a garment, or of the whole pile where `item` is null. */
interface DecisionTable {
  id: string
  pile_id: string
  item: number | null
  verdict: string
  reason: string
  /** The account's id. */
  who: string
  at: number
}

/**
 * Roles a garment may play; a piece that stays where it is; a whole quilt that stays as it lies; a spot on a
 * photo; a customer's spot that is none; another layout or size than was wished for.
 */
export type MarkKind = 'role' | 'pin' | 'lay' | 'spot' | 'no-spot' | 'wish'

/** What staff fixed of a pile's plan and of its garments' photos. Never edited: it is undone, and another made. */
interface PlanMarkTable {
  id: string
  pile_id: string
  kind: MarkKind
  /** The garment's number; null: bought cloth. */
  garment: number | null
  body: Json
  /** The account's id. */
  who: string
  at: number
  undone_at: number | null
  undone_by: string | null
}

export type { BoxResult, FactSource } from './schema-custody.ts'

/** `working`: being compared; `cut-off`: the time was up before all of it was; `refused`: the files do not hold. */
export type DraftState = 'working' | 'done' | 'cut-off' | 'refused' | 'failed'

/** Files of the owner's that are tried before they go live, and what they would change. */
interface FlowDraftTable {
  id: string
  /** The account's id. */
  who: string
  at: number
  files: Json
  state: DraftState
  /** Null while nothing is known. */
  report: Json | null
  ended_at: number | null
}

export type Row<T extends keyof Database> = Selectable<Database[T]>
export type NewRow<T extends keyof Database> = Insertable<Database[T]>

export type PileRow = Row<'pile'>
export type ActRow = Row<'act'>
export type PhotoRow = Row<'photo'>
export type AccountRow = Row<'account'>
export type DecisionRow = Row<'decision'>
export type MailRow = Row<'mail'>
export type OfferRow = Row<'offer'>
export type PaymentRow = Row<'payment'>
