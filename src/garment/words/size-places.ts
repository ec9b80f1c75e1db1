import type { Size } from '../facts.ts'
import type { Line } from './claims.ts'
import type { Subject } from './kinds.ts'

export interface SaidSize {
  readonly value: Size | { readonly widthIn: number; readonly lengthIn: number }
  readonly sure: boolean
  readonly first: number
  readonly last: number
}

export interface Around {
  readonly subject: Subject
  readonly isBetween: (at: number) => boolean
  readonly isOpen: (at: number) => boolean
}

export const isEnd = (line: Line, at: number, segment: number): boolean => {
  const token = line.tokens[at]
  return !token || token.segment !== segment || token.isMark
}

/** Whether a size mark stands right before: "size", "talla", "a size". */
export function isMarked({ tokens, helps }: Line, first: number): boolean {
  for (let at = first - 1; at >= first - 3 && at >= 0; at -= 1) {
    if (helps.sizeMarks[at]) return true
    if (
      !/^(a|is|es|de|an|the|of|:|-|adult|mens|men's|womens|women's|ladies|us|uk|era|una|un|was|extra|label|etiqueta)$/.test(
        tokens[at]!.isMark ? tokens[at]!.text : tokens[at]!.word,
      )
    )
      return false
  }
  return false
}

/** Whether nothing else stands between the commas around it. */
export function isAlone({ tokens, helps }: Line, first: number, last: number): boolean {
  const { segment } = tokens[first]!
  return tokens.every(
    (token, at) =>
      token.segment !== segment ||
      token.isMark ||
      (at >= first && at <= last) ||
      helps.sizeMarks[at] === true ||
      helps.hedges[at] === true ||
      helps.childish[at] === true ||
      /^(a|is|it's|its|it|es|adult|adulto|mens|men's|womens|women's|ladies|mujer|hombre|senora|fits|like|us|uk|very|size|de|una|un|old|years|months|unisex|or|o|y|and|s|m|l|xl|label|says|i|think|maybe|about)$/.test(
        token.word,
      ),
  )
}

export function kindAhead(line: Line, last: number, { subject, isBetween }: Around): boolean {
  const { tokens } = line
  const { segment } = tokens[last]!
  for (let at = last + 1; at <= last + 7; at += 1) {
    if (isEnd(line, at, segment) && tokens[at]?.text !== '-') return false
    if (subject.own.some(({ first, last: end }) => at >= first && at <= end)) return true
    if (!isBetween(at)) return false
  }
  return false
}

export function kindBehind(line: Line, first: number, { subject, isBetween }: Around): boolean {
  const { tokens, helps } = line
  const { segment } = tokens[first]!
  for (let at = first - 1; at >= first - 7 && at >= 0; at -= 1) {
    const token = tokens[at]!
    if (token.segment !== segment) return false
    if (subject.own.some(({ first: start, last }) => at >= start && at <= last)) return true
    if (
      !isBetween(at) &&
      !helps.people[at] &&
      !/^(de|del|in|a|is|it's|mi|la|el|es|\d+|%|size)$/.test(token.isMark ? token.text : token.word)
    )
      return false
  }
  return false
}

/** A size word is followed by nothing that it could be said of: "large hole" is no size. */
export function standsFree(line: Line, last: number): boolean {
  const { tokens, helps } = line
  const { segment } = tokens[last]!
  const next = tokens[last + 1]
  if (isEnd(line, last + 1, segment) || !next) return true
  if (helps.parts[last + 1]) return false
  return (
    helps.fillers[last + 1] === true ||
    helps.ands[last + 1] === true ||
    /^\d/.test(next.word) ||
    helps.negates[last + 1] === true ||
    helps.people[last + 1] === true
  )
}

/** Whether the garment's word stands right before. */
export const subjectEnds = ({ subject }: Around, at: number): boolean =>
  subject.own.some(({ last }) => last === at - 1)

/** Whether what follows goes on describing the garment, and nothing on it. */
export function describesOn({ tokens, helps }: Line, last: number, { isBetween }: Around): boolean {
  for (let at = last + 1; at <= last + 4; at += 1) {
    if (isEnd({ tokens, helps } as Line, at, tokens[last]!.segment)) return true
    if (helps.parts[at]) return false
    if (!isBetween(at)) return at > last + 1
  }
  return true
}
