import { describe, expect, test } from 'vitest'
import type { Act, Value } from '../../src/flow/grammar.ts'
import type { Pile } from '../../src/intake/pile.ts'
import { learnAt } from '../help/app.ts'
import { pileOf, startedAt } from '../help/pile.ts'

const knowledge = learnAt('2026-06-01')
const week = 7 * 24 * 60 * 60 * 1000

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

const first = (said: Readonly<Record<string, Value>> = {}): Act[] => [
  says(0, 'recipient', said.recipient ?? 'adult'),
  says(0, 'quilts', said.quilts ?? 'one'),
  ...(said.quilt_count
    ? [says(0, 'quilt_count', said.quilt_count), says(0, 'sharing', said.sharing ?? 'as-it-falls')]
    : []),
  says(0, 'quilt_size', said.quilt_size ?? 'unsure'),
  says(0, 'layout_wish', said.layout_wish ?? 'unsure'),
  says(0, 'at_hand', { amount: 9, unit: 'garments' }),
  said.needed_in ? says(0, 'needed_in', said.needed_in) : skips(0, 'needed_in'),
  skips(0, 'not_to_cut'),
]

const shirt = (item: number, said: Readonly<Record<string, Value>> = {}): Act[] => [
  { act: 'add', item },
  said.name ? says(item, 'name', said.name) : skips(item, 'name'),
  says(item, 'kind', 'button-shirt'),
  says(item, 'size', 'L'),
  says(item, 'label', { found: 'words', words: '100% cotton, warm iron', iron: null }),
  says(item, 'wear', 'sound'),
  says(item, 'history', said.history ?? ['none']),
  says(item, 'pattern', 'stripe-check'),
  skips(item, 'colours'),
  says(item, 'details', ['none']),
  skips(item, 'photos'),
  skips(item, 'story'),
]

const of = (...acts: Act[][]) => pileOf(knowledge, acts.flat())

/** A pile without what only a call tells: two functions are never equal. */
const figures = ({ priced: _, ...pile }: Pick<Pile, 'priced'>) => pile

