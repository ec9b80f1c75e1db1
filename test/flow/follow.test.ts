import { describe, expect, test } from 'vitest'
import { type Followed, follow } from '../../src/flow/follow.ts'
import type { Act, Flow } from '../../src/flow/grammar.ts'
import {
  add,
  ana,
  ask,
  close,
  copy,
  drop,
  kg,
  parcelRules,
  parcels,
  restore,
  say,
  skip,
  smallParcel,
} from './parcels.ts'

const following = (...acts: Act[]): Followed => follow(parcels, acts, parcelRules)

const placeOf = ({ place }: Followed): string =>
  place.at === 'question' ? `${place.item}:${place.question.id}` : place.at

const pathOf = (state: Followed, n: number): string[] =>
  state.items.find((item) => item.n === n)!.path.map(({ question }) => question.id)

const asideOf = (state: Followed, n: number): string[] =>
  Object.keys(state.items.find((item) => item.n === n)!.aside)

const here = say(0, 'country', 'here')
const abroad = say(0, 'country', 'abroad')

describe('where a conversation stands', () => {
  test.each<[string, Act[], string]>([
    ['at the first question', [], '0:country'],
    ['at a question whose rule now holds', [abroad], '0:customs'],
    ['at gathering, once the first part is through', [here], 'gather'],
    ['at an item that is begun', [here, add(1)], '1:size'],
    ['along an edge for the answer given', [here, add(1), say(1, 'size', 'small')], '1:contents'],
    ['along the default edge', [here, add(1), say(1, 'size', 'large')], '1:weight'],
    [
      'along an edge whose rule holds',
      [here, add(1), say(1, 'size', 'large'), say(1, 'weight', kg(30))],
      '1:floor',
    ],
    ['at gathering again after an item', [here, ...smallParcel(1)], 'gather'],
    ['at the parts behind the items once closed', [here, ...smallParcel(1), close], '0:contact'],
    ['at gathering, if closed with no item', [here, close], 'gather'],
    [
      'at gathering, if every item was dropped',
      [here, ...smallParcel(1), close, drop(1)],
      'gather',
    ],
    ['at gathering, where the item that was begun is dropped', [here, add(1), drop(1)], 'gather'],
    [
      'at an item added after closing, before what comes later',
      [here, ...smallParcel(1), close, add(2)],
      '2:size',
    ],
    ['at an earlier part that was opened again', [here, ...smallParcel(1), abroad], '0:customs'],
    ['at the end', [here, ...smallParcel(1), close, say(0, 'contact', ana)], 'end'],
  ])('it stands %s', (_, acts, place) => {
    expect(placeOf(following(...acts))).toBe(place)
  })

  test('a question left to a person matches no answer edge and goes on by default', () => {
    expect(placeOf(following(here, add(1), ask(1, 'size')))).toBe('1:weight')
  })

  test('a question that must be answered stays open when it was passed over', () => {
    expect(placeOf(following(here, add(1), skip(1, 'size')))).toBe('1:size')
  })

  test('an answer to a part that is not open yet waits aside', () => {
    const state = following(here, say(0, 'contact', ana))
    expect(state.parts[1]).toMatchObject({ part: 'last', path: [], open: null })
    expect(state.parts[1]!.aside).toEqual({ contact: { given: ana } })
  })
})

