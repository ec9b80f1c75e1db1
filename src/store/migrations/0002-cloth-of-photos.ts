import type { Migration } from 'kysely'

/** Photos that are there already have none: nobody looked at their cloth. */
export const clothOfPhotos: Migration = {
  async up(db) {
    await db.schema.alterTable('photo').addColumn('cloth', 'text').execute()
  },
}
