import { expect, test } from 'vitest'
import { untold } from '../../src/garment/facts.ts'
import { grade, worded } from '../../src/garment/grade.ts'
import { flatten, language } from '../../src/words/words.ts'
import { knowledge, readYaml } from '../help/knowledge.ts'

const grading = grade(untold, { recipient: 'under1' }, knowledge)

test.each(['en', 'es'])('every reason is said in %s, and nothing else is changed', (code) => {
  const { say } = language(code, flatten(readYaml(`tables/words/${code}.yaml`) as never))
  const said = worded(grading, say)
  expect(said.flags.every(({ message }) => message && message.length > 10)).toBe(true)
  expect(new Set(said.flags.map(({ message }) => message)).size).toBe(said.flags.length)
  expect({ ...said, flags: said.flags.map(({ message, ...flag }) => flag) }).toEqual(grading)
})
