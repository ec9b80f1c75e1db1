import type { Claim, Line } from './claims.ts'
import type { Subject } from './kinds.ts'

export interface SaidColours {
  readonly value: string
  /** Further colours of the cloth, as they are named. */
  readonly also: readonly string[]
  readonly sure: boolean
  readonly first: number
  readonly last: number
}

type Of = 'garment' | 'pattern' | 'doubt' | 'other'

/** Whose colour each is: the garment's, that of its stripes or checks, or of something on it. */
export function coloursOf(
  line: Line,
  claims: readonly Claim[],
  { named, own, kind }: Subject,
  { patterns, isBetween }: { patterns: readonly Claim[]; isBetween: (at: number) => boolean },
): SaidColours | null {
  const told = claims.filter(({ negated }) => !negated)
  const of = told.map((claim) =>
    ownerOf(line, claim, {
      named,
      own,
      patterns,
      isBetween,
      colours: claims,
      hasKind: kind !== null,
    }),
  )
  const pick = (owner: Of) => told.filter((_, nth) => of[nth] === owner)
  const [garment, pattern, doubt] = [pick('garment'), pick('pattern'), pick('doubt')]
  const chosen = garment.length > 0 ? garment : pattern.length > 0 ? pattern : doubt
  const [first] = chosen
  if (!first) return null
  const run = runFrom(line, chosen)
  const values = [...new Set(run.map(({ value }) => value))]
  const many = values.length > 3
  return {
    value: many ? 'many-colours' : values[0]!,
    also: many ? [] : values.slice(1),
    sure: chosen !== doubt && first.sure,
    first: first.first,
    last: values.length > 1 ? run.at(-1)!.last : first.last,
  }
}

/** Those that stand with the first: between the same commas, or named one after another, "red, white and blue". */
function runFrom({ tokens }: Line, chosen: readonly Claim[]): Claim[] {
  const [start] = chosen
  let { segment } = tokens[start!.first]!
  let end = start!.last
  return chosen.filter(({ first, last }) => {
    const follows = tokens[end + 1]?.text === ',' && first === end + 2
    if (tokens[first]!.segment !== segment && !follows) return false
    segment = tokens[first]!.segment
    end = last
    return true
  })
}

/** Before the garment's word they say what cloth it is of, or what is on it. */
const cloths = /^(lace|print|pocket|button|sequin|collar|zip|hood|ribbon|logo)$/

interface Around {
  readonly named: readonly Claim[]
  readonly own: readonly Claim[]
  readonly patterns: readonly Claim[]
  readonly colours: readonly Claim[]
  readonly isBetween: (at: number) => boolean
  readonly hasKind: boolean
}

const holds = (claims: readonly Claim[], at: number): Claim | undefined =>
  claims.find(({ first, last }) => at >= first && at <= last)

const links: ReadonlySet<string> = new Set(
  "is it its it's was in color colour coloured colored a an all the of mostly mainly es era de color en un una muy todo toda very lovely casi tono size talla months month meses years anos x inches inch cm recien nacido newborn this that and n y e & + / with con ,".split(
    ' ',
  ),
)

function ownerOf(line: Line, claim: Claim, around: Around): Of {
  const ahead =
    line.language === 'en' || isEnglishColour(line, claim) ? lookAhead(line, claim, around) : null
  if (ahead) return ahead
  return lookBack(line, claim, around)
}

/** In a Spanish line the noun stands before its colour. */
const isEnglishColour = ({ tokens }: Line, { first }: Claim): boolean =>
  /^(black|grey|gray|white|cream|brown|red|pink|orange|yellow|green|blue|navy|purple)$/.test(
    tokens[first]!.word,
  )

