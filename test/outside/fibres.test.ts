import { describe, expect, test } from 'vitest'
import { type FibreKey, fibres, isFibreKey } from '../../src/textile/fibres.ts'
import { solePlateLimits } from '../../src/textile/iron.ts'
import { readLabel } from '../../src/textile/label.ts'

const fibreOfName = (name: string): string | undefined =>
  readLabel(`100% ${name}`).blocks[0]?.fibres[0]?.fibre

// 16 CFR 303.7, generic names and sub-names (list from memory; lastol, elasterell-p, elastoester,
// melamine and fluoropolymer also in Federal Register notices).
const ftcNames: readonly (readonly [name: string, key: FibreKey])[] = [
  ['acrylic', 'acrylic'],
  ['modacrylic', 'modacrylic'],
  ['polyester', 'polyester'],
  ['elasterell-p', 'elastomultiester'],
  ['triexta', 'triexta'],
  ['rayon', 'viscose'],
  ['viscose', 'viscose'],
  ['modal', 'modal'],
  ['cupro', 'cupro'],
  ['lyocell', 'lyocell'],
  ['acetate', 'acetate'],
  ['triacetate', 'triacetate'],
  ['saran', 'saran'],
  ['azlon', 'other'],
  ['nytril', 'other'],
  ['nylon', 'polyamide'],
  ['rubber', 'elastodiene'],
  ['lastrile', 'elastodiene'],
  ['spandex', 'elastane'],
  ['vinal', 'vinylal'],
  ['olefin', 'polypropylene'],
  ['lastol', 'elastolefin'],
  ['vinyon', 'chlorofibre'],
  ['metallic', 'metallised'],
  ['glass', 'glass'],
  ['anidex', 'other'],
  ['novoloid', 'other'],
  ['aramid', 'aramid'],
  ['sulfar', 'other'],
  ['PBI', 'other'],
  ['elastoester', 'other'],
  ['melamine', 'other'],
  ['fluoropolymer', 'other'],
  ['PLA', 'polylactide'],
]

// Regulation (EU) 1007/2011, Annex I, tables 1 and 2, by number (natural fibres from copies of the
// table; names and order of table 2 from a stored name list; 50 from Regulation (EU) 2018/122).
const euNames: readonly (readonly [number: number, name: string, key: FibreKey])[] = [
  [1, 'wool', 'wool'],
  [2, 'alpaca', 'alpaca'],
  [2, 'llama', 'other'],
  [2, 'camel', 'other'],
  [2, 'cashmere', 'cashmere'],
  [2, 'mohair', 'mohair'],
  [2, 'angora', 'angora'],
  [2, 'vicuna', 'other'],
  [2, 'yak', 'other'],
  [2, 'guanaco', 'other'],
  [2, 'cashgora', 'other'],
  [2, 'beaver', 'other'],
  [2, 'otter', 'other'],
  [3, 'animal hair', 'other'],
  [3, 'horsehair', 'other'],
  [4, 'silk', 'silk'],
  [5, 'cotton', 'cotton'],
  [6, 'kapok', 'other'],
  [7, 'flax', 'linen'],
  [7, 'linen', 'linen'],
  [8, 'hemp', 'hemp'],
  [9, 'jute', 'jute'],
  [10, 'abaca', 'other'],
  [11, 'alfa', 'other'],
  [12, 'coir', 'other'],
  [13, 'broom', 'other'],
  [14, 'ramie', 'ramie'],
  [15, 'sisal', 'other'],
  [16, 'sunn', 'other'],
  [17, 'henequen', 'other'],
  [18, 'maguey', 'other'],
  [19, 'acetate', 'acetate'],
  [20, 'alginate', 'other'],
  [21, 'cupro', 'cupro'],
  [22, 'modal', 'modal'],
  [23, 'protein', 'other'],
  [24, 'triacetate', 'triacetate'],
  [25, 'viscose', 'viscose'],
  [26, 'acrylic', 'acrylic'],
  [27, 'chlorofibre', 'chlorofibre'],
  [28, 'fluorofibre', 'other'],
  [29, 'modacrylic', 'modacrylic'],
  [30, 'polyamide', 'polyamide'],
  [30, 'nylon', 'polyamide'],
  [31, 'aramid', 'aramid'],
  [32, 'polyimide', 'other'],
  [33, 'lyocell', 'lyocell'],
  [34, 'polylactide', 'polylactide'],
  [35, 'polyester', 'polyester'],
  [36, 'polyethylene', 'polyethylene'],
  [37, 'polypropylene', 'polypropylene'],
  [38, 'polycarbamide', 'other'],
  [39, 'polyurethane', 'polyurethane'],
  [40, 'vinylal', 'vinylal'],
  [41, 'trivinyl', 'other'],
  [42, 'elastodiene', 'elastodiene'],
  [43, 'elastane', 'elastane'],
  [44, 'glass fibre', 'glass'],
  [45, 'metal', 'metallised'],
  [45, 'paper', 'other'],
  [46, 'elastomultiester', 'elastomultiester'],
  [47, 'elastolefin', 'elastolefin'],
  [48, 'melamine', 'other'],
  [49, 'polypropylene/polyamide bicomponent', 'other'],
  [50, 'polyacrylate', 'other'],
]

