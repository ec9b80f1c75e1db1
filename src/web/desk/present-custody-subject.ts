import type { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import type { Offered } from '../../custody/admit.ts'
import { whereabouts } from '../../custody/states.ts'
import { subjectCode } from '../../custody/subject.ts'
import type { KeptEntry } from '../../desk/custody-entries.ts'
import type { SubjectAtDesk } from '../../desk/subject.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import { custodyPaths } from './custody-paths.ts'
import { atWords, byWords, entryWords, handlingWords, nameWords } from './custody-words.ts'
import { deskPaths } from './paths.ts'
import { conditionChoices } from './present-custody-pile.ts'
import type { Link } from './view.ts'
import type { HistoryLine, MoveForm, SubjectPage } from './view-custody.ts'
import { dayWords } from './when.ts'

export interface SubjectReader {
  readonly language: Language
  readonly csrf: string
  /** May see customers, and the pile at the desk. */
  readonly staff: boolean
  readonly places: readonly string[]
  readonly refused: Failure | null
  readonly typed: SubjectPage['typed']
}

function moveForm(
  { move, to }: Offered,
  { subject, standing, openParcels, row }: SubjectAtDesk,
  { say }: Language,
): MoveForm {
  const comes = whereabouts(subject.kind, to) === 'here'
  const knows = standing.place !== null
  const place = {
    label: say(knows ? 'custody.field.place_same' : 'custody.field.place'),
    required: !knows,
  }
  return {
    move: move.move,
    label: say(`custody.moves.${move.move}`),
    caution: move.caution ? say(`custody.cautions.${move.caution}`) : null,
    place: comes ? place : null,
    why: move.reason ?? false,
    parcels: move.guards.includes('parcel-open')
      ? openParcels.map((key) => ({ value: key, label: subjectCode(row.number, key) }))
      : [],
    conditions: subject.kind === 'parcel' && move.move === 'arrive' ? conditionChoices(say) : [],
    hint: null,
  }
}

/** A move that has no parcel to come out of is not open. */
const isOpen = ({ move, shut }: Offered, { openParcels }: SubjectAtDesk): boolean =>
  shut.length === 0 && (!move.guards.includes('parcel-open') || openParcels.length > 0)

function formsOf(found: SubjectAtDesk, language: Language): MoveForm[] {
  const { say } = language
  const place = { label: say('custody.field.place'), required: true }
  const births = found.births
    .filter(({ shut }) => shut.length === 0)
    .map(({ move }) => ({
      move,
      label: say(`custody.moves.${move}`),
      caution: null,
      place,
      why: false,
      parcels: [],
      conditions: [],
      hint: say('custody.subject.birth_help'),
    }))
  const put = {
    move: 'put',
    label: say('custody.moves.put'),
    caution: null,
    place,
    why: false,
    parcels: [],
    conditions: [],
    hint: null,
  }
  const open = found.offered.filter((one) => isOpen(one, found))
  return [
    ...open.map((one) => moveForm(one, found, language)),
    ...births,
    ...(found.standing.place === null ? [] : [put]),
  ]
}

const shutWords = (found: SubjectAtDesk, { say }: Language): string[] =>
  found.offered
    .filter((one) => !isOpen(one, found))
    .map(({ move, shut }) =>
      say('custody.subject.shut', {
        move: say(`custody.moves.${move.move}`),
        why: say(`custody.guards.${shut[0] ?? 'parcel-open'}`),
      }),
    )

function historyLine(entry: KeptEntry, found: SubjectAtDesk, language: Language): HistoryLine {
  const { say } = language
  const { number } = found.row
  const outOf = entry.via
    ? `, ${say('custody.subject.out_of', { code: subjectCode(number, entry.via) })}`
    : ''
  const alt = say('custody.subject.entry', { seq: entry.seq })
  return {
    seq: entry.seq,
    what: entryWords(entry, language) + outOf,
    by: byWords(entry.who?.name ?? null, entry.at, language),
    note: entry.note,
    undone: found.takenBack.has(entry.seq),
    photo:
      entry.photo === null
        ? null
        : {
            id: entry.photo,
            thumb: deskPaths.photo(number, entry.photo, 'thumb'),
            view: deskPaths.photo(number, entry.photo, 'view'),
            alt,
          },
  }
}

function linksOf(
  { row, subject }: SubjectAtDesk,
  { language: { say }, staff }: SubjectReader,
): Link[] {
  const { number } = row
  const record = { label: say('records.open'), href: custodyPaths.record(number, subject.n) }
  const laidOut = { label: say('laid_out.desk.open'), href: custodyPaths.laidOut(number) }
  const sheet = { label: say('custody.subject.sheet'), href: deskPaths.teardown(number, subject.n) }
  const review = {
    label: say('custody.subject.review'),
    href:
      subject.kind === 'garment' ? deskPaths.garment(number, subject.n) : deskPaths.pile(number),
  }
  return [
    { label: say('custody.subject.back'), href: custodyPaths.home },
    { label: say('custody.of_pile', { number }), href: custodyPaths.pile(number) },
    ...(subject.kind === 'garment' ? [record, sheet, laidOut] : []),
    ...(staff ? [review] : []),
  ]
}

export function subjectPage(found: SubjectAtDesk, reader: SubjectReader): SubjectPage {
  const { language } = reader
  const { say, locale } = language
  const { subject, standing, entries, garment, code, row, key } = found
  const last = entries.at(-1)!
  const newest = entries.find(({ seq }) => seq === standing.newest.seq)!
  const told = subject.kind === 'found' || subject.kind === 'extra' ? entries[0]!.note : ''
  const { kind } = subject
  const of = { name: garment?.name ?? '', garment: garment?.kind ?? null, kind, told }
  return {
    page: 'custody',
    title: `${code} · ${nameWords(of, language)}`,
    code,
    name: nameWords(of, language),
    kind: say(`custody.kinds.${subject.kind}`),
    at: atWords(standing.state, standing.place, language),
    since: say('custody.subject.since', { day: dayWords(newest.at, locale) }),
    by: byWords(last.who?.name ?? null, last.at, language),
    checked:
      found.checked &&
      say('custody.subject.checked', { result: say(`custody.results.${found.checked.result}`) }),
    isolated: standing.state === 'isolated',
    cautions: [
      ...(standing.state === 'isolated' ? [say('custody.cautions.soiled')] : []),
      ...handlingWords(found.condition, say),
    ],
    links: linksOf(found, reader),
    form: {
      postTo: custodyPaths.subject(row.number, key),
      csrf: reader.csrf,
      idem: newId(),
      places: reader.places,
      seen: standing.last,
    },
    refused: reader.refused && failureSentence(reader.refused, language),
    typed: reader.typed,
    moves: formsOf(found, language),
    shut: shutWords(found, language),
    takeBack: found.canTakeBack,
    history: entries.map((entry) => historyLine(entry, found, language)).toReversed(),
  }
}
