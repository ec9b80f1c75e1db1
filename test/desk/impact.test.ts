import fc from 'fast-check'
import { expect, test } from 'vitest'
import { countImpacts, largestFirst, type PileImpact, pileImpact } from '../../src/desk/impact.ts'
import type { Act, Value } from '../../src/flow/grammar.ts'
import type { FlowFiles } from '../../src/intake/flow-files.ts'
import { parseFlows } from '../../src/intake/flows-folder.ts'
import { type Knowledge, learn } from '../../src/intake/knowledge.ts'
import type { Pile } from '../../src/intake/pile.ts'
import { liveFiles, replaced } from '../help/drafts.ts'
import { pileOf } from '../help/pile.ts'

const today = '2026-06-01'
const knowing = (files: FlowFiles): Knowledge => learn(parseFlows(files), today)
const live = knowing(liveFiles())

const says = (item: number, question: string, given: Value): Act => ({
  act: 'answer',
  item,
  question,
  reply: { given },
})
const skips = (item: number, question: string): Act => ({
  act: 'answer',
  item,
  question,
  reply: { skipped: true },
})

interface Shirt {
  readonly words: string
  readonly history: readonly string[]
  readonly size: string
}

/** Labels by what they say of ironing: ISO 3758 names the levels; 16 CFR 423.6(b)(1) lets a label be silent. */
const labels = {
  warm: '100% cotton, warm iron',
  silent: '100% cotton',
  none: '100% cotton, do not iron',
} as const

const shirtActs = (item: number, { words, history, size }: Shirt): Act[] => [
  { act: 'add', item },
  skips(item, 'name'),
  says(item, 'kind', 'button-shirt'),
  says(item, 'size', size),
  says(item, 'label', { found: 'words', words, iron: null }),
  says(item, 'wear', 'sound'),
  says(item, 'history', history),
  says(item, 'pattern', 'stripe-check'),
  skips(item, 'colours'),
  says(item, 'details', ['none']),
  skips(item, 'photos'),
  skips(item, 'story'),
]

const actsOf = (shirts: readonly Shirt[], layout = 'unsure'): Act[] => [
  says(0, 'recipient', 'adult'),
  says(0, 'quilts', 'one'),
  says(0, 'quilt_size', 'throw'),
  says(0, 'layout_wish', layout),
  says(0, 'at_hand', { amount: 9, unit: 'garments' }),
  skips(0, 'needed_in'),
  skips(0, 'not_to_cut'),
  ...shirts.flatMap((shirt, i) => shirtActs(i + 1, shirt)),
]

const plain: Shirt = { words: labels.warm, history: ['none'], size: 'L' }
const row = { number: 1, status: 'confirmed' as const }

function impactOf(acts: readonly Act[], draft: Knowledge, day = today): PileImpact | null {
  const both = { live: pileOf(live, acts), draft: pileOf(draft, acts) }
  return pileImpact(row, both, new Map(), { live, draft, day })
}

const aShirt = fc.record({
  words: fc.constantFrom(...Object.values(labels)),
  history: fc.constantFrom(['none'], ['unwashed'], ['softener']),
  size: fc.constantFrom('S', 'L', 'unknown'),
})
const aPile = fc.record({
  shirts: fc.array(aShirt, { minLength: 1, maxLength: 4 }),
  layout: fc.constantFrom('unsure', 'plain-squares', 'framed-panels'),
})

test('a draft equal to what is live changes nothing', () => {
  const equal = knowing(
    new Map([...liveFiles()].map(([name, bytes]) => [name, Buffer.from(bytes)])),
  )
  fc.assert(
    fc.property(aPile, ({ shirts, layout }) => {
      expect(impactOf(actsOf(shirts, layout), equal, '2027-01-01')).toBeNull()
    }),
    { numRuns: 20 },
  )
})

test('a comment in every file changes nothing', () => {
  const commented = new Map(
    [...liveFiles()].map(([name, bytes]) => [
      name,
      Buffer.from(`# Looked through.\n${bytes.toString('utf8')}`),
    ]),
  )
  expect(impactOf(actsOf([plain]), knowing(commented))).toBeNull()
})

test('taking a shirt apart for a dollar more costs a dollar more for each shirt, and nothing else', () => {
  const draft = knowing(
    replaced('rates/2026-01-01.yaml', '  button-shirt: 600\n', '  button-shirt: 700\n'),
  )
  for (const shirts of [1, 2, 5]) {
    const impact = impactOf(actsOf(Array(shirts).fill(plain), 'plain-squares'), draft)!
    expect(impact.garments).toEqual([])
    expect(impact.plan).toBe(false)
    expect(impact.price).toMatchObject({
      when: 'at-once',
      lines: [{ code: 'teardown', byMinor: 100 * shirts }],
      currency: 'USD',
    })
    expect(impact.price!.to - impact.price!.from).toBe(100 * shirts)
  }
})

