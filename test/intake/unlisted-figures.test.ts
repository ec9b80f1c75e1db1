import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { type Literal, unlistedIn } from '../help/figures-in-code.ts'
import { sources } from '../help/tree.ts'

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/\/$/, '')

/** Numbers that are no figure of the trade: where they stand, which they are, and why they need no source. */
const technical: readonly (readonly [where: RegExp, values: string, why: string])[] = [
  [/better-outcome\.ts: holdRank$/, '3', 'a place in an order'],
  [/facts\.ts: hottestC$/, '200', 'the end of a scale, listed as iron/hot'],
  [/gradings\.ts: most$/, '5000', 'how many gradings are remembered'],
  [/input\.ts: inches$/, '200', 'the most that may be typed in'],
  [/label-lines\.ts: surely$/, '0.3', 'how likely a letter is, measured over drawn labels'],
  [/label-sense\.ts: most$/, '24 800 4', 'how many other lines are tried and taken'],
  [/label-sense\.ts: notWhole$/, '10', 'what weighs more than any other doubts'],
  [/label-lines\.ts: doubted$/, '0.6', 'how far a doubted reading is believed'],
  [/panel-losses\.ts: (?:down|up)$/, '1e-9 4', 'quarters of an inch, and what floats lose'],
  [/panel-losses\.ts: middle$/, '0.25', 'a quarter of an inch lost to rounding'],
  [/panel-shapes\.ts: legs$/, '4', 'two legs, each a front and a back'],
  [/prove-press\.ts: planner$/, '8', 'a key of several small numbers'],
  [/arithmetic\.ts: quarteredNinePatch$/, '3 4 6 8', 'squares and seams of three by three, exact'],
  [/layout\.ts: inches$/, '0.25', 'the grid on which lengths are typed in'],
  [/layout\.ts: evenInches$/, '0.5', 'lengths whose halves lie on that grid'],
  [/layout\.ts: checkBlock$/, '3', 'three by three'],
  [/materials\.ts: yards$/, '1e-9 4', 'quarters of a yard, and what floats lose'],
  [/tally\.ts: mostMore$/, '99', 'where counting stops'],
  [/tally\.ts: tally$/, '1e-9', 'what floats lose'],
  [
    /^src\/textile\/label\.ts: readLabel$/,
    '0.98 0.05 0.6',
    'a scale of our own; nothing decides by it',
  ],
]

/**
 * Whole places. The reader of labels is judged by its corpora; how far it looks, and what one reading
 * costs against another, has no unit. Those of its files that decide on shares are held singly.
 */
const places: readonly (readonly [where: RegExp, why: string])[] = [
  [/^src\/textile\/languages\//, 'words of languages: "three" is 3'],
  [/^src\/textile\/label\/(?!blocks|spelling)/, 'how far the reader looks'],
  [/^src\/textile\/label\/spelling\.ts: mostGuesses$/, 'what is kept in memory'],
  [
    /^src\/garment\/words\/(?!.*: (?:mending|monthSizes|yearSizes)$)/,
    'how far the reader of own words looks',
  ],
  [/^src\/quilt\/cut\//, 'memory of the cutter'],
  [/^src\/quilt\/plan\//, 'how much is read and looked at, and what floats lose'],
  [/^src\/quilt\/place\/(?!colours|grid)/, 'how far a search looks, and its generator of chance'],
]

const where = ({ file, in: name }: Literal): string => `${file}: ${name}`

function isTechnical(one: Literal): boolean {
  const at = where(one)
  return (
    places.some(([place]) => place.test(at)) ||
    technical.some(([place, values]) => place.test(at) && values.split(' ').includes(one.value))
  )
}

const rooms = sources()
  .map(({ path }) => path)
  .filter((path) => /^src\/(?:textile|garment|quilt)\/.*\.ts$/.test(path))

test('a number of the trade that stands in the code is listed as a figure with its source', () => {
  const found = unlistedIn(root, rooms)
  const unlisted = found.filter((one) => !isTechnical(one))
  expect(unlisted.map((one) => `${one.file}:${one.line} ${one.in}: ${one.value}`)).toEqual([])
  // What is excused is there: an excuse that excuses nothing is taken away.
  const idle = technical.flatMap(([place, values]) =>
    values
      .split(' ')
      .filter((value) => !found.some((one) => place.test(where(one)) && one.value === value))
      .map((value) => `${place} ${value}`),
  )
  expect(idle).toEqual([])
})

const project = {
  'tsconfig.json': JSON.stringify({
    compilerOptions: { module: 'nodenext', allowImportingTsExtensions: true, noEmit: true },
    include: ['src'],
  }),
  'package.json': '{ "type": "module" }',
  'src/hem.ts': [
    "import { widthIn } from './width.ts'",
    'const hemIn = 3',
    'const seams = { side: 0.5, over: [4, 5] as const }',
    'const most: 7 | 8 = 7',
    'const cut = (inches: number) => inches * 0.85',
    'export const hemFigures = [{ value: hemIn }, ...Object.values(seams), widthIn, cut(9)]',
    'export const lost = (parts: number[]) => parts[6]! - hemIn - 11',
  ].join('\n'),
  'src/width.ts': 'export const widthIn = 40\nexport const other = 41\n',
}

test('finds the numbers that no list reaches, by file and line, also inside functions', () => {
  const folder = mkdtempSync(join(tmpdir(), 'figures-'))
  try {
    for (const [name, text] of Object.entries(project)) {
      mkdirSync(dirname(join(folder, name)), { recursive: true })
      writeFileSync(join(folder, name), text)
    }
    const found = unlistedIn(folder, ['src/hem.ts', 'src/width.ts'])
    expect(found.map((one) => `${one.file}:${one.line} ${one.in} ${one.value}`)).toEqual([
      'src/hem.ts:4 most 7',
      'src/hem.ts:5 cut 0.85',
      'src/hem.ts:7 lost 11',
      'src/width.ts:2 other 41',
    ])
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
})
