import type { CutRecord } from '../custody/guards.ts'
import { type Release, type ReleaseAct, releaseOf } from '../custody/release.ts'
import type { Facts } from '../garment/facts.ts'
import type { Db } from '../store/schema.ts'
import type { StandingRecord } from './bench-records.ts'

/** Questions whose photos show the garment itself; those of labels, incidents and found things do not. */
const showsGarment = ['photos', 'custody', 'bench'] as const

/** What the customer must have said of cutting: yes, or yes but for what they marked. */
const consents: readonly Facts['consent'][] = ['yes', 'part']

type KeptAct = ReleaseAct & Pick<StandingRecord, 'at' | 'note'> & { readonly name: string }

/** Who asked for a garment to be cut, and who released it. */
export const releasedOf = (standing: readonly StandingRecord[], item: number): Release<KeptAct> =>
  releaseOf(
    standing.flatMap(({ kind, who, seq, at, note, ...one }): KeptAct[] =>
      one.item === item && who !== null && (kind === 'ask' || kind === 'release')
        ? [{ kind, seq, who: who.id, name: who.name, at, note }]
        : [],
    ),
  )

/** What the records say of each garment before it is cut, by its number. */
export async function cuttingOf(
  db: Db,
  pileId: string,
  standing: readonly StandingRecord[],
): Promise<ReadonlyMap<number, CutRecord>> {
  const garments = await db
    .selectFrom('garment')
    .select(['item', 'facts'])
    .where('pile_id', '=', pileId)
    .execute()
  const photos = await db
    .selectFrom('photo')
    .select('item')
    .distinct()
    .where('pile_id', '=', pileId)
    .where('kept', '=', 1)
    .where('removed_at', 'is', null)
    .where('question', 'in', showsGarment)
    .execute()
  const shown = new Set(photos.map(({ item }) => item))
  return new Map(
    garments.map(({ item, facts }) => {
      const { asked, released } = releasedOf(standing, item)
      const { consent } = JSON.parse(facts) as Partial<Facts>
      return [
        item,
        {
          photo: shown.has(item),
          consent: consents.some((one) => one === consent),
          askedBy: asked?.who ?? null,
          releasedBy: released?.who ?? null,
        },
      ]
    }),
  )
}
