import type { Failure } from '../../base/failures.ts'
import { newId } from '../../base/ids.ts'
import { formatMoney } from '../../base/money.ts'
import { conditions } from '../../custody/conditions.ts'
import { leftoverChoices } from '../../custody/guards.ts'
import { subjectCode } from '../../custody/subject.ts'
import type { Parcel } from '../../desk/parcels.ts'
import type { SignOff } from '../../desk/sign-off.ts'
import type { Located } from '../../desk/whereabouts.ts'
import type { PileRow } from '../../store/schema.ts'
import type { Language, Say } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import { custodyPaths } from './custody-paths.ts'
import { atWords, conditionWords, handlingWords, locatedLine } from './custody-words.ts'
import { deskPaths } from './paths.ts'
import type { CustodyPilePage, ParcelLine, Ticked } from './view-custody.ts'
import { dayWords } from './when.ts'

export interface PileInCustody {
  readonly row: PileRow
  readonly all: readonly Located[]
  readonly parcels: readonly Parcel[]
  readonly signOff: SignOff | null
  /** What the customer told the intake; null: nothing. */
  readonly leftovers: string | null
  readonly currency: string
}

export interface PileReader {
  readonly language: Language
  readonly csrf: string
  /** May sign off, and sees money and the desk. */
  readonly staff: boolean
  readonly places: readonly string[]
  readonly refused: Failure | null
  readonly typed: Readonly<Record<string, string>>
}

export const conditionChoices = (say: Say): Ticked[] =>
  conditions.map((value) => ({ value, label: say(`custody.conditions.${value}`) }))

function parcelLine(
  parcel: Parcel,
  { row, currency }: PileInCustody,
  { language, staff }: PileReader,
): ParcelLine {
  const { say, locale } = language
  const code = subjectCode(row.number, parcel.subject)
  const { carrier, tracking, insured, postedAt, expectedAt, arrivedAt } = parcel
  const day = (key: string, at: number | null) =>
    at === null ? [] : [say(`custody.pile.${key}`, { day: dayWords(at, locale) })]
  const money =
    insured === null || !staff ? null : formatMoney({ minor: insured, currency }, locale)
  const open = parcel.state === 'arrived' || parcel.state === 'unpacked'
  return {
    code,
    href: custodyPaths.subject(row.number, parcel.subject),
    state: atWords(parcel.state, parcel.place, language),
    facts: [
      [carrier, tracking].filter(Boolean).join(' '),
      ...(money === null ? [] : [say('custody.pile.insured', { money })]),
      ...day('posted', postedAt),
      ...(arrivedAt === null ? day('expected', expectedAt) : day('arrived', arrivedAt)),
      conditionWords(parcel.condition, say),
    ].filter((one) => one !== ''),
    check:
      open && parcel.subject.startsWith('P')
        ? {
            label: say('custody.pile.check', { code }),
            href: custodyPaths.boxCheck(row.number, parcel.subject),
            first: parcel.state === 'arrived',
          }
        : null,
  }
}

function signOffOf(
  { row, signOff, leftovers }: PileInCustody,
  { language: { say, locale } }: PileReader,
): CustodyPilePage['signOff'] {
  const words = (choice: string) => say(`custody.pile.choices.${choice}`)
  const told = leftovers ?? 'ask-later'
  return {
    postTo: custodyPaths.signOff(row.number),
    signed:
      signOff &&
      say('custody.pile.signed', {
        who: signOff.who,
        day: dayWords(signOff.at, locale),
        choice: words(signOff.leftovers),
      }),
    told: say('custody.pile.told', { choice: words(told) }),
    choices: leftoverChoices.map((value) => ({ value, label: words(value) })),
    chosen: told,
  }
}

export function custodyPilePage(found: PileInCustody, reader: PileReader): CustodyPilePage {
  const { row, all, parcels } = found
  const { language, staff } = reader
  const { say } = language
  const of = (kinds: readonly Located['kind'][]) =>
    all.filter(({ kind }) => kinds.includes(kind)).map((one) => locatedLine(one, language))
  return {
    page: 'custody-pile',
    title: say('custody.pile.title', { number: row.number }),
    garments: of(['garment']),
    others: of(['leftover', 'found', 'extra']),
    // What came stands before what goes home.
    parcels: [...parcels]
      .sort((a, b) => Number(a.subject.startsWith('Q')) - Number(b.subject.startsWith('Q')))
      .map((parcel) => parcelLine(parcel, found, reader)),
    form: {
      postTo: custodyPaths.parcels(row.number),
      csrf: reader.csrf,
      idem: newId(),
      places: reader.places,
    },
    conditions: conditionChoices(say),
    cautions: [say('custody.cautions.opened'), ...handlingWords(['fine'], say)],
    refused: reader.refused && failureSentence(reader.refused, language),
    typed: reader.typed,
    signOff: staff ? signOffOf(found, reader) : null,
    links: [
      { label: say('custody.home.title'), href: custodyPaths.home },
      { label: say('laid_out.desk.open'), href: custodyPaths.laidOut(row.number) },
      ...(staff
        ? [{ label: say('custody.subject.review'), href: deskPaths.pile(row.number) }]
        : []),
    ],
  }
}
