import type { Facts, Recipient } from '../garment/facts.ts'
import type { Language, Say } from '../words/words.ts'
import { childCautions } from './checklist.ts'
import { addressWords, type PlacedPiece } from './piece-places.ts'
import type { Block, Printed } from './printed.ts'
import { pageWords } from './printed-packing.ts'

export interface QuiltingGarment {
  readonly n: number
  readonly code: string
  readonly name: string
  readonly facts: Facts
  readonly ceilingC: number | null
}

export interface QuiltingSheet {
  readonly pile: string
  readonly at: number
  readonly recipient: Recipient
  readonly pieces: readonly PlacedPiece[]
  readonly quilts: number
  /** Those that have pieces in a quilt. */
  readonly garments: readonly QuiltingGarment[]
}

/** A needle's holes stay in these for good. Common practice, no source. */
export const keepsHoles = ({ surface, printMake }: Facts): boolean =>
  surface === 'leather' || surface === 'film' || printMake === 'film' || printMake === 'unknown'

export type Needle = 'stretch' | 'jeans' | 'fine' | 'quilting'

/** The needles that the cloths want, each for its own; common practice, no source. */
export function needleFor({ stretch, surface, weight, kind }: Facts): Needle {
  if (stretch === 'much' || stretch === 'two-way' || surface === 'knit') return 'stretch'
  if (kind === 'jeans' || weight === 'heavy') return 'jeans'
  return weight === 'fine' ? 'fine' : 'quilting'
}

const named = (garments: readonly QuiltingGarment[]): string =>
  garments.map(({ code, name }) => `${code} ${name}`).join('; ')

function coldest(garments: readonly QuiltingGarment[], say: Say): Block[] {
  const least = Math.min(...garments.map(({ ceilingC }) => ceilingC ?? 0))
  const by = named(garments.filter(({ ceilingC }) => (ceilingC ?? 0) === least))
  const words =
    least > 0
      ? say('printed.quilting.coldest', { celsius: least, by })
      : say('printed.quilting.no_iron', { by })
  return [
    { block: 'heading', level: 2, words: say('printed.quilting.heat') },
    { block: 'caution', words },
    { block: 'words', words: say('printed.bench.never_above') },
  ]
}

function keptOff({ garments, pieces, quilts }: QuiltingSheet, say: Say): Block[] {
  const off = garments.filter(({ facts }) => keepsHoles(facts))
  return [
    { block: 'heading', level: 2, words: say('printed.quilting.through') },
    { block: 'caution', words: say('printed.quilting.no_stitch') },
    off.length === 0
      ? { block: 'words', words: say('printed.quilting.none_off') }
      : {
          block: 'list',
          as: 'tick',
          items: off.map(({ n, code, name }) => ({
            words: `${code} ${name}`,
            notes: [
              pieces
                .filter(({ garment }) => garment === n)
                .map((piece) => addressWords(piece, quilts, say))
                .join(', '),
            ],
          })),
        },
  ]
}

function needles(garments: readonly QuiltingGarment[], say: Say): Block[] {
  const kinds = (['stretch', 'jeans', 'fine', 'quilting'] as const).filter((needle) =>
    garments.some(({ facts }) => needleFor(facts) === needle),
  )
  return [
    { block: 'heading', level: 2, words: say('printed.quilting.needle') },
    {
      block: 'rows',
      rows: kinds.map((needle) => ({
        name: say(`printed.quilting.needles.${needle}`),
        words: named(garments.filter(({ facts }) => needleFor(facts) === needle)),
      })),
    },
    { block: 'words', words: say('printed.quilting.needle_help'), as: 'small' },
  ]
}

/** Lines to write on. */
const broken = 4

/** For who quilts: what governs the heat, where no stitch may go, the needles, and what metal is counted. */
export function quiltingSheet(sheet: QuiltingSheet, language: Language): Printed {
  const { say } = language
  const title = say('printed.quilting.title')
  const count = (name: string): string => say(`printed.quilting.${name}`)
  return {
    title,
    language: language.code,
    at: sheet.at,
    head: say('printed.head', { title, pile: sheet.pile }),
    pages: pageWords(say),
    measure: null,
    blocks: [
      { block: 'heading', level: 1, words: title },
      ...childCautions(sheet.recipient, say).map((words): Block => ({ block: 'caution', words })),
      ...coldest(sheet.garments, say),
      ...keptOff(sheet, say),
      ...needles(sheet.garments, say),
      { block: 'heading', level: 2, words: count('metal') },
      { block: 'words', words: count('metal_help') },
      {
        block: 'table',
        toFill: true,
        head: [count('what'), count('before'), count('after'), count('initials')],
        widths: [0.34, 0.22, 0.22, 0.22],
        rows: ['needles', 'pins', 'clips', 'blades'].map((one) => [
          say(`printed.quilting.counted.${one}`),
          '',
          '',
          '',
        ]),
      },
      { block: 'heading', level: 2, words: count('broken') },
      { block: 'caution', words: count('broken_help') },
      {
        block: 'table',
        toFill: true,
        head: [count('when'), count('where'), count('found'), count('initials')],
        widths: [0.2, 0.3, 0.28, 0.22],
        rows: Array.from({ length: broken }, () => ['', '', '', '']),
      },
      {
        block: 'list',
        as: 'tick',
        items: ['magnet', 'felt', 'trims'].map((one) => ({
          words: say(`printed.quilting.last.${one}`),
        })),
      },
      { block: 'fields', names: [say('bench.seen'), say('bench.day')] },
    ],
  }
}
