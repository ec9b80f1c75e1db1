import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { follow } from '../../src/custody/follow.ts'
import { type MoveName, moveNames } from '../../src/custody/move.ts'
import { whereabouts } from '../../src/custody/states.ts'
import { readSubjectKey } from '../../src/custody/subject.ts'
import { entriesOfPile } from '../../src/desk/custody-entries.ts'
import { bear, moveSubject, undoMove } from '../../src/desk/moving.ts'
import { announce, overdueParcels, parcelsOf } from '../../src/desk/parcels.ts'
import { signOff, undoSignOff } from '../../src/desk/sign-off.ts'
import { markedSteps, milestonesOf } from '../../src/intake/milestones.ts'
import type { Store } from '../../src/store/open.ts'
import {
  acceptedPile,
  agreeLaidOut,
  atTheDoor,
  clock,
  once,
  releaseCut,
  shop,
  step,
} from '../help/custody.ts'
import { addStaff } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'

const code = (code: string) => expect.objectContaining({ code })
const at = (store: Store) => ({ store, clock })

const stateOf = async (store: Store, pileId: string, subject: string) =>
  (
    await store.db
      .selectFrom('custody')
      .select('state')
      .where('pile_id', '=', pileId)
      .where('subject', '=', subject)
      .executeTakeFirst()
  )?.state

const lastOf = async (store: Store, pileId: string, subject: string) =>
  (await entriesOfPile(store.db, pileId)).findLast((one) => one.subject === subject)?.seq ?? 0

/** The rows of where things are say what following the entries gives. */
async function expectTrueRows(store: Store, pileId: string): Promise<void> {
  const now = follow(await entriesOfPile(store.db, pileId))
  const rows = await store.db
    .selectFrom('custody')
    .selectAll()
    .where('pile_id', '=', pileId)
    .orderBy('subject')
    .execute()
  expect(
    rows.map(({ subject, kind, state, whereabouts, place, last_seq }) => ({
      subject,
      kind,
      state,
      whereabouts,
      place,
      last_seq,
    })),
  ).toEqual(
    [...now.values()]
      .map(({ subject, state, place, last }) => ({
        subject,
        kind: readSubjectKey(subject)!.kind,
        state,
        whereabouts: whereabouts(readSubjectKey(subject)!.kind, state),
        place,
        last_seq: last,
      }))
      .sort((a, b) => (a.subject < b.subject ? -1 : 1)),
  )
}

