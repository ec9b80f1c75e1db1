import { type Clock, days } from '../../base/clock.ts'
import type { Log } from '../../base/log.ts'
import type { Knowledge } from '../../intake/knowledge.ts'
import type { Store } from '../../store/open.ts'
import { lockPile } from '../../store/rows.ts'
import type { Db, PileRow } from '../../store/schema.ts'
import { aboutWords } from '../messages.ts'
import { type MailToQueue, queueMail } from './queue-mail.ts'

export interface ReminderParts {
  readonly store: Store
  readonly knowledge: Pick<Knowledge, 'languages' | 'shop'>
  readonly clock: Clock
  readonly log: Pick<Log, 'info'>
}

/** Looked for so often at most, ms: they are counted in days. */
const everyMs = 10 * 60 * 1000

/** The span in which something must have been left alone to be reminded of, ms UTC. */
interface Span {
  /** Nobody is reminded of what is older than a link lasts. */
  readonly after: number
  readonly until: number
}

/** Each reminder of one thing by its place, from 1. */
const onceOf = (about: string, place: number): string => `${about} ${place}`
const ofOpen = 'remind_open'
const ofQuestion = (messageId: string): string => `remind ${messageId}`

/** Intakes that were left alone by customers who have said who they are. */
const leftAlone = (db: Db, { after, until }: Span) =>
  db
    .selectFrom('pile')
    .innerJoin('standing', 'standing.pile_id', 'pile.id')
    .select('pile.id')
    .where('pile.status', '=', 'open')
    .where('pile.changed_at', '>', after)
    .where('pile.changed_at', '<=', until)
    .where('standing.contact_name', 'is not', null)
    .where(({ not, exists, selectFrom }) =>
      not(
        exists(
          selectFrom('reminder_stop')
            .select('reminder_stop.pile_id')
            .whereRef('reminder_stop.pile_id', '=', 'pile.id'),
        ),
      ),
    )
    .orderBy('pile.changed_at')
    .execute()

/** Questions of the shop that nobody answered. */
const unanswered = (db: Db, { after, until }: Span) =>
  db
    .selectFrom('message')
    .innerJoin('account', 'account.id', 'message.account_id')
    .innerJoin('pile', 'pile.id', 'message.pile_id')
    .select(['message.id', 'message.pile_id', 'message.item', 'message.at', 'account.name'])
    .where('message.settled_at', 'is', null)
    .where('message.wants_answer', '=', 1)
    .where('message.at', '>', after)
    .where('message.at', '<=', until)
    .where('pile.status', '!=', 'withdrawn')
    .orderBy('message.at')
    .execute()

type Unanswered = Awaited<ReturnType<typeof unanswered>>[number]

interface Waited {
  readonly about: string
  /** Since when the customer is waited for, ms UTC. */
  readonly since: number
  readonly days: number
  readonly most: number
  readonly now: number
}

/** Which reminder of one thing is due, from 1; null: none, or all were written. */
async function dueOf(db: Db, pileId: string, waited: Waited): Promise<number | null> {
  const { about, since, most, now } = waited
  const all = Array.from({ length: most }, (_, i) => onceOf(about, i + 1))
  const written = await db
    .selectFrom('mail')
    .select('queued_at')
    .where('pile_id', '=', pileId)
    .where('once', 'in', all)
    .execute()
  const last = Math.max(since, ...written.map(({ queued_at }) => queued_at))
  return written.length < most && last + days(waited.days) <= now ? written.length + 1 : null
}

/** Writes the reminders that are due. Returns how many. */
export async function remindNow({ store, knowledge, clock, log }: ReminderParts): Promise<number> {
  const { reminders, link_days } = knowledge.shop
  const { most } = reminders
  if (most === 0) return 0
  const now = clock()
  const spanOf = (n: number): Span => ({ after: now - days(link_days), until: now - days(n) })

  /** `mailOf`: the mail, were a reminder due; null: there is no reason any more. */
  const remind = (
    pileId: string,
    mailOf: (
      trx: Db,
      pile: PileRow,
    ) => Promise<
      (Omit<Waited, 'most' | 'now'> & Pick<MailToQueue, 'template' | 'gaps' | 'quote'>) | null
    >,
  ): Promise<boolean> =>
    store.transaction(async (trx) => {
      const pile = await lockPile(trx, pileId)
      const wanted = pile && (await mailOf(trx, pile))
      if (!wanted) return false
      const place = await dueOf(trx, pileId, { ...wanted, most, now })
      if (place === null) return false
      const { about, template, gaps = {}, quote } = wanted
      const mail = { pile, template, gaps, once: onceOf(about, place), at: now }
      const queued = await queueMail(trx, knowledge, {
        ...mail,
        ...(quote !== undefined && { quote }),
      })
      return queued === 'queued'
    })

  const ofIntake = (pileId: string) =>
    remind(pileId, async (_, { status, changed_at }) =>
      status === 'open'
        ? {
            about: ofOpen,
            since: changed_at,
            days: reminders.open_after_days,
            template: 'remind_open',
          }
        : null,
    )

  const ofMessage = ({ id, pile_id, item, at, name }: Unanswered) =>
    remind(pile_id, async (trx, { language }) => {
      const still = await trx
        .selectFrom('message')
        .select('text')
        .where('id', '=', id)
        .where('settled_at', 'is', null)
        .executeTakeFirst()
      if (!still) return null
      const words = knowledge.languages.get(language)!
      return {
        about: ofQuestion(id),
        since: at,
        days: reminders.question_after_days,
        template: 'remind_question',
        gaps: { who: name, about: await aboutWords(trx, words, pile_id, item) },
        quote: still.text,
      }
    })

  let count = 0
  for (const { id } of await leftAlone(store.db, spanOf(reminders.open_after_days))) {
    if (await ofIntake(id)) count += 1
  }
  for (const asked of await unanswered(store.db, spanOf(reminders.question_after_days))) {
    if (await ofMessage(asked)) count += 1
  }
  if (count > 0) log.info({ count }, 'reminders written')
  return count
}

/** The same, but not more often than reminders need. */
export function reminding(parts: ReminderParts): () => Promise<void> {
  let next = 0
  return async () => {
    const now = parts.clock()
    if (now < next) return
    next = now + everyMs
    await remindNow(parts)
  }
}
