import type { Db } from '../store/schema.ts'
import type { Language } from '../words/words.ts'

/** What a garment is called, for who writes about it. */
export interface NamedGarment {
  readonly item: number
  readonly name: string
  readonly kind: string
}

/** Those of a pile that were not left out. */
export const namedGarments = (db: Db, pileId: string): Promise<NamedGarment[]> =>
  db
    .selectFrom('garment')
    .select(['item', 'name', 'kind'])
    .where('pile_id', '=', pileId)
    .where('dropped', '=', 0)
    .orderBy('item')
    .execute()

/** A garment as its customer calls it, else by its kind, else by its number. */
export function garmentWords(
  garment: Omit<NamedGarment, 'item'> | undefined,
  item: number,
  { say, has }: Pick<Language, 'say' | 'has'>,
): string {
  const kind = `intake.kind.options.${garment?.kind}`
  return garment?.name || (has(kind) ? say(kind) : say('tag.unnamed', { n: item }))
}
