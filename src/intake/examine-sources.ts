import type { Figure } from '../base/figure.ts'
import type { Finding, Path } from '../flow/finding.ts'
import { readTable } from '../flow/read.ts'
import type { Source } from '../flow/source.ts'
import { layoutFigures } from '../quilt/layout.ts'
import { rateFigures } from '../quilt/rate-figures.ts'
import type { FlowsFolder } from './flows-folder.ts'
import { layoutsOf, ratesOf } from './knowledge.ts'
import { kindOf, rowFigures } from './sources.ts'

/** The figures of one file whose source says nothing, at the line where it should stand, once a line. */
const unsourced = (
  file: Source,
  figures: readonly Figure[],
  pathOf: (figure: Figure, n: number) => Path,
): Finding[] =>
  figures
    .flatMap((one, n) =>
      kindOf(one.source)
        ? []
        : [
            {
              file: file.file,
              line: file.lineOf(pathOf(one, n)),
              rule: 'no-source',
              message: `${one.figure} names no source ("${one.source}")`,
            },
          ],
    )
    .filter(({ line }, n, all) => all.findIndex((one) => one.line === line) === n)

/** `rates from 2026-01-01/interfacing/light/sole`: an interfacing names its own source. */
function pathInRates({ figure }: Figure): Path {
  const [, part, name] = figure.split('/')
  return part === 'interfacing' ? ['interfacing', name!, 'source'] : ['sources']
}

/**
 * Figures of the owner's files that name no source, or words that do not say how sure it is. The files
 * must be readable. Throws `flows_invalid` where they are not.
 */
export function sourceFindings(folder: FlowsFolder): Finding[] {
  const layouts = layoutsOf(folder)
  const from = (file: Source): unknown => (file.value as { from?: unknown }).from
  return [
    ...folder.tables.flatMap((file) =>
      unsourced(file, rowFigures(readTable(file.value, file)), (_, n) => ['rows', n, 'source']),
    ),
    ...folder.layouts.flatMap((file, n) =>
      unsourced(file, layoutFigures(layouts[n]!), () => ['sources']),
    ),
    ...ratesOf(folder).flatMap((rates) => {
      const file = folder.rates.find((one) => from(one) === rates.from)!
      return unsourced(file, rateFigures(rates), pathInRates)
    }),
  ]
}
