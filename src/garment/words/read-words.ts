import type { Facts, Size } from '../facts.ts'
import { type Claim, claimsOf, type Line, languageOf, lineOf } from './claims.ts'
import { coloursOf } from './colours.ts'
import { fibreIn, fibresOf, isFibreName, type SaidBlock } from './fibres.ts'
import { subjectOf } from './kinds.ts'
import { nameOf } from './name.ts'
import { type Looked, type Plain, plainFacts, plainly, plainOf } from './plain-facts.ts'
import { guessed, negate, runs, unsaid } from './scope.ts'
import { sizesOf } from './sizes.ts'
import { mend } from './spelling.ts'
import { between, mostCharacters, tokensOf } from './tokens.ts'
import { knownWords, type LanguageCode, type Told } from './vocabulary.ts'

/** A fact as the line tells it. Not sure: to be asked, never taken. `because`: its words, as they stand there. */
export interface Said<T> {
  readonly value: T
  readonly sure: boolean
  readonly because: string
}

type SaidFacts = {
  readonly [K in Exclude<Told, 'size' | 'colour' | 'mustUse' | 'kind'>]?: Said<Facts[K]>
}

export interface WordsReading {
  /** Names and values as the `grade` verb takes them, with `colour` and `fibres` beside. */
  readonly facts: SaidFacts & {
    readonly kind?: Said<Facts['kind']>
    readonly size?: Said<Size | { readonly widthIn: number; readonly lengthIn: number }>
    /** The word for the cloth's main colour; `also`: others of it. */
    readonly colour?: Said<string> & { readonly also: readonly string[] }
    readonly fibres?: Said<readonly SaidBlock[]>
  }
  /** What the line calls the garment; empty: nothing more than its kind. */
  readonly name: string
  /** It must be in the quilt; null: that is not said. */
  readonly mustUse: Said<'yes'> | null
  /** What no fact was made of, in the line's order. */
  readonly unread: readonly string[]
  readonly language: LanguageCode
}

const facts = [
  ...(Object.keys(plainFacts) as Plain[]),
  'kind',
  'colour',
  'size',
  'mustUse',
] as const

/** What a customer's own line says of one garment, in English or Spanish. Never throws; the same line, the same reading. */
export function readWords(raw: string): WordsReading {
  const tokens = tokensOf(raw)
  const spoken = languageOf(tokens)
  mend(tokens, spoken ? [spoken] : ['en', 'es'], isFibreName)
  const language = spoken ?? languageOf(tokens) ?? 'en'
  const line = lineOf(raw, tokens, language)
  const [asked, guesses] = [unsaid(line), guessed(line)]
  const heard = facts.flatMap((fact) => claimsOf(line, fact))
  const said = heard.filter(({ first, last }) => !asked[first] && !asked[last])
  // "No holes or stains" joins what tells of two facts.
  negate(
    line,
    said.sort((a, b) => a.first - b.first),
  )
  const told = (fact: Told): Claim[] => said.filter((claim) => claim.fact === fact)

  const claims = Object.fromEntries(
    (Object.keys(plainFacts) as Plain[]).map((fact) => [fact, told(fact)]),
  ) as Record<Plain, Claim[]>
  const [kinds, colours, sizes, musts] = [
    told('kind'),
    told('colour'),
    told('size'),
    told('mustUse'),
  ]
  const describing = [
    ...colours,
    ...sizes,
    ...claims.pattern,
    ...claims.weight,
    ...claims.surface,
    ...claims.age,
    ...claims.stretch,
    ...claims.soil.filter(({ value }) => value === 'soiled' || value === 'clean'),
    ...claims.wear.filter(({ value }) => value !== 'sound'),
  ]
  const known = (word: string) => knownWords().has(word)
  // "Red and black", "red/black", "red, white and dark blue": one garment's, and not two.
  const joinsColours = (at: number): boolean => {
    const { word, text } = tokens[at]!
    const joins = (line.helps.ands[at] === true && word !== 'with') || text === '/' || text === ','
    if (!joins || !holds(colours, at - 1)) return false
    let next = at + 1
    while (line.helps.shades[next]) next += 1
    return holds(colours, next)
  }
  const isBetween = (at: number): boolean =>
    line.helps.modifies[at] === true ||
    line.helps.shades[at] === true ||
    line.helps.childish[at] === true ||
    fibreIn(tokens[at]!, known) !== undefined ||
    tokens[at]!.text === '-' ||
    tokens[at]!.text === '%' ||
    tokens[at]!.word === '100' ||
    joinsColours(at) ||
    holds(describing, at)
  const subject = subjectOf(line, kinds, isBetween)
  const isOpen = (at: number) => !asked[at] && at < subject.until
  const looked: Looked = {
    line,
    isOpen,
    isGuess: (at) => guesses[at] === true || subject.several,
    subject,
  }

  const filled: Record<string, Said<unknown>> = {}
  const used: [number, number][] = []
  const put = (
    fact: string,
    said: { value: unknown; sure: boolean; first: number; last: number },
    more: object = {},
  ) => {
    used.push([said.first, said.last])
    const sure = said.sure && !looked.isGuess(said.first)
    filled[fact] = {
      value: said.value,
      sure,
      because: between(raw, tokens, said.first, said.last),
      ...more,
    }
  }

  if (subject.kind && !asked[subject.kind.first]) put('kind', subject.kind)
  const size = settled(looked, sizesOf(line, sizes, { subject, isBetween, isOpen }))
  if (size) put('size', size)
  const colour = coloursOf(
    line,
    colours.filter(({ first }) => isOpen(first)),
    subject,
    { patterns: claims.pattern, isBetween },
  )
  if (colour)
    put(
      'colour',
      { ...colour, sure: colour.sure && !isChoice(line, colours) },
      { also: colour.also },
    )
  const fibres = fibresOf(line, isOpen, known)
  if (fibres) put('fibres', { ...fibres, value: fibres.blocks })
  for (const fact of Object.keys(plainFacts) as Plain[]) {
    const said = plainly(looked, fact, claims[fact])
    if (said) put(fact, said)
  }
  const must = plainOf(looked, musts)[0]
  if (must) used.push([must.first, must.last])
  const name = nameOf(line, subject, { isOpen, joinsColours })
  if (name) used.push([name.first, name.last])

  return {
    facts: filled as WordsReading['facts'],
    name: name?.name ?? '',
    mustUse: must
      ? {
          value: 'yes',
          sure: must.sure && !looked.isGuess(must.first),
          because: between(raw, tokens, must.first, must.last),
        }
      : null,
    unread: [...unreadOf(line, used, asked), ...beyond(raw)],
    language,
  }
}

