import type { Block, Printed } from '../papers/printed.ts'
import type { Language } from '../words/words.ts'
import type { Link } from './chat/view.ts'

/** A paper on the screen. */
export interface PrintedPage {
  readonly page: 'printed'
  readonly title: string
  /** Where the paper itself begins with none. */
  readonly heading: string | null
  readonly blocks: readonly Block[]
  readonly back: Link
  /** The PDF on each sheet, and pages that go with it. */
  readonly ways: readonly Link[]
  readonly waysName: string
}

export const printedPage = (
  { title, blocks }: Printed,
  {
    pdf,
    back,
    beside = [],
    language: { say },
  }: { pdf: string; back: Link; beside?: readonly Link[]; language: Language },
): PrintedPage => ({
  page: 'printed',
  title,
  heading: blocks.some((block) => block.block === 'heading' && block.level === 1) ? null : title,
  blocks,
  back,
  ways: [
    ...(['letter', 'a4'] as const).map((paper) => ({
      label: say(`printed.sheets.${paper}`),
      href: `${pdf}?paper=${paper}`,
    })),
    ...beside,
  ],
  waysName: say('printed.sheets.title'),
})
