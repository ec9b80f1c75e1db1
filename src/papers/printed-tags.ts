import { checkedTag } from '../base/tag.ts'
import type { Language, Say } from '../words/words.ts'
import type { Printed } from './printed.ts'
import { pageWords } from './printed-packing.ts'

/** A garment that gets a tag; `kind` in the reader's language, empty where it is the name. */
export interface TaggedGarment {
  readonly code: string
  readonly name: string
  readonly kind: string
}

/** What a paper that is drawn to scale is measured by. */
export const measureOf = (units: 'inches' | 'centimetres', say: Say): Printed['measure'] => ({
  words: say(`printed.measure.${units}`),
  long: units === 'inches' ? 50.8 : 50,
})

export interface TagSheet {
  readonly pile: string
  readonly at: number
  readonly garments: readonly TaggedGarment[]
  /** Where the link of a tag leads. */
  readonly linkOf: (code: string) => string
  readonly units: 'inches' | 'centimetres'
}

/** Two by five: ten tags a page, on Letter and on A4. */
const tagHigh = 45

/** Wider than has been read at 200 dots to the inch: 15 mm. A pinned tag is bent and rubbed. */
const codeSide = 20

/** A tag for each garment, to be cut out and pinned: its number, its name, and a code that opens it. */
export function tagSheet(
  { pile, at, garments, linkOf, units }: TagSheet,
  language: Language,
): Printed {
  const { say } = language
  const title = say('printed.tags.title')
  return {
    title,
    language: language.code,
    at,
    head: say('printed.head', { title, pile }),
    pages: pageWords(say),
    measure: measureOf(units, say),
    blocks: [
      { block: 'words', words: say('printed.tags.help') },
      {
        block: 'cards',
        columns: 2,
        high: tagHigh,
        codeSide,
        cards: garments.map(({ code, name, kind }) => ({
          big: checkedTag(code),
          lines: [name, kind].filter((line) => line !== ''),
          code: linkOf(checkedTag(code)),
        })),
      },
    ],
  }
}