describe('names of the law', () => {
  test.each(ftcNames)('16 CFR 303.7 "%s" is read as %s', (name, key) => {
    expect(fibreOfName(name)).toBe(key)
  })

  test.each(euNames)(
    'Regulation (EU) 1007/2011, Annex I, no. %i "%s" is read as %s',
    (_no, name, key) => {
      expect(fibreOfName(name)).toBe(key)
    },
  )

  test('every number of Annex I is there', () => {
    expect([...new Set(euNames.map(([number]) => number))]).toEqual(
      Array.from({ length: 50 }, (_, i) => i + 1),
    )
  })
})

describe('ironing limits', () => {
  // ISO 3758:2012 as in national guides; ISO 3758:2023 as in notices on JIS L 0001:2024 (secondary).
  test.each([
    ['cool', 1, 110, 120],
    ['warm', 2, 150, 160],
    ['hot', 3, 200, 210],
  ])('%s is %i dots: %i °C in 2012, %i °C in 2023', (level, dots, limitC, limit2023C) => {
    expect(solePlateLimits).toContainEqual({ level, dots, limitC, limit2023C })
  })

  test('a fibre may be ironed to the limit of its dots and no further', () => {
    const limits = [0, ...solePlateLimits.map(({ limitC }) => limitC)]
    for (const { dots, ironMaxC } of fibres) expect(ironMaxC).toBe(limits[dots])
  })

  // AATCC TM 133, guide to safe ironing by fibre, °C at the lower end of its class (from memory,
  // unverified). Viscose and polyester keep a colder limit here than the guide.
  test.each<[FibreKey, number]>([
    ['polyethylene', 79],
    ['elastodiene', 82],
    ['saran', 66],
    ['modacrylic', 93],
    ['acetate', 121],
    ['polypropylene', 121],
    ['acrylic', 149],
    ['nylon6', 149],
    ['silk', 149],
    ['elastane', 149],
    ['wool', 149],
    ['nylon66', 163],
    ['polyester', 163],
    ['viscose', 191],
  ])('%s is not ironed hotter than the guide of AATCC TM 133 (%i °C)', (key, guide) => {
    const { ironMaxC } = fibres.find((fibre) => fibre.key === key)!
    // The dots are 150 where the guide's class begins at 149 (300 °F).
    expect(ironMaxC).toBeLessThanOrEqual(guide + 1)
  })
})

test('every fibre names its source', () => {
  expect(fibres).toHaveLength(43)
  expect(isFibreKey('cotton') && !isFibreKey('__proto__')).toBe(true)
  for (const { source } of fibres) expect(source.length).toBeGreaterThan(20)
})
