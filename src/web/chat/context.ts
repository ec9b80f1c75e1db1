import type { Clock } from '../../base/clock.ts'
import type { Conversation } from '../../intake/conversation.ts'
import type { Knowledge } from '../../intake/knowledge.ts'
import type { PhotoStore } from '../../photo/keep.ts'
import type { LabelReader } from '../../photo/label-words.ts'
import type { Lane } from '../../photo/lane.ts'
import type { Paints } from '../../photo/paint.ts'
import type { Plans } from '../../planning/plans.ts'
import type { Store } from '../../store/open.ts'
import type { Assets } from '../assets/manifest.ts'
import type { Printer } from '../printer.ts'

/** What the customer's pages are made from. */
export interface ChatContext {
  readonly store: Store
  readonly knowledge: Knowledge
  readonly conversation: Conversation
  readonly photos: PhotoStore
  readonly lane: Lane
  /** Without it labels are typed. */
  readonly labels?: LabelReader | undefined
  readonly paints: Paints
  readonly plans: Plans
  readonly printer: Printer
  readonly clock: Clock
  readonly assets: Assets
  /** The address people reach us at; null: as the request says. */
  readonly publicUrl: string | null
}
