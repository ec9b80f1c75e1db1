import fc from 'fast-check'
import { expect, test } from 'vitest'
import { domains, type FactName, type Facts, pileDomains, scales } from '../../src/garment/facts.ts'
import { type Grading, grade, grades } from '../../src/garment/grade.ts'
import { keeps, type Scaled } from '../../src/garment/must-hold.ts'
import { methods } from '../../src/garment/press.ts'
import { isSo, statements } from '../help/changed-tables.ts'
import { knowledge } from '../help/knowledge.ts'

const anyFacts = fc.record(
  Object.fromEntries(
    (Object.keys(domains) as FactName[]).map((name) => [name, fc.constantFrom(...domains[name])]),
  ),
) as unknown as fc.Arbitrary<Facts>

const anyPile = fc.record({
  recipient: fc.constantFrom(...pileDomains.recipient),
  layout: fc.constantFrom(undefined, 'framed', 'plain-squares', 'quartered-nine-patch'),
})

const seeded = { seed: 20260101, numRuns: 4000 }

test('the grading of any facts keeps every statement whose premise is so', () => {
  const kept = new Set<string>()
  fc.assert(
    fc.property(anyFacts, anyPile, (facts, pile) => {
      const grading = grade(facts, pile, knowledge)
      for (const one of statements) {
        if ('worse' in one) continue
        const meant = one.holds.filter(({ when }) =>
          when.some((conditions) => isSo(conditions, { ...facts, recipient: pile.recipient })),
        )
        if (meant.length > 0) kept.add(one.id)
        expect(
          meant.filter((claim) => !keeps(claim, grading, knowledge)),
          one.says,
        ).toEqual([])
      }
    }),
    seeded,
  )
  expect(kept.size).toBe(statements.filter((one) => 'holds' in one).length)
})

const heat = ({ press }: Grading): number => press.ceilingC ?? 0
const nearness = ({ press }: Grading): number => methods.indexOf(press.method)
const gravity = ({ grade: given }: Grading): number => grades.indexOf(given)

const steps = (names: readonly Scaled[]) =>
  fc.constantFrom(
    ...names.flatMap((name) =>
      scales[name].slice(1).map((worse, at) => ({ name, better: scales[name][at]!, worse })),
    ),
  )

test('worse heat, iron, print or trims never raise the ceiling or move towards fusing', () => {
  fc.assert(
    fc.property(
      anyFacts,
      anyPile,
      steps(['heat', 'iron', 'printMake', 'trims']),
      (facts, pile, { name, better, worse }) => {
        const before = grade({ ...facts, [name]: better }, pile, knowledge)
        const after = grade({ ...facts, [name]: worse }, pile, knowledge)
        expect(heat(after)).toBeLessThanOrEqual(heat(before))
        expect(nearness(after)).toBeLessThanOrEqual(nearness(before))
      },
    ),
    seeded,
  )
})

test('worse wear, soil or age never betters the grade', () => {
  fc.assert(
    fc.property(
      anyFacts,
      anyPile,
      steps(['wear', 'soil', 'age']),
      (facts, pile, { name, better, worse }) => {
        const before = grade({ ...facts, [name]: better }, pile, knowledge)
        const after = grade({ ...facts, [name]: worse }, pile, knowledge)
        expect(gravity(after)).toBeGreaterThanOrEqual(gravity(before))
      },
    ),
    seeded,
  )
})

test('a grade but sound has at least one reason of its own gravity', () => {
  fc.assert(
    fc.property(anyFacts, anyPile, (facts, pile) => {
      const { grade: given, flags } = grade(facts, pile, knowledge)
      expect(flags.some(({ severity }) => severity === given)).toBe(given !== 'sound')
    }),
    seeded,
  )
})
