import type { Figure } from '../base/figure.ts'
import { furtherFibres } from './fibre-rows/further.ts'
import { madeFibres } from './fibre-rows/made.ts'
import { naturalFibres } from './fibre-rows/natural.ts'
import type { FibreRow } from './fibre-rows/row.ts'

/**
 * The fibres that labels name, and how hot each may be ironed.
 * `ironMaxC` is no property of the fibre: it is the sole-plate limit (°C) of ISO 3758:2012 for the
 * dots that such a garment usually carries; 0 means do not iron. A garment's own label wins when it
 * is colder. Softening, melting and handbook figures are °C, as the source prints them.
 */
const table = [...naturalFibres, ...madeFibres, ...furtherFibres] as const

export type FibreKey = (typeof table)[number]['key']

export interface Fibre extends FibreRow {
  readonly key: FibreKey
}

export const fibres: readonly Fibre[] = table

const byKey: ReadonlyMap<string, Fibre> = new Map(table.map((fibre) => [fibre.key, fibre]))

export const isFibreKey = (key: string): key is FibreKey => byKey.has(key)

export const fibreOf = (key: FibreKey): Fibre => byKey.get(key)!

/** The heats of every fibre, °C; ranges as their source prints them. */
export const fibreFigures: readonly Figure[] = fibres.flatMap((fibre) =>
  (['ironMaxC', 'softeningC', 'meltingC', 'handbookC'] as const)
    .filter((name) => fibre[name] !== undefined)
    .map((name) => ({
      figure: `fibres/${fibre.key}/${name}`,
      value: fibre[name],
      unit: '°C',
      source: fibre.source,
    })),
)
