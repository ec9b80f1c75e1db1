import type { Claim, Line } from './claims.ts'

/** What may stand between "no" and what is not there. */
const lightly: ReadonlySet<string> = new Set(
  `any visible obvious big small little tiny real major minor signs sign of other a an the it is has have had got really very at all
  single more even see find can be been was that this color colour true actual noticeable obvious proper here there in
  ningun ninguna tiene un una grandes grande visible visibles se le ve ven esta es otra otras mas el la los las de muy pequenas pequenos son ni solo`.split(
    /\s+/,
  ),
)

/** Whether each token is asked about, or only supposed: nothing there is said to be so. */
export function unsaid(line: Line): boolean[] {
  const { tokens, helps } = line
  const unsaidAt = tokens.map(() => false)
  const mark = (from: number, to: number) => {
    for (let at = from; at <= to; at += 1) unsaidAt[at] = true
  }
  for (const [first, last] of runs(line, 'sentence')) {
    const start = questionFrom(line, first, last)
    if (start !== null) mark(start, last)
  }
  for (const [first, last] of runs(line, 'segment')) {
    for (let at = first; at <= last; at += 1) {
      if (!helps.supposes[at]) continue
      const { word, text } = tokens[at]!
      // "Sí" affirms; so does "si" before a comma.
      const affirms =
        word === 'si' &&
        (/í/i.test(text) ||
          at === last ||
          tokens[at + 1]?.isMark === true ||
          tokens[at + 1]?.word === 'o' ||
          tokens[at - 1]?.word === 'o')
      if (affirms) continue
      mark(at, last)
      break
    }
  }
  return unsaidAt
}

/** The first and last token of each sentence or segment. */
export function runs(
  { tokens }: Pick<Line, 'tokens'>,
  by: 'sentence' | 'segment',
): [number, number][] {
  const found: [number, number][] = []
  for (const [at, token] of tokens.entries()) {
    const last = found.at(-1)
    if (last && tokens[last[0]]![by] === token[by]) last[1] = at
    else found.push([at, at])
  }
  return found
}

const tails: ReadonlySet<string> = new Set(
  'ok okay fine allowed accepted problem matter alright possible useful usable right work works vale sirve importa problema bien'.split(
    ' ',
  ),
)

/** Where the question of a sentence begins; null where there is none. */
function questionFrom(line: Line, first: number, last: number): number | null {
  const { tokens, helps } = line
  const isAsked = tokens[last]!.text === '?'
  for (let at = first; at <= last; at += 1)
    if (helps.asksAnywhere[at]) return clauseStart(line, at, first)
  const starts = [...Array(last - first + 1).keys()]
    .map((nth) => first + nth)
    .filter((at) => at === first || tokens[at - 1]!.segment !== tokens[at]!.segment)
  if (!isAsked) {
    // "Is wool ok", written without its mark.
    const opener = starts.find((at) => helps.asks[at] && endsAsking(line, at))
    return opener ?? null
  }
  const opener = starts.find((at) => helps.asks[at])
  if (opener !== undefined) return opener
  if (tokens.slice(first, last).some(({ word }) => tails.has(word))) return starts.at(-1) ?? first
  for (let at = first + 1; at <= last; at += 1) {
    if (
      helps.asks[at] &&
      /^(can|could|would|will|do|does|should|puedo|pueden|sirve|vale|aceptan)$/.test(
        tokens[at]!.word,
      )
    )
      return at
  }
  return null
}

function endsAsking({ tokens }: Line, at: number): boolean {
  const { segment } = tokens[at]!
  let end = at
  while (tokens[end + 1]?.segment === segment) end += 1
  while (end > at && tokens[end]!.isMark) end -= 1
  return tails.has(tokens[end]!.word)
}

function clauseStart({ tokens }: Line, at: number, first: number): number {
  let start = at
  while (start > first && tokens[start - 1]!.segment === tokens[at]!.segment) start -= 1
  // "Blue shirt can you use it with holes": what stands before is told.
  return Math.max(start, Math.min(at, start + 2) === at ? start : at)
}

