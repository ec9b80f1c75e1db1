import type { Knowledge } from './knowledge.ts'
import type { Statement } from './must-hold.ts'
import { breaksPress, worsens } from './prove-press.ts'
import { bettersGrade, breaksRows } from './prove-rows.ts'
import { pointIn, type TableSet, type Value } from './space.ts'

/** A statement that does not hold, and facts at which it fails. Facts that are not named do not matter. */
export interface Broken {
  readonly id: string
  readonly says: string
  readonly example: Readonly<Record<string, Value>>
}

function exampleAgainst(
  statement: Statement,
  set: TableSet,
  knowledge: Knowledge,
): Broken['example'] | null {
  if ('worse' in statement) {
    for (const fact of statement.worse) {
      for (const unwanted of statement.never) {
        if (unwanted === 'betters-grade') {
          const box = bettersGrade(fact, set)
          if (box) return pointIn(box)
          continue
        }
        const facts = worsens(fact, unwanted, set, knowledge)
        if (facts) return facts
      }
    }
    return null
  }
  for (const claim of statement.holds) {
    const box = breaksRows(claim, set)
    if (box) return pointIn(box)
    const facts = breaksPress(claim, set, knowledge)
    if (facts) return facts
  }
  return null
}

/**
 * The statements that fail, each with an example. Exact: it looks at every combination of what the
 * tables and the statement read, never at samples. `knowledge.decide` must answer from these tables.
 */
export function broken(
  statements: readonly Statement[],
  set: TableSet,
  knowledge: Knowledge,
): Broken[] {
  return statements.flatMap((statement) => {
    const example = exampleAgainst(statement, set, knowledge)
    return example ? [{ id: statement.id, says: statement.says, example }] : []
  })
}
