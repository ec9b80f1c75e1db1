import { Failure } from '../base/failures.ts'
import { type Figure, ownPrice, ownTerm } from '../base/figure.ts'
import { readTable } from '../flow/read.ts'
import type { Table } from '../flow/table-grammar.ts'
import { careFigures } from '../garment/finished-care.ts'
import { sizeFigures } from '../garment/garment-sizes.ts'
import { panelFigures } from '../garment/panel-losses.ts'
import { holeFigures } from '../garment/panel-spots.ts'
import { pressFigures } from '../garment/press.ts'
import { ageSizeFigures } from '../garment/words/counted-sizes.ts'
import { wordSpellingFigures } from '../garment/words/spelling.ts'
import { clothFigures } from '../photo/cloth.ts'
import { graphicFigures, layoutFigures } from '../quilt/layout.ts'
import { materialFigures } from '../quilt/materials.ts'
import { placeFigures } from '../quilt/place/colours.ts'
import { planFigures } from '../quilt/plan/from-quilt.ts'
import { rateFigures } from '../quilt/rate-figures.ts'
import { soleFigures } from '../quilt/rates.ts'
import { rollFigures } from '../quilt/roll.ts'
import { threadFigures } from '../quilt/thread.ts'
import { yieldFigures } from '../quilt/yield.ts'
import { fibreFigures } from '../textile/fibres.ts'
import { heatFigures } from '../textile/heat.ts'
import { ironFigures } from '../textile/iron.ts'
import { shareFigures } from '../textile/label/blocks.ts'
import { spellingFigures } from '../textile/label/spelling.ts'
import { reachFigures } from './cloth-colours.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { layoutsOf, ratesOf } from './knowledge.ts'

/** The surest first; what the shop sets itself is `own`, and stands beside them. */
export const sourceKinds = [
  'published',
  'secondary',
  'common practice',
  'from memory',
  'own',
] as const
export type SourceKind = (typeof sourceKinds)[number]

/** The least sure first: a source is only as good as the weakest thing it says of itself. */
const signs: readonly (readonly [SourceKind, RegExp])[] = [
  ['from memory', /\bfrom memory\b/i],
  ['common practice', /\bcommon practice\b/i],
  ['secondary', /\bsecondary\b/i],
  // A standard or law by its number, or a publication by its year.
  ['published', /\b(?:ISO|IEC|EN|ASTM|JIS)\b.*\d|\bCFR\s\d|\(EU\)\s\d|\b(?:19|20)\d\d\b/],
]

/** How sure a source is; null where the words name none. */
export const kindOf = (source: string): SourceKind | null =>
  source === ownPrice || source === ownTerm
    ? 'own'
    : (signs.find(([, sign]) => sign.test(source))?.[0] ?? null)

export interface Sourced extends Figure {
  readonly kind: SourceKind
}

/** A row's whole answer; the limits' is a heat (null: no iron at all). */
export const rowFigures = ({ table, rows }: Table): Figure[] =>
  rows.map(({ id, give, source }) => {
    const figure = `tables/${table}/${id}`
    return table === 'limits'
      ? { figure, value: give.limitC, unit: '°C', source }
      : { figure, value: give, source }
  })

const inCode: readonly Figure[] = [
  ...ironFigures,
  ...heatFigures,
  ...fibreFigures,
  ...shareFigures,
  ...spellingFigures,
  ...wordSpellingFigures,
  ...ageSizeFigures,
  ...pressFigures,
  ...careFigures,
  ...sizeFigures,
  ...panelFigures,
  ...holeFigures,
  ...yieldFigures,
  ...graphicFigures,
  ...materialFigures,
  ...rollFigures,
  ...threadFigures,
  ...planFigures,
  ...soleFigures,
  ...placeFigures,
  ...clothFigures,
  ...reachFigures,
]

/** Every figure that grading, cutting and packing rest on, of the owner's files and of our own. */
export const figuresOf = (folder: FlowsFolder): Figure[] => [
  ...folder.tables.flatMap((source) => rowFigures(readTable(source.value, source))),
  ...ratesOf(folder).flatMap(rateFigures),
  ...layoutsOf(folder).flatMap(layoutFigures),
  ...inCode,
]

/** The figures, each with its kind of source. Throws `flows_invalid` by the name of one without. */
export function sourcesOf(figures: readonly Figure[]): Sourced[] {
  return figures.map((one) => {
    const kind = kindOf(one.source)
    if (kind) return { ...one, kind }
    throw new Failure('flows_invalid', {
      file: one.figure,
      line: 1,
      why: `no source is named ("${one.source}")`,
    })
  })
}

/** How many figures there are, and how many of each kind of source. */
export const countKinds = (sources: readonly Sourced[]): Record<SourceKind | 'all', number> => ({
  all: sources.length,
  ...(Object.fromEntries(
    sourceKinds.map((kind) => [kind, sources.filter((one) => one.kind === kind).length]),
  ) as Record<SourceKind, number>),
})
