import { type Migration, sql } from 'kysely'

/**
 * Photos of a question are looked for at each page that takes some. SQLite, which took either index for as good, read
 * every photo of the whole store for it that no answer holds yet: those are now in an index that only the sweep names.
 */
export const photosByQuestion: Migration = {
  async up(db) {
    await db.schema
      .createIndex('photo_by_pile_id_item_question')
      .on('photo')
      .columns(['pile_id', 'item', 'question'])
      .execute()
    await db.schema
      .createIndex('photo_drafts_by_at')
      .on('photo')
      .column('at')
      .where(sql`kept`, '=', 0)
      .execute()
    await db.schema.dropIndex('photo_by_pile_id').execute()
    await db.schema.dropIndex('photo_by_kept_at').execute()
  },
}
