import { formatMoney } from '../../base/money.ts'
import type { Change } from '../../desk/tries.ts'
import { type Figures, figuresOf, type Way } from '../../desk/what-if.ts'
import type { Garment } from '../../intake/pile.ts'
import { yardWords } from '../../papers/shortage-words.ts'
import { priceChange } from '../../quilt/price-change.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { readerAt } from './present-garment.ts'
import { roleNames } from './present-roles.ts'
import { shortWords } from './present-short.ts'
import type { WayCell, WayMark, WayRow } from './view-what-if.ts'

/** A way with what its plan comes to. */
export interface Compared {
  readonly way: Way
  readonly figures: Figures | null
}

export const compared = (way: Way): Compared => ({ way, figures: way.best && figuresOf(way.best) })

/** Garments by their numbers, as staff call them. */
export type Names = (n: number) => string

export const namesOf =
  (garments: readonly Garment[], language: Language): Names =>
  (n) => {
    const garment = garments.find((one) => one.n === n)
    return garment ? `${garment.code} · ${nameOf(garment, readerAt(language))}` : String(n)
  }

/** What is changed: "without A3-2 · Blue flannel". */
export function changeWords(change: Change, names: Names, language: Language): string {
  const { say } = language
  const key = `desk.what_if.change.${change.change}`
  switch (change.change) {
    case 'without':
    case 'take':
      return say(key, { name: names(change.garment) })
    case 'more':
      return say(key, { role: say(`trade.roles.${change.role}`) })
    case 'roles': {
      const name = names(change.garment)
      if (change.roles.length === 0) return say('desk.what_if.change.any', { name })
      return say(key, { name, roles: roleNames(change.roles, language) })
    }
    case 'layout':
      return say(key, { layout: say(`trade.layouts.${change.layout}.name`) })
    case 'size':
      return say(key, { size: say(`trade.quilts.${change.size}`) })
  }
}

const nothing: WayCell = { lines: ['–'], mark: null }

/** `by`: how much more there is than now; less is better. */
function markOf(
  row: 'short' | 'cloth' | 'idle' | 'misfit' | 'price',
  by: number,
  amount: Readonly<Record<string, string | number>>,
  { say }: Language,
): WayMark | null {
  if (by === 0) return null
  const text = say(`desk.what_if.marks.${row}.${by < 0 ? 'less' : 'more'}`, amount)
  return { side: by < 0 ? 'better' : 'worse', text }
}

type CellOf = (one: Compared, now: Compared, language: Language) => WayCell

const stateCell: CellOf = ({ way }, _, { say }) => ({
  lines: [say(`desk.what_if.state.${way.state}`)],
  mark: null,
})

const shortIn = ({ wanted, given }: Figures): number => wanted - given

const givenCell: CellOf = ({ figures }, now, language) => {
  if (!figures) return nothing
  const { given, wanted } = figures
  const short = shortIn(figures)
  const by = now.figures ? short - shortIn(now.figures) : 0
  const { say } = language
  return {
    lines: [
      say('desk.what_if.given', { given, wanted }),
      ...(short > 0 ? [say('desk.what_if.short', { count: short })] : []),
    ],
    mark: markOf('short', by, { count: Math.abs(by) }, language),
  }
}

const clothCell: CellOf = ({ figures }, now, language) => {
  if (!figures) return nothing
  const { say, locale } = language
  const yards = (length: number) => yardWords(Math.abs(length), locale)
  const by = now.figures ? figures.length - now.figures.length : 0
  return {
    lines:
      figures.length === 0
        ? [say('desk.what_if.none')]
        : figures.cloth.map(({ role, length }) =>
            say('desk.what_if.cloth', { yards: yards(length), role: say(`trade.roles.${role}`) }),
          ),
    mark: markOf('cloth', by, { yards: yards(by) }, language),
  }
}

/** Garments by name, and how many more or fewer there are than now. */
const listed =
  (row: 'idle' | 'misfit', of: (one: Compared) => readonly number[] | null, names: Names): CellOf =>
  (one, now, language) => {
    const [here, there] = [of(one), of(now)]
    if (!here) return nothing
    const by = here.length - (there ?? here).length
    return {
      lines: here.length === 0 ? [language.say('desk.what_if.none')] : here.map(names),
      mark: markOf(row, by, { count: Math.abs(by) }, language),
    }
  }

const idleIn = ({ figures }: Compared): readonly number[] | null => figures?.idle ?? null

const misfitsIn = ({ way }: Compared): readonly number[] =>
  way.asked.out.flatMap(({ garment, barred }) => (barred.why === 'misfit' ? [garment.n] : []))

const priceCell: CellOf = ({ way: { estimate } }, { way: now }, language) => {
  if (!estimate) return nothing
  const { say, locale } = language
  const { total, currency } = estimate
  const money = (minor: number) => formatMoney({ minor, currency }, locale)
  const by = now.estimate ? total.likely - now.estimate.total.likely : 0
  return {
    lines: [
      money(total.likely),
      ...(total.low === total.high
        ? []
        : [say('estimate.range', { low: money(total.low), high: money(total.high) })]),
    ],
    mark: markOf('price', by, { amount: money(Math.abs(by)) }, language),
  }
}

const linesCell: CellOf = ({ way: { estimate } }, { way: now }, { say, locale }) => {
  if (!estimate || !now.estimate || estimate === now.estimate) return nothing
  const { lines, currency } = priceChange(now.estimate, estimate)
  if (lines.length === 0) return { lines: [say('desk.what_if.same')], mark: null }
  return {
    lines: lines.map(({ code, byMinor }) =>
      say(`cost.change.${byMinor < 0 ? 'less' : 'more'}_for`, {
        amount: formatMoney({ minor: Math.abs(byMinor), currency }, locale),
        line: say(`trade.estimate.for.${code}`),
      }),
    ),
    mark: null,
  }
}

const shortCell: CellOf = ({ way: { best } }, _, language) =>
  best ? { lines: shortWords(best, language), mark: null } : nothing

/** What is compared, row by row; the first way is the pile as it stands. */
export function wayRows(all: readonly Compared[], names: Names, language: Language): WayRow[] {
  const [now] = all
  const cells: Readonly<Record<string, CellOf>> = {
    state: stateCell,
    given: givenCell,
    cloth: clothCell,
    price: priceCell,
    lines: linesCell,
    idle: listed('idle', idleIn, names),
    misfit: listed('misfit', misfitsIn, names),
    short: shortCell,
  }
  return Object.entries(cells).map(([row, cell]) => ({
    label: language.say(`desk.what_if.rows.${row}`),
    cells: all.map((one) => cell(one, now!, language)),
  }))
}
