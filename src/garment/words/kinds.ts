import type { Claim, Line } from './claims.ts'

/** What the line is about. */
export interface Subject {
  /** The garment's kind; null: none is named. */
  readonly kind: Claim | null
  /** Every place where that garment, or another, is named. */
  readonly named: readonly Claim[]
  /** Those of the garment itself. */
  readonly own: readonly Claim[]
  /** The token from which on another garment is told of; the line's length: none is. */
  readonly until: number
  readonly several: boolean
}

/** Behind these a garment's word is part of another thing: "coat hanger", "t-shirt quilt". */
const things: ReadonlySet<string> = new Set(
  'quilt fabric material clip pin hanger hook rack code rehearsal dye box maker store shop club brand season party shoes bag colcha percha armario closet drawer'.split(
    ' ',
  ),
)

const companions: ReadonlySet<string> = new Set(['with', 'con', 'w'])
const more: ReadonlySet<string> = new Set(
  'another also one other otra otro tambien otras otros'.split(' '),
)

/** Which garment the line is about, of all that it names; `isOpen`: whether a token tells something. */
export function subjectOf(
  line: Line,
  claims: readonly Claim[],
  isBetween: (at: number) => boolean,
): Subject {
  const { tokens } = line
  const named = compounds(
    line,
    claims.filter((claim) => !claim.negated && !isThing(line, claim)),
    isBetween,
  )
  const told = named.filter((claim) => !isMention(line, claim, named))
  const first = told.find(({ sure }) => sure) ?? told[0] ?? null
  if (!first) return { kind: null, named, own: named, until: tokens.length, several: false }
  const other = told.find(
    (claim) =>
      claim.first > first.last &&
      claim.sure &&
      claim.value !== first.value &&
      isAnother(line, first, claim),
  )
  const kind = {
    ...first,
    sure:
      first.sure ||
      (first.value === 'button-shirt' && tokens[first.last]!.word === 'shirt' && isButtoned(line)),
  }
  return {
    kind,
    named,
    own: named.filter(
      (claim) =>
        told.includes(claim) &&
        (claim.first === first.first || claim.value === first.value || !claim.sure),
    ),
    until: other ? startOf(line, other) : tokens.length,
    several: other !== undefined,
  }
}

const isThing = ({ tokens }: Line, { last }: Claim): boolean =>
  things.has(tokens[last + 1]?.word ?? '')

/** Of "flannel pyjamas" the last is the garment; in Spanish the first, of "camisa de uniforme". */
function compounds(
  line: Line,
  claims: readonly Claim[],
  isBetween: (at: number) => boolean,
): Claim[] {
  const left = [...claims]
  for (let nth = 0; nth + 1 < left.length; ) {
    const [a, b] = [left[nth]!, left[nth + 1]!]
    const places = Array.from({ length: b.first - a.last - 1 }, (_, n) => a.last + 1 + n)
    const isOne =
      line.tokens[a.first]!.segment === line.tokens[b.first]!.segment &&
      (line.language === 'en'
        ? places.every((at) => isBetween(at) && !line.tokens[at]!.isMark)
        : places.length <= 1 && places.every((at) => /^(de|tipo)$/.test(line.tokens[at]!.word)))
    if (!isOne) {
      nth += 1
      continue
    }
    if (line.language === 'es') left.splice(nth + 1, 1)
    else if (b.sure || !a.sure)
      left[nth + 1] = { ...b, first: places.length === 0 ? a.first : b.first }
    else left[nth + 1] = { ...a, last: b.last }
    if (line.language === 'en') left.splice(nth, 1)
  }
  return left
}

/** Named beside the garment: "wore it with jeans", "like a coat". */
function isMention({ tokens, helps }: Line, claim: Claim, all: readonly Claim[]): boolean {
  const { sentence } = tokens[claim.first]!
  const earlier = all.some(
    ({ first }) => first < claim.first && tokens[first]!.sentence <= sentence,
  )
  for (let back = 1; back <= 4; back += 1) {
    const at = claim.first - back
    const token = tokens[at]
    if (!token || token.sentence !== sentence || /^[.,;:]$/.test(token.text)) return false
    if (helps.besides[at]) return true
    if (earlier && companions.has(token.word)) return true
  }
  return false
}

/** A second garment of the line, and not another word for the first. */
function isAnother({ tokens, helps }: Line, first: Claim, other: Claim): boolean {
  const start = tokens[other.first]!
  if (cloths.test(start.word)) return false
  const gap = tokens.slice(first.last + 1, other.first)
  if (start.sentence !== tokens[first.first]!.sentence) {
    const opening = tokens.filter(({ sentence }) => sentence === start.sentence).slice(0, 3)
    return opening.some(({ word }) => more.has(word))
  }
  const places = gap.map((_, nth) => first.last + 1 + nth)
  const joined = places.some(
    (at) =>
      (helps.ands[at] && !companions.has(tokens[at]!.word)) ||
      more.has(tokens[at]!.word) ||
      tokens[at]!.text === '/',
  )
  return joined || gap.some(({ text }) => text === ',')
}

/** Where the words of another garment begin: behind the "and" or comma before it. */
function startOf({ tokens, helps }: Line, { first }: Claim): number {
  let at = first
  while (at > 0 && !tokens[at - 1]!.isMark && !helps.ands[at - 1]) at -= 1
  return at
}

const buttoned =
  /^(collar|collars|cuff|cuffs|buttons|button|buttoned|plaid|checked|checkered|tartan|gingham|flannel|linen|oxford|chambray|pinstripe|pinstriped|tuxedo)$/

/** "Shirt" alone may be a T-shirt; with a collar, cuffs or buttons it is none. */
const isButtoned = ({ tokens }: Line): boolean => tokens.some(({ word }) => buttoned.test(word))

/** Cloths that are called like a garment: behind one they say what it is made of. */
const cloths = /^(flannel|flannelette|jersey|fleece|cords|cord|franela)$/
