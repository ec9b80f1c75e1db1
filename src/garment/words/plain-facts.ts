import type { Claim, Line } from './claims.ts'
import type { Subject } from './kinds.ts'
import type { Told } from './vocabulary.ts'

/** Facts that one phrase tells, and which of several that are told stands: the first, or the worst. */
export const plainFacts = {
  wear: ['shattered', 'holes', 'thin', 'sound'],
  soil: ['chemical', 'mould', 'pests', 'body-fluid', 'soiled', 'clean'],
  wash: ['never', 'unwashed', 'softener', 'washed'],
  age: ['historic', 'old'],
  pattern: null,
  printMake: ['film', 'screen', 'sublimated', 'in-cloth'],
  stretch: ['two-way', 'bias', 'much', 'little', 'none'],
  weight: ['padded', 'heavy', 'medium', 'fine'],
  surface: ['film', 'fur', 'leather', 'pile', 'loose-knit', 'knit', 'woven'],
  trims: ['glued', 'meltable', 'removable'],
  consent: ['no-cut', 'part'],
  oneWay: ['yes'],
  bleed: ['bleeds', 'fast'],
  iron: ['none', 'cool', 'warm', 'hot'],
} as const satisfies Partial<Record<Told, readonly string[] | null>>

export type Plain = keyof typeof plainFacts

/** A line with what is told in it, and whether a token tells surely. */
export interface Looked {
  readonly line: Line
  readonly isOpen: (at: number) => boolean
  readonly isGuess: (at: number) => boolean
  readonly subject: Subject
}

export const plainOf = ({ isOpen }: Looked, claims: readonly Claim[]): Claim[] =>
  claims.filter(({ first, negated }) => !negated && isOpen(first))

/** What stands of a fact that phrases tell. */
export function plainly(looked: Looked, fact: Plain, claims: readonly Claim[]): Claim | null {
  const said = plainOf(looked, claims).filter((claim) => isOfTheGarment(looked, claim))
  const denied = claims.filter(({ first, negated }) => negated && looked.isOpen(first))
  if (said.length === 0) return deniedAs(fact, denied)
  if (fact === 'pattern') return patternOf(looked.line, said)
  const order: readonly string[] = plainFacts[fact] ?? []
  const sure = said.filter((one) => one.sure && !looked.isGuess(one.first))
  const [first] = [...(sure.length > 0 ? sure : said)].sort(
    (a, b) => order.indexOf(a.value) - order.indexOf(b.value),
  )
  if (!first) return null
  if (first.value === 'padded') return first
  const rivals = fact === 'stretch' || fact === 'weight' || fact === 'surface' || fact === 'iron'
  return rivals && new Set(sure.map(({ value }) => value)).size > 1
    ? { ...first, sure: false }
    : first
}

/** What is not there: "no holes" tells that it may well be sound, and "no holes or thin places" that it is. */
function deniedAs(fact: Plain, denied: readonly Claim[]): Claim | null {
  const [told] = denied
  if (!told) return null
  const first = { ...told, first: told.deniedFrom ?? told.first }
  const values = new Set(denied.map(({ value }) => value))
  if (fact === 'wear' && (values.has('holes') || values.has('thin')))
    return { ...first, value: 'sound', sure: values.has('holes') && values.has('thin') }
  if (fact === 'soil' && values.has('soiled')) return { ...first, value: 'clean', sure: false }
  return null
}

