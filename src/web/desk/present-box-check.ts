import { colourWords } from '../../base/colour-words.ts'
import type { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import type { State } from '../../custody/states.ts'
import { subjectCode } from '../../custody/subject.ts'
import type { BoxChanges } from '../../desk/box-changes.ts'
import type { CheckedRow } from '../../desk/box-results.ts'
import { type KeptFactSet, lastKept, newestSet } from '../../desk/fact-sets.ts'
import type { Parcel } from '../../desk/parcels.ts'
import { domains, type FactName, sizes } from '../../garment/facts.ts'
import type { Garment } from '../../intake/pile.ts'
import type { SettableFact } from '../../intake/set-facts.ts'
import type { PileRow } from '../../store/schema.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import { custodyPaths } from './custody-paths.ts'
import { atWords, handlingWords } from './custody-words.ts'
import { factName, factValue } from './fact-words.ts'
import { deskPaths } from './paths.ts'
import { conditionChoices } from './present-custody-pile.ts'
import type { BoxChangedPage, BoxCheckPage, BoxFact, BoxGarment, Ticked } from './view-custody.ts'

/** Facts that a receiver may see to be different, in the order in which they are offered. */
export const boxFacts = [
  'kind',
  'size',
  'label',
  'colours',
  'wear',
  'pattern',
  'printMake',
] as const satisfies readonly SettableFact[]

type BoxFactName = (typeof boxFacts)[number]

/** What a form sent of one garment: fields by their name, without its number. */
export type SentFields = Readonly<Record<string, readonly string[]>>

export interface BoxToCheck {
  readonly row: PileRow
  readonly parcel: Parcel | null
  readonly garments: readonly Garment[]
  /** The seq of the newest entry of each garment, and its state; null: nothing has happened with it. */
  readonly standing: (
    n: number,
  ) => { readonly last: number; readonly state: State; readonly place: string | null } | null
  readonly checks: ReadonlyMap<string, CheckedRow>
  readonly sets: readonly KeptFactSet[]
}

export interface BoxReader {
  readonly language: Language
  readonly csrf: string
  readonly places: readonly string[]
  readonly refused: Failure | null
  /** What was sent with a form that was refused. */
  readonly sent: (field: string) => readonly string[]
}

const isOfTables = (fact: BoxFactName): fact is BoxFactName & FactName =>
  Object.hasOwn(domains, fact)

function optionsOf(fact: BoxFactName, language: Language): Ticked[] | null {
  const { say } = language
  if (fact === 'label') return null
  if (fact === 'size') {
    return sizes.map((value) => ({ value, label: say(`intake.size.options.${value}`) }))
  }
  if (fact === 'colours') {
    return colourWords.map((value) => ({ value, label: say(`colours.${value}`) }))
  }
  return domains[fact].map((value) => ({ value, label: factValue({ fact, value }, language) }))
}

const labelOf = (fact: BoxFactName, language: Language): string =>
  isOfTables(fact) ? factName(fact, language) : language.say(`custody.box.fact_${fact}`)

function factField(n: number, fact: BoxFactName, reader: BoxReader): BoxFact {
  const { say } = reader.language
  const options = optionsOf(fact, reader.language)
  return {
    name: `fact-${n}-${fact}`,
    label: labelOf(fact, reader.language),
    hint: fact === 'label' ? say('custody.box.label_help') : null,
    options: options && [{ value: '', label: say('custody.box.as_told') }, ...options],
    value: reader.sent(`fact-${n}-${fact}`)[0] ?? '',
  }
}

const nameOf = ({ name, facts, code }: Garment, { say }: Language): string =>
  name ?? say(`intake.kind.options.${facts.kind}`) ?? code

/** What the customer told, as far as an eye sees it at once. */
function toldOf({ facts, told }: Garment, language: Language): string {
  const { say } = language
  const words = [
    say(`intake.kind.options.${facts.kind}`),
    ...(told.size === 'unknown' ? [] : [say(`intake.size.options.${told.size}`)]),
    ...told.colours.map((colour) => say(`colours.${colour}`)),
    factValue({ fact: 'wear', value: facts.wear }, language),
    factValue({ fact: 'pattern', value: facts.pattern }, language),
  ]
  return say('custody.box.told', { words: words.join(' · ') })
}

function boxGarment(garment: Garment, found: BoxToCheck, reader: BoxReader): BoxGarment {
  const { language, sent } = reader
  const { n, code, told } = garment
  const stands = found.standing(n)
  const checked = found.checks.get(String(n))
  const [photo] = told.photoIds
  const before =
    stands && stands.state !== 'expected'
      ? language.say('custody.box.done', { state: atWords(stands.state, stands.place, language) })
      : checked
        ? language.say(`custody.results.${checked.result}`)
        : null
  return {
    n,
    code,
    name: nameOf(garment, language),
    told: toldOf(garment, language),
    before,
    photo:
      photo === undefined
        ? null
        : {
            id: photo,
            thumb: deskPaths.photo(found.row.number, photo, 'thumb'),
            view: deskPaths.photo(found.row.number, photo, 'view'),
            alt: nameOf(garment, language),
          },
    result: sent(`result-${n}`)[0] ?? '',
    seen: stands?.last ?? 0,
    factsSeen: newestSet(found.sets, n),
    facts: boxFacts.map((fact) => factField(n, fact, reader)),
    conditions: sent(`condition-${n}`),
    note: sent(`note-${n}`)[0] ?? '',
  }
}

function closedOf({ parcel }: BoxToCheck, { say }: Language): string | null {
  if (!parcel) return say('custody.box.none')
  return parcel.state === 'isolated' ? say('custody.box.isolated') : null
}

export function boxCheckPage(found: BoxToCheck, reader: BoxReader): BoxCheckPage {
  const { row, parcel } = found
  const { language, sent } = reader
  const { say } = language
  const code = parcel ? subjectCode(row.number, parcel.subject) : ''
  const closed = closedOf(found, language)
  return {
    page: 'box-check',
    title: say('custody.box.title', { number: row.number }),
    lead: closed ? '' : say('custody.box.lead', { code }),
    closed,
    cautions: [
      say('custody.cautions.opened'),
      ...handlingWords(parcel?.condition ?? ['fine'], say),
    ],
    refused: reader.refused && failureSentence(reader.refused, language),
    form: {
      postTo: custodyPaths.boxCheck(row.number),
      csrf: reader.csrf,
      idem: newId(),
      places: reader.places,
      parcel: parcel?.subject ?? '',
    },
    results: (['', 'matched', 'different', 'missing'] as const).map((value) => ({
      value,
      label: say(`custody.box.result.${value || 'open'}`),
    })),
    conditions: conditionChoices(say),
    garments: closed ? [] : found.garments.map((one) => boxGarment(one, found, reader)),
    place: sent('place')[0] ?? '',
    extra: { note: sent('extra-note')[0] ?? '', conditions: sent('extra-condition') },
    back: {
      label: say('custody.of_pile', { number: row.number }),
      href: custodyPaths.pile(row.number),
    },
  }
}

const valueWords = ({ fact, value }: KeptFactSet, language: Language): string => {
  const { say } = language
  if (fact === 'label') return value
  if (fact === 'size') return say(`intake.size.options.${value}`)
  if (fact === 'colours')
    return value
      .split(' ')
      .map((one) => say(`colours.${one}`))
      .join(', ')
  return factValue({ fact, value }, language)
}

export function boxChangedPage(
  { row, changes, staff }: { row: PileRow; changes: BoxChanges; staff: boolean },
  language: Language,
): BoxChangedPage {
  const { say } = language
  const graded = changes.changed.filter(({ before, after }) => before !== after)
  const gradeWords = (grade: string | null) => (grade ? say(`grades.${grade}`) : '–')
  return {
    page: 'box-changed',
    title: say('custody.changed.title'),
    lines: [
      ...graded.map(({ garment, before, after }) =>
        say('custody.changed.grade', {
          name: nameOf(garment, language),
          before: gradeWords(before),
          after: gradeWords(after),
        }),
      ),
      ...changes.changed.flatMap(({ garment, facts }) =>
        facts
          .filter((one) => lastKept(facts, garment.n, one.fact) === one)
          .map((one) =>
            say('custody.changed.fact', {
              name: nameOf(garment, language),
              fact: isBoxFact(one.fact)
                ? labelOf(one.fact, language)
                : factName(one.fact, language),
              value: valueWords(one, language),
            }),
          ),
      ),
      ...changes.missing.map((garment) =>
        say('custody.changed.missing', { name: nameOf(garment, language) }),
      ),
      ...changes.extra.map(({ subject, note }) =>
        say('custody.changed.extra', { code: subjectCode(row.number, subject), note }),
      ),
    ],
    nothing: graded.length === 0 ? say('custody.changed.nothing') : null,
    plan: staff ? { label: say('custody.changed.plan'), href: deskPaths.plan(row.number) } : null,
    planHint: staff ? null : say('custody.changed.plan_bench'),
    back: {
      label: say('custody.of_pile', { number: row.number }),
      href: custodyPaths.pile(row.number),
    },
  }
}

const isBoxFact = (fact: SettableFact): fact is BoxFactName => boxFacts.some((one) => one === fact)
