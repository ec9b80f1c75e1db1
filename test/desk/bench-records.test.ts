import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { mayCut } from '../../src/custody/guards.ts'
import { recordsOf, standingRecords } from '../../src/desk/bench-records.ts'
import { decidePile } from '../../src/desk/decisions.ts'
import { factSetsOf } from '../../src/desk/fact-sets.ts'
import { logFound } from '../../src/desk/found-things.ts'
import { garmentRecords } from '../../src/desk/garment-records.ts'
import { reportIncident, settleIncident } from '../../src/desk/incidents.ts'
import { openCustody } from '../../src/desk/ledger.ts'
import { messagesOf } from '../../src/desk/messages.ts'
import { type Recording, takeBackRecord } from '../../src/desk/recording.ts'
import { askRelease, release } from '../../src/desk/release.ts'
import { review } from '../../src/desk/review.ts'
import { logTest, type Testing } from '../../src/desk/test-log.ts'
import { logWash, readWash, type Washing } from '../../src/desk/wash-record.ts'
import { atTheDoor, clock, keepPhotoOf, once, releaseCut, step } from '../help/custody.ts'
import { addStaff } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const code = (code: string, details?: object) =>
  expect.objectContaining({ code, ...(details && { details: expect.objectContaining(details) }) })

eachStore('the bench’s records', (store) => {
  let workshop: Workshop
  let pileId: string
  let ana: string
  let bo: string

  beforeAll(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterAll(() => workshop?.close())

  const at = () => ({ store: store(), clock, knowledge: workshop.knowledge })
  const seenOf = async (item: number) =>
    (await recordsOf(store().db, pileId)).findLast((one) => one.item === item)?.seq ?? 0
  const recording = async (more: Partial<Recording> = {}): Promise<Recording> => ({
    item: 1,
    note: '',
    photo: null,
    seen: await seenOf(more.item ?? 1),
    idem: once(),
    who: ana,
    ...more,
  })
  const testing = async (more: Partial<Testing> = {}) =>
    logTest(at(), pileId, {
      ...(await recording(more)),
      lot: 'lot 12',
      interfacing: 'light',
      sole: '110',
      seconds: '12',
      peel: 'holds',
      look: 'fine',
      result: 'passed',
      ...more,
    })
  const washing = async (more: Partial<Washing> = {}) =>
    logWash(at(), pileId, {
      ...(await recording(more)),
      how: 'by hand, with a mild soap',
      celsius: '30',
      bled: 'fast',
      shrunk: 'no',
      size: '',
      ...more,
    })
  const ask = async (more: Partial<Recording> = {}) =>
    askRelease(at(), pileId, await recording(more))
  const letGo = async (more: Partial<Recording> = {}) =>
    release(at(), pileId, await recording({ who: bo, ...more }))
  const back = async (seq: number, more: Partial<Recording> = {}) =>
    takeBackRecord(at(), pileId, { ...(await recording({ note: 'a mistake', ...more })), seq })
  const garment = async (n = 1) =>
    (await review(store().db, workshop.knowledge, pileId)).garments.find(
      (one) => one.garment.n === n,
    )!.garment
  const page = async (n = 1) => {
    const row = await store()
      .db.selectFrom('pile')
      .selectAll()
      .where('id', '=', pileId)
      .executeTakeFirstOrThrow()
    return garmentRecords(store().db, workshop.knowledge, row, n)
  }
  const go = (move: 'tear-down' | 'cut' | 'stabilise' | 'withdraw' | 'return-uncut', n = 1) =>
    step(store(), pileId, { subject: String(n), move, who: ana })

  beforeEach(async () => {
    const shirt = { kind: said('button-shirt'), size: said('L'), wear: said('thin') }
    await confirmPile(workshop.conversation, [
      { ...shirt, name: said('Dad’s blue flannel') },
      shirt,
    ])
    pileId = (await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()).id
    ana = await addStaff(store().db, 'Ana')
    bo = await addStaff(store().db, 'Bo')
    const deciding = { verdict: 'accept', reason: '', who: ana, seen: 0 } as const
    await decidePile(store(), clock, pileId, deciding)
    await openCustody({ store: store(), clock }, pileId, ana)
    await atTheDoor(store(), pileId, ana)
    for (const subject of ['1', '2']) {
      await step(store(), pileId, { subject, move: 'receive', via: 'P1', who: ana })
      await step(store(), pileId, { subject, move: 'hold', who: ana })
    }
  })

  test('a cut waits for photo, for the word of one person, and for that of another', async () => {
    await go('tear-down')
    await expect(go('cut')).rejects.toEqual(code('move_too_early'))
    await expect(letGo()).rejects.toEqual(code('release_too_early', { lack: 'photo' }))
    await keepPhotoOf(store(), pileId, 1, 'label')
    await expect(letGo()).rejects.toEqual(code('release_too_early', { lack: 'photo' }))
    await keepPhotoOf(store(), pileId, 1)
    await expect(letGo()).rejects.toEqual(code('release_too_early', { lack: 'asked' }))
    await ask()
    await expect(ask()).rejects.toEqual(code('record_not_now'))
    await expect(letGo({ who: ana })).rejects.toEqual(code('release_same_person'))
    await expect(go('cut')).rejects.toEqual(code('move_too_early'))
    expect((await page()).lacks).toEqual(['released'])
    await letGo()
    expect((await page()).lacks).toEqual([])
    await go('cut')
    // The other garment was not released with it.
    await go('tear-down', 2)
    await expect(go('cut', 2)).rejects.toEqual(code('move_too_early'))
  })

  test('consent decides: none and unknown stop the release and the cut, part lets it go on', async () => {
    await keepPhotoOf(store(), pileId, 1)
    await go('tear-down')
    const consent = async (value: string) =>
      store()
        .db.updateTable('garment')
        .set({ facts: JSON.stringify({ consent: value }) })
        .where('pile_id', '=', pileId)
        .execute()
    await ask()
    for (const value of ['no-cut', 'unknown']) {
      await consent(value)
      await expect(letGo()).rejects.toEqual(code('release_too_early', { lack: 'consent' }))
    }
    await consent('part')
    await letGo()
    await consent('no-cut')
    await expect(go('cut')).rejects.toEqual(code('move_too_early'))
    await consent('part')
    await go('cut')
  })

  test('a release is taken back before the cut by an entry that names it, and never after', async () => {
    await keepPhotoOf(store(), pileId, 1)
    await go('tear-down')
    await ask()
    await letGo()
    await expect(back(1)).rejects.toEqual(code('undo_not_now'))
    await expect(back(2, { note: '' })).rejects.toEqual(code('reason_missing'))
    await back(2)
    await expect(go('cut')).rejects.toEqual(code('move_too_early'))
    await back(1)
    // Who had released may ask now; the one who had asked is the second person then.
    await ask({ who: bo })
    await letGo({ who: ana })
    await go('cut')
    await expect(back(6)).rejects.toEqual(code('undo_not_now'))
    const kinds = (await recordsOf(store().db, pileId)).map(({ kind }) => kind)
    expect(kinds).toEqual(['ask', 'release', 'undo', 'undo', 'ask', 'release'])
  })

  test('of two who ask at once one is kept, the other told; the same sent twice is one', async () => {
    const both = await Promise.allSettled([ask({ seen: 0 }), ask({ seen: 0, who: bo })])
    expect(both.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected'])
    const [lost] = both.flatMap((one) => (one.status === 'rejected' ? [one.reason] : []))
    expect(lost).toEqual(code('decided_meanwhile'))
    const idem = once()
    await Promise.all([1, 2].map(async () => washing({ idem, seen: 1 })))
    expect(await recordsOf(store().db, pileId)).toHaveLength(2)
  })

  test('a pass counts for that garment alone, a fail forbids fusing, and taking back brings back what was', async () => {
    await expect(testing()).rejects.toEqual(code('record_not_now'))
    await go('tear-down')
    const { test: before } = (await garment()).facts
    expect(before).toBe('none')
    await testing()
    expect((await garment()).facts.test).toBe('passed')
    expect((await garment(2)).facts.test).toBe('none')
    await testing({ peel: 'lifts', result: 'failed', idem: once() })
    const failed = await garment()
    expect(failed.facts.test).toBe('failed')
    // must-hold.yaml: a failed test means neither fuse nor fuse-cool.
    expect(['fuse', 'fuse-cool']).not.toContain(failed.grading!.press.method)
    await expect(back(1)).rejects.toEqual(code('undo_not_now'))
    await back(2)
    expect((await garment()).facts.test).toBe('passed')
    await back(1)
    expect((await garment()).facts.test).toBe('none')
    const sets = await factSetsOf(store().db, pileId)
    expect(sets.map(({ source, fact, undone }) => [source, fact, undone !== null])).toEqual([
      ['bench', 'test', true],
      ['bench', 'test', true],
    ])
  })

  test('no test is logged above the ceiling of its press plan, at it one is; nor a pass that is none', async () => {
    await go('tear-down')
    const ceiling = (await garment()).grading!.press.ceilingC!
    expect(ceiling).toBeGreaterThan(40)
    const hot = testing({ sole: String(ceiling + 1) })
    await expect(hot).rejects.toEqual(code('test_too_hot', { ceiling }))
    await expect(testing({ peel: 'lifts' })).rejects.toEqual(code('test_not_passed'))
    await expect(testing({ look: 'glazed' })).rejects.toEqual(code('test_not_passed'))
    expect((await garment()).facts.test).toBe('none')
    await testing({ sole: String(ceiling) })
    expect((await garment()).facts.test).toBe('passed')
  })

  test('a test that cannot be is refused whole', async () => {
    await go('tear-down')
    const refused: readonly (readonly [Partial<Testing>, string])[] = [
      [{ sole: '1e2' }, 'not_a_number'],
      [{ sole: '-10' }, 'not_a_number'],
      [{ sole: '' }, 'not_a_number'],
      [{ sole: '9999' }, 'number_out_of_range'],
      [{ seconds: '0' }, 'number_out_of_range'],
      [{ lot: ' \u200b ' }, 'empty_answer'],
      [{ lot: 'x'.repeat(201) }, 'answer_too_long'],
      [{ interfacing: 'constructor' }, 'answer_not_offered'],
      [{ peel: '' }, 'answer_not_offered'],
      [{ look: '__proto__' }, 'answer_not_offered'],
      [{ note: 'x'.repeat(2001) }, 'answer_too_long'],
      [{ item: 9 }, 'not_found'],
      [{ photo: 'somebody-elses' }, 'not_found'],
    ]
    for (const [more, why] of refused) await expect(testing(more)).rejects.toEqual(code(why))
    expect(await recordsOf(store().db, pileId)).toEqual([])
    expect(await factSetsOf(store().db, pileId)).toEqual([])
  })

  test('what was found has a number, is told to the customer once, and must go home first', async () => {
    const idem = once()
    const finding = {
      ...(await recording({ note: 'a shopping list', idem })),
      where: 'left pocket',
      place: 'drawer 2',
    }
    await logFound(at(), pileId, finding)
    await logFound(at(), pileId, finding)
    const [message, ...others] = await messagesOf(store().db, pileId)
    expect(others).toEqual([])
    expect(message).toMatchObject({ item: 1, by: 'Ana', wantsAnswer: false })
    for (const part of ['a shopping list', 'left pocket', 'F1', 'blue flannel']) {
      expect(message!.text).toContain(part)
    }
    const mails = await store().db.selectFrom('mail').select(['template', 'body']).execute()
    expect(mails.map(({ template }) => template)).toContain('message')
    await go('withdraw')
    await expect(go('return-uncut')).rejects.toEqual(code('move_too_early'))
    await step(store(), pileId, { subject: 'F1', move: 'return', who: ana })
    await go('return-uncut')
    const nowhere = logFound(at(), pileId, {
      ...(await recording({ item: 2, note: 'a key' })),
      where: '',
      place: 'drawer 2',
    })
    await expect(nowhere).rejects.toEqual(code('empty_answer'))
    expect(await messagesOf(store().db, pileId)).toHaveLength(1)
  })

  test('a wash sets what it found, keeps what that made of the grade, and is taken back whole', async () => {
    const before = await garment()
    await washing({ bled: 'bleeds', shrunk: 'yes', size: 'M' })
    const after = await garment()
    expect(after.facts).toMatchObject({ wash: 'washed', bleed: 'bleeds' })
    expect(after.told.size).toBe('M')
    expect(after.grading!.grade).not.toBe('sound')
    const [record] = standingRecords(await recordsOf(store().db, pileId))
    expect(readWash(record!)).toMatchObject({
      before: { grade: before.grading!.grade },
      after: { grade: after.grading!.grade },
    })
    await back(record!.seq)
    const again = await garment()
    expect(again.facts).toEqual(before.facts)
    expect(again.told.size).toBe(before.told.size)
    await expect(washing({ shrunk: 'yes' })).rejects.toEqual(code('size_missing'))
    await expect(washing({ size: '9XL' })).rejects.toEqual(code('answer_not_offered'))
    await expect(washing({ celsius: '100' })).rejects.toEqual(code('number_out_of_range'))
  })

  test('an incident stops the work until it is decided; untouched, the garment can go home', async () => {
    await releaseCut(store(), pileId, 1)
    await go('tear-down')
    const seen = await seenOf(1)
    await reportIncident(at(), pileId, await recording({ note: 'scorched at the hem', seen }))
    for (const move of ['stabilise', 'cut'] as const) {
      await expect(go(move)).rejects.toEqual(code('move_too_early', { guard: 'not_stopped' }))
    }
    // The other garment goes on.
    await go('tear-down', 2)
    await settleIncident(at(), pileId, await recording({ note: 'cut around it', who: bo }))
    await go('stabilise')
    const nothing = settleIncident(at(), pileId, await recording({ note: 'once more' }))
    await expect(nothing).rejects.toEqual(code('record_not_now'))
    await reportIncident(at(), pileId, await recording({ note: 'ink on the collar' }))
    await go('withdraw')
    await go('return-uncut')
    await expect(back(await seenOf(1))).rejects.toEqual(code('undo_not_now'))
  })

  test('a garment whose intake names no photo is not cut by a photo of something else', async () => {
    await keepPhotoOf(store(), pileId, 0, 'custody')
    await keepPhotoOf(store(), pileId, 1, 'record')
    await keepPhotoOf(store(), pileId, 2)
    expect((await page()).lacks).toContain('photo')
    expect((await page(2)).lacks).not.toContain('photo')
  })
})

test('one person alone never releases a cut, whatever the records say', () => {
  const facts = { accepted: true, taken: true, photo: true, consent: true }
  expect(mayCut({ ...facts, askedBy: 'ana', releasedBy: 'bo' })).toBe(true)
  expect(mayCut({ ...facts, askedBy: 'ana', releasedBy: 'ana' })).toBe(false)
  expect(mayCut({ ...facts, askedBy: null, releasedBy: null })).toBe(false)
  for (const lacking of ['accepted', 'taken', 'photo', 'consent'] as const) {
    expect(mayCut({ ...facts, [lacking]: false, askedBy: 'ana', releasedBy: 'bo' })).toBe(false)
  }
})
