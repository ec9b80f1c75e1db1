import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fibres } from '../../src/textile/fibres.ts'
import { heatOf } from '../../src/textile/heat.ts'
import { heatWhy } from '../../src/textile/heat-why.ts'
import type { IronFact } from '../../src/textile/iron.ts'
import { readLabel } from '../../src/textile/label.ts'

const irons = ['none', 'cool', 'warm', 'hot', 'silent', 'missing'] as const
const whyOfText = (text: string, iron: IronFact) => heatWhy(readLabel(text).blocks, iron)

describe('why the fibres bear what they bear', () => {
  // The sole-plate limits are those of ISO 3758:2012 as in national guides (secondary) for the dots
  // that such a garment usually carries; the allowance of 10 % elastane is common practice, no source.
  test.each<[text: string, iron: IronFact, because: string, elastane: string]>([
    ['60% cotton 40% polyester', 'silent', 'coldest-fibre', 'none-named'],
    ['95% cotton 5% elastane', 'silent', 'coldest-fibre', 'label-allows-no-heat'],
    ['95% cotton 5% elastane', 'cool', 'coldest-fibre', 'label-allows-no-heat'],
    ['95% cotton 5% elastane', 'warm', 'coldest-fibre', 'left-out'],
    ['90% cotton 10% elastane', 'hot', 'coldest-fibre', 'left-out'],
    ['88% polyester 12% elastane', 'warm', 'coldest-fibre', 'more-than-allowed'],
    ['80% acrylic 20% modacrylic', 'hot', 'no-iron-fibre', 'none-named'],
    ['60% cotton 20% polypropylene', 'hot', 'no-iron-fibre', 'none-named'],
    ['60% cotton 20% polyester', 'silent', 'not-100-percent', 'none-named'],
    ['100% unknown fibres', 'silent', 'fibre-not-known', 'none-named'],
    ['80% cotton 20% other fibres', 'silent', 'too-many-others', 'none-named'],
  ])('%j with the label %s: %s, elastane %s', (text, iron, because, elastane) => {
    const told = whyOfText(text, iron)
    expect(told).toMatchObject({ because, iron })
    expect(told.blocks[0]!.elastane.because).toBe(elastane)
  })

  test('names the fibre, its share, its limit and where that comes from', () => {
    const { heat, setBy, blocks } = whyOfText('60% cotton 40% polyester', 'silent')
    expect({ heat, setBy }).toEqual({ heat: 'warm', setBy: 'polyester' })
    const source = expect.stringContaining('from memory, unverified')
    expect(blocks[0]!.shares).toEqual([
      { fibre: 'cotton', percent: 60, ironMaxC: 200, counts: true, source },
      { fibre: 'polyester', percent: 40, ironMaxC: 150, counts: true, source },
    ])
  })

  test('tells each part by itself, lining too', () => {
    const { setBy, blocks } = whyOfText('Body: 100% cotton\nLining: 100% acetate', 'warm')
    expect(setBy).toBe('acetate')
    expect(blocks.map(({ section, shares }) => [section, shares[0]!.ironMaxC])).toEqual([
      ['body', 200],
      ['lining', 110],
    ])
  })

  test('nothing told, and nothing but a little elastane, say so', () => {
    expect(heatWhy([], 'hot')).toMatchObject({ heat: 'unknown', setBy: null, because: 'no-shares' })
    const fibres = [{ fibre: 'elastane', percent: 5 }] as const
    const block = { section: null, fibres, total: 100, complete: true }
    expect(heatWhy([block], 'hot')).toMatchObject({ setBy: null, because: 'nothing-counts' })
  })
})

const anyShare = fc.record({
  fibre: fc.constantFrom(...fibres.map(({ key }) => key)),
  percent: fc.integer({ min: 1, max: 100 }),
})
const anyBlock = fc.record({
  section: fc.constant(null),
  fibres: fc.array(anyShare, { maxLength: 4 }),
  total: fc.constant(100),
  complete: fc.boolean(),
})

test('the chain of any make-up ends in the heat that grading takes', () => {
  fc.assert(
    fc.property(fc.array(anyBlock, { maxLength: 3 }), fc.constantFrom(...irons), (blocks, iron) => {
      const told = heatWhy(blocks, iron)
      expect({ heat: told.heat, setBy: told.setBy }).toEqual(heatOf(blocks, iron))
      const shares = told.blocks.flatMap((block) => block.shares.filter(({ counts }) => counts))
      if (told.setBy === null) {
        expect(told.heat).toBe('unknown')
        return
      }
      // What set the heat counted, and nothing that counted is colder.
      const setter = shares.find(({ fibre }) => fibre === told.setBy)!
      expect(setter.ironMaxC).toBe(Math.min(...shares.map(({ ironMaxC }) => ironMaxC)))
    }),
  )
})
