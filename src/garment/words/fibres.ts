import { type FibreKey, isFibreKey } from '../../textile/fibres.ts'
import { guessName } from '../../textile/label/spelling.ts'
import { tradeNames } from '../../textile/label/trade-names.ts'
import { once } from '../../textile/label/vocabulary.ts'
import { readLabel } from '../../textile/label.ts'
import { labelLanguages } from '../../textile/languages/all.ts'
import type { Line } from './claims.ts'
import { between, plainWord, type Token } from './tokens.ts'

/** A part's make-up as it was said: `percent` null where no share was told. */
export interface SaidBlock {
  readonly section: string | null
  readonly fibres: readonly { readonly fibre: FibreKey; readonly percent: number | null }[]
  readonly total: number
  readonly complete: boolean
}

export interface SaidFibres {
  readonly blocks: readonly SaidBlock[]
  readonly sure: boolean
  readonly first: number
  readonly last: number
}

/** Names on labels that say something else in a sentence: "hand me down", "the other one", "metal buttons". */
const notInSentences: ReadonlySet<FibreKey> = new Set<FibreKey>([
  'down',
  'metallised',
  'other',
  'unknown',
  'leather',
  'glass',
  'elastodiene',
  'polyethylene',
  'polyurethane',
])

/** What people say beside the names on labels. From memory. */
const alsoSaid: Readonly<Record<string, FibreKey>> = {
  poly: 'polyester',
  woollen: 'wool',
  woolen: 'wool',
  lambswool: 'wool',
  algodoncito: 'cotton',
  nailon: 'polyamide',
}

const names = once((): ReadonlyMap<string, FibreKey> => {
  const found = new Map<string, FibreKey>()
  const put = (name: string, fibre: string) => {
    const word = plainWord(name)
    if (isFibreKey(fibre) && !notInSentences.has(fibre) && !/[\s-]/.test(word) && word.length > 3)
      found.set(word, fibre)
  }
  for (const { code, fibres, alsoNamed } of labelLanguages) {
    if (code !== 'en' && code !== 'es') continue
    for (const [fibre, { names: printed }] of Object.entries(fibres))
      for (const name of printed) put(name, fibre)
    for (const [fibre, others] of Object.entries(alsoNamed))
      for (const name of others) put(name, fibre)
  }
  for (const [fibre, marks] of Object.entries(tradeNames))
    for (const name of marks) put(name, fibre)
  for (const [name, fibre] of Object.entries(alsoSaid)) found.set(name, fibre)
  return found
})

/** Whether a word names a fibre, also in a sentence. */
export const isFibreName = (word: string): boolean => names().has(word)

const guessedName = (word: string): FibreKey | undefined => {
  if (word.length < 6) return undefined
  const guess = guessName(word)
  const meant = guess?.sure ? guess.term.words[0] : undefined
  return meant === undefined ? undefined : names().get(meant)
}

/** The fibre that a token names. */
export const fibreIn = (
  { word, isMark }: Token,
  known: (word: string) => boolean,
): FibreKey | undefined =>
  isMark ? undefined : (names().get(word) ?? (known(word) ? undefined : guessedName(word)))

const joints: ReadonlySet<string> = new Set(
  'percent percentage pct por ciento porciento de of and y e pure puro pura all todo toda organic organico mix blend mezcla combed with con'.split(
    ' ',
  ),
)
const pures: ReadonlySet<string> = new Set(
  'pure puro pura all todo toda entirely solid genuine real'.split(' '),
)
const halves: ReadonlySet<string> = new Set(['half', 'mitad'])

interface Named {
  readonly at: number
  readonly fibre: FibreKey
}

/** What the line says the garment is made of; null: nothing. `isOpen`: whether a token may tell. */
export function fibresOf(
  line: Line,
  isOpen: (at: number) => boolean,
  known: (word: string) => boolean,
): SaidFibres | null {
  const { tokens } = line
  const all = tokens.flatMap((token, at): Named[] => {
    const fibre = fibreIn(token, known)
    return fibre && isOpen(at) && !line.helps.blocks[at] && !negatedAt(line, at)
      ? [{ at, fibre }]
      : []
  })
  if (all.length === 0) return null
  const shared = sharesOf(line, all)
  if (shared) return shared
  return bareOf(line, all)
}

const negatedAt = ({ tokens, helps }: Line, at: number): boolean =>
  [1, 2, 3].some((back) => {
    const one = tokens[at - back]
    const words = tokens.slice(at - back + 1, at)
    return (
      one !== undefined &&
      one.segment === tokens[at]!.segment &&
      helps.negates[at - back] === true &&
      words.every(
        ({ word, isMark }) =>
          !isMark && /^(any|real|pure|really|made|of|in|it|a|de|es|tiene|\d+)$/.test(word),
      )
    )
  })

