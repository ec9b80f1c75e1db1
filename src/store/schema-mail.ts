import type { Flag, Json } from './columns.ts'

export const mailStates = ['waiting', 'sending', 'sent', 'failed'] as const
export type MailState = (typeof mailStates)[number]

/** A mail to a customer, written in the transaction of what it tells of. */
export interface MailTable {
  id: string
  pile_id: string
  /** The same on the same pile is the same mail. */
  once: string
  template: string
  language: string
  to_name: string
  to_address: string
  subject: string
  body: Json
  state: MailState
  tries: number
  queued_at: number
  /** When it began to be tried: anew where somebody at the desk said so. */
  tried_since: number
  /** When it may be tried next; while it is sent: when it counts as given up by who took it. */
  due_at: number
  /** Whose turn it is to send it. */
  lease: string | null
  done_at: number | null
  /** Why the last try failed: a code, never the other side's own words. */
  trouble: string | null
  /** How it went out: over SMTP, or written as a file. */
  way: 'smtp' | 'folder' | null
}

/** A customer who wants no reminders of this pile. */
export interface ReminderStopTable {
  pile_id: string
  at: number
}

/** What staff and a customer wrote to each other. */
export interface MessageTable {
  id: string
  pile_id: string
  /** The garment's number; null: the pile. */
  item: number | null
  /** The account that wrote it; null: the customer did. */
  account_id: string | null
  text: string
  wants_answer: Flag
  /** Idempotency key: the same key on the same pile is the same message. */
  idem: string
  at: number
  /** When it was answered, or seen to. */
  settled_at: number | null
  settled_by: string | null
}
