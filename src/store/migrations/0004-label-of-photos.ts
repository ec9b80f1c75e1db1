import type { Migration } from 'kysely'

/** Photos that are there already show garments: no label was read on them. */
export const labelOfPhotos: Migration = {
  async up(db) {
    await db.schema.alterTable('photo').addColumn('label', 'text').execute()
  },
}
