import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { kindOf } from '../../src/intake/sources.ts'
import { runHere } from '../help/command.ts'
import { plainShirt } from '../help/garments.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pieceworth-why-chain-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const { heat: _heat, yield: _yield, ...shirt } = plainShirt

async function chainOf(garment: object) {
  const path = join(folder, 'asked.json')
  writeFileSync(path, JSON.stringify({ garment, pile: { recipient: 'adult' } }))
  const { code, stdout, stderr } = await runHere(['why', path])
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
  return JSON.parse(stdout)
}

/** Every `source` anywhere in a chain. */
function sourcesIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) =>
    key === 'source' && typeof inner === 'string' ? [inner] : sourcesIn(inner),
  )
}

// Limits are those of ISO 3758:2012 for the usual label of each fibre (the table of fibres is from
// memory, unverified); 10 % of elastane as an allowance is common practice, no source.
describe('the fibre behind the heat', () => {
  const fibres = [
    { fibre: 'cotton', percent: 92 },
    { fibre: 'elastane', percent: 8 },
  ]

  test('a label that allows warm lets a little elastane be, and says so', async () => {
    const { fibres: told, facts } = await chainOf({ ...shirt, iron: 'warm', fibres })
    expect(told).toMatchObject({ from: 'fibres', heat: 'hot', setBy: 'cotton' })
    expect(told.because).toBe('coldest-fibre')
    expect(told.blocks[0].elastane).toEqual({
      percent: 8,
      allowedPercent: 10,
      leftOut: true,
      because: 'left-out',
      source: 'common practice, no source',
    })
    expect(told.blocks[0].shares.map((it: Record<string, unknown>) => it.counts)).toEqual([
      true,
      false,
    ])
    expect(facts.heat).toBe('hot')
  })

  test('a silent label does not: elastane sets 110 °C', async () => {
    const { fibres: told, ceiling } = await chainOf({ ...shirt, iron: 'silent', fibres })
    expect(told).toMatchObject({ heat: 'cool', setBy: 'elastane', iron: 'silent' })
    expect(told.blocks[0].elastane.because).toBe('label-allows-no-heat')
    const setter = told.blocks[0].shares.find(
      ({ fibre }: { fibre: string }) => fibre === told.setBy,
    )
    expect(setter).toMatchObject({ percent: 8, ironMaxC: 110, counts: true })
    expect(ceiling).toMatchObject({ ceilingC: 110, setBy: 'fibre' })
  })

  test.each([
    ['shares that do not add up', [{ fibre: 'cotton', percent: 80 }], 'not-100-percent'],
    ['a fibre nobody knows', [{ fibre: 'unknown', percent: 100 }], 'fibre-not-known'],
  ])('%s leave the heat unknown', async (_, shares, because) => {
    const { fibres: told } = await chainOf({ ...shirt, fibres: shares })
    expect(told).toMatchObject({ from: 'fibres', heat: 'unknown', setBy: null, because })
  })

  test('without fibres it says whether the heat was given, or nothing', async () => {
    expect((await chainOf({ ...shirt, heat: 'warm', fibres })).fibres).toEqual({
      from: 'heat-given',
      heat: 'warm',
    })
    expect((await chainOf(shirt)).fibres).toEqual({ from: 'nothing', heat: 'unknown' })
  })
})

describe('the panels behind the yield', () => {
  // Flat 20 × 29 in for a T-shirt M (a size chart of the trade, secondary): 2 in of side seams, 1.5 in
  // of shoulder and hem leave 18 × 27.5; five-inch squares go 3 across and up to 5 down: 15 less those
  // that the neck takes. A sleeve is 0.6 of 20 in wide and 0.24 of it long (common practice).
  test('of a T-shirt M: each panel, what is off, what is left', async () => {
    const { cloth, facts } = await chainOf({ ...shirt, kind: 'tshirt', size: 'M' })
    expect(cloth).toMatchObject({ kind: 'tshirt', size: 'M', countedAs: 'M', wear: 'sound' })
    expect(cloth.flat).toMatchObject({ widthIn: 20, lengthIn: 29 })
    expect(kindOf(cloth.flat.source)).toBe('secondary')
    const [front, back, sleeve] = cloth.panels
    expect(front).toMatchObject({ name: 'front', count: 1, from: { w: 20, h: 29 } })
    expect(front.off.map(({ what, w, h }: Record<string, unknown>) => [what, w, h])).toEqual([
      ['side-seams', 2, 0],
      ['shoulder-and-hem', 0, 1.5],
    ])
    expect(front.left).toEqual({ w: 18, h: 27.5 })
    expect(front.lost.map(({ what }: { what: string }) => what)).toEqual([
      'armhole',
      'armhole',
      'neck',
    ])
    expect(sleeve).toMatchObject({ name: 'sleeve', count: 2, from: { w: 12, h: 4.8 } })
    expect(back.pieces).toBeGreaterThanOrEqual(12)
    const sum = cloth.panels.reduce((all: number, one: { pieces: number }) => all + one.pieces, 0)
    expect(cloth.pieces).toBe(sum)
    expect(cloth).toMatchObject({
      yield: 'enough',
      enoughFrom: { pieces: 6 },
      piece: { w: 5, h: 5 },
    })
    expect(facts.yield).toBe(cloth.yield)
  })

  test('of a worn one: the hole too, with its source', async () => {
    const { cloth } = await chainOf({ ...shirt, kind: 'tshirt', size: 'M', wear: 'holes' })
    const lost = cloth.panels.flatMap((one: { lost: object[] }) => one.lost)
    expect(lost.filter(({ what }: { what: string }) => what === 'hole')).toEqual([
      expect.objectContaining({ w: 4, h: 4, source: 'common practice, no source' }),
    ])
  })

  test('an untold size is counted as a small one; what only measuring tells has none', async () => {
    expect((await chainOf({ ...shirt, kind: 'tshirt' })).cloth).toMatchObject({
      size: 'unknown',
      countedAs: 'S',
    })
    expect((await chainOf({ ...shirt, kind: 'other' })).cloth).toMatchObject({
      countedAs: null,
      flat: null,
      panels: [],
      pieces: 0,
      yield: 'unknown',
    })
    const size = { widthIn: 20, lengthIn: 29 }
    expect((await chainOf({ ...shirt, kind: 'tshirt', size })).cloth).toMatchObject({
      countedAs: 'measured',
      flat: { ...size, source: 'measured on the garment' },
    })
  })
})

test('the weight for the post goes by area: a T-shirt M is 180 g × 580 / 660, rounded up', async () => {
  const { weight } = await chainOf({ ...shirt, kind: 'tshirt', size: 'M' })
  expect(weight).toMatchObject({ grams: 159, largeG: 180, source: 'from memory, unverified' })
  expect(weight.figure).toMatch(/^rates from [\d-]+\/weight\/tshirt$/)
})

test('every source in a chain says how sure it is', async () => {
  const fibres = [{ fibre: 'wool', percent: 100 }]
  const found = sourcesIn(await chainOf({ ...shirt, fibres, size: 'L', wear: 'holes' }))
  expect(found.length).toBeGreaterThan(40)
  expect(found.filter((source) => kindOf(source) === null)).toEqual([])
})
