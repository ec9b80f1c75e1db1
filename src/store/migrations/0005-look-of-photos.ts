import type { Migration } from 'kysely'

/** Photos that are there already stay as they are: nothing is proposed from them. */
export const lookOfPhotos: Migration = {
  async up(db) {
    await db.schema.alterTable('photo').addColumn('look', 'text').execute()
  },
}
