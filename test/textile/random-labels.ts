import fc from 'fast-check'
import type { FibreKey } from '../../src/textile/fibres.ts'
import { labelLanguages } from '../../src/textile/languages/all.ts'
import type { IronLevel } from '../../src/textile/reading.ts'
import { type Phrases, phrases } from './composed-labels.ts'

export interface RandomLabel {
  readonly text: string
  /** "share fibre", in the order of the letters. */
  readonly shares: readonly string[]
  readonly level: IronLevel
  /** The level, then s, p and r, as in the cases. */
  readonly iron: string
}

// Names that mean one thing; of two keys for kinds of one fibre the plainer.
const keys = [
  'cotton',
  'wool',
  'silk',
  'hemp',
  'viscose',
  'modal',
  'lyocell',
  'polyester',
  'polyamide',
  'acrylic',
] as const satisfies readonly FibreKey[]

// Numbers that are no shares and lines that say nothing of ironing.
const decoys = [
  'RN 12345 CA 67890',
  'Style 60/40',
  'Lot 0520',
  '20% off',
  '-30%',
  'Shrinkage max. 5%',
  'Size 110',
  'Made in Portugal',
  'EN 14682:2014',
  '±3%',
  '12/2019',
  '• • •',
]

const writings = [
  { write: (share: string, name: string) => `${share}% ${name}`, join: ['\n', ', ', ' ', ' / '] },
  { write: (share: string, name: string) => `${name} ${share}%`, join: ['\n', ', ', ' ', ' / '] },
  { write: (share: string, name: string) => `${name}: ${share} %`, join: ['\n', ', ', '; '] },
  // With anything but a line between them the next share would stand beside the name.
  { write: (share: string, name: string) => `${share} %\n${name.toUpperCase()}`, join: ['\n'] },
] as const

/** The parts of a whole, percent. */
const shareLists = fc
  .array(fc.integer({ min: 1, max: 99 }), { maxLength: 3 })
  .map((cuts) => [0, ...new Set(cuts.sort((a, b) => a - b)), 100])
  .map((cuts) => cuts.slice(1).map((cut, at) => cut - cuts[at]!))

const namesOf = ({ code }: Phrases, key: FibreKey): readonly string[] =>
  labelLanguages.find((language) => language.code === code)!.fibres[key]!.names

const levels = ['none', 'cool', 'warm', 'hot'] as const

// Ironing lines that say more than a level, by what the level must be.
const further = [
  { level: 'cool', line: 'noSteam', iron: 'cool s' },
  { level: 'warm', line: 'reverse', iron: 'warm r' },
] as const

/** Labels of real names in one to five languages, with care, numbers that are no shares, in any order. */
export const randomLabels: fc.Arbitrary<RandomLabel> = fc
  .record({
    languages: fc.shuffledSubarray([...phrases], { minLength: 1, maxLength: 5 }),
    shares: shareLists,
    fibres: fc.shuffledSubarray([...keys], { minLength: 4, maxLength: 4 }),
    level: fc.constantFrom(...levels),
    writing: fc.constantFrom(...writings),
    ends: fc.constantFrom('\n', '. ', '; '),
    slashed: fc.boolean(),
    saysMore: fc.boolean(),
    sparesPrint: fc.boolean(),
    careFirst: fc.boolean(),
    lost: fc.shuffledSubarray(decoys, { maxLength: 3 }),
    pick: fc.array(fc.nat(99), { minLength: 40, maxLength: 40 }),
  })
  .map((given) => {
    const { languages, shares, fibres, level, writing, ends, slashed, careFirst, lost } = given
    const more = given.saysMore ? further.find((one) => one.level === level) : undefined
    const sparesPrint = given.sparesPrint && level !== 'none' && more?.line !== 'reverse'
    const picks = [...given.pick]
    const one = <T>(of: readonly T[]): T => of[(picks.pop() ?? 0) % of.length]!
    const { write } = writing
    const join = one(writing.join)
    const made = shares.map((share, at) => ({ share: String(share), key: fibres[at]! }))
    const makeUps = slashed
      ? made
          .map(({ share, key }) =>
            write(share, languages.map((words) => one(namesOf(words, key))).join('/')),
          )
          .join('\n')
      : languages
          .map((words) =>
            made.map(({ share, key }) => write(share, one(namesOf(words, key)))).join(join),
          )
          .join('\n')
    const care = languages.map((words) => {
      const lines = [words.wash, words.noBleach, words.noTumble]
      const at = one([0, 1, 2, 3])
      const ironing = more ? words[more.line] : one(words[level])
      const told = [ironing, ...(sparesPrint ? [words.print] : [])]
      return [...lines.slice(0, at), ...told, ...lines.slice(at)].join(ends)
    })
    const parts = careFirst ? [...care, makeUps] : [makeUps, ...care]
    for (const line of lost) parts.splice(one([0, 1, 2]), 0, line)
    return {
      text: parts.join('\n'),
      shares: made.map(({ share, key }) => `${share} ${key}`).sort(),
      level,
      iron: `${more?.iron ?? level}${sparesPrint ? ' p' : ''}`,
    }
  })
