import { expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { untold } from '../../src/garment/facts.ts'
import { gradeInput } from '../../src/garment/input.ts'
import { knowledge } from '../help/knowledge.ts'

const read = (garment: unknown, pile?: unknown) => gradeInput({ garment, pile }, knowledge)

function refusal(garment: unknown, pile?: unknown): unknown {
  try {
    read(garment, pile)
  } catch (error) {
    if (error instanceof Failure) return { code: error.code, ...error.details }
    throw error
  }
  return null
}

test('what is missing counts as not told', () => {
  expect(read({})).toEqual({
    facts: untold,
    pile: { recipient: 'unknown', layout: undefined },
    size: 'unknown',
    blocks: null,
    heatGiven: false,
  })
})

test('unknown keys are ignored, also those of every object', () => {
  expect(read({ colour: 'blue', constructor: 'x', toString: 1 }).facts).toEqual(untold)
})

test.each([
  [[{ fibre: 'cotton', percent: 100 }], 'hot'],
  [[{ section: null, fibres: [{ fibre: 'cotton', percent: 100 }] }], 'hot'],
  [
    [
      { section: 'body', fibres: [{ fibre: 'cotton', percent: 100 }] },
      { section: 'lining', fibres: [{ fibre: 'acetate', percent: 100 }] },
    ],
    'cool',
  ],
  [[{ fibres: [{ fibre: 'cotton', percent: 60 }] }], 'unknown'],
  [[{ fibres: [{ fibre: 'cotton', percent: 100 }], complete: false }], 'unknown'],
  [[{ fibre: 'cotton', percent: null }], 'unknown'],
  [
    [
      { fibre: 'cotton', percent: 100 },
      { fibre: 'acetate', percent: null },
    ],
    'unknown',
  ],
  [[], 'unknown'],
])('heat follows from the fibres %j: %s', (fibres, heat) => {
  expect(read({ fibres }).facts.heat).toBe(heat)
})

test('a little elastane counts only where the label does not itself say warm or hot', () => {
  const fibres = [
    { fibre: 'cotton', percent: 95 },
    { fibre: 'elastane', percent: 5 },
  ]
  expect(read({ fibres, iron: 'hot' }).facts.heat).toBe('hot')
  expect(read({ fibres, iron: 'silent' }).facts.heat).toBe('cool')
})

test('heat that is given stands instead of the fibres', () => {
  const fibres = [{ fibre: 'acetate', percent: 100 }]
  expect(read({ fibres, heat: 'warm' }).facts.heat).toBe('warm')
})

test('true and false stand for yes and no', () => {
  expect(read({ oneWay: true, consent: true }).facts).toMatchObject({
    oneWay: 'yes',
    consent: 'yes',
  })
})

test('a layout is wished for by its name or by its setting', () => {
  expect(read({}, { layout: 'framed-panels' }).pile.layout).toBe('framed-panels')
  expect(read({}, { layout: 'framed', recipient: 'under1' }).pile).toEqual({
    layout: 'framed',
    recipient: 'under1',
  })
})

test.each([
  ['XL', 'XL'],
  ['2T', '2T'],
  ['enormous', 'unknown'],
  [
    { widthIn: 20, lengthIn: 28.5 },
    { widthIn: 20, lengthIn: 28.5 },
  ],
  [{ widthIn: -1, lengthIn: 28.5 }, 'unknown'],
])('the size %j is read as %j', (size, read_) => {
  expect(read({ size }).size).toEqual(read_)
})

test.each([
  [{ stretch: 'lots' }, undefined, 'stretch', 'none, little, much, two-way, bias, unknown'],
  [{ oneWay: 3 }, undefined, 'oneWay', 'no, yes, unknown'],
  [{ fibres: [{ fibre: 'unobtainium', percent: 100 }] }, undefined, 'fibres', /percent/],
  [{ fibres: 'cotton' }, undefined, 'fibres', /percent/],
  [{}, { recipient: 'cat' }, 'recipient', 'adult, child, under3, under1, unknown'],
  [{}, { layout: 'spiral' }, 'layout', /framed-panels/],
  ['shirt', undefined, 'garment', /object/],
])(
  '%j with pile %j is refused with the name and what it may be',
  (garment, pile, fact, allowed) => {
    expect(refusal(garment, pile)).toEqual({
      code: 'bad_input',
      fact,
      allowed: typeof allowed === 'string' ? allowed : expect.stringMatching(allowed),
    })
  },
)

test.each([null, 3, 'x', []])('%j is no input', (json) => {
  expect(() => gradeInput(json, knowledge)).toThrow(/bad_input/)
})
