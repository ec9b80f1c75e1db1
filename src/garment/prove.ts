import { type CounterExample, exampleAgainst, exampleOfWorse } from './counter-example.ts'
import type { Knowledge } from './knowledge.ts'
import type { Claim, Statement } from './must-hold.ts'
import { departures } from './ordinary.ts'
import { breaksPress, weighedCautions, worsens } from './prove-press.ts'
import { bettersGrade, breaksRows, type Miss } from './prove-rows.ts'
import { type Point, pointIn, rowsOf, type TableSet, uncovered } from './space.ts'

/** A statement that does not hold, and the garment nearest to an ordinary one at which it fails. */
export interface Broken {
  readonly id: string
  readonly says: string
  readonly example: CounterExample
}

/** An example that is told only when it is asked for. */
type Found = () => CounterExample

function missOf(claim: Claim, set: TableSet, knowledge: Knowledge, most: number): Miss | null {
  const weighed = weighedCautions(claim, set)
  return breaksRows(claim, set, weighed, most) ?? breaksPress(claim, set, knowledge, weighed, most)
}

/** A place where a statement fails, `most` facts at most from the ordinary garment; else null. */
function search(
  statement: Statement,
  set: TableSet,
  knowledge: Knowledge,
  most: number,
): Found | null {
  if ('holds' in statement) {
    for (const claim of statement.holds) {
      const miss = missOf(claim, set, knowledge, most)
      if (miss) return () => exampleAgainst(claim, miss, set, knowledge)
    }
    return null
  }
  for (const fact of statement.worse) {
    for (const never of statement.never) {
      const worsened =
        never === 'betters-grade'
          ? bettersGrade(fact, set, most)
          : worsens(fact, never, set, knowledge, most)
      if (worsened) return () => exampleOfWorse(never, worsened, knowledge)
    }
  }
  return null
}

function nearest(statement: Statement, set: TableSet, knowledge: Knowledge): CounterExample {
  for (let most = 0; ; most += 1) {
    const found = search(statement, set, knowledge, most)
    if (found) return found()
  }
}

/** Facts at which no row sets a limit, so that there is no ceiling at all; else null. */
export function withoutLimit(set: TableSet): Point | null {
  for (let most = 0; uncovered(new Map(), rowsOf(set, 'limits'), set); most += 1) {
    const box = uncovered(new Map(), rowsOf(set, 'limits'), set, most)
    if (box) return departures(pointIn(box))
  }
  return null
}

/**
 * The statements that fail, each with its smallest example. Exact: it looks at every combination of
 * what the tables and the statement read, never at samples. Only for a statement that fails is the
 * nearest example looked for. `knowledge.decide` must answer from these tables.
 */
export function broken(
  statements: readonly Statement[],
  set: TableSet,
  knowledge: Knowledge,
): Broken[] {
  return statements
    .filter((statement) => search(statement, set, knowledge, Number.POSITIVE_INFINITY))
    .map((statement) => ({
      id: statement.id,
      says: statement.says,
      example: nearest(statement, set, knowledge),
    }))
}
