import type { Clock } from '../base/clock.ts'
import type { LabelValue } from '../flow/grammar.ts'
import { cleanText } from '../flow/text.ts'
import type { PhotoStore } from '../photo/keep.ts'
import { isClear, type LabelReader, type LabelWords } from '../photo/label-words.ts'
import type { Db } from '../store/schema.ts'
import { withoutSlips } from '../textile/label/slips.ts'
import { readLines, surely } from '../textile/label-lines.ts'
import type { LabelReading } from '../textile/reading.ts'
import { draftsOf, type PhotoPlace, receivedFor } from './photos.ts'

/** The photo of a garment's label. */
export interface LabelPhoto {
  readonly id: string
  readonly hash: string
  /** What was read on it; null: nobody tried, or the trying failed. */
  readonly seen: LabelWords | null
}

/** The photo that stands for a label: the newest received, else the one that was `answered`. */
export const labelPhotoOf = async (
  db: Db,
  place: PhotoPlace,
  answered: string | undefined,
): Promise<LabelPhoto | null> =>
  photoOfLabel(db, place, (await draftsOf(db, place)).at(-1) ?? answered)

/** One of them, while it is there. */
export async function photoOfLabel(
  db: Db,
  { pileId }: PhotoPlace,
  id: string | undefined,
): Promise<LabelPhoto | null> {
  if (id === undefined) return null
  const row = await db
    .selectFrom('photo')
    .select(['id', 'hash', 'label'])
    .where('pile_id', '=', pileId)
    .where('id', '=', id)
    .where('removed_at', 'is', null)
    .executeTakeFirst()
  if (!row) return null
  const seen = row.label === null ? null : (JSON.parse(row.label) as LabelWords)
  return { id: row.id, hash: row.hash, seen }
}

interface Reading {
  readonly seen: LabelWords
  /** How long it took. */
  readonly ms: number
}

/** Reads a label's photo and keeps what was read beside it. Throws what the reader and the stores throw. */
export async function readLabelPhoto(
  { db, photos, labels, clock }: { db: Db; photos: PhotoStore; labels: LabelReader; clock: Clock },
  { id, hash }: Pick<LabelPhoto, 'id' | 'hash'>,
): Promise<Reading> {
  const jpeg = await photos.open(hash, 'full')
  const began = clock()
  const seen = await labels.read(jpeg)
  const ms = clock() - began
  await db
    .updateTable('photo')
    .set({ label: JSON.stringify(seen) })
    .where('id', '=', id)
    .execute()
  return { seen, ms }
}

/**
 * The words that were read, a line each, as an answer would hold them: what is read from them is what `judge` says.
 * What goes past `longest` is left out.
 */
export const wordsSeen = ({ lines }: LabelWords, longest: number): string =>
  wordsOf(readLines(lines), longest)

function wordsOf({ text }: LabelReading, longest: number): string {
  const words = cleanText(text.join('\n'))
  return cleanText([...words].slice(0, longest).join(''))
}

export interface Judged {
  readonly words: string
  /** What the words say. */
  readonly reading: LabelReading
  /** `none`: there are no words to look at. */
  readonly verdict: 'sure' | 'unsure' | 'none'
  /** Lines whose letters were hard to see. */
  readonly doubted: readonly string[]
}

/** How far what was read on a photo may be believed. */
export function judge(seen: LabelWords, longest: number): Judged {
  const reading = readLines(seen.lines, { isClear: isClear(seen) })
  const words = wordsOf(reading, longest)
  const doubted = seen.lines
    .filter(({ text, sure }) => text.trim() !== '' && sure < surely)
    .map(({ text }) => withoutSlips(text))
  const verdict = words === '' ? 'none' : reading.sure ? 'sure' : 'unsure'
  return { words, reading, verdict, doubted }
}

/** Words of what was `answered` before that were read with doubt. */
export const doubtedBefore = (answered: LabelValue | undefined): string[] =>
  answered?.doubted ? [answered.words] : []

/**
 * Words that were read on a label's photos with doubt, and surely on none of them. Photos that were taken
 * away count: their words may still stand in the field, or in what was `answered` before.
 */
export async function doubtedWords(
  db: Db,
  place: PhotoPlace,
  answered: LabelValue | undefined,
  longest: number,
): Promise<string[]> {
  const rows = await receivedFor(db, place).select('label').where('label', 'is not', null).execute()
  const judged = rows.map(({ label }) => judge(JSON.parse(label!) as LabelWords, longest))
  const readAs = (wanted: Judged['verdict']) =>
    judged.filter(({ verdict }) => verdict === wanted).map(({ words }) => words)
  const sure = readAs('sure')
  return [...readAs('unsure'), ...doubtedBefore(answered)].filter((words) => !sure.includes(words))
}
