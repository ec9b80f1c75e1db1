import type { Pile } from '../../intake/pile.ts'
import type { TaggedGarment } from '../../papers/printed-tags.ts'
import { kindWords, nameOf, type Reader, standing } from './present-garment.ts'

/** The garments that travel: all that were not left out and are not best kept at home. */
export const taggedOf = (pile: Pick<Pile, 'garments'>, reader: Reader): TaggedGarment[] =>
  standing(pile)
    .filter(({ grading }) => grading?.grade !== 'home')
    .map((garment) => {
      const name = nameOf(garment, reader)
      const kind = kindWords(garment, reader) ?? ''
      return { code: garment.code, name, kind: kind === name ? '' : kind }
    })
