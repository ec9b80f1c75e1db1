import { expect, test } from 'vitest'
import type { Checklist } from '../../src/papers/checklist.ts'
import { asDecided, type Decided } from '../../src/papers/checklist-decided.ts'

const say = (key: string) => key
const listed = (n: number, grade: 'sound' | 'eyes') => ({
  n,
  code: `B2-${n}`,
  name: `garment ${n}`,
  kind: 'tshirt',
  grade,
  steps: ['as confirmed'],
})
const kept = (n: number) => ({ n, name: `garment ${n}`, reason: 'mould', next: null })
const list: Checklist = {
  packed: [listed(1, 'sound'), listed(4, 'sound')],
  waiting: [listed(2, 'eyes'), listed(5, 'eyes')],
  keptHome: [kept(3), kept(6)],
  packing: [],
  cautions: [],
  ahead: ['a person looks', 'you post the box'],
}
const decided = (verdicts: Readonly<Record<number, Decided>>) =>
  asDecided(
    list,
    {
      verdicts: new Map(Object.entries(verdicts).map(([n, verdict]) => [Number(n), verdict])),
      codeOf: (n) => `B2-${n}`,
    },
    say,
  )
const numbers = ({ packed, waiting, keptHome }: Checklist) =>
  [packed, waiting, keptHome].map((part) => part.map(({ n }) => n))

test.each<[string, Readonly<Record<number, Decided>>, number[][]]>([
  [
    'nothing is decided',
    {},
    [
      [1, 4],
      [2, 5],
      [3, 6],
    ],
  ],
  ['what waited is taken', { 2: 'comes' }, [[1, 2, 4], [5], [3, 6]]],
  ['what waited is declined', { 5: 'stays' }, [[1, 4], [2], [3, 5, 6]]],
  ['what was to be packed is declined', { 1: 'stays' }, [[4], [2, 5], [1, 3, 6]]],
  ['what was to stay is taken', { 3: 'comes' }, [[1, 3, 4], [2, 5], [6]]],
  ['an answer is waited for', { 4: 'open' }, [[1], [2, 4, 5], [3, 6]]],
])('where %s, every garment stands in one list', (_, verdicts, lists) => {
  expect(numbers(decided(verdicts))).toEqual(lists)
})

test('that a person looks is not ahead any more', () => {
  expect(decided({ 2: 'comes' }).ahead).toEqual(['you post the box'])
})

test('a garment that is taken says so, one that is declined says that it stays', () => {
  const { packed, keptHome } = decided({ 2: 'comes', 1: 'stays' })
  expect(packed.find(({ n }) => n === 2)).toMatchObject({
    grade: 'care',
    steps: ['confirmed.taken'],
  })
  expect(keptHome.find(({ n }) => n === 1)).toMatchObject({ reason: 'confirmed.left_out' })
})
