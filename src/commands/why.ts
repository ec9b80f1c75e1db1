import { why } from '../garment/why.ts'
import { factsIn, knowledgeHere } from './graded.ts'
import { eachFile } from './output.ts'

/** `why <facts.json…>`: the chain of rows and rules behind a garment's grade. */
export async function whyVerb(files: readonly string[]): Promise<number> {
  const knowledge = knowledgeHere()
  return eachFile(files, (file) => {
    const { facts, pile } = factsIn(file, knowledge)
    return why(facts, pile, knowledge.grading)
  })
}