describe('a pile', () => {
  test('begins with nothing, and promises nothing', () => {
    expect(of()).toMatchObject({
      recipient: 'unknown',
      garments: [],
      estimate: null,
      box: null,
      contact: null,
      needBy: null,
      canClose: false,
      tally: { good: 0, maybe: 0, home: 0 },
    })
  })

  test('has a price, a box and an end as soon as one garment is told', () => {
    const pile = of(first(), shirt(1))
    expect(pile.canClose).toBe(true)
    expect(pile.garments[0]).toMatchObject({ n: 1, code: 'B2-1', open: null, name: null })
    expect(pile.garments[0]!.grading?.grade).toBe('sound')
    expect(pile.estimate!.total.low).toBeLessThanOrEqual(pile.estimate!.total.likely)
    expect(pile.estimate!.total.likely).toBeLessThanOrEqual(pile.estimate!.total.high)
    expect(pile.box!.weightG).toBeGreaterThan(0)
  })

  test('waits for a garment that is half told', () => {
    const pile = of(first(), shirt(1), shirt(2).slice(0, 4))
    expect(pile.canClose).toBe(false)
    expect(pile.garments[1]).toMatchObject({ grading: null, open: { id: 'label' } })
    expect(pile.tally.good).toBe(1)
  })

  test('does not wait for one that was left out, and counts it no more', () => {
    const half: Act[] = [...shirt(2).slice(0, 4), { act: 'drop', item: 2 }]
    expect(of(first(), shirt(1), half).canClose).toBe(true)
    const both = of(first(), shirt(1), shirt(2))
    const one = of(first(), shirt(1), shirt(2), [{ act: 'drop', item: 2 }])
    expect([both.tally.good, one.tally.good]).toEqual([2, 1])
    expect(one.box!.weightG).toBeLessThan(both.box!.weightG)
    expect(one.garments).toHaveLength(2)
  })

  test('a copy is a garment of its own with what was said of the first', () => {
    const copy: Act[] = [{ act: 'copy', item: 2, from: 1 }, skips(2, 'photos')]
    const pile = of(first(), shirt(1, { name: 'Green one' }), copy, [says(1, 'name', 'Blue one')])
    expect(pile.garments.map(({ name, code }) => [name, code])).toEqual([
      ['Blue one', 'B2-1'],
      ['Green one', 'B2-2'],
    ])
    expect(pile.garments[1]!.facts).toEqual(pile.garments[0]!.facts)
  })

  test('is counted for the layout and size that were chosen', () => {
    const pile = of(first({ quilt_size: 'twin', layout_wish: 'framed-panels' }), shirt(1))
    expect(pile.wish).toMatchObject({
      layout: { id: 'framed-panels' },
      layoutChosen: true,
      size: 'twin',
      sizeChosen: true,
    })
  })

  test.each([
    ['adult', 'throw'],
    ['child', 'throw'],
    ['under3', 'crib'],
    ['under1', 'crib'],
  ])(
    'for %s is counted for a %s where no size was chosen, and costs a range',
    (recipient, size) => {
      const open = of(first({ recipient }), shirt(1))
      expect(open.wish).toMatchObject({ size, sizeChosen: false, layoutChosen: false })
      const chosen = of(
        first({ recipient, quilt_size: size, layout_wish: 'plain-squares' }),
        shirt(1),
      )
      const width = ({ estimate }: typeof open) => estimate!.total.high - estimate!.total.low
      expect(width(chosen)).toBeLessThan(width(open))
    },
  )

  test('for several heirs is for so many quilts', () => {
    const several = { quilts: 'several', quilt_count: { amount: 3, unit: 'quilts' } }
    expect(of(first(several), shirt(1)).wish).toMatchObject({ quilts: 3, sharing: 'as-it-falls' })
    const evenly = of(first({ ...several, sharing: 'evenly' }), shirt(1))
    expect(evenly.wish.sharing).toBe('evenly')
  })

  test('for one quilt has nothing to share out, whatever was said before', () => {
    expect(of(first(), shirt(1)).wish.sharing).toBeNull()
    const several = { quilts: 'several', quilt_count: { amount: 3, unit: 'quilts' } }
    const changed = of(first({ ...several, sharing: 'evenly' }), [says(0, 'quilts', 'one')])
    expect(changed.wish).toMatchObject({ quilts: 1, sharing: null })
  })

  test('is needed so many weeks after that was said', () => {
    const acts = first({ needed_in: { amount: 6, unit: 'weeks' } })
    const saidAt = startedAt + 6 * 60_000
    expect(of(acts).needBy).toBe(saidAt + 6 * week)
  })

  test('a garment that stays at home weighs nothing in the post', () => {
    const pile = of(first(), shirt(1), [
      ...shirt(2, { history: ['damp'] }).slice(0, 7),
      skips(2, 'photos'),
      skips(2, 'story'),
    ])
    expect(pile.garments[1]!.grading?.grade).toBe('home')
    expect(pile.tally).toMatchObject({ good: 1, home: 1 })
    expect(pile.box).toEqual(of(first(), shirt(1)).box)
  })

  test('is priced without a garment as though it had never been told, and with one more as though it had', () => {
    const [one, two] = [of(first(), shirt(1)), of(first(), shirt(1), shirt(2))]
    expect(two.priced(null, { without: [2] })).toEqual(one.priced(null))
    expect(one.priced(null, { more: [{ n: 2, like: 1 }] })).toEqual(two.priced(null))
    expect(one.priced(null, { without: [1] })).toBeNull()
  })

  test('is priced for one quilt as though the customer had chosen it', () => {
    const wish = { quilt_size: 'twin', layout_wish: 'plain-squares' }
    const chosen = of(first(wish), shirt(1))
    const { layout, size } = chosen.wish
    expect(of(first(), shirt(1)).priced(null, { quilt: { layout, size } })).toEqual(
      chosen.priced(null),
    )
  })

  test('is the same however often it is derived', () => {
    const acts = [first(), shirt(1), shirt(2)]
    expect(figures(of(...acts))).toEqual(figures(of(...acts)))
  })

  test('acts that make no sense change nothing', () => {
    const nonsense: Act[] = [
      says(7, 'wear', 'thin'),
      says(1, '__proto__', 'thin'),
      says(1, 'nothing', 'x'),
      { act: 'copy', item: 9, from: 8 },
      { act: 'drop', item: 5 },
      { act: 'add', item: 1 },
    ]
    const { followed: _, ...pile } = of(first(), shirt(1), nonsense)
    const { followed: __, ...plain } = of(first(), shirt(1))
    expect(figures(pile)).toEqual(figures(plain))
  })
})
