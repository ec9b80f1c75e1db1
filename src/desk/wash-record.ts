import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import type { State } from '../custody/states.ts'
import { type Grade, grades } from '../garment/grade.ts'
import { type Method, methods } from '../garment/press.ts'
import type { StandingRecord } from './bench-records.ts'
import { planMarksOf } from './plan-marks.ts'
import {
  type Book,
  longestRecordLine,
  onBook,
  type RecordAt,
  type Recording,
  readNote,
  readWords,
  requireState,
  setAsFound,
  write,
} from './recording.ts'
import { pileAsKnown } from './spots.ts'

/** What water did to its colours; `unseen`: nobody looked. */
export const bled = ['fast', 'bleeds', 'unseen'] as const
export const shrunk = ['no', 'yes'] as const

/** °C of a wash. */
export const washLimits = { mostC: 95 } as const

/** A wash with what was measured after it, as a page sends it. */
export interface Washing extends Recording {
  readonly how: string
  /** As it was typed, °C; empty: not known. */
  readonly celsius: string
  readonly bled: string
  readonly shrunk: string
  /** As it measures now; empty: as before. */
  readonly size: string
}

const stood = z.object({
  grade: z.enum(grades).nullable(),
  press: z.enum(methods).nullable(),
})

const body = z.object({
  how: z.string(),
  celsius: z.number().nullable(),
  bled: z.enum(bled),
  shrunk: z.enum(shrunk),
  size: z.string(),
  facts: z.array(z.string()),
  before: stood,
  after: stood,
})

export type WashRecord = z.infer<typeof body>

export const readWash = (record: Pick<StandingRecord, 'body'>): WashRecord =>
  body.parse(record.body)

const whole: readonly State[] = ['held', 'torn-down', 'stabilised']

function celsiusOf(raw: string): number | null {
  const typed = raw.trim()
  if (typed === '') return null
  if (!/^\d{1,3}$/.test(typed)) throw new Failure('not_a_number')
  if (Number(typed) > washLimits.mostC) {
    throw new Failure('number_out_of_range', { min: 0, max: washLimits.mostC })
  }
  return Number(typed)
}

async function standsNow(
  { at, ledger: { db, row } }: Book,
  item: number,
): Promise<{ grade: Grade | null; press: Method | null }> {
  const pile = await pileAsKnown(db, at.knowledge, row, await planMarksOf(db, row.id))
  const grading = pile.garments.find(({ n }) => n === item)?.grading
  return { grade: grading?.grade ?? null, press: grading?.press.method ?? null }
}

/**
 * Keeps how a garment was washed and what came of it; its facts follow, and what that made of grade and pressing is
 * kept beside it. Throws `record_not_now`, `empty_answer`, `answer_too_long` {longest}, `not_a_number`,
 * `number_out_of_range` {min, max}, `answer_not_offered`, `size_missing`, and what `onBook` throws.
 */
export const logWash = (at: RecordAt, pileId: string, washing: Washing): Promise<void> =>
  onBook(at, pileId, washing, async (book) => {
    const { item, photo, idem, who, size } = washing
    requireState(book, whole)
    const how = readWords(washing.how, longestRecordLine)
    const celsius = celsiusOf(washing.celsius)
    const told = {
      bled: bled.find((one) => one === washing.bled),
      shrunk: shrunk.find((one) => one === washing.shrunk),
    }
    if (!told.bled || !told.shrunk) throw new Failure('answer_not_offered')
    if (told.shrunk === 'yes' && size === '') throw new Failure('size_missing')
    const facts = {
      wash: 'washed',
      ...(told.bled !== 'unseen' && { bleed: told.bled }),
      ...(size !== '' && { size }),
    }
    const before = await standsNow(book, item)
    const set = await setAsFound(book, { item, facts, reason: how, who })
    const after = await standsNow(book, item)
    await write(book, {
      item,
      kind: 'wash',
      body: { how, celsius, ...told, size, facts: set, before, after },
      note: readNote(washing.note),
      photo,
      idem,
      who,
    })
  })
