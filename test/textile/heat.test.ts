import { describe, expect, test } from 'vitest'
import { type FibreKey, fibres } from '../../src/textile/fibres.ts'
import { heatOf, ironFact } from '../../src/textile/heat.ts'
import { type IronFact, levelAt, limitOf } from '../../src/textile/iron.ts'
import { readLabel } from '../../src/textile/label.ts'

const heatOfText = (text: string, iron: IronFact = 'silent') => heatOf(readLabel(text).blocks, iron)

describe('what the fibres bear', () => {
  test.each<[text: string, iron: IronFact, heat: string, setBy: FibreKey | null]>([
    ['100% cotton', 'silent', 'hot', 'cotton'],
    ['60% cotton 40% polyester', 'silent', 'warm', 'polyester'],
    ['80% cotton 20% nylon', 'silent', 'cool', 'polyamide'],
    ['80% acrylic 20% modacrylic', 'silent', 'none', 'modacrylic'],
    ['95% cotton 5% elastane', 'silent', 'cool', 'elastane'],
    ['95% cotton 5% elastane', 'missing', 'cool', 'elastane'],
    ['95% cotton 5% elastane', 'cool', 'cool', 'elastane'],
    ['95% cotton 5% elastane', 'warm', 'hot', 'cotton'],
    ['90% cotton 10% elastane', 'hot', 'hot', 'cotton'],
    ['88% polyester 12% elastane', 'warm', 'cool', 'elastane'],
    ['Body: 100% cotton\nLining: 100% acetate', 'warm', 'cool', 'acetate'],
    ['Body: 100% cotton\nLining: 100% polypropylene', 'hot', 'none', 'polypropylene'],
    ['95% cotton 5% other fibres', 'silent', 'cool', 'other'],
    ['80% cotton 20% other fibres', 'silent', 'unknown', null],
    ['100% unknown fibres', 'silent', 'unknown', null],
    ['60% cotton 20% polyester', 'silent', 'unknown', null],
    ['60% cotton 20% polypropylene', 'hot', 'none', 'polypropylene'],
    ['50% polypropylene 50% unknown fibres', 'hot', 'none', 'polypropylene'],
    ['Machine wash', 'silent', 'unknown', null],
  ])('%j with the label %s: %s', (text, iron, heat, setBy) => {
    expect(heatOfText(text, iron)).toEqual({ heat, setBy })
  })

  test('a make-up that is only a little elastane is not known', () => {
    const block = {
      section: null,
      fibres: [{ fibre: 'elastane', percent: 5 }],
      total: 100,
      complete: true,
    } as const
    expect(heatOf([block], 'hot')).toEqual({ heat: 'unknown', setBy: null })
  })

  test.each(fibres.filter(({ key }) => key !== 'other' && key !== 'unknown'))(
    'a garment of $key alone bears what the table says',
    ({ key, ironMaxC }) => {
      const block = {
        section: null,
        fibres: [{ fibre: key, percent: 100 }],
        total: 100,
        complete: true,
      }
      const { heat, setBy } = heatOf([block], 'silent')
      expect({ none: 0, cool: 110, warm: 150, hot: 200, unknown: -1 }[heat]).toBe(ironMaxC)
      expect(setBy).toBe(key)
    },
  )
})

describe('what the label says of ironing', () => {
  test('no label is missing, a label without a level is silent', () => {
    expect(ironFact(null)).toBe('missing')
    expect(ironFact(readLabel('100% cotton'))).toBe('silent')
    expect(ironFact(readLabel('iron on reverse side'))).toBe('silent')
    expect(ironFact(readLabel('do not iron'))).toBe('none')
  })

  test.each<[IronFact, number]>([
    ['none', 0],
    ['cool', 110],
    ['warm', 150],
    ['hot', 200],
    // Common practice, no source.
    ['silent', 150],
    ['missing', 150],
  ])('%s allows a sole plate of %i °C', (iron, limit) => {
    expect(limitOf(iron)).toBe(limit)
  })

  test.each([
    [100, 'cool'],
    [110, 'cool'],
    [120, 'cool'],
    [149, 'cool'],
    [150, 'warm'],
    [160, 'warm'],
    [199, 'warm'],
    [200, 'hot'],
    [210, 'hot'],
  ])('%i °C is the level %s, never a warmer one', (celsius, level) => {
    expect(levelAt(celsius)).toBe(level)
  })
})