/** A word that tells of cloth only where it speaks of cloth: "thin at the elbows", "thick stripes". */
function isOfTheGarment(
  { line: { tokens, helps, language }, subject }: Looked,
  { fact, value, first, last }: Claim,
): boolean {
  const next = tokens[last + 1]
  const sameSegment = next !== undefined && next.segment === tokens[last]!.segment && !next.isMark
  const before = tokens[first - 1]
  if (fact === 'weight' || fact === 'surface') {
    if (
      sameSegment &&
      (helps.parts[last + 1] ||
        /^(stripes?|checks?|rayas|cuadros|smell|use|hat|gloves|boots|shoes|heart|traffic)$/.test(
          next.word,
        ))
    )
      return false
    if (sameSegment && fact === 'surface' && helps.linings[last + 1]) return false
    if (language === 'es' && before && /^(de|en)$/.test(before.word) && helps.parts[first - 2])
      return false
    if (language === 'es' && (helps.parts[first - 1] || helps.linings[first - 1])) return false
    if (
      /^(with|con)$/.test(before?.word ?? '') &&
      fact === 'surface' &&
      subject.kind !== null &&
      subject.kind.first < first
    )
      return false
  }
  if (
    fact === 'pattern' &&
    value === 'solid' &&
    sameSegment &&
    (helps.parts[last + 1] || /^(weave|knit|wood|gold|silver)$/.test(next.word))
  )
    return false
  if (
    fact === 'pattern' &&
    /^(all|por|covered)$/.test(tokens[first]!.word) &&
    hasFlaw(tokens, first)
  )
    return false
  if (
    fact === 'pattern' &&
    value === 'single' &&
    before &&
    /^(on|in|en|por)$/.test(before.word) &&
    first === last
  )
    return true
  if (fact === 'pattern' && value === 'single')
    return !isSpotPlace(
      tokens.map(({ word }) => word),
      first,
      tokens[first]!.segment,
      tokens.map(({ segment }) => segment),
    )
  if (
    fact === 'trims' &&
    (/^(missing|lost|faltan|falta|gone|broken|stuck|roto|rota)$/.test(next?.word ?? '') ||
      /^(missing|falta|faltan|lost)$/.test(tokens[first - 2]?.word ?? before?.word ?? ''))
  )
    return false
  if (
    fact === 'wear' &&
    /^(roto|rota|rotos|rotas)$/.test(tokens[first]!.word) &&
    /^(cierre|cremallera|boton|botones|zipper|broche)$/.test(before?.word ?? '')
  )
    return false
  return true
}

const hasFlaw = (tokens: Line['tokens'], first: number): boolean =>
  tokens
    .slice(0, first)
    .some(
      ({ word, segment }) =>
        segment === tokens[first]!.segment &&
        (flaws.test(word) ||
          /^(faded|splatters|sound|spots|patches|bobbles|pilling|fluff|hair)$/.test(word)),
    )

const flaws =
  /^(hole|holes|stain|stains|stained|tear|tears|rip|rips|ripped|torn|worn|thin|mark|marks|spot|spots|mancha|manchas|manchita|manchado|manchada|agujero|agujeros|agujerito|hoyo|hoyos|roto|rota|quemadura|rasgado|rasgada|gastado|gastada|pocket|button|buttons|zip|zipper|bolsillo|botones|cierre|sucio|sucia|paint|blood|sangre|ink|faded|moth|threadbare|frayed|desgastado|desgastada|coffee|mud|roturas|desgaste|burn|damage|snag|patch|pulled|cremallera|bow|lace|ruffles|pleats|deshilachado|descosido)$/

/** "Hole on the front" tells where a flaw is, and of no picture there. */
function isSpotPlace(
  words: readonly string[],
  first: number,
  segment: number,
  segments: readonly number[],
): boolean {
  const isPlace = /^(on|in|en|al|delante|enfrente|por)$/.test(words[first]!)
  if (!isPlace) return false
  let hasPicture = false
  for (let at = first - 1; at >= 0 && segments[at] === segment; at -= 1) {
    if (flaws.test(words[at]!)) return true
    if (
      /^(print|picture|logo|graphic|design|photo|name|number|letters|lettering|words|dibujo|foto|estampado|logotipo|escudo|letras|numero|nombre|imagen|printed|cartoon|dinosaur|dinosaurio)$/.test(
        words[at]!,
      )
    )
      hasPicture = true
  }
  return (
    !hasPicture &&
    !/^(with|con|a|an|un|una)$/.test(
      words
        .slice(0, first)
        .reverse()
        .find((word) => /^(with|con|a|an|un|una|is|has|tiene)$/.test(word)) ?? '',
    )
  )
}

/** Stripes with a picture on them are both: which it mostly is has to be asked. */
function patternOf(line: Line, said: readonly Claim[]): Claim {
  const values = new Set(said.map(({ value }) => value))
  const find = (value: string) => said.find((claim) => claim.value === value)
  if (values.size === 1) return said.find(({ sure }) => sure) ?? said[0]!
  const isAllOver = said.find(
    ({ first, last, value }) =>
      value === 'allover' &&
      line.tokens
        .slice(first, last + 1)
        .some(
          ({ word }) =>
            word === 'all' ||
            word === 'todas' ||
            word === 'todos' ||
            word === 'covered' ||
            word === 'toda',
        ),
  )
  if (isAllOver) return isAllOver
  // "Plain blue with a logo" is cloth of one colour with one picture.
  if (values.has('single') && values.has('solid') && values.size === 2) return find('single')!
  if (values.has('solid') && values.size === 2)
    return { ...said.find(({ value }) => value !== 'solid')!, sure: false }
  const [first] = said
  // "A picture of sunflowers on the front": what the picture shows is no print all over.
  if (first!.value === 'single' && values.has('allover')) return first!
  return { ...first!, sure: false }
}