const holds = (claims: readonly Claim[], at: number): boolean =>
  claims.some(({ first, last }) => at >= first && at <= last)

/** Of sizes that are told, the one that a mark or the first word gives; two that differ are asked about. */
function settled<T extends { value: unknown; sure: boolean; first: number; last: number }>(
  { line: { tokens, helps } }: Looked,
  sizes: readonly T[],
): T | null {
  const sure = sizes.filter((one) => one.sure)
  const [first] = sure.length > 0 ? sure : sizes
  if (!first) return null
  // "M or L", "M/L": one of them is so.
  const next = tokens[first.last + 1]
  const isOpen =
    next !== undefined &&
    (helps.ors[first.last + 1] === true || next.text === '/') &&
    sizes.some((one) => one.first > first.last && one.first <= first.last + 3)
  if (isOpen) return { ...first, sure: false }
  const others = new Set(sure.map(({ value }) => JSON.stringify(value)))
  return others.size > 1 ? { ...first, sure: false } : first
}

/** "Black or navy". */
function isChoice({ tokens, helps }: Line, colours: readonly Claim[]): boolean {
  return colours.some((claim, nth) => {
    const next = colours[nth + 1]
    if (!next || next.value === claim.value) return false
    const gap = tokens.slice(claim.last + 1, next.first)
    return gap.length > 0 && gap.length <= 3 && gap.some((_, at) => helps.ors[claim.last + 1 + at])
  })
}

/** Words of which nothing was made, from the first to the last between two commas; whole questions too. */
function unreadOf(
  { raw, tokens, helps }: Line,
  used: readonly (readonly [number, number])[],
  asked: readonly boolean[],
): string[] {
  const isRead = (at: number): boolean =>
    tokens[at]!.isMark ||
    used.some(([first, last]) => at >= first && at <= last) ||
    (!asked[at] &&
      (helps.fillers[at] ||
        helps.hedges[at] ||
        helps.negates[at] ||
        helps.sizeMarks[at] ||
        helps.ands[at] ||
        helps.ors[at] ||
        helps.shades[at]) === true)
  return runs({ tokens }, 'segment').flatMap(([first, last]) => {
    const open = Array.from({ length: last - first + 1 }, (_, nth) => first + nth).filter(
      (at) => !isRead(at),
    )
    return open.length === 0 ? [] : [between(raw, tokens, open[0]!, open.at(-1)!)]
  })
}

const beyond = (raw: string): string[] =>
  raw.length > mostCharacters ? [raw.slice(mostCharacters)] : []
