import { readConfig } from '../config.ts'
import { type GradeInput, gradeInput } from '../garment/input.ts'
import { readFlowsFolder } from '../intake/flows-folder.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { learnChecked } from '../intake/learn.ts'
import { drawings } from '../papers/drawings/index.ts'
import { type Rates, ratesAt } from '../quilt/rates.ts'
import { yieldFact } from '../quilt/yield.ts'
import { readJson } from './output.ts'

const today = (): string => new Date().toISOString().slice(0, 10)

/** What the shop of the settings knows today. Throws `flows_invalid`. */
export const knowledgeHere = (): Knowledge =>
  learnChecked(readFlowsFolder(readConfig(process.env).flowsDir), Object.keys(drawings), today())

export const ratesToday = ({ rates }: Knowledge): Rates => ratesAt(rates, today())

/** A file's facts, with the yield reckoned from kind and size where it is not told. */
export function factsIn(file: string, { grading }: Knowledge): GradeInput {
  const input = gradeInput(readJson(file), grading)
  const { facts: given, size } = input
  const facts =
    given.yield === 'unknown' ? { ...given, yield: yieldFact(given.kind, size, given) } : given
  return { ...input, facts }
}
