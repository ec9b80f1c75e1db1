/** What was erased, what is still to be removed, and what work on the whole store was begun. */
export interface KeepingTables {
  erasure: ErasureTable
  photo_removal: PhotoRemovalTable
  unfinished: UnfinishedTable
}

/** A customer at their own link, a member of staff, or the time that was set. */
export type Eraser = 'customer' | 'staff' | 'time'

/** That something was erased, so that no backup brings it back. It tells nothing of whom it was about. */
interface ErasureTable {
  /** SHA-256 of the id, which is random and stands nowhere any more. */
  what_hash: string
  what: 'pile' | 'photo'
  by_whom: Eraser
  at: number
}

/** Files of photos that no row holds any more, until they are gone. */
interface PhotoRemovalTable {
  /** The name in the photo store. */
  hash: string
  since: number
}

/** Work that fills a store: as long as it stands here, the store is not served. */
interface UnfinishedTable {
  work: 'move'
  since: number
}
