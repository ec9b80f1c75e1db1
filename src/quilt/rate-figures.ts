import { type Figure, ownPrice, ownTerm } from '../base/figure.ts'
import type { Rates } from './rates.ts'

const interfacingFigures = ({ interfacing }: Rates): Figure[] =>
  Object.entries(interfacing).flatMap(([name, { glue_line_c, sole_c, source }]): Figure[] => [
    { figure: `interfacing/${name}/glue line`, value: glue_line_c, unit: '°C', source },
    { figure: `interfacing/${name}/sole`, value: sole_c, unit: '°C', source },
  ])

const price = (figure: string, value: unknown): Figure => ({
  figure: `price/${figure}`,
  value,
  unit: 'minor units',
  source: ownPrice,
})

/** One price for each key of a part of the rates. */
const pricesOf = (part: string, prices: object): Figure[] =>
  Object.entries(prices).map(([key, value]) => price(`${part}/${key}`, value))

const ownFigures = (rates: Rates): Figure[] => [
  ...pricesOf('labour', rates.labour),
  ...pricesOf('piecing', rates.piecing).map((one) => ({ ...one, unit: 'times' as const })),
  ...pricesOf('teardown', rates.teardown),
  ...pricesOf('stabilising', rates.stabilising),
  ...Object.entries(rates.interfacing).map(([name, { price_per_yard }]) =>
    price(`interfacing/${name}/yard`, price_per_yard),
  ),
  price('sewn-in backing/yard', rates.sew_in.price_per_yard),
  price('backing/yard', rates.cloth.backing_per_yard),
  price('binding/yard', rates.cloth.binding_per_yard),
  price('top-up/yard', rates.cloth.top_up_per_yard),
  ...rates.batting.map(({ w, h, price: minor }) => price(`batting/${w} × ${h}`, minor)),
  price('thread/spool', rates.thread.price_per_spool),
  ...rates.postage.map(({ to_g, price: minor }) => price(`postage/to ${to_g} g`, minor)),
  rates.deposit_amount === null
    ? { figure: 'terms/deposit', value: rates.deposit_percent, unit: 'percent', source: ownTerm }
    : price('terms/deposit', rates.deposit_amount),
  { figure: 'terms/valid', value: rates.valid_days, unit: 'days', source: ownTerm },
  { figure: 'terms/turnaround', value: rates.turnaround_weeks, unit: 'weeks', source: ownTerm },
]

/**
 * Heats, widths, weights and packages of a day's rates, then the shop's own prices and terms. A figure
 * nobody gave a source has an empty one.
 */
export function rateFigures(rates: Rates): Figure[] {
  const { sources } = rates
  const widths = {
    'cloth, usable': rates.cloth.usable_width_in,
    'sewn-in backing': rates.sew_in.width_in,
    ...Object.fromEntries(
      Object.entries(rates.interfacing).map(([name, { width_in }]) => [
        `interfacing ${name}`,
        width_in,
      ]),
    ),
  }
  const all: Figure[] = [
    ...interfacingFigures(rates),
    ...Object.entries(widths).map(
      ([name, value]): Figure => ({
        figure: `width/${name}`,
        value,
        unit: 'in',
        source: sources.widths ?? '',
      }),
    ),
    ...rates.batting.map(
      ({ w, h }): Figure => ({
        figure: `batting/${w} × ${h}`,
        value: { w, h },
        unit: 'in',
        source: sources.batting ?? '',
      }),
    ),
    {
      figure: 'batting/over each edge',
      value: rates.batting_over_in,
      unit: 'in',
      source: sources.batting_over_in ?? '',
    },
    ...Object.entries(rates.weights_g).map(
      ([kind, value]): Figure => ({
        figure: `weight/${kind}`,
        value,
        unit: 'g',
        source: sources.weights_g ?? '',
      }),
    ),
    ...Object.entries(rates.weights_g_per_m2).map(
      ([name, value]): Figure => ({
        figure: `weight of a square metre/${name}`,
        value,
        unit: 'g',
        source: sources.weights_g_per_m2 ?? '',
      }),
    ),
    {
      figure: 'thread/spool',
      value: rates.thread.spool_m,
      unit: 'm',
      source: sources.thread ?? '',
    },
    ...rates.boxes.flatMap(({ box, w, h, d, holds_g, weighs_g }): Figure[] => {
      const source = sources.boxes ?? ''
      return [
        { figure: `box/${box}/size`, value: { w, h, d }, unit: 'in', source },
        { figure: `box/${box}/holds`, value: holds_g, unit: 'g', source },
        { figure: `box/${box}/weighs`, value: weighs_g, unit: 'g', source },
      ]
    }),
    ...ownFigures(rates),
  ]
  return all.map((one) => ({ ...one, figure: `rates from ${rates.from}/${one.figure}` }))
}