describe('changing an answer', () => {
  const large = [
    here,
    add(1),
    say(1, 'size', 'large'),
    say(1, 'weight', kg(30)),
    say(1, 'floor', 'yes'),
    say(1, 'contents', ['glass']),
  ]

  test('the latest answer to a question counts', () => {
    expect(pathOf(following(...large, say(1, 'weight', kg(5))), 1)).toEqual([
      'size',
      'weight',
      'contents',
    ])
  })

  test('later answers that still make sense stay', () => {
    const state = following(...large, say(1, 'size', 'small'))
    expect(pathOf(state, 1)).toEqual(['size', 'contents'])
    expect(asideOf(state, 1)).toEqual(['weight', 'floor'])
    expect(placeOf(state)).toBe('1:care')
  })

  test('answers set aside count again when the path returns to them', () => {
    const state = following(...large, say(1, 'size', 'small'), say(1, 'size', 'large'))
    expect(pathOf(state, 1)).toEqual(['size', 'weight', 'floor', 'contents'])
    expect(asideOf(state, 1)).toEqual([])
  })

  test('an answer that is no longer offered is asked again', () => {
    const state = following(here, add(1), say(1, 'size', 'huge'), abroad, say(0, 'customs', 'tea'))
    expect(placeOf(state)).toBe('1:size')
    expect(asideOf(state, 1)).toEqual(['size'])
  })

  test('what is set aside is hidden from rules', () => {
    const state = following(...large, say(1, 'size', 'small'))
    expect(Object.keys(state.items[0]!.replies)).toEqual(['country', 'size', 'contents'])
  })

  test('answers of later parts and of other items are hidden from an item', () => {
    const state = following(...large, ...smallParcel(2), close, say(0, 'contact', ana))
    expect(Object.keys(state.items[1]!.replies)).toEqual(['country', 'size', 'contents', 'picture'])
  })
})

describe('items', () => {
  test('a copy starts with the replies as they stood, without the photos', () => {
    const state = following(
      here,
      add(1),
      say(1, 'size', 'small'),
      say(1, 'contents', ['food']),
      say(1, 'picture', ['p1']),
      copy(2, 1),
      say(1, 'contents', ['paper']),
    )
    expect(state.items[1]!.replies.contents).toEqual({ given: ['food'] })
    expect(placeOf(state)).toBe('2:picture')
  })

  test('the caller may say which kinds a copy starts without', () => {
    const acts = [here, ...smallParcel(1), copy(2, 1)]
    const state = follow(parcels, acts, parcelRules, ['many', 'photo'])
    expect(state.items[1]!.open!.id).toBe('contents')
  })

  test('a dropped item keeps its answers and comes back with them', () => {
    const dropped = following(here, ...smallParcel(1), drop(1))
    expect(dropped.items[0]).toMatchObject({ n: 1, dropped: true, open: null })
    expect(following(here, ...smallParcel(1), drop(1), restore(1)).items[0]!.dropped).toBe(false)
  })

  test('items stand by number, in whatever order they were added', () => {
    expect(following(here, add(2), add(1)).items.map(({ n }) => n)).toEqual([1, 2])
  })

  test.each<[string, Act]>([
    ['an answer to an unknown item', say(7, 'size', 'small')],
    ['an answer to an unknown question', say(1, 'colour', 'blue')],
    ['an item question asked of the whole', say(0, 'size', 'small')],
    ['a question of the whole asked of an item', say(1, 'country', 'abroad')],
    ['a copy of nothing', copy(2, 9)],
    ['a second item of the same number', add(1)],
    ['an item without a sensible number', add(0)],
    ['dropping an unknown item', drop(9)],
    ['restoring an unknown item', restore(9)],
  ])('%s is passed over', (_, act) => {
    expect(following(here, ...smallParcel(1), act)).toEqual(following(here, ...smallParcel(1)))
  })

  test.each<[string, unknown]>([
    ['a number for a choice', 3],
    ['null', null],
    ['an unknown option', 'enormous'],
    ['a list for a choice', ['small']],
  ])('a reply of the wrong shape (%s) leaves its question open', (_, given) => {
    expect(placeOf(following(here, add(1), say(1, 'size', given)))).toBe('1:size')
  })
})

test.each(['size', 'contents', 'cellar', 'contact'])(
  'an edge to %s, which the check refuses, ends the part instead of leading in a circle',
  (to) => {
    const lost: Flow = {
      ...parcels,
      parts: parcels.parts.map((part) => ({
        ...part,
        questions: part.questions.map((question) =>
          question.id === 'contents' ? { ...question, next: [{ to }] } : question,
        ),
      })),
    }
    const { items } = follow(lost, [here, ...smallParcel(1)], parcelRules)
    expect(items[0]!.path.map(({ question }) => question.id)).toEqual(['size', 'contents'])
    expect(items[0]!.open).toBeNull()
  },
)

test('a flow that names a rule which is gone is refused by name', () => {
  expect(() => follow(parcels, [here], {})).toThrow('there is no rule goes_abroad')
})
