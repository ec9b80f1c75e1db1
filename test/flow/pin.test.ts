import { expect, test } from 'vitest'
import type { Flow } from '../../src/flow/grammar.ts'
import { flowHash, rulesNamed } from '../../src/flow/pin.ts'
import { readFlow } from '../../src/flow/read.ts'
import { parseSource } from '../../src/flow/source.ts'
import { parcels, parcelText } from './parcels.ts'

const hashOf = (text: string) => flowHash(readFlow(parseSource(text, 'a').value))

const turned = (value: unknown): unknown => {
  if (Array.isArray(value)) return value.map(turned)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([key, inner]) => [key, turned(inner)]),
  )
}

test('comments and line breaks do not change the hash', () => {
  expect(
    hashOf(
      `# a note\n${parcelText.replace('options: [here, abroad]', 'options:\n          - here # near\n          - abroad')}`,
    ),
  ).toBe(flowHash(parcels))
})

test('the order of keys does not change the hash', () => {
  expect(flowHash(readFlow(turned(parcels)))).toBe(flowHash(parcels))
  expect(flowHash(turned(parcels) as Flow)).toBe(flowHash(parcels))
})

test('a flow that was kept and read again has the same hash', () => {
  expect(flowHash(readFlow(JSON.parse(JSON.stringify(parcels))))).toBe(flowHash(parcels))
})

test.each([
  ['another bound', 'max: 40', 'max: 41'],
  ['another order of options', '[here, abroad]', '[abroad, here]'],
  ['another edge', '{ to: weight }', '{ to: contents }'],
])('%s changes the hash', (_, from, to) => {
  expect(hashOf(parcelText.replace(from, to))).not.toBe(flowHash(parcels))
})

test('a flow names the rules of questions, options and edges', () => {
  expect(rulesNamed(parcels)).toEqual(['goes_abroad', 'needs_two_people', 'stays_here'])
})