/** A run of numbers, names and what stands between them, as a label prints it. */
function sharesOf(line: Line, all: readonly Named[]): SaidFibres | null {
  const { tokens, raw } = line
  const half = halvesOf(line, all)
  if (half) return half
  const isName = (at: number) => all.some((one) => one.at === at)
  const isShare = (at: number) => /^\d+(?:[.,]\d+)?$/.test(tokens[at]?.word ?? '')
  const isJoint = (at: number) => {
    const token = tokens[at]
    return token !== undefined && (joints.has(token.word) || /^[%&+/,-]$/.test(token.text))
  }
  for (const { at } of all) {
    let first = at
    let last = at
    while (first > 0 && (isName(first - 1) || isShare(first - 1) || isJoint(first - 1))) first -= 1
    while (last + 1 < tokens.length && (isName(last + 1) || isShare(last + 1) || isJoint(last + 1)))
      last += 1
    while (first < at && !isShare(first) && !pures.has(tokens[first]!.word)) first += 1
    while (last > at && !isShare(last) && !isName(last) && tokens[last]!.text !== '%') last -= 1
    // A number with a comma behind it is a size, not a share.
    while (first < at && isShare(first) && tokens[first + 1]?.text === ',') first += 2
    while (
      last > at &&
      isShare(last) &&
      tokens[last + 1]?.text !== '%' &&
      tokens[last - 1]?.text === ','
    )
      last -= 2
    const isPure = pures.has(tokens[first]!.word) && first === at - 1
    const hasNumber = tokens.slice(first, last + 1).some((_, nth) => isShare(first + nth))
    if (!hasNumber && !isPure) continue
    const said = tokens
      .slice(first, last + 1)
      .map((token, nth) =>
        all.find((one) => one.at === first + nth)?.fibre === 'polyester'
          ? 'polyester'
          : /^(percent|percentage|pct|ciento|porciento)$/.test(token.word)
            ? '%'
            : token.word === 'por'
              ? ''
              : token.word,
      )
    const { blocks, sure } = readLabel(isPure ? `100 % ${tokens[at]!.word}` : said.join(' '))
    const [block] = blocks
    if (
      blocks.length !== 1 ||
      !block?.complete ||
      block.fibres.some(({ fibre }) => notInSentences.has(fibre))
    )
      continue
    const section = sectionAt(line, first, last)
    if (section === undefined) continue
    return {
      blocks: [
        {
          section,
          fibres: block.fibres.map(({ fibre, percent }) => ({ fibre, percent })),
          total: block.total,
          complete: true,
        },
      ],
      sure: sure && raw !== '' && section === null,
      first,
      last,
    }
  }
  return null
}

/** "Half cotton, half polyester". */
function halvesOf({ tokens }: Line, all: readonly Named[]): SaidFibres | null {
  const after = all.filter(
    ({ at }) =>
      halves.has(tokens[at - 1]?.word ?? '') ||
      (tokens[at - 1]?.word === 'de' && halves.has(tokens[at - 2]?.word ?? '')),
  )
  const [a, b] = after
  if (after.length !== 2 || !a || !b || a.fibre === b.fibre) return null
  const fibres = [a, b].map(({ fibre }) => ({ fibre, percent: 50 }))
  return {
    blocks: [{ section: null, fibres, total: 100, complete: true }],
    sure: true,
    first: a.at - 1,
    last: b.at,
  }
}

/** The part that a make-up belongs to: null the garment, undefined a part that no block is made for. */
function sectionAt(
  { tokens, helps }: Line,
  first: number,
  last: number,
): string | null | undefined {
  const { segment } = tokens[last]!
  const next = tokens[last + 1]
  if (next && next.segment === segment) {
    if (helps.linings[last + 1]) return 'lining'
    if (helps.parts[last + 1]) return undefined
  }
  const before = /^(de|in|of|is|es)$/.test(tokens[first - 1]?.word ?? '') ? first - 2 : first - 1
  if (tokens[before]?.segment !== segment) return null
  if (helps.linings[before]) return 'lining'
  return helps.parts[before] ? undefined : null
}

/** Fibres that are named without their shares: known to be there, and how much of each is to be asked. */
function bareOf(line: Line, all: readonly Named[]): SaidFibres | null {
  const told = all.flatMap((one) => {
    const section = sectionAt(line, one.at, one.at)
    return section === undefined ? [] : [{ ...one, section }]
  })
  const body = told.filter(({ section }) => section === null)
  const [first] = body
  if (!first) return null
  const keys = [...new Set(body.map(({ fibre }) => fibre))]
  return {
    blocks: [
      {
        section: null,
        fibres: keys.map((fibre) => ({ fibre, percent: null })),
        total: 0,
        complete: false,
      },
    ],
    sure: false,
    first: first.at,
    last: body.at(-1)!.at - first.at <= 4 ? body.at(-1)!.at : first.at,
  }
}

export const saidWith = ({ raw, tokens }: Line, { first, last }: SaidFibres): string =>
  between(raw, tokens, first, last)
