import { days } from '../base/clock.ts'
import { sha256 } from '../base/ids.ts'
import type { Store } from './open.ts'

/** A look that is older says nothing of the clock, ms. */
const oldest = days(31)

/** A look at what has had its time, which comes again and again. */
export interface Look {
  /** What is looked at: each has a last look of its own. */
  readonly look: string
  readonly at: number
  /** Where somebody looked less than this ago, ms, there is no need to; left out: there always is. */
  readonly youngest?: number
}

/**
 * Whether somebody looked not long before, by the same clock. A clock that is wrong by years would have all that has
 * a time taken away at once: the first look after a long time takes nothing, and leaves whoever runs the server until
 * the next one to see it. The last look is kept among what is forgotten after a time.
 */
export async function isClockTrusted(
  { transaction }: Pick<Store, 'transaction'>,
  { look, at, youngest = 0 }: Look,
): Promise<boolean> {
  const what = sha256(`the last look at ${look}`)
  return transaction(async (db) => {
    const { until_at: until } = (await db
      .selectFrom('use_count')
      .select('until_at')
      .where('what', '=', what)
      .executeTakeFirst()) ?? { until_at: 0 }
    const age = at + oldest - until
    if (age >= 0 && age < youngest) return false
    await db.deleteFrom('use_count').where('what', '=', what).execute()
    await db
      .insertInto('use_count')
      .values({ what, until_at: at + oldest, uses: 1 })
      // Another process may have looked in this moment.
      .onConflict((conflict) => conflict.columns(['what', 'until_at']).doNothing())
      .execute()
    return age >= youngest && age <= oldest
  })
}
