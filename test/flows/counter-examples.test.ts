import { describe, expect, test } from 'vitest'
import { domains, type Facts, pileDomains } from '../../src/garment/facts.ts'
import { grade, grades } from '../../src/garment/grade.ts'
import type { Knowledge } from '../../src/garment/knowledge.ts'
import { keeps, type Statement } from '../../src/garment/must-hold.ts'
import { ordinary } from '../../src/garment/ordinary.ts'
import { methods } from '../../src/garment/press.ts'
import type { Broken } from '../../src/garment/prove.ts'
import { breaking } from '../help/breaking.ts'
import {
  brokenBy,
  type Change,
  changed,
  isSo,
  knowing,
  rowReading,
  statements,
} from '../help/changed-tables.ts'
import { knowledge } from '../help/knowledge.ts'

type Example = Broken['example']

const exampleOf = (id: string, changes: readonly Change[]): Example =>
  brokenBy(
    changes,
    statements.filter((one) => one.id === id),
  )[0]!.example

/** Whether real gradings of the garment, and of the worse one of a scale, keep the statement. */
function isKept(one: Statement, example: Example, facts: object, known: Knowledge): boolean {
  const graded = (more: object) => {
    const all = { ...ordinary, ...facts, ...more }
    return grade(all as unknown as Facts, { recipient: all.recipient as 'adult' }, known)
  }
  if ('holds' in one) {
    const garment = { ...ordinary, ...facts }
    const meant = one.holds.filter(({ when }) => when.some((each) => isSo(each, garment)))
    return meant.every((claim) => keeps(claim, graded({}), known))
  }
  if (!('step' in example)) throw new Error(`${one.id} is told without its step`)
  const { fact, better, worse } = example.step
  const [before, after] = [graded({ [fact]: better }), graded({ [fact]: worse })]
  return {
    'raises-ceiling': (after.press.ceilingC ?? 0) <= (before.press.ceilingC ?? 0),
    'nearer-fusing': methods.indexOf(after.press.method) <= methods.indexOf(before.press.method),
    'betters-grade': grades.indexOf(after.grade) >= grades.indexOf(before.grade),
  }[example.never]
}

const told: Readonly<Record<string, readonly string[]>> = { ...domains, ...pileDomains }

/** Every value of each fact that is not the ordinary one. */
const unusual = Object.entries(told).flatMap(([fact, values]) =>
  values.filter((value) => value !== ordinary[fact]).map((value) => ({ fact, value })),
)

/** Every garment that departs from the ordinary one in so many facts, two at most. */
function departing(size: number): object[] {
  if (size === 0) return [{}]
  if (size === 1) return unusual.map(({ fact, value }) => ({ [fact]: value }))
  return unusual.flatMap((a, at) =>
    unusual
      .slice(at + 1)
      .filter((b) => a.fact !== b.fact)
      .map((b) => ({ [a.fact]: a.value, [b.fact]: b.value })),
  )
}

test.each(
  breaking.map(([id, ...changes]) => ({
    id,
    changes,
    rows: changes.map(([table, row]) => `${row} of ${table}`).join(' and '),
  })),
)('$id: the example of $rows breaks it in a grading, and no smaller one does', (one) => {
  const statement = statements.find(({ id }) => id === one.id)!
  const known = knowing(changed(one.changes))
  const example = exampleOf(one.id, one.changes)
  const keepsAt = (facts: object) => isKept(statement, example, facts, known)
  expect(keepsAt(example.facts)).toBe(false)
  for (const fact of Object.keys(example.facts)) {
    const { [fact]: _, ...fewer } = example.facts
    expect(keepsAt(fewer), `without ${fact}`).toBe(true)
  }
  const size = Object.keys(example.facts).length
  const smaller = [0, 1, 2].filter((fewer) => fewer < size).flatMap(departing)
  expect(smaller.filter((facts) => !keepsAt(facts))).toEqual([])
})

describe('a counter-example', () => {
  const screenCap = rowReading('limits', 'printMake', 'screen')
  const capped = (limitC: number): Change => ['limits', screenCap, { give: { limitC } }]

  test('names the fact, the demand, what came out, and the row that set the ceiling', () => {
    const example = exampleOf('lowest-limit-rules', [capped(150)])
    expect(example).toMatchObject({
      facts: { printMake: 'screen' },
      must: { most_c: 125 },
      cameOut: 150,
    })
    const setting = example.because.limits!.filter(({ setsCeiling }) => setsCeiling)
    expect(setting.map(({ row }) => row)).toEqual([screenCap])
  })

  test('tells for a scale the step, and what came out before it and after', () => {
    expect(exampleOf('worse-is-never-hotter', [capped(100)])).toMatchObject({
      facts: {},
      never: 'raises-ceiling',
      step: { fact: 'printMake', better: 'screen', worse: 'film' },
      cameOut: { better: { ceilingC: 100 }, worse: { ceilingC: 110 } },
    })
  })

  test('weighs each interfacing, sole and spare, where fusing is what went wrong', () => {
    const example = exampleOf('cool-fuse-is-tested', [
      ['permit', 'test-failed', { give: { most: 'fuse-cool' } }],
    ])
    const cool = example.interfacings!.find(({ method }) => method === 'fuse-cool')!
    const used = knowledge.interfacings.find((it) => it.class === cool.class)!
    expect(cool).toMatchObject({ needsC: used.soleC + 10, coolEnough: true, chosen: true })
    expect(example.because.permit!.map(({ row }) => row)).toEqual(['test-failed'])
  })

  test('shows that no row spoke where a row is missing', () => {
    const example = exampleOf('untold-is-taken-for-the-worst', [['flags', 'consent-unknown', null]])
    expect(example).toMatchObject({ facts: { consent: 'unknown' }, because: { flags: [] } })
  })

  test('is the same each time', () => {
    const change: Change = ['testing', 'not-washed', { give: { testFirst: false } }]
    expect(exampleOf('washing-is-respected', [change])).toEqual(
      exampleOf('washing-is-respected', [change]),
    )
  })
})

test('nothing is said against the ordinary garment that examples are told against', () => {
  const grading = grade(ordinary as unknown as Facts, { recipient: 'adult' }, knowledge)
  expect(grading).toMatchObject({ grade: 'sound', flags: [] })
})
