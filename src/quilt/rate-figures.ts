import type { Figure } from '../base/figure.ts'
import type { Rates } from './rates.ts'

const interfacingFigures = ({ interfacing }: Rates): Figure[] =>
  Object.entries(interfacing).flatMap(([name, { glue_line_c, sole_c, source }]): Figure[] => [
    { figure: `interfacing/${name}/glue line`, value: glue_line_c, unit: '°C', source },
    { figure: `interfacing/${name}/sole`, value: sole_c, unit: '°C', source },
  ])

/**
 * Heats, widths, weights and packages of a day's rates. Prices and terms are the shop's own and are
 * not among them. A figure nobody gave a source has an empty one.
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
    ...rates.boxes.flatMap(({ box, w, h, d, holds_g, weighs_g }): Figure[] => {
      const source = sources.boxes ?? ''
      return [
        { figure: `box/${box}/size`, value: { w, h, d }, unit: 'in', source },
        { figure: `box/${box}/holds`, value: holds_g, unit: 'g', source },
        { figure: `box/${box}/weighs`, value: weighs_g, unit: 'g', source },
      ]
    }),
  ]
  return all.map((one) => ({ ...one, figure: `rates from ${rates.from}/${one.figure}` }))
}
