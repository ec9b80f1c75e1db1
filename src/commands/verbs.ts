import { accountVerb } from './account.ts'
import { checkFlowsVerb, drawFlowsVerb } from './check-flows.ts'
import { gradeVerb } from './grade.ts'
import { readLabelVerb } from './read-label.ts'
import { serveVerb } from './serve.ts'

/** What the command line can do; each verb resolves to its exit code. */
export const verbs: Readonly<Record<string, (given: readonly string[]) => Promise<number>>> = {
  serve: serveVerb,
  'read-label': readLabelVerb,
  grade: gradeVerb,
  'check-flows': checkFlowsVerb,
  'draw-flows': drawFlowsVerb,
  account: accountVerb,
}
