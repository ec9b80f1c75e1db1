import { type Figure, practice } from '../../base/figure.ts'
import type { Size } from '../facts.ts'
import type { Line } from './claims.ts'
import {
  type Around,
  isAlone,
  isMarked,
  kindAhead,
  kindBehind,
  type SaidSize,
} from './size-places.ts'

/** The smallest size that fits a baby of so many months. A label's one number is the most it fits. */
const monthSizes: readonly (readonly [most: number, size: Size])[] = [
  [3, '0-3m'],
  [6, '3-6m'],
  [12, '6-12m'],
  [18, '12-18m'],
  [24, '18-24m'],
]

/** By years, the usual letters of children's sizes. Common practice, no source. */
const yearSizes: readonly (readonly [most: number, size: Size, sure: boolean])[] = [
  [1, '12-18m', false],
  [2, '2T', true],
  [3, '3T', true],
  [4, '4T', true],
  [5, '5T', true],
  [8, 'youth-S', true],
  [9, 'youth-M', false],
  [12, 'youth-M', true],
  [13, 'youth-L', false],
  [16, 'youth-L', true],
]

/** Which size months and years stand for. */
export const ageSizeFigures: readonly Figure[] = [
  ...monthSizes.map(([most, size]) => ({
    figure: `own words/months up to, ${size}`,
    value: most,
    unit: 'months' as const,
    source: practice,
  })),
  ...yearSizes.map(([most, size]) => ({
    figure: `own words/years up to ${most}, ${size}`,
    value: most,
    unit: 'years' as const,
    source: practice,
  })),
]

const months = /^(months?|mths?|mos?|mo|m|meses|mes)$/
const years = /^(years?|yrs?|yo|y|anos?|anitos)$/

/** Years and months of a life, and of no size: "when he was 3 years old", "18 months ago". */
const before4 =
  /^(was|were|when|turned|hace|tenia|cumplio|cuando|for|during|durante|married|vivio|lived|since|hasta|until|passed|died|murio|wore|llevo|uso|every|at|con|over|mas|than|nearly|almost|last|after)$/
const after2 = /^(ago|old|later|after|when|tenia|despues)$/

/** "18 months", "6-12m", "age 7", "talla 4 años". */
export function countedSizes(line: Line, around: Around): SaidSize[] {
  const { tokens, helps } = line
  const found: SaidSize[] = []
  for (let at = 0; at < tokens.length; at += 1) {
    const glued = /^(\d{1,2})(m|mo|mos|mths|months|meses|y|yrs|yr|años|anos|a)$/.exec(
      tokens[at]!.word,
    )
    const number = glued
      ? Number(glued[1])
      : /^\d{1,2}$/.test(tokens[at]!.word)
        ? Number(tokens[at]!.word)
        : null
    if (number === null) continue
    let last = at
    let most = number
    let unit = glued?.[2] ?? ''
    // "6 to 12 months", "6-12m", "3/4 years".
    if (
      /^(-|‐|‑|–|to|a|\/)$/.test(
        tokens[at + 1]?.isMark ? tokens[at + 1]!.text : (tokens[at + 1]?.word ?? ''),
      )
    ) {
      const second = /^(\d{1,2})(m|mo|mos|mths|months|meses|y|yrs|yr|anos)?$/.exec(
        tokens[at + 2]?.word ?? '',
      )
      if (second && Number(second[1]) > number) {
        most = Number(second[1])
        unit = second[2] ?? unit
        last = at + 2
      }
    }
    const next = tokens[last + 1]
    if (
      unit === '' &&
      next &&
      next.segment === tokens[last]!.segment &&
      (months.test(next.word) || years.test(next.word))
    ) {
      unit = next.word
      last += 1
    }
    const before = tokens[at - 1]?.word ?? ''
    const isAged =
      /^(age|ages|aged|edad)$/.test(before) &&
      !/^(at|since|from|by|la)$/.test(tokens[at - 2]?.word ?? '')
    const marked = isMarked(line, at) || isAged
    const isLife =
      tokens.slice(Math.max(0, at - 4), at).some(({ word }) => before4.test(word)) ||
      tokens.slice(last + 1, last + 3).some(({ word }) => after2.test(word))
    const near =
      marked ||
      isAlone(line, at, last) ||
      kindAhead(line, last, around) ||
      kindBehind(line, at, around)
    if (last > at && unit === '' && !marked) {
      at = last
      continue
    }
    const said = sizeOf(
      most,
      unit,
      isAged,
      helps.childish.some((one) => one),
    )
    if (
      said &&
      (near || (months.test(unit) && unit.length > 1 && !isLife)) &&
      (marked || !isLife)
    ) {
      found.push({ ...said, sure: said.sure && near, first: isAged ? at - 1 : at, last })
    }
    at = last
  }
  return found
}

function sizeOf(
  most: number,
  unit: string,
  isAged: boolean,
  childish: boolean,
): { value: Size; sure: boolean } | null {
  if (months.test(unit)) {
    const row = monthSizes.find(([until]) => most <= until)
    return row ? { value: row[1], sure: true } : null
  }
  if (!years.test(unit) && !isAged && !(childish && unit === '' && most >= 2)) return null
  if (unit === '' && !isAged) return null
  const row = yearSizes.find(([until]) => most <= until)
  return row ? { value: row[1], sure: row[2] } : null
}

/** "22 x 30 inches" of the whole garment, and not of a picture on it. */
export function measuredSizes({ tokens, helps }: Line): SaidSize[] {
  const found: SaidSize[] = []
  for (let at = 0; at + 3 < tokens.length; at += 1) {
    const [a, by, b] = [tokens[at]!, tokens[at + 1]!, tokens[at + 2]!]
    const number = /^\d{1,3}(?:\.\d+)?$/
    if (
      !number.test(a.word) ||
      !number.test(b.word) ||
      !/^(x|by|×|por)$/.test(by.isMark ? by.text : by.word)
    )
      continue
    const unit = tokens[at + 3]!
    const inches = /^(in|inch|inches|pulgadas|")$/.test(unit.isMark ? unit.text : unit.word)
    const centimetres = /^(cm|cms|centimetres|centimeters|centimetros)$/.test(unit.word)
    if (!inches && !centimetres) continue
    if (tokens.some(({ segment }, one) => segment === a.segment && helps.parts[one])) continue
    const scale = inches ? 1 : 1 / 2.54
    const [widthIn, lengthIn] = [a, b].map(({ word }) => Math.round(Number(word) * scale * 4) / 4)
    if (widthIn! <= 0 || lengthIn! <= 0 || widthIn! > 200 || lengthIn! > 200) continue
    found.push({
      value: { widthIn: widthIn!, lengthIn: lengthIn! },
      sure: false,
      first: at,
      last: at + 3,
    })
  }
  return found
}
