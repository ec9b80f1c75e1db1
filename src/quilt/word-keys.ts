import { bulks } from '../garment/bulk.ts'
import { grades } from '../garment/grade.ts'
import { methods, setters } from '../garment/press.ts'
import { type Rules, rowsIn } from '../garment/space.ts'
import { teardownCautions } from '../garment/teardown.ts'
import { keptThings, steps, stops, tools } from '../garment/teardown-steps.ts'
import { widths } from './choices.ts'
import { estimateGrounds } from './estimate.ts'
import { type Layout, quiltSizes, roles } from './layout.ts'
import { lineCodes, lineGroups, lineUnits } from './lines.ts'
import type { Rates } from './rates.ts'
import { workingCodes } from './workings.ts'

export interface Spoken {
  readonly tables: readonly Rules[]
  readonly layouts: readonly Pick<Layout, 'id'>[]
  readonly rates: Pick<Rates, 'interfacing' | 'boxes'>
}

/**
 * The key of every sentence that a grading, a layout or an estimate may show. A code that an owner adds
 * to a table needs its sentences before anybody meets it.
 */
export function wordKeys({ tables, layouts, rates }: Spoken): string[] {
  const given = (table: string, output: string) =>
    rowsIn(tables, table).map(({ give }) => String(give[output]))
  const flags = rowsIn(tables, 'flags').map(({ id }) => id)
  const shown: readonly (readonly [pattern: string, codes: readonly string[]])[] = [
    ['grades.*.name', grades],
    ['grades.*.sentence', grades],
    ['grades.*.next', grades],
    ['flags.*.message', flags],
    ['flags.*.next', flags],
    ['flags.*.staff', flags],
    ['press.*', methods],
    ['backing.*', ['fused', 'sewn-in', 'none']],
    ['interfacing.*', Object.keys(rates.interfacing)],
    ['setBy.*', setters],
    ['cautions.*', [...given('cautions', 'code'), ...teardownCautions]],
    ['teardown.steps.*', [...stops, ...steps].map(({ code }) => code)],
    ['teardown.tools.*', tools],
    ['teardown.keeps.*', keptThings],
    ['teardown.bulk.*', bulks],
    ['layouts.*.name', layouts.map(({ id }) => id)],
    ['layouts.*.sentence', layouts.map(({ id }) => id)],
    ['layouts.why.*', given('layout-fit', 'why')],
    ['estimate.lines.*', lineCodes],
    ['estimate.for.*', lineCodes],
    ['estimate.groups.*', Object.keys(lineGroups)],
    ['estimate.units.*', lineUnits],
    ['estimate.grounds.*', estimateGrounds],
    ['estimate.how.*', workingCodes],
    ['estimate.width.*', Object.keys(widths)],
    ['estimate.boxes.*', rates.boxes.map(({ box }) => box)],
    ['quilts.*', quiltSizes],
    ['roles.*', roles],
    ['panels.*', ['front', 'half-front', 'back', 'sleeve', 'leg', 'cloth', 'tie-end']],
  ]
  return [
    ...new Set(
      shown.flatMap(([pattern, codes]) => codes.map((code) => pattern.replace('*', code))),
    ),
  ]
}
