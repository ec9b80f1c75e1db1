import type { Language } from '../words/words.ts'
import type { Block, Printed } from './printed.ts'
import { pageWords } from './printed-packing.ts'
import type { DrawnQuilt } from './quilt-kept.ts'
import { garmentsIn, quiltTitle } from './quilt-words.ts'

export interface KeepsakeGarment {
  readonly n: number
  readonly name: string
  /** Empty: none was told. */
  readonly story: string
}

export interface Keepsake {
  readonly pile: string
  readonly at: number
  readonly quilts: readonly DrawnQuilt[]
  readonly garments: readonly KeepsakeGarment[]
  readonly shop: string
}

/** The more there is to tell, the smaller the quilt, so that most piles stay on one page; mm. */
function pictureHigh(garments: readonly KeepsakeGarment[]): number {
  const lines = garments.reduce((sum, { story }) => sum + 1 + Math.ceil(story.length / 85), 0)
  return Math.max(90, Math.min(160, 200 - lines * 5.5))
}

function quiltBlocks(drawn: DrawnQuilt, { garments }: Keepsake, { say }: Language): Block[] {
  const counts = garmentsIn(drawn.quilt)
  const own = garments.filter(({ n }) => counts.has(n))
  return [
    {
      block: 'quilt',
      quilt: drawn.quilt,
      told: quiltTitle(drawn, say),
      most: pictureHigh(own),
    },
    {
      block: 'table',
      head: ['', ''],
      widths: [0.07, 0.93],
      rows: own.map(({ n, name, story }) => [String(n), story === '' ? name : `${name}. ${story}`]),
    },
  ]
}

/** The finished quilt with its pieces numbered, and beside it whose each was: to frame, or to fold in with it. */
export function keepsake(paper: Keepsake, language: Language): Printed {
  const { say } = language
  const title = say('printed.keepsake.title')
  return {
    title,
    language: language.code,
    at: paper.at,
    head: paper.shop,
    pages: pageWords(say),
    measure: null,
    blocks: paper.quilts.flatMap((drawn, n): Block[] => [
      ...(n > 0 ? [{ block: 'page' } as const] : []),
      {
        block: 'heading',
        level: 1,
        words:
          paper.quilts.length > 1
            ? say('quilt.nth', { n: n + 1, count: paper.quilts.length })
            : title,
      },
      ...quiltBlocks(drawn, paper, language),
    ]),
  }
}
