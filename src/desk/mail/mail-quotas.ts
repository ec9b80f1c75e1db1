import { days } from '../../base/clock.ts'
import type { Store } from '../../store/open.ts'
import type { MailRow } from '../../store/schema.ts'
import { countUses } from '../../store/uses.ts'

/** How many mails go out a day: to one address, and in all. */
export interface MailQuotas {
  readonly perAddress: number
  readonly perDay: number
}

/** Whoever types another's address as their own can have so many mails sent to it. */
export const usualMailQuotas: MailQuotas = { perAddress: 30, perDay: 2_000 }

/** Counts a mail that is about to go out for the first time. Returns until when it has to wait; null: it need not. */
export async function mailHeldUntil(
  { db }: Store,
  { to_address, tries }: Pick<MailRow, 'to_address' | 'tries'>,
  { perAddress, perDay }: MailQuotas,
  at: number,
): Promise<number | null> {
  if (tries > 1) return null
  const windowMs = days(1)
  const limits = [
    { what: `mail ${to_address.toLowerCase()}`, max: perAddress },
    { what: 'mail', max: perDay },
  ]
  for (const { what, max } of limits) {
    const { uses, until } = await countUses(db, { what, windowMs, at })
    if (uses > max) return until
  }
  return null
}
