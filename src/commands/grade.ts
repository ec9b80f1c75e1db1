import { grade, worded } from '../garment/grade.ts'
import { factsIn, knowledgeHere } from './graded.ts'
import { eachFile } from './output.ts'

/** `grade <facts.json…>`: grade, flags, press plan and layouts of a garment from its facts. */
export async function gradeVerb(files: readonly string[]): Promise<number> {
  const knowledge = await knowledgeHere()
  const { say } = knowledge.languages.get('en')!
  return eachFile(files, (file) => {
    const { facts, pile } = factsIn(file, knowledge)
    return worded(grade(facts, pile, knowledge.grading), (key) => say(`trade.${key}`))
  })
}
