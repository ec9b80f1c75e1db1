import type { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { cutLacks } from '../../custody/guards.ts'
import { subjectCode } from '../../custody/subject.ts'
import type { BenchRecord } from '../../desk/bench-records.ts'
import { readFoundThing } from '../../desk/found-things.ts'
import type { GarmentRecords } from '../../desk/garment-records.ts'
import { readTest } from '../../desk/test-log.ts'
import { readWash } from '../../desk/wash-record.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { failureSentence } from '../errors.ts'
import { custodyPaths } from './custody-paths.ts'
import { atWords, byWords } from './custody-words.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'
import { formsFor, sizeWords } from './present-record-forms.ts'
import type { RecordForm, RecordLine, RecordPage, RecordSection } from './view-record.ts'

export interface RecordReader {
  readonly language: Language
  /** The one the pile's customer reads. */
  readonly customer: Language
  readonly csrf: string
  /** The account's id. */
  readonly who: string
  /** May decide of incidents and write to the customer. */
  readonly staff: boolean
  readonly places: readonly string[]
  readonly refused: Failure | null
  /** What was sent in a field; empty: nothing. */
  readonly typed: (field: string) => string
}

/** What a test came to: "light interfacing, lot 12: 120 °C, 12 s; cold peel: holds; fine: passed". */
function testWords(record: BenchRecord, { say }: Language): string {
  const { lot, interfacing, soleC, seconds, peel, look, result } = readTest(record)
  return say('records.tested', {
    interfacing: say(`trade.interfacing.${interfacing}`),
    lot,
    celsius: soleC,
    seconds,
    peel: say(`records.peels.${peel}`),
    look: say(`records.looks.${look}`),
    result: say(`records.results.${result}`),
  })
}

function washWords(record: BenchRecord, language: Language): string {
  const { say } = language
  const { how, celsius, bled, shrunk, size, before, after } = readWash(record)
  const grade = (one: typeof before.grade) => say(one ? `grades.${one}` : 'records.no_grade')
  const press = (one: typeof before.press) => say(one ? `trade.press.${one}` : 'records.no_grade')
  return [
    celsius === null ? how : say('records.washed_at', { how, celsius }),
    say(`records.bled.${bled}`),
    say(`records.shrunk.${shrunk}`),
    ...(size ? [say('records.measures', { size: sizeWords(size, language) })] : []),
    before.grade === after.grade
      ? say('records.grade_same', { grade: grade(after.grade) })
      : say('records.grade_new', { before: grade(before.grade), after: grade(after.grade) }),
    ...(before.press === after.press
      ? []
      : [say('records.press_new', { before: press(before.press), after: press(after.press) })]),
  ].join(' · ')
}

function whatWords(record: BenchRecord, number: number, language: Language): string {
  const { kind } = record
  if (kind === 'test') return testWords(record, language)
  if (kind === 'wash') return washWords(record, language)
  if (kind === 'found') {
    const { subject, where } = readFoundThing(record)
    return language.say('records.found_line', { code: subjectCode(number, subject), where })
  }
  return language.say(`records.kinds.${kind}`)
}

/** Who took an entry back, and why. */
export function undoneWords(
  records: readonly BenchRecord[],
  seq: number,
  language: Language,
): string {
  const { who, at, note } = records.find(({ undoes }) => undoes === seq)!
  return language.say('records.taken_back', {
    by: byWords(who?.name ?? null, at, language),
    why: note,
  })
}

function line(
  record: BenchRecord,
  { row: { number }, records, stand, undoable }: GarmentRecords,
  undo: (seq: number) => RecordForm,
  language: Language,
): RecordLine {
  const { seq, who, at, note, photo } = record
  return {
    seq,
    what: whatWords(record, number, language),
    by: byWords(who?.name ?? null, at, language),
    note,
    undone: stand.has(seq) ? null : undoneWords(records, seq, language),
    photos:
      photo === null
        ? []
        : [
            {
              id: photo,
              thumb: deskPaths.photo(number, photo, 'thumb'),
              view: deskPaths.photo(number, photo, 'view'),
              alt: language.say('custody.subject.entry', { seq }),
            },
          ],
    undo: undoable.has(seq) ? undo(seq) : null,
  }
}

/** The sections with the kinds of entries that each holds, in the order of the work. */
const sectionKinds = {
  stop: ['incident', 'settled'],
  release: ['ask', 'release'],
  test: ['test'],
  found: ['found'],
  wash: ['wash'],
} as const satisfies Record<string, readonly BenchRecord['kind'][]>

type SectionName = keyof typeof sectionKinds

function formsIn(
  name: SectionName,
  found: GarmentRecords,
  reader: RecordReader,
): readonly RecordForm[] {
  const forms = formsFor(found, reader)
  const { state } = found.standing
  const { asked, released } = found.release
  const looked = ['held', 'torn-down', 'stabilised'].includes(state)
  switch (name) {
    case 'stop':
      return [
        forms.incident(),
        ...(found.open.length > 0 && reader.staff
          ? [forms.tell(nameOf(found.garment, readerAt(reader.customer))), forms.settle()]
          : []),
      ]
    case 'release':
      return [
        ...(found.lacks.includes('photo') ? [forms.picture()] : []),
        ...(looked && !asked ? [forms.ask()] : []),
        ...(looked && asked && !released && asked.who !== reader.who ? [forms.release()] : []),
      ]
    case 'test':
      return ['torn-down', 'stabilised'].includes(state) ? [forms.test()] : []
    case 'found':
      return found.standing.place === null || !looked ? [] : [forms.found()]
    case 'wash':
      return looked ? [forms.wash()] : []
  }
}

function closedWords(
  name: SectionName,
  forms: readonly RecordForm[],
  { release: { asked, released } }: GarmentRecords,
  { language: { say }, who }: RecordReader,
): string | null {
  if (name === 'release' && released) return say('records.is_released')
  if (name === 'release' && asked?.who === who) return say('records.by_another')
  return forms.length > 0 ? null : say(`records.closed.${name}`)
}

function section(name: SectionName, found: GarmentRecords, reader: RecordReader): RecordSection {
  const { language } = reader
  const { say } = language
  const kinds: readonly BenchRecord['kind'][] = sectionKinds[name]
  const { undo } = formsFor(found, reader)
  const forms = formsIn(name, found, reader)
  const press = found.garment.grading?.press
  const ceiling = press?.ceilingC ?? null
  return {
    id: name,
    title: say(`records.titles.${name}`),
    lead:
      name === 'test'
        ? `${say('records.leads.test')} ${
            ceiling === null ? say('records.no_iron') : say('records.ceiling', { celsius: ceiling })
          }`
        : say(`records.leads.${name}`),
    checks:
      name === 'release'
        ? cutLacks.map((one) => ({
            label: say(`records.checks.${one}`),
            done: !found.lacks.includes(one),
          }))
        : [],
    lines: found.records
      .filter(({ kind }) => kinds.includes(kind))
      .map((record) => line(record, found, undo, language)),
    forms,
    closed: closedWords(name, forms, found, reader),
  }
}

export function recordPage(found: GarmentRecords, reader: RecordReader): RecordPage {
  const { language, refused, csrf } = reader
  const { say } = language
  const { row, garment, standing } = found
  const code = subjectCode(row.number, String(garment.n))
  const names: readonly SectionName[] = ['stop', 'release', 'test', 'found', 'wash']
  // What stops it stands on top; else what happened rarely stands last.
  const ordered = found.open.length > 0 ? names : [...names.slice(1), 'stop' as const]
  return {
    page: 'record',
    title: say('records.title', { code }),
    code,
    name: nameOf(garment, readerAt(language)),
    at: atWords(standing.state, standing.place, language),
    stopped: found.open.length > 0 ? say('records.stopped') : null,
    links: [
      {
        label: say('records.custody'),
        href: custodyPaths.subject(row.number, String(garment.n)),
      },
      { label: say('printed.sheets.bench'), href: deskPaths.benchSheet(row.number, garment.n) },
      { label: say('bench.open'), href: deskPaths.teardown(row.number, garment.n) },
      ...(reader.staff
        ? [
            { label: say('records.at_desk'), href: deskPaths.garment(row.number, garment.n) },
            { label: say('records.plan'), href: deskPaths.plan(row.number) },
          ]
        : []),
    ],
    places: reader.places,
    refused: refused && failureSentence(refused, language),
    hidden: { csrf, idem: newId(), seen: String(found.newest) },
    sections: ordered.map((name) => section(name, found, reader)),
  }
}
