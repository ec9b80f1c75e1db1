import { expect, test } from 'vitest'
import { faultsSeen, type SeenPhoto, tellingLook } from '../../src/intake/garment-look.ts'
import { lookOf } from '../help/told-lane.ts'

const plainLook = lookOf({ print: { ...lookOf().print, class: 'solid' }, graphic: null })
const dark = lookOf({ fitness: { ok: false, problems: ['dark'] } })
const seen = (photo: string, shows: SeenPhoto['shows'], look = plainLook): SeenPhoto => ({
  photo,
  look,
  shows,
})

test.each<[string, SeenPhoto[], string | null]>([
  ['the first front', [seen('a', null), seen('b', 'back'), seen('c', 'front')], 'c'],
  ['of two fronts the first', [seen('a', 'front'), seen('b', 'front')], 'a'],
  ['a front that is fit', [seen('a', 'front', dark), seen('b', 'front')], 'b'],
  ['the first, where no front is told', [seen('a', null), seen('b', 'back')], 'a'],
  ['a single picture, though on the back', [seen('a', 'front'), seen('b', 'back', lookOf())], 'b'],
  ['no close-up', [seen('a', 'close-up', lookOf()), seen('b', null)], 'b'],
  ['nothing, where there are close-ups alone', [seen('a', 'close-up')], null],
])('of a garment tells %s', (_, photos, telling) => {
  expect(tellingLook(photos)?.photo ?? null).toBe(telling)
})

test('what is meant to be close up has no faults of a whole garment', () => {
  expect(faultsSeen([seen('a', 'close-up', dark)])).toEqual([])
  expect(faultsSeen([seen('a', null, dark)])).toEqual(['dark'])
})

test('nobody is asked to lay a blanket out anew because no garment was seen; in the dark they are', () => {
  const unseen = lookOf({ fitness: { ok: false, problems: ['dark', 'no-garment'] } })
  expect(faultsSeen([seen('a', null, unseen)], 'blanket')).toEqual(['dark'])
  expect(faultsSeen([seen('a', null, unseen)], 'tshirt')).toEqual(['dark', 'no-garment'])
  expect(faultsSeen([seen('a', null, unseen)])).toEqual(['dark', 'no-garment'])
})
