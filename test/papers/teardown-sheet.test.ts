import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { domains, type Facts, pileDomains } from '../../src/garment/facts.ts'
import { reach } from '../../src/papers/drawing.ts'
import { laidFlat } from '../../src/papers/laid-flat.ts'
import { teardownSheet } from '../../src/papers/teardown-sheet.ts'
import { benchGarment, recipientOf, shopKnowledge } from '../help/bench-garments.ts'

const language = (code: string) => shopKnowledge().languages.get(code)!

const sheetOf = (kind: Facts['kind'], told: Partial<Facts> = {}, code = 'en') =>
  teardownSheet(benchGarment(kind, language(code), told), recipientOf(kind), language(code))

const anyFacts = fc.record(
  Object.fromEntries(
    Object.entries(domains).map(([name, values]) => [name, fc.constantFrom(...values)]),
  ),
) as unknown as fc.Arbitrary<Facts>

describe.each(['en', 'es'])('in %s', (code) => {
  test.each(domains.kind)(
    'the sheet of a %s is drawn inside its box and says every step',
    (kind) => {
      const { drawing, steps, plan } = sheetOf(kind, {}, code)
      expect(plan).toHaveLength(4)
      expect(steps.length).toBeGreaterThan(6)
      expect(drawing === null).toBe(kind === 'other')
      for (const [x, y] of drawing?.marks.flatMap(reach) ?? []) {
        expect(x).toBeGreaterThanOrEqual(0)
        expect(x).toBeLessThanOrEqual(drawing!.width)
        expect(y).toBeGreaterThanOrEqual(0)
        expect(y).toBeLessThanOrEqual(drawing!.height)
      }
    },
  )

  test('no facts leave a sheet without its words', () => {
    fc.assert(
      fc.property(anyFacts, fc.constantFrom(...pileDomains.recipient), (facts, recipient) => {
        const garment = benchGarment(facts.kind, language(code), facts)
        expect(teardownSheet(garment, recipient, language(code)).steps.length).toBeGreaterThan(0)
      }),
      { seed: 24, numRuns: 300 },
    )
  })
})

test('where a person decides first there is no drawing to cut by', () => {
  const { drawing, steps, legend, notes } = sheetOf('button-shirt', { consent: 'no-cut' })
  expect(drawing).toBeNull()
  expect(steps).toHaveLength(1)
  expect(steps[0]!.words).toMatch(/^Stop: a person decides/)
  expect(legend).toMatch(/before a person has decided/)
  expect(notes).toEqual([])
})

test('the plan names method, backing, heat with what set it, and the test', () => {
  expect(sheetOf('tshirt').plan.map(({ words }) => words)).toEqual([
    'Press, no fusing',
    'Sewn-in backing',
    '110 °C, set by the print',
    'on an offcut first, written down',
  ])
  expect(sheetOf('swimwear').plan[2]!.words).toBe('no iron, no steam, set by the care label')
})

test('what a tool asks for is told in full once, then by the number of that step', () => {
  const { steps } = sheetOf('jeans')
  const full = steps.findIndex(({ cautions }) =>
    cautions.some((one) => /away from the body/.test(one)),
  )
  expect(full).toBeGreaterThan(0)
  const later = steps.slice(full + 1).filter(({ tools }) => /shears|rotary/.test(tools ?? ''))
  expect(later.length).toBeGreaterThan(0)
  expect(later.filter(({ again }) => !again?.includes(String(full + 1)))).toEqual([])
})

test('parts stand to one scale: a back twice as wide is drawn twice as wide', () => {
  const part = (w: number) => ({
    panel: { name: 'cloth' as const, w, h: 20, count: 1, defects: [] },
    name: 'Cloth',
    measure: '',
  })
  const widths = laidFlat([part(10), part(20)]).marks.flatMap((mark) => {
    if (mark.mark !== 'path' || !mark.dash) return []
    const xs = [...mark.d.matchAll(/[ML](\S+) /g)].map(([, x]) => Number(x))
    return [Math.max(...xs) - Math.min(...xs)]
  })
  expect(widths).toHaveLength(2)
  expect(widths[1]! / widths[0]!).toBeCloseTo(2, 1)
})
