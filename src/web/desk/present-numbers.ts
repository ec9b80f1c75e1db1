import { exportNames } from '../../desk/export.ts'
import {
  type Corrected,
  leftAfter,
  mostCounted,
  type Numbers,
  type Period,
} from '../../desk/numbers.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { Counted, NumbersPage } from './view-numbers.ts'

const day = 24 * 60 * 60 * 1000
const hour = 60 * 60 * 1000

/** YYYY-MM-DD, UTC. */
export const dayOf = (at: number): string => new Date(at).toISOString().slice(0, 10)

/** A time that passes as people say it: days from two days on, else hours, else minutes. */
function lastingWords(ms: number | null, { say, locale }: Language): string {
  if (ms === null) return say('desk.numbers.none')
  const [unit, amount] =
    ms >= 2 * day
      ? ['day', ms / day]
      : ms >= hour
        ? ['hour', ms / hour]
        : ['minute', ms / (60 * 1000)]
  return new Intl.NumberFormat(locale, {
    style: 'unit',
    unit: unit as string,
    unitDisplay: 'long',
    maximumFractionDigits: 1,
  }).format(amount as number)
}

const share = (part: number, whole: number, locale: string): string =>
  new Intl.NumberFormat(locale, { style: 'percent' }).format(whole === 0 ? 0 : part / whole)

function correctedRow(what: 'labels' | 'prints', one: Corrected, language: Language): Counted {
  const { say, locale } = language
  return {
    name: say(`desk.numbers.${what}`),
    value:
      one.read === 0
        ? say('desk.numbers.none')
        : say('desk.numbers.of', {
            part: one.otherwise,
            whole: one.read,
            share: share(one.otherwise, one.read, locale),
          }),
    note: say(`desk.numbers.${what}_what`),
  }
}

function placeName(place: string, { say, has }: Language): string {
  const key = `intake.${place}.short`
  if (has(key)) return say(key)
  return has(`desk.numbers.places.${place}`) ? say(`desk.numbers.places.${place}`) : place
}

function flagName(code: string, { say, has }: Language): string {
  const key = `trade.flags.${code}.message`
  return has(key) ? say(key) : code
}

function groupsOf(numbers: Numbers, language: Language): NumbersPage['groups'] {
  const { say } = language
  const group = (name: string, rows: readonly Counted[], gaps = {}) => ({
    title: say(`desk.numbers.groups.${name}.title`),
    what: say(`desk.numbers.groups.${name}.what`, gaps),
    rows,
  })
  return [
    group(
      'states',
      numbers.states.map(({ status, count }) => ({
        name: say(`desk.numbers.states.${status}`),
        value: String(count),
        note: null,
      })),
    ),
    group('times', [
      {
        name: say('desk.numbers.to_confirm'),
        value: lastingWords(numbers.toConfirm, language),
        note: say('desk.numbers.to_confirm_what'),
      },
      {
        name: say('desk.numbers.to_decide'),
        value: lastingWords(numbers.toDecide, language),
        note: say('desk.numbers.to_decide_what'),
      },
    ]),
    group(
      'left',
      numbers.left.map(({ place, count }) => ({
        name: placeName(place, language),
        value: String(count),
        note: null,
      })),
      { days: leftAfter / day },
    ),
    group('readings', [
      correctedRow('labels', numbers.labels, language),
      correctedRow('prints', numbers.prints, language),
    ]),
    group(
      'flags',
      numbers.flags.map(({ code, severity, count, taken, declined, asked }) => ({
        name: `${say(`desk.severity.${severity}`)} ${flagName(code, language)}`,
        value: String(count),
        note:
          taken + declined + asked === 0
            ? null
            : say('desk.numbers.decided', { taken, declined, asked }),
      })),
    ),
  ]
}

export function numbersPage(
  numbers: Numbers,
  { from, to }: Period,
  { language, error }: { language: Language; error: string | null },
): NumbersPage {
  const { say } = language
  return {
    page: 'numbers',
    title: say('desk.numbers.title'),
    from: dayOf(from),
    // The last day that is in it.
    to: dayOf(to - 1),
    error,
    over: [
      say('desk.numbers.over', { count: numbers.piles }),
      ...(numbers.uncounted > 0
        ? [say('desk.numbers.bounded', { most: mostCounted, count: numbers.uncounted })]
        : []),
    ],
    empty: numbers.piles === 0 ? say('desk.numbers.empty') : null,
    groups: numbers.piles === 0 ? [] : groupsOf(numbers, language),
    exports: exportNames.map((name) => ({
      href: deskPaths.export(name),
      label: `${name}.csv`,
      what: say(`desk.numbers.exports.${name}`),
    })),
  }
}
