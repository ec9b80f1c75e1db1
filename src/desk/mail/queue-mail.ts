import { newId } from '../../base/ids.ts'
import { cleanLine, cleanText, isEmail } from '../../flow/text.ts'
import type { Knowledge } from '../../intake/knowledge.ts'
import { contactOf } from '../../intake/rows.ts'
import type { Db, PileRow } from '../../store/schema.ts'
import { type MailTemplate, mailTemplates } from './templates.ts'

/** A mail as it is asked for. */
export interface MailToQueue {
  readonly pile: Pick<PileRow, 'id' | 'number' | 'language'>
  readonly template: MailTemplate
  /** What fills the template's sentences, beside `name`, `shop` and `pile`, which are always there. */
  readonly gaps?: Readonly<Record<string, string | number>>
  /** What somebody wrote, told word for word. */
  readonly quote?: string
  /** The same on the same pile is the same mail, and is queued once: "message <id>". */
  readonly once: string
  readonly at: number
  /** It is sent no sooner, ms UTC; left out: at once. */
  readonly dueAt?: number
}

/** `no_address`: the customer has told none; `stopped`: they want no reminders of this pile. */
export type Queued = 'queued' | 'again' | 'no_address' | 'stopped'

/** A mail's text as it is kept: the link's address is made when it is sent, for keys are not kept. */
export interface KeptBody {
  readonly lead: readonly string[]
  readonly quote: string | null
  /** What else was asked before it was sent, in the same manner. */
  readonly more?: readonly { readonly lead: string; readonly quote: string }[]
  readonly link: string
  readonly after: readonly string[]
}

const longestSubject = 150

export const shortSubject = (line: string): string => {
  const letters = [...line]
  return letters.length > longestSubject
    ? `${letters.slice(0, longestSubject - 1).join('')}…`
    : line
}

/** Gaps are single lines: none may begin a new one of a header or of a paragraph. */
export const singleLines = (gaps: Readonly<Record<string, string | number>>) =>
  Object.fromEntries(
    Object.entries(gaps).map(([name, value]) => [
      name,
      typeof value === 'string' ? cleanLine(value) : value,
    ]),
  )

export async function remindersStopped(db: Db, pileId: string): Promise<boolean> {
  const row = await db
    .selectFrom('reminder_stop')
    .select('pile_id')
    .where('pile_id', '=', pileId)
    .executeTakeFirst()
  return row !== undefined
}

/**
 * Writes a mail to the customer of a pile, in the pile's language, in the transaction of what it tells of:
 * it is sent once that is durable, and not at all where it fails.
 */
export async function queueMail(
  trx: Db,
  { languages, shop }: Pick<Knowledge, 'languages' | 'shop'>,
  { pile, template, gaps = {}, quote, once, at, dueAt = at }: MailToQueue,
): Promise<Queued> {
  const contact = await contactOf(trx, pile.id)
  if (!contact || !isEmail(contact.email)) return 'no_address'
  if (mailTemplates[template].reminder && (await remindersStopped(trx, pile.id))) return 'stopped'

  const { say } = languages.get(pile.language)!
  const name = cleanLine(contact.name)
  const filled = singleLines({ ...gaps, name, shop: shop.name, pile: pile.number })
  const body: KeptBody = {
    lead: [say('mails.hello', filled), say(`mails.${template}.lead`, filled)],
    quote: quote === undefined ? null : cleanText(quote),
    link: say(`mails.${template}.link`, filled),
    after: [say(`mails.${template}.after`, filled), say('mails.bye', filled)],
  }
  const { numInsertedOrUpdatedRows } = await trx
    .insertInto('mail')
    .values({
      id: newId(),
      pile_id: pile.id,
      once,
      template,
      language: pile.language,
      to_name: name,
      to_address: contact.email,
      subject: shortSubject(say(`mails.${template}.subject`, filled)),
      body: JSON.stringify(body),
      state: 'waiting',
      tries: 0,
      queued_at: at,
      tried_since: at,
      due_at: dueAt,
      lease: null,
      done_at: null,
      trouble: null,
      way: null,
    })
    .onConflict((conflict) => conflict.columns(['pile_id', 'once']).doNothing())
    .executeTakeFirstOrThrow()
  return numInsertedOrUpdatedRows === 0n ? 'again' : 'queued'
}
