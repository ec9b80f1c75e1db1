import type { IronLevel, LabelReading, ProblemCode } from '../../src/textile/reading.ts'
import { type Kind, kinds, sameBlocks, type Truth } from './truth.ts'

/** How photos of one kind were read. Percentages are of its photos unless told otherwise. */
export interface Score {
  readonly kind: Kind
  readonly photos: number
  readonly compositionExactPercent: number
  /** Sure of a make-up that is another. */
  readonly sureAndWrongPercent: number
  /** Of those whose make-up is right, how many are sure of it; null where none is right. */
  readonly sureAmongRightPercent: number | null
  readonly ironExactPercent: number
  /** Photos read as allowing a hotter iron than their words do. */
  readonly readHotter: number
  /** Photos read as speaking of ironing where no word does. */
  readonly ironInvented: number
  /** Every photo whose make-up or iron was read wrong. */
  readonly wrong: readonly Wrong[]
  /** Every photo whose make-up was read right and not surely. */
  readonly unsure: readonly Unsure[]
}

export interface Wrong {
  readonly file: string
  readonly blocks: boolean
  readonly iron: boolean
  readonly sure: boolean
}

export interface Unsure {
  readonly file: string
  readonly why: readonly ProblemCode[]
}

const coldestFirst: readonly (IronLevel | null)[] = ['none', 'cool', 'warm', 'hot']

/**
 * Holds readings against truths, kind by kind; kinds without photos are left out.
 * `readings` are by the truth's `file`; throws where a photo has none.
 */
export function score(
  truths: readonly Truth[],
  readings: ReadonlyMap<string, LabelReading>,
): Score[] {
  return kinds.flatMap((kind) => {
    const own = truths.filter((truth) => truth.kind === kind)
    return own.length === 0 ? [] : [scoreOf(kind, own, readings)]
  })
}

function scoreOf(
  kind: Kind,
  truths: readonly Truth[],
  readings: ReadonlyMap<string, LabelReading>,
): Score {
  const compared = truths.map((truth) => {
    const reading = readings.get(truth.file)
    if (!reading) throw new Error(`There is no reading of ${truth.file}.`)
    const level = reading.iron.level
    return {
      file: truth.file,
      blocks: sameBlocks(truth.blocks, reading.blocks),
      iron: level === truth.iron,
      sure: reading.sure,
      why: reading.problems.map(({ code }) => code),
      hotter: truth.iron !== null && coldestFirst.indexOf(level) > coldestFirst.indexOf(truth.iron),
      invented: truth.iron === null && level !== null,
    }
  })
  const count = (holds: (one: (typeof compared)[number]) => boolean) =>
    compared.filter(holds).length
  const percent = (holds: (one: (typeof compared)[number]) => boolean) =>
    (100 * count(holds)) / compared.length
  const right = count(({ blocks }) => blocks)

  return {
    kind,
    photos: compared.length,
    compositionExactPercent: percent(({ blocks }) => blocks),
    sureAndWrongPercent: percent(({ sure, blocks }) => sure && !blocks),
    sureAmongRightPercent:
      right === 0 ? null : (100 * count(({ sure, blocks }) => sure && blocks)) / right,
    ironExactPercent: percent(({ iron }) => iron),
    readHotter: count(({ hotter }) => hotter),
    ironInvented: count(({ invented }) => invented),
    wrong: compared
      .filter(({ blocks, iron }) => !blocks || !iron)
      .map(({ file, blocks, iron, sure }) => ({ file, blocks: !blocks, iron: !iron, sure })),
    unsure: compared
      .filter(({ blocks, sure }) => blocks && !sure)
      .map(({ file, why }) => ({ file, why })),
  }
}