test('quilting a square foot for a cent more costs a cent for each square foot', () => {
  const draft = knowing(
    replaced('rates/2026-01-01.yaml', 'quilt_per_square_foot: 900', 'quilt_per_square_foot: 901'),
  )
  const acts = actsOf([plain, plain], 'plain-squares')
  const line = pileOf(live, acts).estimate!.lines.find(({ code }) => code === 'quilting')!
  const { price } = impactOf(acts, draft)!
  expect(line.quantity).toBeGreaterThan(10)
  // Money is whole cents.
  expect(Math.abs(price!.to - price!.from - line.quantity)).toBeLessThanOrEqual(0.5)
})

test('prices of a later day change a pile only when it changes itself', () => {
  const files = new Map([
    ...liveFiles(),
    ['rates/2026-09-01.yaml', Buffer.from('from: 2026-09-01\nteardown: { button-shirt: 650 }\n')],
  ])
  const acts = actsOf([plain, plain], 'plain-squares')
  expect(impactOf(acts, knowing(files), '2026-09-01')!.price).toMatchObject({
    when: 'when-changed',
    lines: [{ code: 'teardown', byMinor: 100 }],
  })
  expect(impactOf(acts, knowing(files), today)).toBeNull()
})

/** A note row that asks a person from now on. */
const stricter = knowing(
  replaced(
    'tables/flags.yaml',
    /(- id: label-silent\n {4}when: \{ iron: silent \}\n {4}give: \{ severity: )note/,
    '$1eyes',
  ),
)

test('a row made stricter regrades exactly the garments whose facts match', () => {
  let regraded = 0
  fc.assert(
    fc.property(aPile, ({ shirts, layout }) => {
      const acts = actsOf(shirts, layout)
      const before: Pile = pileOf(live, acts)
      const matching = before.garments.filter(
        ({ facts, grading }) =>
          facts.iron === 'silent' && (grading!.grade === 'sound' || grading!.grade === 'care'),
      )
      const impact = impactOf(acts, stricter)
      const found = impact?.garments.filter(({ grade }) => grade.from !== grade.to) ?? []
      expect(found.map(({ n }) => n)).toEqual(matching.map(({ n }) => n))
      for (const { grade } of found) expect(grade.to).toBe('eyes')
      regraded += found.length
    }),
    { seed: 20260101, numRuns: 40 },
  )
  expect(regraded).toBeGreaterThan(5)
})

test('a reason that is taken away is told as gone, one that is new as come', () => {
  const acts = actsOf([{ ...plain, words: labels.silent }], 'plain-squares')
  const without = knowing(
    replaced('tables/flags.yaml', 'when: { iron: silent }', 'when: { iron: silent, kind: tie }'),
  )
  expect(impactOf(acts, without)!.garments[0]!.flags).toEqual({ came: [], gone: ['label-silent'] })
  const moved = knowing(replaced('tables/flags.yaml', 'id: label-silent', 'id: label-says-nothing'))
  expect(impactOf(acts, moved)!.garments[0]!.flags).toEqual({
    came: ['label-says-nothing'],
    gone: ['label-silent'],
  })
})

test('declined garments are no part of the price that is compared', () => {
  const draft = knowing(
    replaced('rates/2026-01-01.yaml', '  button-shirt: 600\n', '  button-shirt: 700\n'),
  )
  const acts = actsOf([plain, plain], 'plain-squares')
  const both = { live: pileOf(live, acts), draft: pileOf(draft, acts) }
  const declined = new Map([[1, 'decline' as const]])
  const impact = pileImpact(row, both, declined, { live, draft, day: today })
  expect(impact!.price!.to - impact!.price!.from).toBe(100)
})

test('the largest change stands first, and every kind is counted', () => {
  const acts = (n: number) =>
    actsOf(Array(n).fill({ ...plain, words: labels.silent }), 'plain-squares')
  const impacts = [1, 3, 2].map((n) => ({ ...impactOf(acts(n), stricter)!, number: n }))
  const failing: PileImpact = {
    number: 9,
    status: 'open',
    garments: [],
    layout: null,
    plan: false,
    price: null,
    fails: 'no_rate_for_date',
  }
  const all = [...impacts, failing].toSorted(largestFirst)
  expect(all.map(({ number }) => number)).toEqual([9, 3, 2, 1])
  expect(countImpacts(all, { piles: 12, garments: 30 })).toMatchObject({
    piles: 12,
    garments: 30,
    changed: 4,
    regraded: 6,
    worse: 6,
    better: 0,
    fails: 1,
    plans: 3,
  })
})
