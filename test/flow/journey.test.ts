import { expect, test } from 'vitest'
import { FlowWalk } from '../help/flow-walk.ts'
import { parcelRules, parcels } from './parcels.ts'

const walk = () => new FlowWalk(parcels, parcelRules)

test('a visitor is led from the first question to the end', () => {
  walk()
    .choose('country', 'abroad')
    .answer('customs', { value: 'tea' })
    .add()
    .choose('1:size', 'large')
    .answer('1:weight', { value: '30' })
    .choose('1:floor', 'no')
    .choose('1:contents', ['glass', 'food'])
    .answer('1:care', { value: 'this side up' })
    .skip('1:picture')
    .add()
    .ask('2:size')
    .answer('2:weight', { value: '2' })
    .choose('2:contents', ['none'])
    .skip('2:picture')
    .close()
    .answer('contact', { name: 'Ana Example', email: 'ana@example.org' })
    .stands('end')
})

test('an option that is closed on this path is refused', () => {
  const abroad = walk().choose('country', 'abroad').answer('customs', { value: 'tea' }).add()
  expect(() => abroad.choose('1:size', 'huge')).toThrow('answer_not_offered')
})

test('a test that is elsewhere than it believes is refused', () => {
  expect(() => walk().choose('customs', 'tea')).toThrow(
    'this test is lost: it means to be at "customs" but stands at "country"',
  )
})
