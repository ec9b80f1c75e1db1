import { foldersOf } from '../folders.ts'
import { type GradeInput, gradeInput } from '../garment/input.ts'
import { readFlowFiles } from '../intake/flow-files.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { learnProven } from '../intake/learn.ts'
import { type Rates, ratesAt } from '../quilt/rates.ts'
import { yieldFact } from '../quilt/yield.ts'
import { readJson } from './output.ts'
import { aroundHere } from './proven-here.ts'

/** What the shop of the settings knows today, its files proven. Throws `flows_invalid`. */
export async function knowledgeHere(): Promise<Knowledge> {
  const files = readFlowFiles(foldersOf(process.env).flowsDir)
  const { knowledge } = await learnProven(files, aroundHere())
  return knowledge
}

export const ratesToday = ({ rates }: Knowledge): Rates => ratesAt(rates, aroundHere().today)

/** A file's facts, with the yield reckoned from kind and size where it is not told. */
export function factsIn(file: string, { grading }: Knowledge): GradeInput {
  const input = gradeInput(readJson(file), grading)
  const { facts: given, size } = input
  const facts =
    given.yield === 'unknown' ? { ...given, yield: yieldFact(given.kind, size, given) } : given
  return { ...input, facts }
}
