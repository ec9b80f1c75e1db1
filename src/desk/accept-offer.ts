import type { Clock } from '../base/clock.ts'
import { formatMoney } from '../base/money.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { type Accepting, acceptOffer } from '../intake/offers.ts'
import { dayIn } from '../papers/offer-paper.ts'
import type { Store } from '../store/open.ts'
import { queueMail } from './mail/queue-mail.ts'

/** Keeps the customer's yes, and mails them that it is kept. Throws what `acceptOffer` throws. */
export const acceptAndTell = (
  store: Store,
  clock: Clock,
  knowledge: Knowledge,
  key: string,
  accepting: Accepting,
): Promise<void> =>
  acceptOffer(store, clock, key, accepting, (db, pile, offer, at) => {
    const { locale } = knowledge.languages.get(pile.language)!
    const money = (minor: number) => formatMoney({ minor, currency: offer.currency }, locale)
    return queueMail(db, knowledge, {
      pile,
      template: 'agreed',
      gaps: {
        total: money(offer.total_minor),
        deposit: money(offer.deposit_minor),
        promised: dayIn(offer.promised_at, locale),
      },
      once: `agreed ${offer.version}`,
      at,
    })
  })
