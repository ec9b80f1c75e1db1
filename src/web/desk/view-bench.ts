import type { Grade, Link } from '../chat/view.ts'
import type { Pager } from './view-queue.ts'

/** What lies at the bench: piles that were accepted, without prices and without who sent them. */
export interface BenchPage {
  readonly page: 'bench'
  readonly title: string
  /** What to say where there are none. */
  readonly empty: string
  readonly piles: readonly {
    readonly title: string
    /** "throw · Turned patchwork · by 12 Mar". */
    readonly line: string
    /** Its papers, each a page that leads to its PDF. */
    readonly papers: readonly Link[]
    readonly garments: readonly {
      readonly tag: string
      readonly name: string
      readonly grade: Grade | null
      /** Its teardown sheet; null: there is none yet. */
      readonly href: string | null
    }[]
  }[]
  readonly pager: Pager | null
}
