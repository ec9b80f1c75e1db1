import { Failure } from '../../base/failures.ts'
import type { Db } from '../../store/schema.ts'
import type { MailState } from '../../store/schema-mail.ts'
import type { KeptBody } from './queue-mail.ts'
import type { MailTemplate } from './templates.ts'

/** A mail as the desk looks at it. */
export interface DeskMail {
  readonly id: string
  readonly pileId: string
  readonly pile: number
  readonly template: MailTemplate
  readonly to: { readonly name: string; readonly address: string }
  readonly language: string
  readonly subject: string
  readonly body: KeptBody
  readonly state: MailState
  readonly tries: number
  readonly queuedAt: number
  /** When it is tried next, where it waits. */
  readonly dueAt: number
  /** When it was sent, or given up; null: neither yet. */
  readonly doneAt: number | null
  readonly trouble: string | null
  readonly way: 'smtp' | 'folder' | null
  /** Whether a link that it told still opens the pile. */
  readonly linkLives: boolean
}

export interface Mails {
  readonly mails: readonly DeskMail[]
  /** From 1. */
  readonly page: number
  readonly pages: number
  readonly counts: Readonly<Record<MailState, number>>
}

export const mailsOnPage = 50

async function countsOf(db: Db): Promise<Mails['counts']> {
  const rows = await db
    .selectFrom('mail')
    .select(({ fn }) => ['state', fn.countAll<number>().as('n')])
    .groupBy('state')
    .execute()
  const of = (state: MailState) => Number(rows.find((row) => row.state === state)?.n ?? 0)
  return { waiting: of('waiting'), sending: of('sending'), sent: of('sent'), failed: of('failed') }
}

/** Mails of one state, or of all, newest first. A page beyond the last is the last. */
export async function mailsOf(
  db: Db,
  { state, page, now }: { state: MailState | null; page: number; now: number },
): Promise<Mails> {
  const counts = await countsOf(db)
  const all = state === null ? Object.values(counts).reduce((a, b) => a + b, 0) : counts[state]
  const pages = Math.max(1, Math.ceil(all / mailsOnPage))
  const at = Math.min(Math.max(1, page), pages)
  const rows = await db
    .selectFrom('mail')
    .innerJoin('pile', 'pile.id', 'mail.pile_id')
    .selectAll('mail')
    .select((eb) => [
      'pile.number',
      eb
        .selectFrom('pile_link')
        .select(({ fn }) => fn.countAll<number>().as('n'))
        .whereRef('pile_link.mail_id', '=', 'mail.id')
        .where('pile_link.revoked_at', 'is', null)
        .where('pile_link.expires_at', '>', now)
        .as('living'),
    ])
    .$if(state !== null, (some) => some.where('mail.state', '=', state!))
    .orderBy('mail.queued_at', 'desc')
    .orderBy('mail.id', 'desc')
    .limit(mailsOnPage)
    .offset((at - 1) * mailsOnPage)
    .execute()
  return {
    mails: rows.map((row) => ({
      id: row.id,
      pileId: row.pile_id,
      pile: row.number,
      template: row.template as MailTemplate,
      to: { name: row.to_name, address: row.to_address },
      language: row.language,
      subject: row.subject,
      body: JSON.parse(row.body) as KeptBody,
      state: row.state,
      tries: row.tries,
      queuedAt: row.queued_at,
      dueAt: row.due_at,
      doneAt: row.done_at,
      trouble: row.trouble,
      way: row.way,
      linkLives: Number(row.living) > 0,
    })),
    page: at,
    pages,
    counts,
  }
}

/** The pile that a mail is about. Throws `not_found`. */
export async function pileOfMail(
  db: Db,
  mailId: string,
): Promise<{ id: string; language: string }> {
  const row = await db
    .selectFrom('mail')
    .innerJoin('pile', 'pile.id', 'mail.pile_id')
    .select(['pile.id', 'pile.language'])
    .where('mail.id', '=', mailId)
    .executeTakeFirst()
  if (!row) throw new Failure('not_found')
  return row
}

/** Every link that the mail told opens nothing any more. */
export async function revokeLinks(db: Db, mailId: string, at: number): Promise<void> {
  await db
    .updateTable('pile_link')
    .set({ revoked_at: at })
    .where('mail_id', '=', mailId)
    .where('revoked_at', 'is', null)
    .execute()
}

/** Whether reminders of a pile are sent. Saying the same twice changes nothing. */
export async function setReminders(
  db: Db,
  pileId: string,
  wanted: boolean,
  at: number,
): Promise<void> {
  if (wanted) {
    await db.deleteFrom('reminder_stop').where('pile_id', '=', pileId).execute()
    return
  }
  await db
    .insertInto('reminder_stop')
    .values({ pile_id: pileId, at })
    .onConflict((conflict) => conflict.column('pile_id').doNothing())
    .execute()
}
