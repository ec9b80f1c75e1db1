import type { Clock } from '../../base/clock.ts'
import { sha256 } from '../../base/ids.ts'
import type { Log } from '../../base/log.ts'
import type { Knowledge } from '../../intake/knowledge.ts'
import { mintLink } from '../../intake/rows.ts'
import type { Letter, Part } from '../../mail/letter.ts'
import type { Post } from '../../mail/post.ts'
import type { Store } from '../../store/open.ts'
import type { MailRow } from '../../store/schema.ts'
import { type MailQuotas, mailHeldUntil, usualMailQuotas } from './mail-quotas.ts'
import { markHeld, markSent, markTroubled, takeDue } from './outbox.ts'
import type { KeptBody } from './queue-mail.ts'
import { type MailTemplate, mailTemplates } from './templates.ts'

export interface SenderParts {
  readonly store: Store
  readonly knowledge: Pick<Knowledge, 'languages' | 'shop'>
  readonly clock: Clock
  readonly post: Post
  readonly log: Pick<Log, 'info' | 'warn' | 'error'>
  /** Where customers reach us: "https://quilts.example". */
  readonly url: string
  readonly quotas?: MailQuotas
}

/** Where a customer stops the reminders that a mail is one of; the mail's id is as hard to guess as a key. */
export const stopPath = (mailId: string): string => `/stop/${mailId}`

const said = (text: string): Part => ({ kind: 'say', text })

/** A mail that was taken, as a letter, with a link to the pile that is made for it. */
async function letterOf(mail: MailRow, parts: SenderParts): Promise<Letter> {
  const { store, knowledge, clock, url } = parts
  const { shop, languages } = knowledge
  const { reminder, opens } = mailTemplates[mail.template as MailTemplate]
  const at = clock()
  const key = await mintLink(store.db, mail.pile_id, {
    at,
    lastsDays: shop.link_days,
    mailId: mail.id,
  })
  const body = JSON.parse(mail.body) as KeptBody
  const stopHref = reminder ? url + stopPath(mail.id) : null
  const stop = languages.get(mail.language)?.say('mails.stop')
  return {
    // Not the id itself: whoever knows that may stop reminders, and a Message-ID is quoted in answers.
    id: sha256(`mail ${mail.id}`).slice(0, 32),
    from: { name: shop.name, address: shop.email },
    to: { name: mail.to_name, address: mail.to_address },
    subject: mail.subject,
    language: mail.language,
    at,
    stopHref,
    parts: [
      ...body.lead.map(said),
      ...(body.quote === null ? [] : [{ kind: 'quote', text: body.quote } as const]),
      ...(body.more ?? []).flatMap(({ lead, quote }): Part[] => [
        said(lead),
        { kind: 'quote', text: quote },
      ]),
      { kind: 'link', text: body.link, href: `${url}/i/${key}${opens}` },
      ...body.after.map(said),
      ...(stopHref && stop ? [{ kind: 'link', text: stop, href: stopHref } as const] : []),
    ],
  }
}

/** Sends one mail that is due. False: none was. */
async function sendOne(parts: SenderParts): Promise<boolean> {
  const { store, clock, post, log } = parts
  const mail = await takeDue(store, clock())
  if (!mail) return false
  const { id, template, tries } = mail
  const about = { mail: id, template, tries }
  const held = await mailHeldUntil(store, mail, parts.quotas ?? usualMailQuotas, clock())
  if (held !== null) {
    await markHeld(store, mail, held)
    log.warn({ ...about, until: held }, 'too many mails today; this one waits')
    return true
  }
  const posted = await post.send(await letterOf(mail, parts))
  if (posted.sent) {
    await markSent(store, mail, { way: post.way, now: clock() })
    log.info({ ...about, way: post.way }, 'mail sent')
    return true
  }
  const { trouble, lasting } = posted
  const next = await markTroubled(store, mail, { trouble, lasting, now: clock() })
  if (next === null)
    log.error({ ...about, trouble }, 'mail given up; it can be tried again at the desk')
  else log.warn({ ...about, trouble, next }, 'mail not sent, to be tried again')
  return true
}

export interface Sender {
  /** Looks for reminders that are due and sends what is due. Returns how many mails were tried. */
  round(): Promise<number>
  /** Does a round every few seconds until `close`. */
  start(): void
  /** Ends once the mail that is under way is done. */
  close(): Promise<void>
}

const everyMs = 5_000

/** `remind` writes reminders that are due; it is asked at the beginning of each round. */
export function openSender(parts: SenderParts, remind: () => Promise<void>): Sender {
  let closed = false
  let timer: NodeJS.Timeout | null = null
  let under: Promise<unknown> = Promise.resolve()

  const round = async (): Promise<number> => {
    await remind()
    let tried = 0
    while (!closed && (await sendOne(parts))) tried += 1
    return tried
  }

  const turn = () => {
    under = round()
      // The store may be away for a while: what is due stays due.
      .catch((err) => parts.log.error({ err }, 'a round of mails failed'))
      .finally(() => {
        if (!closed) timer = setTimeout(turn, everyMs)
      })
  }

  return {
    round,
    start: turn,
    close: async () => {
      closed = true
      if (timer) clearTimeout(timer)
      await under
    },
  }
}
