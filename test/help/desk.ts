import { newId } from '../../src/base/ids.ts'
import { refreshWaiting } from '../../src/intake/waiting.ts'
import type { Db, PileStatus } from '../../src/store/schema.ts'
import { addPile } from './rows.ts'

export interface QueuedRow {
  readonly number: number
  readonly status?: PileStatus
  readonly confirmedAt?: number
  readonly needBy?: number | null
  readonly who?: string
  /** Grades of its garments, numbered from 1. */
  readonly grades?: readonly string[]
  /** Names of the same garments. */
  readonly names?: readonly string[]
}

/** A pile as the conversation leaves it for the desk: its row, where it stands, and its garments. */
export async function queuePile(db: Db, given: QueuedRow): Promise<string> {
  const { number, status = 'confirmed', grades = ['sound'], confirmedAt = number } = given
  const id = await addPile(db, {
    id: `pile-${number}`,
    number,
    status,
    confirmed_at: status === 'open' ? null : confirmedAt,
  })
  await db
    .insertInto('standing')
    .values({
      pile_id: id,
      seq: 0,
      place: '{}',
      tally: '{}',
      summary: JSON.stringify({ layout: 'plain-squares', size: 'throw', quilts: 1 }),
      garments: grades.length,
      needs_eyes: grades.filter((grade) => grade === 'eyes' || grade === 'home').length,
      contact_name: given.who ?? 'Ana',
      need_by: given.needBy ?? null,
    })
    .execute()
  for (const [i, grade] of grades.entries()) {
    await db
      .insertInto('garment')
      .values({
        pile_id: id,
        item: i + 1,
        tag: `A2-${i + 1}`,
        name: given.names?.[i] ?? '',
        kind: 'tshirt',
        grade,
        flags: '[]',
        facts: '{}',
        dropped: 0,
      })
      .execute()
  }
  await refreshWaiting(db, id)
  return id
}

export async function askPerson(db: Db, pileId: string, item = 0): Promise<string> {
  const id = newId()
  await db
    .insertInto('note')
    .values({
      id,
      pile_id: pileId,
      item,
      question: 'stretch',
      text: 'Is this one too thin?',
      at: 5,
      settled_at: null,
      settled_by: null,
    })
    .execute()
  await refreshWaiting(db, pileId)
  return id
}

export async function addStaff(db: Db, name = 'Marta'): Promise<string> {
  const id = newId()
  await db
    .insertInto('account')
    .values({
      id,
      email: `${id.toLowerCase()}@lantern-street.example`,
      name,
      role: 'staff',
      password_hash: 'none',
      made_at: 1,
      disabled_at: null,
    })
    .execute()
  return id
}
