import { cleanText } from '../../flow/text.ts'
import type { Knowledge } from '../../intake/knowledge.ts'
import type { Db, PileRow } from '../../store/schema.ts'
import { type KeptBody, queueMail, shortSubject, singleLines } from './queue-mail.ts'

/** A question of the shop to a customer. */
export interface AskedByMail {
  readonly pile: Pick<PileRow, 'id' | 'number' | 'language'>
  /** Who asks, and about what, as the customer calls it. */
  readonly who: string
  readonly about: string
  readonly text: string
  /** The message's id. */
  readonly message: string
  readonly at: number
}

const minute = 60 * 1000

/** The mail with questions to a pile's customer that waits for more of them; undefined: none does. */
const gathering = (db: Db, pile: AskedByMail['pile'], at: number) =>
  db
    .selectFrom('mail')
    .select(['id', 'body', 'to_name'])
    .where('pile_id', '=', pile.id)
    .where('template', '=', 'question')
    .where('language', '=', pile.language)
    .where('state', '=', 'waiting')
    .where('tries', '=', 0)
    .where('due_at', '>', at)
    .executeTakeFirst()

/**
 * Tells a question by mail, in the transaction of the message. The first of several waits `question_minutes` of the
 * shop's file; those that are asked meanwhile go with it, so that a customer gets one mail for all of them.
 */
export async function mailQuestion(
  db: Db,
  knowledge: Pick<Knowledge, 'languages' | 'shop'>,
  { pile, who, about, text, message, at }: AskedByMail,
): Promise<void> {
  const open = await gathering(db, pile, at)
  if (open && (await joined(db, knowledge, open, { pile, who, about, text, message, at }))) return
  await queueMail(db, knowledge, {
    pile,
    template: 'question',
    gaps: { who, about },
    quote: text,
    once: `message ${message}`,
    at,
    dueAt: at + knowledge.shop.question_minutes * minute,
  })
}

/** False: it was taken to be sent in this moment. */
async function joined(
  db: Db,
  { languages, shop }: Pick<Knowledge, 'languages' | 'shop'>,
  open: { readonly id: string; readonly body: string; readonly to_name: string },
  { pile, who, about, text, at }: AskedByMail,
): Promise<boolean> {
  const { say } = languages.get(pile.language)!
  const body = JSON.parse(open.body) as KeptBody
  const more = body.more ?? []
  const gaps = singleLines({
    who,
    about,
    name: open.to_name,
    shop: shop.name,
    pile: pile.number,
    count: more.length + 2,
  })
  const told = { lead: say('mails.question.lead', gaps), quote: cleanText(text) }
  const next: KeptBody = { ...body, more: [...more, told] }
  const { numUpdatedRows } = await db
    .updateTable('mail')
    .set({
      body: JSON.stringify(next),
      subject: shortSubject(say('mails.question.several', gaps)),
    })
    .where('id', '=', open.id)
    .where('state', '=', 'waiting')
    .where('due_at', '>', at)
    .executeTakeFirst()
  return numUpdatedRows > 0n
}