eachStore('custody', (store) => {
  test('a garment goes its way from the box to home with the quilt, and its bag of leftovers', async () => {
    const { pileId, who } = await acceptedPile(store())
    const go = (move: MoveName, subject = '1', more = {}) =>
      step(store(), pileId, { subject, move, who, ...more })
    await expect(go('receive')).rejects.toEqual(code('parcel_isolated'))
    await atTheDoor(store(), pileId, who)
    await go('receive', '1', { via: 'P1' })
    await expect(go('tear-down')).rejects.toEqual(code('move_not_now'))
    await go('hold')
    await expect(go('cut')).rejects.toEqual(code('move_not_now'))
    await go('tear-down')
    const bag = { kind: 'leftover', of: 1, move: 'bag', place: 'bin 4', note: '' } as const
    await bear(at(store()), pileId, { ...bag, photo: null, via: null, idem: once(), who })
    await expect(go('cut')).rejects.toEqual(code('move_too_early'))
    await releaseCut(store(), pileId, 1)
    await releaseCut(store(), pileId, 1)
    await go('cut')
    await expect(go('sew')).rejects.toEqual(code('move_too_early'))
    await agreeLaidOut(store(), pileId)
    await go('sew')
    await expect(go('go-home')).rejects.toEqual(code('move_too_early'))
    await expect(go('return', '1-L1')).rejects.toEqual(code('move_too_early'))
    await signOff(at(store()), pileId, { leftovers: 'return', note: '', who })
    await expect(go('give-away', '1-L1')).rejects.toEqual(code('move_too_early'))
    await go('return', '1-L1')
    await go('go-home')
    expect(await stateOf(store(), pileId, '1')).toBe('home-with-quilt')
    expect(await stateOf(store(), pileId, '1-L1')).toBe('returned')
    await expect(undoSignOff(at(store()), pileId, who)).rejects.toEqual(code('undo_not_now'))
    await expectTrueRows(store(), pileId)
  })

  test('what the customer is told of arrives with the parcel and is done with the sign-off, and back', async () => {
    const { pileId, who } = await acceptedPile(store())
    const told = () => milestonesOf(store().db, pileId)
    await atTheDoor(store(), pileId, who)
    const { arrived } = await told()
    expect(arrived).not.toBeNull()
    expect((await told()).done).toBeNull()
    const go = (move: MoveName, subject = '1', more = {}) =>
      step(store(), pileId, { subject, move, who, ...more })
    await go('receive', '1', { via: 'P1' })
    await go('hold')
    await go('tear-down')
    await releaseCut(store(), pileId, 1)
    await go('cut')
    await agreeLaidOut(store(), pileId)
    await go('sew')
    await signOff(at(store()), pileId, { leftovers: 'return', note: '', who })
    expect((await told()).done).not.toBeNull()
    await undoSignOff(at(store()), pileId, who)
    expect((await told()).done).toBeNull()
    expect(await markedSteps(store().db, pileId)).toEqual(new Set())
  })

  test('an arrival that was taken back is told to the customer no more', async () => {
    const { pileId, who } = await acceptedPile(store())
    await atTheDoor(store(), pileId, who)
    const seen = await lastOf(store(), pileId, 'P1')
    const undo = { subject: 'P1', note: 'the parcel of another pile', seen, who, idem: once() }
    await undoMove(at(store()), pileId, undo)
    expect((await milestonesOf(store().db, pileId)).arrived).toBeNull()
  })

  test('a mistake is mended by an entry that names it, the newest alone', async () => {
    const { pileId, who } = await acceptedPile(store())
    await atTheDoor(store(), pileId, who)
    await step(store(), pileId, { subject: '1', move: 'receive', via: 'P1', who })
    await step(store(), pileId, { subject: '1', move: 'hold', who })
    const seen = await lastOf(store(), pileId, '1')
    const undo = { subject: '1', note: 'the wrong garment', who }
    await undoMove(at(store()), pileId, { ...undo, seen, idem: once() })
    expect(await stateOf(store(), pileId, '1')).toBe('received')
    await undoMove(at(store()), pileId, { ...undo, seen: seen + 1, idem: once() })
    expect(await stateOf(store(), pileId, '1')).toBe('expected')
    const last = await lastOf(store(), pileId, '1')
    const third = undoMove(at(store()), pileId, { ...undo, seen: last, idem: once() })
    await expect(third).rejects.toEqual(code('undo_not_now'))
    const entries = await entriesOfPile(store().db, pileId)
    expect(entries.filter(({ subject }) => subject === '1').map(({ move }) => move)).toEqual([
      'expect',
      'receive',
      'hold',
      'undo',
      'undo',
    ])
    await expectTrueRows(store(), pileId)
  })

  test('what others rest on is not taken back', async () => {
    const { pileId, who } = await acceptedPile(store())
    await atTheDoor(store(), pileId, who)
    for (const move of ['receive', 'hold', 'tear-down'] as const) {
      await step(store(), pileId, {
        subject: '1',
        move,
        via: move === 'receive' ? 'P1' : null,
        who,
      })
    }
    const bag = { kind: 'leftover', of: 1, move: 'bag', place: 'bin 4', note: '' } as const
    await bear(at(store()), pileId, { ...bag, photo: null, via: null, idem: once(), who })
    const undo = async (subject: string) =>
      undoMove(at(store()), pileId, {
        subject,
        note: 'a mistake',
        seen: await lastOf(store(), pileId, subject),
        idem: once(),
        who,
      })
    await expect(undo('1')).rejects.toEqual(code('undo_not_now'))
    await expect(undo('P1')).rejects.toEqual(code('undo_not_now'))
    await undo('1-L1')
    expect(await stateOf(store(), pileId, '1-L1')).toBeUndefined()
    await undo('1')
    expect(await stateOf(store(), pileId, '1')).toBe('held')
    // Its number is not given to another.
    await step(store(), pileId, { subject: '1', move: 'tear-down', who })
    await bear(at(store()), pileId, { ...bag, photo: null, via: null, idem: once(), who })
    expect(await stateOf(store(), pileId, '1-L2')).toBe('bagged')
    await expectTrueRows(store(), pileId)
  })

  test('two people at once: one moves it, the other is told', async () => {
    const { pileId, who } = await acceptedPile(store())
    const other = await addStaff(store().db, 'Bo')
    await atTheDoor(store(), pileId, who)
    await step(store(), pileId, { subject: '1', move: 'receive', via: 'P1', who })
    const seen = await lastOf(store(), pileId, '1')
    const same = { subject: '1', place: '', note: 'moths', photo: null, via: null, seen }
    const both = await Promise.allSettled([
      moveSubject(at(store()), pileId, { ...same, move: 'hold', idem: once(), who }),
      moveSubject(at(store()), pileId, { ...same, move: 'isolate', idem: once(), who: other }),
    ])
    expect(both.filter(({ status }) => status === 'fulfilled')).toHaveLength(1)
    const [lost] = both.flatMap((one) => (one.status === 'rejected' ? [one.reason] : []))
    expect(lost).toEqual(code('moved_meanwhile'))
    await expectTrueRows(store(), pileId)
  })

  test('the same form sent twice, at once or later, moves once', async () => {
    const { pileId, who } = await acceptedPile(store())
    await atTheDoor(store(), pileId, who)
    const seen = await lastOf(store(), pileId, '1')
    const moving = { subject: '1', move: 'receive', place: 'a', note: '', photo: null } as const
    const sent = { ...moving, via: 'P1', seen, idem: once(), who }
    await Promise.all([1, 2].map(() => moveSubject(at(store()), pileId, sent)))
    await moveSubject(at(store()), pileId, sent)
    const entries = await entriesOfPile(store().db, pileId)
    expect(entries.filter(({ move }) => move === 'receive')).toHaveLength(1)
  })

  test('what is none of the pile is not moved by way of it', async () => {
    const { pileId, who } = await acceptedPile(store(), { garments: 1 })
    const other = await acceptedPile(store(), { number: 2, garments: 3 })
    const base = { place: 'a', note: 'note', photo: null, via: null, idem: once(), who }
    for (const subject of ['3', '1-L1', 'P9', 'nonsense', "1'; drop table custody"]) {
      const moving = { ...base, subject, move: 'receive' as const, seen: 1 }
      await expect(moveSubject(at(store()), pileId, moving)).rejects.toBeInstanceOf(Failure)
    }
    await atTheDoor(store(), other.pileId, who)
    const seen = await lastOf(store(), pileId, '1')
    const through = { ...base, subject: '1', move: 'receive' as const, via: 'P1', seen }
    await expect(moveSubject(at(store()), pileId, through)).rejects.toEqual(code('parcel_isolated'))
    const foreign = { ...base, subject: '1', move: 'miss' as const, seen, photo: 'somebody-elses' }
    await expect(moveSubject(at(store()), pileId, foreign)).rejects.toEqual(code('not_found'))
    expect(await stateOf(store(), pileId, '1')).toBe('expected')
  })

  test('an isolated parcel gives nothing until a person lifts it with a reason', async () => {
    const { pileId, who } = await acceptedPile(store())
    await atTheDoor(store(), pileId, who, ['mouldy', 'torn'])
    expect(await stateOf(store(), pileId, 'P1')).toBe('isolated')
    const receive = () => step(store(), pileId, { subject: '1', move: 'receive', via: 'P1', who })
    await expect(receive()).rejects.toEqual(code('parcel_isolated'))
    const lift = (note: string) => step(store(), pileId, { subject: 'P1', move: 'lift', note, who })
    await expect(lift('')).rejects.toEqual(code('reason_missing'))
    await lift('aired outdoors for two days, dry, no growth to be seen')
    await receive()
    expect(await stateOf(store(), pileId, '1')).toBe('received')
  })

  test('parcels of one pile are told apart, and one that does not come is overdue', async () => {
    const { pileId, who } = await acceptedPile(store())
    const day = 24 * 60 * 60 * 1000
    const posted = { carrier: 'Post', insured: 20_000, expectedAt: null, who: null }
    const both = [
      { ...posted, tracking: 'AA 1', postedAt: clock() - 12 * day, idem: once() },
      { ...posted, tracking: 'AA 2', postedAt: clock() - 2 * day, idem: once() },
    ]
    for (const one of both) {
      await announce(at(store()), shop, pileId, one)
      await announce(at(store()), shop, pileId, one)
    }
    expect((await parcelsOf(store().db, pileId)).map(({ subject }) => subject)).toEqual([
      'P1',
      'P2',
    ])
    const overdue = await overdueParcels(store().db, clock(), shop)
    expect(overdue.map(({ tracking }) => tracking)).toEqual(['AA 1'])
    await step(store(), pileId, { subject: 'P1', move: 'arrive', who })
    expect(await overdueParcels(store().db, clock(), shop)).toEqual([])
  })

  test('declined garments are not sent, and go back if they come all the same', async () => {
    const { pileId, who } = await acceptedPile(store(), { declined: [2] })
    expect(await stateOf(store(), pileId, '2')).toBe('not-sent')
    await atTheDoor(store(), pileId, who)
    await step(store(), pileId, { subject: '2', move: 'receive', via: 'P1', who })
    await step(store(), pileId, { subject: '2', move: 'hold', who })
    const apart = step(store(), pileId, { subject: '2', move: 'tear-down', who })
    await expect(apart).rejects.toEqual(code('move_too_early'))
    await step(store(), pileId, { subject: '2', move: 'return-uncut', who })
    expect(await stateOf(store(), pileId, '2')).toBe('returned-uncut')
  })

  test('whatever random people do at once, the rows say what the entries say, and nothing is lost', async () => {
    const subjects = ['1', '2', '1-L1', 'P1', 'X1']
    const one = fc.record({
      subject: fc.constantFrom(...subjects),
      move: fc.oneof(
        { weight: 4, arbitrary: fc.constantFrom('receive', 'hold', 'tear-down', 'bag', 'cut') },
        { weight: 2, arbitrary: fc.constantFrom(...moveNames) },
      ),
      undo: fc.nat(9).map((n) => n === 0),
      late: fc.nat(9).map((n) => n === 0),
    })
    const round = fc.array(one, { minLength: 1, maxLength: 3 })
    let number = 10
    await fc.assert(
      fc.asyncProperty(fc.array(round, { minLength: 8, maxLength: 20 }), async (rounds) => {
        number += 1
        const { pileId, who } = await acceptedPile(store(), { number })
        await atTheDoor(store(), pileId, who)
        for (const many of rounds) {
          // All of a round have looked before any of them acts.
          const seen = await Promise.all(
            many.map(({ subject }) => lastOf(store(), pileId, subject)),
          )
          const all = await Promise.allSettled(
            many.map(({ subject, move, undo, late }, n) => {
              const knew = Math.max(0, seen[n]! - (late ? 1 : 0))
              const same = { subject, note: 'as it happens', seen: knew, idem: once(), who }
              return undo
                ? undoMove(at(store()), pileId, same)
                : moveSubject(at(store()), pileId, {
                    ...same,
                    move: move as MoveName,
                    place: 'shelf',
                    photo: null,
                    via: 'P1',
                  })
            }),
          )
          for (const each of all) {
            if (each.status === 'rejected') expect(each.reason).toBeInstanceOf(Failure)
          }
        }
        await expectTrueRows(store(), pileId)
        const seqs = (await entriesOfPile(store().db, pileId)).map(({ seq }) => seq)
        expect(seqs).toEqual(seqs.map((_, n) => n + 1))
        for (const n of ['1', '2']) expect(await stateOf(store(), pileId, n)).toBeDefined()
      }),
      { numRuns: 6 },
    )
  })
})
