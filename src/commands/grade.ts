import { readConfig } from '../config.ts'
import { grade, worded } from '../garment/grade.ts'
import { gradeInput } from '../garment/input.ts'
import { readFlowsFolder } from '../intake/flows-folder.ts'
import { learnChecked } from '../intake/learn.ts'
import { drawings } from '../papers/drawings/index.ts'
import { yieldFact } from '../quilt/yield.ts'
import { eachFile, readJson } from './output.ts'

/** `grade <facts.json…>`: grade, flags, press plan and layouts of a garment from its facts. */
export async function gradeVerb(files: readonly string[]): Promise<number> {
  const { flowsDir } = readConfig(process.env)
  const knowledge = learnChecked(
    readFlowsFolder(flowsDir),
    Object.keys(drawings),
    new Date().toISOString().slice(0, 10),
  )
  const { say } = knowledge.languages.get('en')!
  return eachFile(files, (file) => {
    const { facts: given, pile, size } = gradeInput(readJson(file), knowledge.grading)
    const facts =
      given.yield === 'unknown' ? { ...given, yield: yieldFact(given.kind, size, given) } : given
    return worded(grade(facts, pile, knowledge.grading), (key) => say(`trade.${key}`))
  })
}
