import type { Db } from '../store/schema.ts'

/**
 * Why a pile cannot be erased by its customer: something of it is in the house, on its way there or looked for; money
 * was paid that has not gone back, which stands in the shop's books; a quilt was agreed on.
 */
export type WhyKept = 'here' | 'money' | 'agreed'

/** Null: nothing stands against it. */
export async function whyKept(db: Db, pileId: string): Promise<WhyKept | null> {
  const here = await db
    .selectFrom('custody')
    .select('subject')
    .where('pile_id', '=', pileId)
    .where(({ eb, or, and }) =>
      or([
        eb('whereabouts', 'in', ['here', 'unknown']),
        and([eb('kind', '=', 'parcel'), eb('whereabouts', '=', 'coming')]),
      ]),
    )
    .executeTakeFirst()
  if (here) return 'here'
  const payments = await db
    .selectFrom('payment')
    .select('minor')
    .where('pile_id', '=', pileId)
    .execute()
  if (payments.reduce((sum, { minor }) => sum + minor, 0) !== 0) return 'money'
  const offer = await db
    .selectFrom('offer')
    .select('version')
    .where('pile_id', '=', pileId)
    .where('accepted_at', 'is not', null)
    .where('ended_at', 'is', null)
    .executeTakeFirst()
  return offer ? 'agreed' : null
}
