import { moves } from '../../custody/moves.ts'
import { kinds, statesOf } from '../../custody/states.ts'
import { subjectCode } from '../../custody/subject.ts'
import type { OverdueParcel } from '../../desk/parcels.ts'
import type { Located } from '../../desk/whereabouts.ts'
import { custodyMap } from '../../papers/custody-map.ts'
import { toSvg } from '../../papers/drawing.ts'
import type { Language } from '../../words/words.ts'
import { custodyPaths } from './custody-paths.ts'
import { locatedLine } from './custody-words.ts'
import type { CustodyHomePage, CustodyMapPage } from './view-custody.ts'
import { dayWords } from './when.ts'

export interface CustodyAsked {
  readonly asked: string
  /** It is a tag whose check sign does not fit. */
  readonly mistyped: boolean
  readonly found: readonly Located[] | null
  readonly overdue: readonly OverdueParcel[]
  readonly apart: readonly Located[]
  readonly waiting: readonly Located[]
}

interface HomeReader {
  readonly language: Language
  readonly customers: boolean
  /** So many are shown at most. */
  readonly most: number
}

function overdueLine(
  { pile, customer, subject, carrier, tracking, expectedAt }: OverdueParcel,
  { language: { say, locale }, customers }: HomeReader,
) {
  const words = [
    subjectCode(pile, subject),
    customers ? customer : null,
    carrier,
    tracking,
    say('custody.home.overdue_line', { day: dayWords(expectedAt, locale) }),
  ]
  return { text: words.filter(Boolean).join(' · '), href: custodyPaths.subject(pile, subject) }
}

export function custodyHomePage(
  { asked, mistyped, found, overdue, apart, waiting }: CustodyAsked,
  reader: HomeReader,
): CustodyHomePage {
  const { language, customers, most } = reader
  const { say } = language
  const count = found?.length ?? 0
  return {
    page: 'custody-home',
    title: say('custody.home.title'),
    lead: say(customers ? 'custody.home.lead_staff' : 'custody.home.lead'),
    asked,
    found: found && {
      heading:
        count === 0
          ? say(mistyped ? 'custody.home.mistyped' : 'custody.home.nothing', { text: asked })
          : say('custody.home.found', { count }),
      more: count >= most,
    },
    lines: (found ?? []).map((one) => locatedLine(one, language)),
    overdue: overdue.map((one) => overdueLine(one, reader)),
    apart: apart.map((one) => locatedLine(one, language)),
    waiting: waiting.map((one) => locatedLine(one, language)),
    links: [
      { label: say('custody.home.count'), href: custodyPaths.count },
      { label: say('custody.map.link'), href: custodyPaths.map },
    ],
  }
}

export function custodyMapPage({ say }: Language): CustodyMapPage {
  return {
    page: 'custody-map',
    title: say('custody.map.title'),
    maps: kinds.map((kind) => {
      const name = say(`custody.kinds.${kind}`)
      const { drawing, legend, lanes } = custodyMap(kind, {
        state: (state) => say(`custody.states.${state}`),
        move: (move) => say(`custody.moves.${move}`),
        before: say('custody.before'),
        birth: say('custody.map.birth'),
      })
      const title = say('custody.map.alt', {
        kind: name,
        states: Object.keys(statesOf[kind]).length,
        moves: moves.filter((one) => one.kind === kind).length,
      })
      return {
        kind: name,
        svg: toSvg(drawing, { title }),
        legend: legend.map((line, n) => {
          const move = say('custody.map.move', { n: n + 1, ...line })
          const why = lanes[n]!.guards.map((guard) => say(`custody.guards.${guard}`)).join('; ')
          return why === '' ? move : say('custody.map.not_while', { move, why })
        }),
      }
    }),
    back: { label: say('custody.home.title'), href: custodyPaths.home },
  }
}
