import { describe, expect, test } from 'vitest'
import { domains, type Facts, pileDomains, type Recipient } from '../../src/garment/facts.ts'
import { grade } from '../../src/garment/grade.ts'
import { teardownOf } from '../../src/garment/teardown.ts'
import { plainShirt } from '../help/garments.ts'
import { knowledge } from '../help/knowledge.ts'

const graded = (kind: Facts['kind'], recipient: Recipient, told: Partial<Facts> = {}) =>
  grade({ ...plainShirt, ...told, kind }, { recipient }, knowledge)

const flags = (...about: Parameters<typeof graded>): string[] =>
  graded(...about).flags.map(({ code }) => code)

const everyTrim = domains.trims.map((trims) => ({ trims }))

describe.each(domains.kind)('a %s', (kind) => {
  // 16 CFR 1501 (small parts; from memory, unverified): things for children under three years of age
  // hold no part that fits the cylinder, so hard trims come off whatever else is known.
  test.each(['under1', 'under3'] as const)(
    'for a child of %s loses every hard trim',
    (recipient) => {
      for (const trims of everyTrim) {
        const { press } = graded(kind, recipient, trims)
        expect(flags(kind, recipient, trims)).toContain('hard-trims-off')
        expect(press.cautions).toContain('hard-trims-off')
      }
      const facts = { ...plainShirt, kind }
      const steps = teardownOf(kind, facts, recipient, graded(kind, recipient).press)
      expect(steps.map(({ code }) => code)).toContain('hard-trims-off')
    },
  )

  test('for the grown, or a child past three years, keeps what it has', () => {
    expect(flags(kind, 'adult')).not.toContain('hard-trims-off')
    expect(flags(kind, 'child')).not.toContain('hard-trims-off')
  })

  // 16 CFR 1615 (up to 6X) and 1616 (7 to 14): children's sleepwear is what the rules speak of.
  test('is named for a finish against fire only if it is night clothes and may go to a child', () => {
    const named = pileDomains.recipient.filter((who) =>
      flags(kind, who).includes('sleepwear-finish'),
    )
    const nightwear = kind === 'pyjamas' || kind === 'baby-suit'
    expect(named.toSorted()).toEqual(nightwear ? ['child', 'under1', 'under3', 'unknown'] : [])
  })
})

test('the finish is told to customer, desk and maker alike: never mixed in silently', () => {
  const flag = graded('pyjamas', 'child').flags.find(({ code }) => code === 'sleepwear-finish')!
  expect([...flag.for].toSorted()).toEqual(['customer', 'maker', 'staff'])
})

// American Academy of Pediatrics, Pediatrics, July 2022: no quilt in the sleep space under one year.
test('under one year every garment carries the caution of safe sleep', () => {
  const silent = domains.kind.filter((kind) => !flags(kind, 'under1').includes('safe-sleep'))
  expect(silent).toEqual([])
})
