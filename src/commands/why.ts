import { better } from '../garment/better.ts'
import { garmentWhy } from '../intake/why-garment.ts'
import { factsIn, knowledgeHere, ratesToday } from './graded.ts'
import { eachFile } from './output.ts'

/**
 * `why <facts.json…>`: the chain behind a garment's grade: rows and rules, fibres, panels and weight,
 * each with its source; and what could better it.
 */
export async function whyVerb(files: readonly string[]): Promise<number> {
  const knowledge = await knowledgeHere()
  return eachFile(files, (file) => {
    const input = factsIn(file, knowledge)
    const { facts, pile } = input
    const { steps, together } = better(facts, pile, knowledge.grading, knowledge.acts)
    return { ...garmentWhy(input, knowledge, ratesToday(knowledge)), better: steps, together }
  })
}
