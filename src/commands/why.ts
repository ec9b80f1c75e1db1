import { better } from '../garment/better.ts'
import { why } from '../garment/why.ts'
import { factsIn, knowledgeHere } from './graded.ts'
import { eachFile } from './output.ts'

/**
 * `why <facts.json…>`: the chain of rows and rules behind a garment's grade, and what could better it.
 */
export async function whyVerb(files: readonly string[]): Promise<number> {
  const knowledge = knowledgeHere()
  return eachFile(files, (file) => {
    const { facts, pile } = factsIn(file, knowledge)
    const { steps, together } = better(facts, pile, knowledge.grading, knowledge.acts)
    return { ...why(facts, pile, knowledge.grading), better: steps, together }
  })
}
