import type { Facts } from '../garment/facts.ts'
import type { PressPlan } from '../garment/press.ts'
import type { Extent } from '../quilt/layout.ts'
import type { Language, Say } from '../words/words.ts'
import type { CutSheet } from './cut-sheet.ts'
import { addressWords, type PlacedPiece } from './piece-places.ts'
import type { Block, Printed } from './printed.ts'
import { pageWords } from './printed-packing.ts'
import { measureOf } from './printed-tags.ts'
import { quiltOutline } from './quilt-outline.ts'
import type { TeardownSheet } from './teardown-sheet.ts'

export interface BenchPaper {
  readonly pile: string
  readonly at: number
  readonly n: number
  readonly sheet: TeardownSheet
  readonly facts: Facts
  readonly press: PressPlan
  /** What is marked on its photos, a line each. */
  readonly spots: readonly string[]
  /** How its panels are cut; null: not known yet, or nothing is cut, and `wait` says which. */
  readonly cut: CutSheet | null
  readonly wait: string
  /** What to mind at the blade. */
  readonly minds: readonly string[]
  /** All pieces of the laid quilts, and each quilt's size; empty: not laid yet. */
  readonly pieces: readonly PlacedPiece[]
  readonly quilts: readonly Extent[]
  readonly units: 'inches' | 'centimetres'
}

const h2 = (words: string): Block => ({ block: 'heading', level: 2, words })
const h3 = (words: string): Block => ({ block: 'heading', level: 3, words })
const words = (text: string): Block => ({ block: 'words', words: text })

/** What stands beside the plan at the iron: which way the backing holds, the cloth, the label, the test. */
function pressBlocks({ press, facts, sheet }: BenchPaper, say: Say): Block[] {
  const { backing, ceilingC, testFirst } = press
  const ironed = ceilingC !== null
  return [
    h2(say('bench.plan')),
    {
      block: 'rows',
      rows: [
        ...sheet.plan,
        {
          name: say('printed.bench.hold'),
          words: say(
            backing === 'none' ? 'printed.bench.no_hold' : `printed.bench.stretch.${facts.stretch}`,
          ),
        },
      ].map(({ name, words: told }) => ({ name, words: told })),
    },
    { block: 'caution', words: say('printed.bench.never_above') },
    ...(ironed ? [words(say('printed.bench.press_cloth'))] : []),
    ...(testFirst
      ? [
          h3(say('printed.bench.patch')),
          words(say('printed.bench.patch_help')),
          {
            block: 'fields',
            names: ['lot', 'sole', 'seconds', 'peel', 'look'].map((one) =>
              say(`printed.bench.test.${one}`),
            ),
          } as const,
        ]
      : []),
  ]
}

const stepsOf = ({ sheet }: BenchPaper, say: Say): Block[] => [
  h2(say('bench.steps')),
  { block: 'words', words: say('bench.pass_over'), as: 'small' },
  {
    block: 'list',
    as: 'step',
    items: sheet.steps.map((step) => ({
      words: step.words,
      notes: [[step.tools, step.keeps, step.again].filter(Boolean).join(' · ')],
      cautions: step.cautions,
    })),
  },
  ...(sheet.notes.length > 0 ? [h3(say('bench.besides')), words(sheet.notes.join(' '))] : []),
]

function cutBlocks({ cut, wait, minds }: BenchPaper, say: Say): Block[] {
  if (!cut) return [h2(say('printed.bench.cut')), words(wait)]
  return [
    { block: 'page' },
    h2(say('printed.bench.cut')),
    { block: 'caution', words: cut.caution },
    ...minds.map((one): Block => ({ block: 'caution', words: one })),
    {
      block: 'list',
      as: 'tick',
      items: [{ words: say('printed.bench.released') }, { words: cut.before }],
    },
    { block: 'words', words: cut.legend, as: 'small' },
    ...cut.panels.flatMap(({ heading, drawing, alt, list, notes }): Block[] => [
      h3(heading),
      { block: 'drawing', drawing, told: `${alt.title}. ${alt.description}` },
      ...notes.map(words),
      {
        block: 'list',
        as: 'step',
        items: list.map((line) => ({ words: line.words })),
      },
    ]),
    h3(say('printed.bench.pieces')),
    {
      block: 'list',
      as: 'tick',
      items: cut.pieces.map((piece) => ({ words: piece.words })),
    },
  ]
}

function placeBlocks({ n, pieces, quilts }: BenchPaper, say: Say): Block[] {
  const own = pieces.filter(({ garment }) => garment === n)
  const heading = h2(say('printed.bench.places'))
  if (pieces.length === 0) return [heading, words(say('printed.bench.not_laid'))]
  if (own.length === 0) return [heading, words(say('printed.bench.nowhere'))]
  return [
    heading,
    ...quilts.flatMap((finished, quilt): Block[] => {
      const of = pieces.filter((piece) => piece.quilt === quilt)
      const mine = of.filter(({ garment }) => garment === n)
      if (mine.length === 0) return []
      const at = mine.map(
        (piece) =>
          `${addressWords(piece, quilts.length, say)} (${say(`trade.roles.${piece.role}`)})`,
      )
      return [
        {
          block: 'drawing',
          drawing: quiltOutline(finished, of, n),
          told: say('printed.bench.outline'),
        },
        { block: 'words', words: say('printed.bench.outline'), as: 'small' },
        words(at.join(', ')),
      ]
    }),
  ]
}

/** Everything the bench wants of one garment, to take apart, press, cut and lay; in black, white and grey. */
export function benchPaper(paper: BenchPaper, language: Language): Printed {
  const { say } = language
  const { sheet, pile, at, units, spots } = paper
  const title = say('printed.bench.title', { code: sheet.code })
  return {
    title,
    language: language.code,
    at,
    head: `${sheet.code} · ${say('printed.head', { title: sheet.name, pile })}`,
    pages: pageWords(say),
    measure: measureOf(units, say),
    blocks: [
      { block: 'heading', level: 1, words: `${sheet.code}  ${sheet.name}` },
      { block: 'words', words: `${sheet.sort} · ${say(`grades.${sheet.grade}`)}`, as: 'strong' },
      ...(sheet.wait ? [{ block: 'caution', words: sheet.wait } as const] : []),
      ...pressBlocks(paper, say),
      ...(sheet.drawing
        ? [{ block: 'drawing', drawing: sheet.drawing, told: say('bench.flat') } as const]
        : []),
      { block: 'words', words: sheet.legend, as: 'small' },
      ...(spots.length > 0
        ? [
            h3(say('bench.spots')),
            words(say('bench.spots_hint')),
            {
              block: 'list',
              as: 'tick',
              items: spots.map((spot) => ({ words: spot })),
            } as const,
          ]
        : []),
      ...stepsOf(paper, say),
      ...cutBlocks(paper, say),
      ...placeBlocks(paper, say),
      { block: 'fields', names: [say('bench.notes')] },
      {
        block: 'fields',
        names: ['by', 'seen', 'day'].map((name) => say(`bench.${name}`)),
      },
    ],
  }
}
