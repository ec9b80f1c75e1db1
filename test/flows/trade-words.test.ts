import { expect, test } from 'vitest'
import { grades } from '../../src/garment/grade.ts'
import { methods, setters } from '../../src/garment/press.ts'
import { widths } from '../../src/quilt/choices.ts'
import { quiltSizes, roles } from '../../src/quilt/layout.ts'
import { lineCodes } from '../../src/quilt/lines.ts'
import { flatten } from '../../src/words/words.ts'
import { layouts, rates, readYaml, tables } from '../help/knowledge.ts'

const languages = ['en', 'es'].map(
  (code) => [code, flatten(readYaml(`tables/words/${code}.yaml`) as never)] as const,
)

const rowsOf = (name: string) => tables.find(({ table }) => table === name)!.rows
const given = (name: string, output: string) => rowsOf(name).map(({ give }) => String(give[output]))

/** Every code that a grading, a layout or an estimate may show, with the sentences it wants. */
const shown: Readonly<Record<string, readonly string[]>> = {
  'grades.*.name': grades,
  'grades.*.sentence': grades,
  'grades.*.next': grades,
  'flags.*.message': rowsOf('flags').map(({ id }) => id),
  'flags.*.next': rowsOf('flags').map(({ id }) => id),
  'flags.*.staff': rowsOf('flags').map(({ id }) => id),
  'press.*': methods,
  'backing.*': ['fused', 'sewn-in', 'none'],
  'interfacing.*': Object.keys(rates.interfacing),
  'setBy.*': setters,
  'cautions.*': given('cautions', 'code'),
  'layouts.*.name': layouts.map(({ id }) => id),
  'layouts.*.sentence': layouts.map(({ id }) => id),
  'layouts.why.*': given('layout-fit', 'why'),
  'estimate.lines.*': lineCodes,
  'estimate.units.*': ['quilt', 'garment', 'yard', 'package'],
  'estimate.width.*': Object.keys(widths),
  'estimate.boxes.*': rates.boxes.map(({ box }) => box),
  'quilts.*': quiltSizes,
  'roles.*': roles,
  'panels.*': ['front', 'half-front', 'back', 'sleeve', 'leg', 'cloth', 'tie-end'],
}

const wanted = new Set(
  Object.entries(shown).flatMap(([key, codes]) => codes.map((code) => key.replace('*', code))),
)

test.each(languages)(
  'every code that is shown has its sentences in %s, and none is idle',
  (_, said) => {
    expect([...wanted].filter((key) => !said.has(key))).toEqual([])
    expect([...said.keys()].filter((key) => !wanted.has(key))).toEqual([])
  },
)

test.each(languages)('no sentence in %s is empty or speaks of rags and scraps', (_, said) => {
  const bad = [...said].filter(
    ([, text]) => text.trim() === '' || /\b(rags?|scraps?|trapos?|retazos?|retales?)\b/i.test(text),
  )
  expect(bad).toEqual([])
})

const longestWords = 20

test.each(languages)('a customer reads short sentences in %s', (_, said) => {
  const long = [...said]
    .filter(([key]) => /^(flags\..*\.(message|next)|grades)/.test(key))
    .flatMap(([key, text]) =>
      text
        .split(/[.!?] /)
        .filter((sentence) => sentence.split(' ').length > longestWords)
        .map(() => key),
    )
  expect(long).toEqual([])
})
