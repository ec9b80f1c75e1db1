import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { recordsOf } from '../../src/desk/bench-records.ts'
import { decidePile } from '../../src/desk/decisions.ts'
import { laidOutOf } from '../../src/desk/laid-out.ts'
import { answerLaidOut, layOut, mostLaidPhotos, saidOnPhone } from '../../src/desk/lay-out.ts'
import { openCustody } from '../../src/desk/ledger.ts'
import { undoMove } from '../../src/desk/moving.ts'
import { changeMarks } from '../../src/desk/plan-marks.ts'
import { takeBackRecord } from '../../src/desk/recording.ts'
import { refreshWaiting } from '../../src/intake/waiting.ts'
import { atTheDoor, clock, keepPhotoOf, once, releaseCut, step } from '../help/custody.ts'
import { addStaff } from '../help/desk.ts'
import { eachStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const code = (code: string, details?: object) =>
  expect.objectContaining({ code, ...(details && { details: expect.objectContaining(details) }) })

eachStore('the laid-out quilt', (store) => {
  let workshop: Workshop
  let pileId: string
  let ana: string

  beforeAll(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterAll(() => workshop?.close())

  const at = () => ({ store: store(), clock, knowledge: workshop.knowledge })
  const go = (move: 'receive' | 'hold' | 'tear-down' | 'cut' | 'sew', n: number) =>
    step(store(), pileId, {
      subject: String(n),
      move,
      who: ana,
      via: move === 'receive' ? 'P1' : null,
    })
  const seen = async () =>
    (await recordsOf(store().db, pileId)).findLast(({ item }) => item === 0)?.seq ?? 0
  const photo = () => keepPhotoOf(store(), pileId, 0, 'laid-out')
  const lay = async (more: Partial<Parameters<typeof layOut>[2]> = {}) =>
    layOut(at(), pileId, {
      photos: [await photo()],
      note: 'The blue ones frame it.',
      seen: await seen(),
      idem: once(),
      who: ana,
      ...more,
    })
  const of = async () => (await laidOutOf(store().db, pileId)).laid!.seq
  const says = async (
    kind: 'yes' | 'change',
    more: Partial<Parameters<typeof answerLaidOut>[2]> = {},
  ) =>
    answerLaidOut(at(), pileId, {
      kind,
      of: await of(),
      note: kind === 'change' ? 'Please move the red one up.' : '',
      idem: once(),
      ...more,
    })
  const phone = async (more: Partial<Parameters<typeof saidOnPhone>[2]> = {}) =>
    saidOnPhone(at(), pileId, {
      of: await of(),
      by: 'Ana Ruiz',
      day: clock(),
      note: '',
      seen: await seen(),
      idem: once(),
      who: ana,
      ...more,
    })
  const back = async (seq: number) =>
    takeBackRecord(at(), pileId, {
      item: 0,
      seq,
      note: 'the wrong pile',
      photo: null,
      seen: await seen(),
      idem: once(),
      who: ana,
    })
  const waits = async () => {
    const row = () =>
      store()
        .db.selectFrom('waiting')
        .selectAll()
        .where('pile_id', '=', pileId)
        .executeTakeFirstOrThrow()
    const kept = await row()
    await refreshWaiting(store().db, pileId)
    expect(await row()).toEqual(kept)
    return kept.on_whom
  }
  const state = async () =>
    (await store().db.selectFrom('laid_out').select('state').executeTakeFirst())?.state ?? null
  const mails = async () =>
    (
      await store()
        .db.selectFrom('mail')
        .select(['template', 'body'])
        .orderBy('queued_at')
        .execute()
    ).filter(({ template }) => template.startsWith('laid'))
  const tooEarly = code('move_too_early', { guard: 'quilt_seen' })

  beforeEach(async () => {
    const shirt = { kind: said('button-shirt'), size: said('L'), wear: said('sound') }
    await confirmPile(workshop.conversation, [
      { ...shirt, name: said('Dad’s blue flannel') },
      shirt,
    ])
    pileId = (await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()).id
    ana = await addStaff(store().db, 'Ana')
    const deciding = { verdict: 'accept', reason: '', who: ana, seen: 0 } as const
    await decidePile(store(), clock, pileId, deciding)
    await openCustody({ store: store(), clock }, pileId, ana)
    await atTheDoor(store(), pileId, ana)
    for (const n of [1, 2]) {
      await go('receive', n)
      await go('hold', n)
      await go('tear-down', n)
      await releaseCut(store(), pileId, n)
    }
    await go('cut', 1)
  })

  test('it is shown with photos of what lies cut, once, and the customer is asked by mail', async () => {
    await expect(lay({ photos: [] })).rejects.toEqual(code('form_incomplete', { field: 'photo' }))
    const many = await Promise.all(Array.from({ length: mostLaidPhotos + 1 }, photo))
    await expect(lay({ photos: many })).rejects.toEqual(code('too_many_photos', { most: 6 }))
    await expect(lay({ photos: ['of-nobody'] })).rejects.toEqual(code('not_found'))
    await expect(lay({ seen: 7 })).rejects.toEqual(code('decided_meanwhile'))
    expect(await state()).toBeNull()
    const idem = once()
    await lay({ idem })
    await lay({ idem })
    expect(
      (await recordsOf(store().db, pileId)).filter(({ kind }) => kind === 'laid'),
    ).toHaveLength(1)
    expect(await state()).toBe('asked')
    expect(await waits()).toBe('customer')
    const [mail, ...others] = await mails()
    expect(others).toEqual([])
    expect(mail!.body).toContain('The blue ones frame it.')
    expect([...(await laidOutOf(store().db, pileId)).laid!.cuts.keys()]).toEqual([1])
  })

  test('nothing is sewn before the customer said yes, and then what was shown alone', async () => {
    await expect(go('sew', 1)).rejects.toEqual(tooEarly)
    await lay()
    await expect(go('sew', 1)).rejects.toEqual(tooEarly)
    await says('yes')
    await says('yes')
    expect((await recordsOf(store().db, pileId)).filter(({ kind }) => kind === 'yes')).toHaveLength(
      1,
    )
    expect(await waits()).toBe('nobody')
    expect((await mails()).map(({ template }) => template)).toEqual(['laid_out', 'laid_yes'])
    await go('cut', 2)
    expect(await state()).toBe('anew')
    expect(await waits()).toBe('us')
    for (const n of [1, 2]) await expect(go('sew', n)).rejects.toEqual(tooEarly)
    await expect(says('yes')).rejects.toEqual(code('laid_anew'))
    await lay()
    await says('yes')
    for (const n of [1, 2]) await go('sew', n)
  })

  test('a wish makes it wait on us until it is laid out once more; an older page answers nothing', async () => {
    await lay()
    const first = await of()
    await expect(says('change', { note: ' ' })).rejects.toEqual(code('empty_answer'))
    await says('change')
    expect([await state(), await waits()]).toEqual(['change', 'us'])
    await expect(go('sew', 1)).rejects.toEqual(tooEarly)
    await lay({ note: '' })
    expect([await state(), await waits()]).toEqual(['asked', 'customer'])
    for (const kind of ['yes', 'change'] as const) {
      await expect(says(kind, { of: first })).rejects.toEqual(code('laid_anew'))
    }
    await says('yes')
    // They may still think otherwise, as long as nothing of it is sewn.
    await says('change')
    await expect(go('sew', 1)).rejects.toEqual(tooEarly)
    await says('yes')
    await go('sew', 1)
    await expect(says('change')).rejects.toEqual(code('sewing_begun'))
  })

  test('another plan, a piece that is missing or cut again asks anew', async () => {
    await go('cut', 2)
    const change = (kind: 'role' | 'lay' | 'spot', undo: readonly string[] = []): Promise<void> =>
      changeMarks(at(), pileId, ana, () => ({
        undo,
        add: undo.length > 0 ? [] : [{ kind, garment: 1, body: { of: 'this test' } }],
      }))
    await lay()
    await says('yes')
    expect(await state()).toBe('yes')
    // A hole that is marked on a photo moves no piece that is cut.
    await change('spot')
    expect(await state()).toBe('yes')
    await change('role')
    expect(await state()).toBe('anew')
    await expect(go('sew', 1)).rejects.toEqual(tooEarly)
    const { id } = await store()
      .db.selectFrom('plan_mark')
      .select('id')
      .where('kind', '=', 'role')
      .executeTakeFirstOrThrow()
    await change('role', [id])
    expect(await state()).toBe('yes')
    await step(store(), pileId, { subject: '2', move: 'miss', who: ana })
    expect(await state()).toBe('anew')
    await expect(go('sew', 1)).rejects.toEqual(tooEarly)
    await step(store(), pileId, { subject: '2', move: 'turn-up', who: ana })
    expect(await state()).toBe('yes')
    const { seq } = await store()
      .db.selectFrom('custody_move')
      .select(({ fn }) => fn.max('seq').as('seq'))
      .where('subject', '=', '2')
      .executeTakeFirstOrThrow()
    const undo = { subject: '2', note: 'it never was away', who: ana }
    await undoMove(at(), pileId, { ...undo, seen: Number(seq), idem: once() })
    await undoMove(at(), pileId, { ...undo, seen: Number(seq) + 1, idem: once() })
    await undoMove(at(), pileId, { ...undo, seen: Number(seq) + 2, idem: once() })
    expect(await state()).toBe('anew')
    await go('cut', 2)
    expect(await state()).toBe('anew')
    await expect(go('sew', 2)).rejects.toEqual(tooEarly)
  })

  test('a yes on the phone is written down with who and when, and told to the customer', async () => {
    await lay()
    await expect(phone({ by: ' ' })).rejects.toEqual(code('empty_answer'))
    const day = 24 * 60 * 60 * 1000
    for (const wrong of [null, clock() - 3 * day, clock() + 3 * day]) {
      await expect(phone({ day: wrong })).rejects.toEqual(code('said_day_wrong'))
    }
    await expect(phone({ of: 99 })).rejects.toEqual(code('laid_anew'))
    await phone({ note: 'called back at noon' })
    const { answer } = await laidOutOf(store().db, pileId)
    expect(answer).toMatchObject({ kind: 'yes', phone: { by: 'Ana Ruiz', day: clock() } })
    expect(answer!.who?.id).toBe(ana)
    expect((await mails()).at(-1)!.body).toContain('Ana Ruiz said yes on the phone')
    await expect(phone()).rejects.toEqual(code('record_not_now'))
    await go('sew', 1)
  })

  test('what rests on nothing is taken back; what the customer said is theirs', async () => {
    await lay()
    const laid = await of()
    await phone()
    await expect(back(laid)).rejects.toEqual(code('undo_not_now'))
    await back(await seen())
    expect(await state()).toBe('asked')
    await back(laid)
    expect([await state(), await waits()]).toEqual([null, 'nobody'])
    await lay()
    await says('yes')
    await expect(back(await seen())).rejects.toEqual(code('undo_not_now'))
    await lay()
    await phone()
    await go('sew', 1)
    await expect(back(await seen())).rejects.toEqual(code('undo_not_now'))
  })
})
