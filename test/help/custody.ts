import { newId } from '../../src/base/ids.ts'
import { cutsOf } from '../../src/custody/laid-out.ts'
import { appendRecord } from '../../src/desk/bench-records.ts'
import { entriesOfPile } from '../../src/desk/custody-entries.ts'
import { decideGarment, decidePile } from '../../src/desk/decisions.ts'
import { planSign, projectLaidOut } from '../../src/desk/laid-out.ts'
import { openCustody } from '../../src/desk/ledger.ts'
import { type Moving, moveSubject } from '../../src/desk/moving.ts'
import { arriveUnannounced } from '../../src/desk/parcels.ts'
import type { Store } from '../../src/store/open.ts'
import { addStaff, queuePile } from './desk.ts'

export const clock = () => Date.UTC(2026, 5, 1, 9)
export const shop = { parcel_days: 7, parcel_overdue_days: 3 }
export const tell = (found: readonly string[]) => found.join(', ')

/** An accepted pile of so many garments, and who works on it. */
export async function acceptedPile(
  store: Store,
  { number = 1, garments = 2, declined = [] as readonly number[] } = {},
): Promise<{ readonly pileId: string; readonly who: string }> {
  const pileId = await queuePile(store.db, { number, grades: Array(garments).fill('sound') })
  const who = await addStaff(store.db)
  const deciding = { reason: 'too worn to cut', who, seen: 0 }
  for (const item of declined) {
    await decideGarment(store, clock, pileId, item, { ...deciding, verdict: 'decline' })
  }
  const { at: seen } = (await store.db
    .selectFrom('decision')
    .select('at')
    .where('pile_id', '=', pileId)
    .orderBy('at', 'desc')
    .executeTakeFirst()) ?? { at: 0 }
  await decidePile(store, clock, pileId, { verdict: 'accept', reason: '', who, seen })
  await openCustody({ store, clock }, pileId, who)
  return { pileId, who }
}

let made = 0
export function once(): string {
  made += 1
  return `key-${made}`
}

/** A parcel that somebody brings to the door, dry and clean unless told otherwise. */
export const atTheDoor = (
  store: Store,
  pileId: string,
  who: string,
  condition: readonly string[] = ['fine'],
): Promise<void> =>
  arriveUnannounced(
    { store, clock },
    shop,
    pileId,
    {
      carrier: 'by hand',
      tracking: '',
      insured: null,
      postedAt: null,
      expectedAt: null,
      who,
      idem: once(),
    },
    { condition, place: 'receiving table', note: '', tell, who },
  )

/** Moves a subject as somebody does who has just looked. */
export async function step(
  store: Store,
  pileId: string,
  moving: Pick<Moving, 'subject' | 'move'> & Partial<Moving> & { readonly who: string },
): Promise<void> {
  const last = await store.db
    .selectFrom('custody_move')
    .select('seq')
    .where('pile_id', '=', pileId)
    .where('subject', '=', moving.subject)
    .orderBy('seq', 'desc')
    .executeTakeFirst()
  await moveSubject({ store, clock }, pileId, {
    place: 'shelf 1',
    note: 'because it is so',
    photo: null,
    via: null,
    seen: last?.seq ?? 0,
    idem: once(),
    ...moving,
  })
}

/** A photo of a garment of a pile, as a form of the workshop or the customer leaves it. */
export async function keepPhotoOf(
  store: Store,
  pileId: string,
  item: number,
  question = 'photos',
): Promise<string> {
  const id = newId()
  await store.db
    .insertInto('photo')
    .values({
      id,
      pile_id: pileId,
      item,
      question,
      hash: 'none',
      width: 1,
      height: 1,
      bytes: 1,
      cloth: null,
      label: null,
      look: null,
      shows: null,
      kept: 1,
      at: 1,
      removed_at: null,
    })
    .execute()
  return id
}

/** What the customer said of cutting a garment, as the grading keeps it. */
export const tellConsent = async (
  store: Store,
  pileId: string,
  item: number,
  consent = 'yes',
): Promise<void> => {
  await store.db
    .updateTable('garment')
    .set({ facts: JSON.stringify({ consent }) })
    .where('pile_id', '=', pileId)
    .where('item', '=', item)
    .execute()
}

/** Two people let a garment be cut, whose photo and consent are there. */
export async function releaseCut(store: Store, pileId: string, item: number): Promise<void> {
  await keepPhotoOf(store, pileId, item)
  await tellConsent(store, pileId, item)
  for (const kind of ['ask', 'release'] as const) {
    const who = await addStaff(store.db, kind)
    const record = { item, kind, body: {}, note: '', idem: once(), who }
    await appendRecord(store.db, pileId, record, clock())
  }
}

/** All that lies cut is laid out, and its customer says yes to it. */
export async function agreeLaidOut(store: Store, pileId: string): Promise<void> {
  const photo = await keepPhotoOf(store, pileId, 0, 'laid-out')
  const cuts = [...cutsOf(await entriesOfPile(store.db, pileId))]
  const body = { photos: [photo], cuts, plan: await planSign(store.db, pileId) }
  const common = { item: 0, note: '', photo, who: await addStaff(store.db, 'Lena') }
  const laid = { ...common, kind: 'laid', body, idem: once() } as const
  const of = await appendRecord(store.db, pileId, laid, clock())
  const yes = { kind: 'yes', body: { of, phone: null }, idem: once(), who: null } as const
  await appendRecord(store.db, pileId, { ...common, ...yes }, clock())
  await projectLaidOut(store.db, pileId)
}