/** A sentence that ends in a question mark without a question in it: what stands last is a guess. */
export function guessed(line: Line): boolean[] {
  const { tokens, helps } = line
  const guess = tokens.map(() => false)
  for (const [first, last] of runs(line, 'sentence')) {
    if (tokens[last]!.text !== '?') continue
    let at = last
    while (at > first && tokens[at - 1]!.segment === tokens[last]!.segment) at -= 1
    for (let one = at; one <= last; one += 1) guess[one] = true
  }
  for (const [first, last] of runs(line, 'segment')) {
    for (let at = first; at <= last; at += 1) {
      if (!helps.hedges[at]) continue
      const isLast = !tokens
        .slice(at + 1, last + 1)
        .some((token, nth) => !token.isMark && !helps.hedges[at + 1 + nth])
      // "Cotton I think" and "cotton, I think" speak of what stands before them.
      const from = !isLast ? at : at > first ? first : previousSegment(line, first)
      for (let one = from; one <= last; one += 1) guess[one] = true
      break
    }
  }
  return guess
}

function previousSegment({ tokens }: Line, first: number): number {
  let at = first
  const before = tokens[first - 1]
  if (!before || before.sentence !== tokens[first]!.sentence) return first
  while (at > 0 && tokens[at - 1]!.segment === before.segment) at -= 1
  return at
}

/** Marks those of the claims, in order, that the line says are not so. */
export function negate(line: Line, claims: readonly Claim[]): void {
  for (const [nth, claim] of claims.entries()) {
    claim.negated =
      isNegated(line, claim) || isListed(line, claim, claims.slice(0, nth)) || isDenied(line, claim)
  }
}

function isNegated({ tokens, helps }: Line, claim: Claim): boolean {
  const { first } = claim
  const { segment } = tokens[first]!
  for (let back = 1; back <= 6; back += 1) {
    const at = first - back
    const token = tokens[at]
    if (!token || token.segment !== segment) return false
    if (helps.negates[at]) {
      claim.deniedFrom = at
      return true
    }
    if (
      token.isMark
        ? !/^[-/]$/.test(token.text)
        : !lightly.has(token.word) && !(helps.parts[at] && back < 3)
    )
      return false
  }
  return false
}

/** "Holes: none", "stain free". */
function isDenied({ tokens, helps }: Line, { last, fact }: Claim): boolean {
  const later = tokens
    .slice(last + 1, last + 7)
    .some(
      ({ word, sentence }, nth) =>
        sentence === tokens[last]!.sentence &&
        helps.negatesBefore[last + 1 + nth] &&
        /^(came|washed|gone|salio|all)$/.test(word),
    )
  if (later && fact === 'soil') return true
  const next = tokens[last + 1]?.isMark ? last + 2 : last + 1
  const token = tokens[next]
  if (!token || !helps.negatesBefore[next]) return false
  if (token.word === 'no') return tokens[last + 1]?.text === ':'
  return true
}

/** "No holes or stains": what is joined to something that is not there is not there either. */
function isListed(line: Line, claim: Claim, before: readonly Claim[]): boolean {
  const { tokens, helps } = line
  const near = before.findLast(({ last }) => last < claim.first)
  if (!near?.negated) return false
  const words = tokens.slice(near.last + 1, claim.first)
  const gap = words.filter(({ word, isMark }) => isMark || !lightly.has(word))
  if (gap.length === 0) return words.length === 0
  const joins = (at: number) => helps.ors[at] || helps.ands[at]
  const places = words.map((_, nth) => near.last + 1 + nth)
  const others = places.filter(
    (at) =>
      !joins(at) &&
      tokens[at]!.text !== ',' &&
      tokens[at]!.text !== '/' &&
      !lightly.has(tokens[at]!.word) &&
      tokens[at]!.word !== 'ni',
  )
  if (others.length > 0 || words.length > 4) return false
  const isOr = places.some(
    (at) => helps.ors[at] || /^(nor|ni)$/.test(tokens[at]!.word) || tokens[at]!.text === '/',
  )
  const isMany =
    tokens[claim.last]!.word.endsWith('s') ||
    /^(damage|wear|mold|mould|mildew|moho|blood|sangre)$/.test(tokens[claim.last]!.word)
  const bare = words.length === 1
  if (isOr) return true
  if (tokens[near.last + 1]?.text === ',' && bare) {
    const after = tokens[claim.last + 1]
    const nextJoins =
      after !== undefined &&
      (after.text === ',' || joins(claim.last + 1) || /^(or|nor|ni|o)$/.test(after.word))
    return isMany && (nextJoins || after === undefined || after.isMark)
  }
  return isMany && bare
}
