import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import type { State } from '../custody/states.ts'
import type { PressPlan } from '../garment/press.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Db, PileRow } from '../store/schema.ts'
import type { StandingRecord } from './bench-records.ts'
import { planMarksOf } from './plan-marks.ts'
import {
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

export const peels = ['holds', 'lifts'] as const
export const looks = ['fine', 'glazed', 'shrunk', 'struck-through', 'colour-moved'] as const
export const testResults = ['passed', 'failed'] as const

/** What an iron's sole and a hand's patience come to: °C and seconds. */
export const testLimits = { leastC: 40, mostC: 260, leastS: 1, mostS: 300 } as const

/** A test of an interfacing on an offcut, as a page sends it. */
export interface Testing extends Recording {
  readonly lot: string
  readonly interfacing: string
  /** As it was typed: °C of the sole, and seconds. */
  readonly sole: string
  readonly seconds: string
  readonly peel: string
  readonly look: string
  readonly result: string
}

const body = z.object({
  lot: z.string(),
  interfacing: z.string(),
  soleC: z.number(),
  seconds: z.number(),
  peel: z.enum(peels),
  look: z.enum(looks),
  result: z.enum(testResults),
  facts: z.array(z.string()),
})

export type TestRecord = z.infer<typeof body>

export const readTest = (record: Pick<StandingRecord, 'body'>): TestRecord =>
  body.parse(record.body)

/** An offcut is there once the garment was taken apart. */
const withOffcut: readonly State[] = ['torn-down', 'stabilised']

function whole(raw: string, least: number, most: number): number {
  const typed = raw.trim()
  if (!/^\d{1,6}$/.test(typed)) throw new Failure('not_a_number')
  const value = Number(typed)
  if (value < least || value > most) {
    throw new Failure('number_out_of_range', { min: least, max: most })
  }
  return value
}

function oneOf<T extends string>(options: readonly T[], sent: string): T {
  const found = options.find((one) => one === sent)
  if (!found) throw new Failure('answer_not_offered')
  return found
}

/** The press plan of a garment as everything is known; null: it is not graded, or not there. */
export async function pressOf(
  db: Db,
  knowledge: Knowledge,
  row: PileRow,
  item: number,
): Promise<PressPlan | null> {
  const pile = await pileAsKnown(db, knowledge, row, await planMarksOf(db, row.id))
  return pile.garments.find(({ n }) => n === item)?.grading?.press ?? null
}

/** Throws `test_too_hot` {ceiling}, 0 where no iron may touch the cloth. */
function requireCool(soleC: number, press: PressPlan | null): void {
  const ceiling = press?.ceilingC ?? 0
  if (soleC > ceiling) throw new Failure('test_too_hot', { ceiling })
}

/**
 * Keeps a press test on an offcut of the garment; the newest that stands says whether that garment may be fused.
 * Throws `record_not_now`, `empty_answer`, `answer_too_long` {longest}, `not_a_number`, `number_out_of_range`
 * {min, max}, `answer_not_offered`, `test_too_hot` {ceiling}, `test_not_passed`, and what `onBook` throws.
 */
export const logTest = (at: RecordAt, pileId: string, testing: Testing): Promise<void> =>
  onBook(at, pileId, testing, async (book) => {
    const { item, photo, idem, who } = testing
    requireState(book, withOffcut)
    const { leastC, mostC, leastS, mostS } = testLimits
    const classes = at.knowledge.grading.interfacings.map((one) => one.class)
    const told = {
      lot: readWords(testing.lot, longestRecordLine),
      interfacing: oneOf(classes, testing.interfacing),
      soleC: whole(testing.sole, leastC, mostC),
      seconds: whole(testing.seconds, leastS, mostS),
      peel: oneOf(peels, testing.peel),
      look: oneOf(looks, testing.look),
      result: oneOf(testResults, testing.result),
    }
    const { db, row } = book.ledger
    requireCool(told.soleC, await pressOf(db, at.knowledge, row, item))
    const sound = told.peel === 'holds' && told.look === 'fine'
    if (told.result === 'passed' && !sound) throw new Failure('test_not_passed')
    const reason = `${told.interfacing} ${told.lot}: ${told.soleC} °C, ${told.seconds} s`
    const facts = await setAsFound(book, { item, facts: { test: told.result }, reason, who })
    const note = readNote(testing.note)
    await write(book, { item, kind: 'test', body: { ...told, facts }, note, photo, idem, who })
  })
