import { expect, test } from 'vitest'
import { admit } from '../../src/flow/admit.ts'
import { follow } from '../../src/flow/follow.ts'
import type { Act } from '../../src/flow/grammar.ts'
import {
  add,
  ana,
  close,
  copy,
  drop,
  parcelRules,
  parcels,
  restore,
  say,
  smallParcel,
} from './parcels.ts'

const begun = [say(0, 'country', 'here'), ...smallParcel(1)]
const full = [...begun, ...smallParcel(2), ...smallParcel(3)]

const trying = (acts: Act[], act: Act) => () =>
  admit(parcels, follow(parcels, acts, parcelRules), act)

test.each<[string, Act[], Act]>([
  ['an answer to the open question', [], say(0, 'country', 'here')],
  ['a changed answer', begun, say(1, 'size', 'large')],
  ['another item', begun, add(2)],
  ['a copy', begun, copy(2, 1)],
  ['an item in place of a dropped one', [...full, drop(2)], add(4)],
  ['restoring what was never dropped, in a full pile', full, restore(1)],
  ['closing with one complete item', begun, close],
])('%s is admitted', (_, acts, act) => {
  expect(trying(acts, act)).not.toThrow()
})

test.each<[string, Act[], Act, string]>([
  ['an answer to an unknown item', begun, say(9, 'size', 'small'), 'not_found {"item":9}'],
  ['an unknown question', begun, say(1, 'colour', 'blue'), 'not_found {"question":"colour"}'],
  ['an unknown question of the whole', begun, say(0, 'hat', 'red'), 'not_found {"question":"hat"}'],
  [
    'a question the path left',
    begun,
    say(1, 'weight', { amount: 3, unit: 'kg' }),
    'question_moved_on {"question":"weight","item":1}',
  ],
  [
    'a question of a part that is not open yet',
    begun,
    say(0, 'contact', ana),
    'question_moved_on {"question":"contact"}',
  ],
  [
    'an answer to a dropped item',
    [...begun, drop(1)],
    say(1, 'size', 'large'),
    'question_moved_on {"question":"size","item":1}',
  ],
  ['one item too many', full, add(4), 'too_many_items {"most":3}'],
  ['one copy too many', full, copy(4, 1), 'too_many_items {"most":3}'],
  [
    'restoring into a full pile',
    [...full, drop(1), ...smallParcel(4)],
    restore(1),
    'too_many_items {"most":3}',
  ],
  ['a number that is taken', begun, add(1), 'bad_input {"item":1}'],
  ['a copy of nothing', begun, copy(2, 9), 'not_found {"item":9}'],
  ['dropping an unknown item', begun, drop(9), 'not_found {"item":9}'],
  ['closing with nothing complete', [], close, 'nothing_gathered'],
  ['closing when all was dropped', [...begun, drop(1)], close, 'nothing_gathered'],
])('%s is refused', (_, acts, act, why) => {
  expect(trying(acts, act)).toThrow(why)
})