/** What follows an English colour: the garment, something on it, or nothing; null: nothing that tells. */
function lookAhead(
  line: Line,
  claim: Claim,
  { named, own, patterns, colours, isBetween }: Around,
): Of | null {
  const { tokens, helps } = line
  const { segment } = tokens[claim.last]!
  let strange = 0
  let striped = false
  for (let at = claim.last + 1; at <= claim.last + 7; at += 1) {
    const token = tokens[at]
    if (!token || token.segment !== segment) break
    if (holds(named, at)) return !holds(own, at) ? 'other' : strange > 0 ? 'doubt' : 'garment'
    if (helps.sizeMarks[at]) break
    const pattern = holds(patterns, at)
    if (pattern && /^(with|con|in|on|w|that|covered|has)$/.test(tokens[pattern.first]!.word)) break
    if (pattern) {
      const isStriped = pattern.value === 'stripe-check'
      if (!isStriped && pattern.value !== 'solid') {
        // "Blue floral blouse", but "with pink flowers".
        const behind = tokens[pattern.last + 1]
        if (
          behind?.segment === segment &&
          !behind.isMark &&
          (holds(named, pattern.last + 1) || isBetween(pattern.last + 1))
        ) {
          at = pattern.last
          continue
        }
        return /^(floral|paisley|camo|camouflage|batik)$/.test(tokens[pattern.first]!.word)
          ? 'garment'
          : 'other'
      }
      striped ||= isStriped
      at = pattern.last
      continue
    }
    if (holds(colours, at) || helps.shades[at]) continue
    if (helps.ands[at] && token.word !== 'with' && (holds(colours, at + 1) || helps.shades[at + 1]))
      continue
    if (token.text === '/' || token.text === '-' || token.text === '&') continue
    if (helps.parts[at]) {
      if (!holds(named, at + 1) || tokens[at + 1]!.isMark) return 'other'
      return cloths.test(token.word) ? 'garment' : 'doubt'
    }
    if (/^[a-z]$/.test(token.word) || /^\d/.test(token.word)) break
    if (isBetween(at)) continue
    if (helps.fillers[at] || helps.ands[at] || helps.sizeMarks[at] || token.isMark) break
    strange += 1
    if (strange > 2) return 'other'
  }
  if (striped) return 'pattern'
  return strange > 0 ? 'other' : null
}

/** What stands before a colour that nothing follows: "shirt in blue", "it's blue", "camisa azul". */
function lookBack(
  line: Line,
  claim: Claim,
  { named, own, patterns, colours, isBetween, hasKind }: Around,
): Of {
  const { tokens, helps } = line
  const { segment } = tokens[claim.first]!
  let persons = false
  for (let at = claim.first - 1; at >= 0; at -= 1) {
    const token = tokens[at]!
    if (token.segment !== segment) break
    if (holds(named, at)) return holds(own, at) ? 'garment' : 'other'
    const pattern = holds(patterns, at)
    if (pattern) {
      if (pattern.value === 'stripe-check')
        return isApart(line, pattern, claim) ? 'garment' : 'pattern'
      if (isApart(line, pattern, claim)) return 'garment'
      if (
        pattern.value === 'solid' ||
        (pattern.value === 'allover' &&
          /^(floral|floreado|floreada|estampado|estampada|paisley|camo|camouflage|batik)$/.test(
            tokens[pattern.first]!.word,
          ) &&
          at === claim.first - 1)
      )
        continue
      return 'other'
    }
    if (
      holds(colours, at) ||
      helps.shades[at] ||
      helps.hedges[at] ||
      links.has(token.word) ||
      links.has(token.text)
    )
      continue
    if (helps.parts[at]) return 'other'
    if (helps.people[at]) {
      persons = true
      continue
    }
    if (isBetween(at) || /^\d/.test(token.word)) continue
    // "Vestido de fiesta azul": a word behind "de" says which garment it is.
    if (
      line.language === 'es' &&
      /^(de|del)$/.test(tokens[at - 1]?.word ?? '') &&
      named.some(({ last }) => last < at && tokens[last]!.segment === segment)
    )
      continue
    if (
      helps.fillers[at] &&
      !/^(has|have|had|tiene|tenia|lleva|trae|with|con|on|en)$/.test(token.word)
    )
      continue
    return 'other'
  }
  return persons && !hasKind ? 'doubt' : 'garment'
}

/** "Camisa de cuadros azul": the colour agrees with the garment, and not with its many checks. */
const isApart = ({ tokens, language }: Line, pattern: Claim, claim: Claim): boolean =>
  language === 'es' &&
  tokens[pattern.last]!.word.endsWith('s') &&
  !tokens[claim.last]!.word.endsWith('s')
