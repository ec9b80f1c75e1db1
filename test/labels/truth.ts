import type { FibreKey } from '../../src/textile/fibres.ts'
import type { LanguageCode } from '../../src/textile/languages/types.ts'
import type { IronLevel, LabelReading } from '../../src/textile/reading.ts'

/** `main` is what is to be read; the others are measured apart. */
export const kinds = ['main', 'jacquard', 'covered', 'cyrillic', 'cjk'] as const

export type Kind = (typeof kinds)[number]

export interface TrueShare {
  readonly fibre: FibreKey
  readonly percent: number
}

export interface TrueBlock {
  readonly section: string | null
  readonly fibres: readonly TrueShare[]
}

/** What a photo of a label shows, whether or not it can be read. */
export interface Truth {
  readonly file: string
  readonly kind: Kind
  readonly languages: readonly LanguageCode[]
  readonly blocks: readonly TrueBlock[]
  /** As the words say it; null where no words speak of ironing. */
  readonly iron: IronLevel | null
  /** The printed lines in the order that they are read, parted as they stand. */
  readonly text: string
  /** What makes this photo easy or hard. */
  readonly traits: Readonly<Record<string, string | number | boolean | null>>
}

/**
 * The same make-up, in whatever order its blocks and shares stand. Where both have one block alone,
 * how its part is called does not matter.
 */
export function sameBlocks(a: readonly TrueBlock[], b: readonly TrueBlock[]): boolean {
  const nameless = a.length === 1 && b.length === 1
  const plain = (blocks: readonly TrueBlock[]) =>
    blocks
      .map(({ section, fibres }) => {
        const shares = fibres.map(({ fibre, percent }) => `${fibre} ${percent}`).sort()
        return `${nameless ? '' : section}: ${shares.join(', ')}`
      })
      .sort()
      .join('; ')
  return plain(a) === plain(b)
}

/** What a reading of the truth's own words gets wrong. */
export type Misread = 'blocks' | 'iron'

export function misreadOf(
  { blocks, iron }: Pick<Truth, 'blocks' | 'iron'>,
  reading: LabelReading,
): Misread | null {
  if (!sameBlocks(blocks, reading.blocks)) return 'blocks'
  return reading.iron.level === iron ? null : 'iron'
}
