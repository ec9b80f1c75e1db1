import type { Migration } from 'kysely'

/** Photos that are there already say nothing of what they show of the garment. */
export const sideOfPhotos: Migration = {
  async up(db) {
    await db.schema.alterTable('photo').addColumn('shows', 'text').execute()
  },
}
