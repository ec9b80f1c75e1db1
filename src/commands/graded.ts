import { readConfig } from '../config.ts'
import type { Facts } from '../garment/facts.ts'
import type { PileFacts } from '../garment/grade.ts'
import { gradeInput } from '../garment/input.ts'
import { readFlowsFolder } from '../intake/flows-folder.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { learnChecked } from '../intake/learn.ts'
import { drawings } from '../papers/drawings/index.ts'
import { yieldFact } from '../quilt/yield.ts'
import { readJson } from './output.ts'

/** What the shop of the settings knows today. Throws `flows_invalid`. */
export const knowledgeHere = (): Knowledge =>
  learnChecked(
    readFlowsFolder(readConfig(process.env).flowsDir),
    Object.keys(drawings),
    new Date().toISOString().slice(0, 10),
  )

/** A file's facts, with the yield reckoned from kind and size where it is not told. */
export function factsIn(file: string, { grading }: Knowledge): { facts: Facts; pile: PileFacts } {
  const { facts: given, pile, size } = gradeInput(readJson(file), grading)
  const facts =
    given.yield === 'unknown' ? { ...given, yield: yieldFact(given.kind, size, given) } : given
  return { facts, pile }
}
