import type { Option } from '../chat/view.ts'
import type { MarkedPhoto, SpotShown } from '../chat/view-question.ts'
import type { Link } from './view.ts'

/** What is marked on a garment's photos, as its card tells of it. */
export interface DeskSpotsShown {
  /** "1: Hole (left sleeve), marked by the customer". */
  readonly lines: readonly string[]
  /** What the customer said that is less than what is marked. */
  readonly against: readonly string[]
  /** Null: it has no photo to mark. */
  readonly open: Link | null
}

/** A page to mark holes, stains and thin places on the photos of one garment. */
export interface SpotsPage {
  readonly page: 'spots'
  readonly title: string
  readonly lead: string
  readonly back: Link
  readonly csrf: string
  readonly postTo: string
  readonly refused: string | null
  readonly against: readonly string[]
  readonly photos: readonly MarkedPhoto[]
  /** What the next mark may be. */
  readonly options: readonly Option[]
  readonly spots: readonly (SpotShown & { readonly by: string })[]
}
