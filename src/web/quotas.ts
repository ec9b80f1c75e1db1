import { normalizeIP } from '@fastify/rate-limit'
import type { Clock } from '../base/clock.ts'
import { Failure, type FailureCode } from '../base/failures.ts'
import type { Store } from '../store/open.ts'
import { countUses } from '../store/uses.ts'

const hourMs = 60 * 60 * 1000
const dayMs = 24 * hourMs

/** How much of each may come: an hour from one address, a day in all. */
export interface QuotaSettings {
  readonly intakesPerAddress: number
  readonly intakesPerDay: number
  readonly photosPerAddress: number
  readonly photosPerDay: number
}

/** An office or a household shares an address, and a telephone company's customers many; a large pile is 300 photos. */
export const usualQuotas: QuotaSettings = {
  intakesPerAddress: 120,
  intakesPerDay: 5_000,
  photosPerAddress: 1_200,
  photosPerDay: 20_000,
}

/** Tries to sign in to one account in an hour, from wherever they come. */
export const triesPerAccount = 100

/** Each counts what is asked for, and throws its failure {minutes} where that is too much. */
export interface Quotas {
  /** `too_many_intakes` */
  intake(address: string): Promise<void>
  /** `too_many_photos_now` */
  photos(address: string, count: number): Promise<void>
  /** `too_many_requests` */
  signIn(account: string): Promise<void>
}

declare module 'fastify' {
  interface FastifyInstance {
    quotas: Quotas
  }
}

interface Asked {
  readonly code: FailureCode
  readonly limits: readonly {
    readonly what: string
    readonly windowMs: number
    readonly max: number
  }[]
  /** How much of it is asked for. */
  readonly by: number
}

export function openQuotas(
  { store, clock }: { store: Store; clock: Clock },
  most: QuotaSettings,
): Quotas {
  async function use({ code, limits, by }: Asked): Promise<void> {
    const at = clock()
    for (const { what, windowMs, max } of limits) {
      const { uses, until } = await countUses(store.db, { what, windowMs, at, by })
      if (uses > max) throw new Failure(code, { minutes: Math.ceil((until - at) / 60_000) })
    }
  }
  const from = (what: string, address: string) => `${what} ${normalizeIP(address)}`
  return {
    intake: (address) =>
      use({
        code: 'too_many_intakes',
        limits: [
          { what: from('intake', address), windowMs: hourMs, max: most.intakesPerAddress },
          { what: 'intake', windowMs: dayMs, max: most.intakesPerDay },
        ],
        by: 1,
      }),
    photos: (address, count) =>
      use({
        code: 'too_many_photos_now',
        limits: [
          { what: from('photo', address), windowMs: hourMs, max: most.photosPerAddress },
          { what: 'photo', windowMs: dayMs, max: most.photosPerDay },
        ],
        by: count,
      }),
    signIn: (account) =>
      use({
        code: 'too_many_requests',
        limits: [{ what: `sign-in ${account}`, windowMs: hourMs, max: triesPerAccount }],
        by: 1,
      }),
  }
}
