import { describe, expect, test } from 'vitest'
import type { Facts } from '../../src/garment/facts.ts'
import { type Flag, grade, grades, type Severity } from '../../src/garment/grade.ts'
import { flagWords } from '../../src/papers/flag-words.ts'
import { decidingCode, gradeNext, gradeSentence } from '../../src/papers/grade-words.ts'
import { flatten, language, readPageWords } from '../../src/words/words.ts'
import { plainShirt } from '../help/garments.ts'
import { knowledge, layouts, readYaml, tables } from '../help/knowledge.ts'

const languages = ['en', 'es'].map((code) => {
  const trade = flatten(readYaml(`tables/words/${code}.yaml`) as never, 'trade.')
  return language(code, new Map([...readPageWords().get(code)!, ...trade]))
})
const [english] = languages

/** Every reason that a customer may see, as the table of reasons gives it. */
const seen: readonly Flag[] = tables
  .find(({ table }) => table === 'flags')!
  .rows.map(({ id, give }) => ({
    code: id,
    severity: give.severity as Severity,
    for: give.for as Flag['for'],
    because: give.because as string[],
  }))
  .filter((flag) => flag.for.includes('customer'))

const graver = ({ severity }: Flag) => severity !== 'note'

test('whatever changes a grade is told to the customer', () => {
  const rows = tables.find(({ table }) => table === 'flags')!.rows
  const untold = rows.filter(
    ({ give }) => give.severity !== 'note' && !(give.for as string[]).includes('customer'),
  )
  expect(seen.filter(graver).length).toBeGreaterThan(50)
  expect(untold.map(({ id }) => id)).toEqual([])
})

describe.each(languages.map((one) => [one.code, one] as const))('in %s', (_, reader) => {
  const words = new Map(
    seen.map((flag) => [flag, flagWords({ flags: [flag], layouts: [] }, 'customer', reader)[0]!]),
  )
  const nothing = reader.say('trade.flags.graphic-kept-whole.next')

  test.each(seen.map((flag) => [flag.code, flag] as const))(
    '%s says why in one sentence, and what to do instead',
    (_code, flag) => {
      const { message, next } = words.get(flag)!
      expect(message).toMatch(/^[^.!?]+\.$/)
      expect(next).toMatch(/\.$/)
      expect(next).not.toBe(message)
    },
  )

  test('what keeps a garment at home or waiting always asks for something or offers something', () => {
    const grave = seen.filter(({ severity }) => severity === 'home' || severity === 'eyes')
    expect(grave.length).toBeGreaterThan(20)
    expect(grave.filter((flag) => words.get(flag)!.next === nothing)).toEqual([])
  })

  test('every grade has its sentence', () => {
    const graded: Record<(typeof grades)[number], Partial<Facts>> = {
      sound: {},
      care: { wear: 'thin' },
      eyes: { soil: 'pests' },
      home: { wear: 'shattered' },
    }
    for (const each of grades) {
      const grading = grade({ ...plainShirt, ...graded[each] }, { recipient: 'adult' }, knowledge)
      expect(grading.grade).toBe(each)
      expect(gradeSentence(grading, reader.say)).toMatch(/\.$/)
      if (each !== 'sound') expect(gradeNext(grading, reader)).toMatch(/\.$/)
    }
  })
})

// One central picture is kept whole, which patchwork cannot do: common practice, no source.
describe('a single picture in a pile for patchwork', () => {
  const picture: Facts = { ...plainShirt, pattern: 'single', graphic: 'fits' }
  const framed = layouts.find(({ setting }) => setting === 'framed')!.id
  const named = (id: string) => english!.say(`trade.layouts.${id}.name`)

  test('is told which kinds of quilt it suits', () => {
    const grading = grade(picture, { recipient: 'adult', layout: 'plain-squares' }, knowledge)
    expect(decidingCode(grading)).toBe('not-for-the-layout')
    expect(gradeNext(grading, english!)).toContain(named(framed))
    expect(gradeNext(grading, english!)).not.toContain(named('plain-squares'))
  })

  test('is offered no kind that it does not suit either', () => {
    const large: Facts = { ...picture, graphic: 'too-large' }
    const grading = grade(large, { recipient: 'adult', layout: 'plain-squares' }, knowledge)
    const misfit = flagWords(grading, 'customer', english!).find(
      ({ message }) => message === english!.say('trade.flags.not-for-the-layout.message'),
    )
    expect(misfit!.next).toBe(english!.say('trade.flags.not-for-the-layout.next'))
  })
})
