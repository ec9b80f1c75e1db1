import type { PlanState } from '../../intake/planned.ts'
import type { CutSheet } from '../../papers/cut-sheet.ts'
import type { ShownQuilts } from '../chat/view-quilt.ts'
import type { Link } from './view.ts'
import type { RolesForm } from './view-roles.ts'
import type { SavingsPart } from './view-savings.ts'

export interface PlanRole {
  readonly name: string
  /** "80 of 5 × 5 in". */
  readonly sizes: readonly string[]
  readonly wanted: number
  readonly given: number
  readonly bought: number
  /** "1 1/4 yd"; null: none. */
  readonly cloth: string | null
  /** Neither given nor bought. */
  readonly lacking: number
}

export interface PlanGarment {
  readonly n: number
  readonly code: string
  readonly name: string
  readonly must: boolean
  readonly pieces: number
  /** "12 of 5 × 5 in, main pieces". */
  readonly gives: readonly string[]
  /** Why it gives nothing. */
  readonly idle: string | null
  /** To how it is cut. */
  readonly cut: Link | null
  /** What if it were left out. */
  readonly without: Link
  /** Null where there is one part it may go to, or none. */
  readonly roles: RolesForm | null
}

export interface GarmentCuts {
  readonly n: number
  readonly code: string
  readonly heading: string
  /** What to mind of this garment before the blade. */
  readonly minds: readonly string[]
  /** Null: its cuts are not found. */
  readonly sheet: CutSheet | null
  /** What is said in place of the sheet. */
  readonly wait: string
  readonly teardown: Link
}

export interface PlanCuts {
  readonly open: boolean
  readonly toggle: Link
  readonly garments: readonly GarmentCuts[]
  /** To look again, where cuts are not found yet. */
  readonly more: Link | null
  readonly at: string
  readonly before: string | null
  readonly after: string | null
}

/** What is known once there is a plan. */
export interface ShownPlan {
  /** A sentence each. */
  readonly shortage: readonly string[]
  readonly roles: readonly PlanRole[]
  readonly all: PlanRole
  readonly garments: readonly PlanGarment[]
  readonly cuts: PlanCuts | null
}

export interface PlanPage {
  readonly page: 'plan'
  readonly title: string
  readonly quilt: string
  readonly back: Link
  readonly whatIf: Link
  /** A form of this page that was not taken, and why. */
  readonly refused: string | null
  readonly state: PlanState
  /** What the state is, and what there is to do. */
  readonly words: readonly string[]
  readonly again: Link | null
  readonly cautions: readonly string[]
  readonly plan: ShownPlan | null
  /** Null while the plan may change. */
  readonly savings: SavingsPart | null
  readonly quilts: ShownQuilts | null
  readonly out: readonly { readonly name: string; readonly why: string }[]
}
