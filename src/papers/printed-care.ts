import type { Recipient } from '../garment/facts.ts'
import type { FinishedCare } from '../garment/finished-care.ts'
import { washC } from '../garment/finished-care.ts'
import type { Language, Say } from '../words/words.ts'
import { childCautions } from './checklist.ts'
import type { Block, Printed } from './printed.ts'
import { pageWords } from './printed-packing.ts'

export interface CarePaper {
  readonly pile: string
  readonly at: number
  readonly care: FinishedCare
  readonly recipient: Recipient
  /** "K7-2 Blue flannel" of a garment's number. */
  readonly nameOf: (n: number) => string
  readonly shop: string
}

/** What the label says, a line each. */
export function careLines({ wash, drying, ceilingC }: FinishedCare, say: Say): string[] {
  return [
    say(`printed.care.wash.${wash}`, { celsius: washC[wash] ?? 0 }),
    say('printed.care.bleach'),
    ...(wash === 'none' ? [] : [say(`printed.care.dry.${drying}`)]),
    say('printed.care.tumble'),
    ceilingC === null
      ? say('printed.care.no_iron')
      : say('printed.care.iron', { celsius: ceilingC }),
  ]
}

/** So many labels to a page: one to sew in, the rest to spare. */
const labels = 10
const labelHigh = 40

/** The finished quilt's care: why it is so, for the workshop and the customer, and labels to sew in. */
export function carePaper(paper: CarePaper, language: Language): Printed {
  const { say } = language
  const { care, pile, nameOf, shop } = paper
  const lines = careLines(care, say)
  const title = say('printed.care.title')
  const because: Block[] = [
    ...(care.washBy.length > 0
      ? [
          {
            block: 'words',
            words: say('printed.care.wash_by', { by: care.washBy.map(nameOf).join('; ') }),
          } as const,
        ]
      : []),
    ...(care.ironBy.length > 0
      ? [
          {
            block: 'words',
            words: say('printed.care.iron_by', { by: care.ironBy.map(nameOf).join('; ') }),
          } as const,
        ]
      : []),
  ]
  return {
    title,
    language: language.code,
    at: paper.at,
    head: say('printed.head', { title, pile }),
    pages: pageWords(say),
    measure: null,
    blocks: [
      { block: 'heading', level: 1, words: title },
      { block: 'list', as: 'plain', items: lines.map((words) => ({ words })) },
      ...because,
      { block: 'caution', words: say('printed.care.first') },
      ...childCautions(paper.recipient, say).map((words): Block => ({ block: 'caution', words })),
      { block: 'page' },
      { block: 'heading', level: 2, words: say('printed.care.labels') },
      { block: 'words', words: say('printed.care.labels_help'), as: 'small' },
      {
        block: 'cards',
        columns: 2,
        high: labelHigh,
        cards: Array.from({ length: labels }, () => ({
          big: shop,
          lines: [say('printed.care.made', { pile }), `${lines.join('. ')}.`],
        })),
      },
    ],
  }
}
