import type { Chance } from '../help/chance.ts'
import type { Kind } from './truth.ts'
import { wrap } from './wrap.ts'

export const glyphs = ['tub', 'triangle', 'square', 'iron', 'circle'] as const

export interface Glyph {
  readonly glyph: (typeof glyphs)[number]
  readonly crossed: boolean
  readonly dots: number
}

export type Printed =
  | { readonly is: 'text' | 'large' | 'share'; readonly text: string }
  | { readonly is: 'row'; readonly name: string; readonly percent: string }
  | { readonly is: 'glyphs'; readonly glyphs: readonly Glyph[] }
  | { readonly is: 'gap' }

export type Layout = 'strip' | 'single' | 'loop' | 'columns' | 'slashed'

/** How one label sets its words, the same in all of its languages. */
export interface Setting {
  readonly letters: 'upper' | 'title' | 'lower'
  readonly form: 'share-first' | 'name-first' | 'table'
  readonly sign: '%' | ' %'
  readonly between: 'line' | ', ' | ' ' | ' - '
  readonly marks: 'none' | 'plain' | 'colon' | 'line'
  readonly hyphens: 'long-words' | 'any-words'
  readonly width: number
}

export function drawSetting(chance: Chance, kind: Kind, layout: Layout): Setting {
  const form = chance.weighed({ 'share-first': 68, 'name-first': 22, table: 10 })
  return {
    letters: chance.weighed({ upper: 58, title: 28, lower: 14 }),
    form: form === 'table' && layout === 'slashed' ? 'share-first' : form,
    sign: chance.happens(0.22) ? ' %' : '%',
    between: kind === 'cjk' ? 'line' : chance.one(['line', 'line', ', ', ' ', ' - '] as const),
    marks: layout === 'strip' ? chance.one(['none', 'plain', 'colon', 'line'] as const) : 'none',
    hyphens: chance.happens(0.15) ? 'any-words' : 'long-words',
    width: layout === 'columns' ? chance.whole(16, 22) : chance.whole(15, 32),
  }
}

export const inLetters = (text: string, { letters }: Setting, language?: string): string =>
  letters === 'upper'
    ? text.toLocaleUpperCase(language)
    : letters === 'lower'
      ? text.toLocaleLowerCase(language)
      : text.replaceAll(
          /(^|[\s/])(\p{L})/gu,
          (_, before: string, letter: string) => before + letter.toLocaleUpperCase(language),
        )

/** Sets words on lines of the label's width. */
export const onLines = (set: Setting, text: string, language?: string): Printed[] =>
  wrap(inLetters(text, set, language), set.width, set.hyphens).map((line) => ({
    is: 'text',
    text: line,
  }))
