/** The thread that looks at panels: for all ways to cut one, or for the list of cuts of one way. */
import {
  cutListOf,
  type PanelAsked,
  type PanelCutList,
  type Patterns,
  patternsOf,
} from '../quilt/plan/panels.ts'
import { answerJobs } from './answering.ts'

export interface PanelJob {
  readonly asked: PanelAsked
  /** Null: all ways are wanted. */
  readonly pattern: readonly number[] | null
}

/** `list` is null where no way to cut the panel gives the pattern. */
export type PanelFound = { readonly patterns: Patterns } | { readonly list: PanelCutList | null }

answerJobs<PanelJob, PanelFound>(({ asked, pattern }, tell) =>
  tell(pattern ? { list: cutListOf(asked, pattern) } : { patterns: patternsOf(asked) }),
)
