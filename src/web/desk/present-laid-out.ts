import type { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { subjectCode } from '../../custody/subject.ts'
import { type BenchRecord, standingRecords } from '../../desk/bench-records.ts'
import { garmentWords } from '../../desk/garment-words.ts'
import { type LaidAnswer, type Laying, readLaid } from '../../desk/laid-out.ts'
import type { LaidOutRecords } from '../../desk/laid-out-records.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import { custodyPaths } from './custody-paths.ts'
import { byWords, stateWords } from './custody-words.ts'
import { deskPaths } from './paths.ts'
import { dayOf } from './present-numbers.ts'
import { undoneWords } from './present-record.ts'
import type { LaidOutPage, RecordField, RecordForm, RecordLine } from './view-record.ts'
import { dayWords } from './when.ts'

export interface LaidOutReader {
  readonly language: Language
  readonly csrf: string
  /** May write down what a customer said on the phone, and knows who they are. */
  readonly staff: boolean
  readonly now: number
  readonly refused: Failure | null
  /** What was sent in a field; empty: nothing. */
  readonly typed: (field: string) => string
}

function standingOf({ now }: LaidOutRecords, { say, locale }: Language): LaidOutPage['standing'] {
  const asks = now.state === 'change' || now.state === 'anew'
  return {
    text: say(`laid_out.desk.stands.${now.state ?? 'none'}`, { day: dayWords(now.since, locale) }),
    asks,
  }
}

function saidWords(said: Laying | LaidAnswer, { language, staff }: LaidOutReader): string {
  const { say, locale } = language
  if (said.kind === 'laid') {
    const garments = new Intl.ListFormat(locale).format([...said.cuts.keys()].map(String))
    return say('laid_out.desk.laid', { count: said.cuts.size, garments })
  }
  if (!said.phone) return say(`laid_out.desk.said.${said.kind}`)
  const day = dayWords(said.phone.day, locale)
  return staff
    ? say('laid_out.desk.said.phone_by', { by: said.phone.by, day })
    : say('laid_out.desk.said.phone', { day })
}

function lineOf(
  record: BenchRecord,
  { row: { number }, records, stand, undoable }: LaidOutRecords,
  reader: LaidOutReader,
): RecordLine[] {
  const { language } = reader
  const [meant] = standingRecords([record])
  const said = meant && readLaid(meant)
  if (!said) return []
  const { seq, who, at, note } = record
  return [
    {
      seq,
      what: saidWords(said, reader),
      by: byWords(who?.name ?? null, at, language),
      note,
      undone: stand.has(seq) ? null : undoneWords(records, seq, language),
      photos: (said.kind === 'laid' ? said.photos : []).map((id, n) => ({
        id,
        thumb: deskPaths.photo(number, id, 'thumb'),
        view: deskPaths.photo(number, id, 'view'),
        alt: language.say('laid_out.photo', { n: n + 1 }),
      })),
      undo: undoable.has(seq) ? undoForm(seq, number, reader) : null,
    },
  ]
}

const sentAs = ({ refused, typed }: LaidOutReader, act: string, record = ''): boolean =>
  refused !== null && typed('act') === act && (record === '' || typed('record') === record)

const form = (
  act: string,
  reader: LaidOutReader,
  rest: Pick<RecordForm, 'postTo' | 'fields' | 'photo'>,
  record = '',
): RecordForm => ({
  act,
  label: reader.language.say(`laid_out.desk.acts.${act}`),
  cautions: [],
  open: sentAs(reader, act, record),
  ...rest,
})

function fieldsOf(act: string, reader: LaidOutReader) {
  const { language, typed } = reader
  return (
    name: string,
    kind: RecordField['kind'],
    { required = false, value = '' } = {},
  ): RecordField => ({
    name,
    label: language.say(`laid_out.desk.fields.${act}_${name}`),
    hint: null,
    kind,
    options: [],
    value: sentAs(reader, act) ? typed(name) : value,
    required,
  })
}

function undoForm(seq: number, number: number, reader: LaidOutReader): RecordForm {
  const field = fieldsOf('undo', reader)
  return form(
    'undo',
    reader,
    {
      postTo: custodyPaths.laidOut(number),
      fields: [field('note', 'words', { required: true })],
      photo: 'none',
    },
    String(seq),
  )
}

function formsOf({ row, now, garments }: LaidOutRecords, reader: LaidOutReader): RecordForm[] {
  const { number } = row
  const laid = fieldsOf('laid', reader)
  const phone = fieldsOf('phone', reader)
  const asked = now.laid !== null && now.current && now.state !== 'yes'
  return [
    ...(garments.some(({ state }) => state === 'cut')
      ? [
          form('laid', reader, {
            postTo: custodyPaths.laidOut(number),
            fields: [laid('note', 'words')],
            photo: 'several',
          }),
        ]
      : []),
    ...(asked && reader.staff
      ? [
          form('phone', reader, {
            postTo: custodyPaths.laidOutPhone(number),
            fields: [
              phone('by', 'line', { required: true }),
              phone('day', 'day', { required: true, value: dayOf(reader.now) }),
              phone('note', 'words'),
            ],
            photo: 'none',
          }),
        ]
      : []),
  ]
}

export function laidOutPage(found: LaidOutRecords, reader: LaidOutReader): LaidOutPage {
  const { row, now, records, garments, newest } = found
  const { language, staff, refused, csrf } = reader
  const { say } = language
  const forms = formsOf(found, reader)
  return {
    page: 'laid-out',
    title: say('laid_out.desk.title', { number: row.number }),
    links: [
      { label: say('custody.pile.link'), href: custodyPaths.pile(row.number) },
      { label: say('printed.sheets.tickets'), href: deskPaths.paper(row.number, 'tickets') },
      ...(staff
        ? [
            { label: say('custody.subject.review'), href: deskPaths.pile(row.number) },
            { label: say('records.plan'), href: deskPaths.plan(row.number) },
          ]
        : []),
    ],
    refused: refused && failureSentence(refused, language),
    hidden: {
      csrf,
      idem: newId(),
      seen: String(newest),
      of: String(now.laid?.seq ?? 0),
    },
    standing: standingOf(found, language),
    wish: now.state === 'change' ? now.answer!.note : null,
    section: {
      id: 'laid',
      title: say('laid_out.desk.heading'),
      lead: say('laid_out.desk.lead'),
      checks: garments.map((one) => ({
        label: say('laid_out.desk.garment', {
          code: subjectCode(row.number, String(one.item)),
          name: garmentWords(one, one.item, language),
          state: stateWords(one.state, language),
        }),
        done: one.cut,
      })),
      lines: records.flatMap((record) => lineOf(record, found, reader)),
      forms,
      closed: forms.length > 0 ? null : say('laid_out.desk.closed'),
    },
  }
}
