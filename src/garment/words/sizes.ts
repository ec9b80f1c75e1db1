import type { Size } from '../facts.ts'
import type { Claim, Line } from './claims.ts'
import { countedSizes, measuredSizes } from './counted-sizes.ts'
import {
  type Around,
  describesOn,
  isAlone,
  isMarked,
  kindAhead,
  kindBehind,
  type SaidSize,
  standsFree,
  subjectEnds,
} from './size-places.ts'

const letters: Readonly<Record<string, Size>> = { s: 'S', m: 'M', l: 'L' }
const spanishLetters: Readonly<Record<string, Size>> = { g: 'L', ch: 'S' }
const youth: Readonly<Partial<Record<Size, Size>>> = {
  XS: 'youth-XS',
  S: 'youth-S',
  M: 'youth-M',
  L: 'youth-L',
  XL: 'youth-XL',
}

/** Every size that the line tells of the garment, in its order. */
export function sizesOf(line: Line, claims: readonly Claim[], around: Around): SaidSize[] {
  const worded = claims.flatMap((claim) => (claim.negated ? [] : wordSize(line, claim, around)))
  const all = [
    ...worded,
    ...letterSizes(line, claims, around),
    ...countedSizes(line, around),
    ...measuredSizes(line),
  ]
  return all.filter(({ first }) => around.isOpen(first)).sort((a, b) => a.first - b.first)
}

const certain = /^(2XL|3XL|4XL|5XL|2T|3T|4T|5T|youth-.*)$/

function wordSize(line: Line, claim: Claim, around: Around): SaidSize[] {
  const { tokens, helps } = line
  const { first, last, sure } = claim
  const value = claim.value as Size
  const word = tokens[first]!.word
  const at = { first, last }
  const marked = isMarked(line, first) || helps.sizeMarks[first] === true
  if (certain.test(value) || /^(xl|xs)$/.test(word))
    return [{ value: forChild(line, claim, value), sure, ...at }]
  if (value === '0-3m') {
    const worn =
      marked ||
      isAlone(line, first, last) ||
      kindAhead(line, last, around) ||
      kindBehind(line, first, around) ||
      tokens[last + 1]?.word === 'size' ||
      tokens[last + 1]?.word === 'outfit'
    return worn && !/^(a|was|were|era|as)$/.test(tokens[first - 1]?.word ?? '')
      ? [{ value, sure, ...at }]
      : []
  }
  if (marked) return [{ value: forChild(line, claim, value), sure: true, ...at }]
  if (isAlone(line, first, last)) return [{ value: forChild(line, claim, value), sure, ...at }]
  const isColourNext =
    tokens[last + 1] !== undefined &&
    /^(blue|green|grey|gray|brown|pink|red|purple|wash|weight|rare|thick|thickness|heat|term|well|to)$/.test(
      tokens[last + 1]!.word,
    )
  const isBehind = subjectEnds(around, first)
  if (value === 'M' && isColourNext && !isBehind) return []
  if (line.language === 'en' && kindAhead(line, last, around))
    return [{ value: forChild(line, claim, value), sure, ...at }]
  if (
    kindBehind(line, first, around) &&
    (standsFree(line, last) || (isBehind && describesOn(line, last, around)))
  ) {
    const isPlain =
      line.language === 'es' && /^(grande|pequen|chic)/.test(word) && word !== 'mediana'
    return [{ value: forChild(line, claim, value), sure: sure && !isPlain, ...at }]
  }
  if (helps.hedges[first - 1] && standsFree(line, last)) return [{ value, sure: false, ...at }]
  return []
}

/** A child's M is another size than a grown-up's. */
function forChild(
  { tokens, helps }: Line,
  { first, last }: { first: number; last: number },
  value: Size,
): Size {
  const { segment } = tokens[first]!
  const near = tokens.some(
    (token, at) => token.segment === segment && helps.childish[at] && at !== first && at !== last,
  )
  return near ? (youth[value] ?? value) : value
}

function letterSizes(line: Line, claims: readonly Claim[], around: Around): SaidSize[] {
  const { tokens, language } = line
  return tokens.flatMap((token, at): SaidSize[] => {
    const value =
      letters[token.word] ?? (language === 'es' ? spanishLetters[token.word] : undefined)
    if (!value || claims.some(({ first, last }) => at >= first && at <= last)) return []
    // The hyphen or apostrophe of "t-s…" and the like makes no size.
    const isGlued =
      (tokens[at - 1]?.text === '-' && tokens[at - 1]!.to === token.from) ||
      (tokens[at + 1]?.text === '-' && tokens[at + 1]!.from === token.to)
    if (isGlued) return []
    const said = { value: forChild(line, { first: at, last: at }, value), first: at, last: at }
    if (isMarked(line, at)) return [{ ...said, sure: true }]
    if (isAlone(line, at, at)) return [{ ...said, sure: letters[token.word] !== undefined }]
    const isCapital = token.text === token.text.toUpperCase()
    if (isCapital && kindBehind(line, at, around) && standsFree(line, at))
      return [{ ...said, sure: true }]
    if (isCapital && kindAhead(line, at, around) && line.language === 'en')
      return [{ ...said, sure: true }]
    return []
  })
}
