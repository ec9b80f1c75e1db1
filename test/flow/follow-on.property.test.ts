import fc from 'fast-check'
import { expect, test } from 'vitest'
import { follow, following, followOn } from '../../src/flow/follow.ts'
import { parcelRules, parcels } from './parcels.ts'
import { anyActs, steady } from './random.ts'

test('following one act more gives what following all of them anew gives', () => {
  fc.assert(
    fc.property(anyActs, (acts) => {
      let state = following(parcels, [], parcelRules)
      for (const [nth, act] of acts.entries()) {
        const before = structuredClone(state.followed)
        const next = followOn(parcels, state, act, parcelRules)
        expect(next.followed).toEqual(follow(parcels, acts.slice(0, nth + 1), parcelRules))
        expect(state.followed).toEqual(before)
        state = next
      }
    }),
    steady,
  )
})
