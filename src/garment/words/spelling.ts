import { type Figure, practice } from '../../base/figure.ts'
import { lettersApart } from '../../textile/label/spelling.ts'
import { once } from '../../textile/label/vocabulary.ts'
import type { Token } from './tokens.ts'
import { plainWord } from './tokens.ts'
import { knownWords, type LanguageCode, lexicons, vocabulary } from './vocabulary.ts'

/** How far a word may be from one that is meant, in letters. Our own measure. */
const mending = { shortest: 6, swappedFrom: 5, twoSlipsFrom: 10 }

export const wordSpellingFigures: readonly Figure[] = Object.entries(mending).map(
  ([name, value]) => ({
    figure: `own words/misspelt words, ${name}`,
    value,
    unit: 'letters',
    source: practice,
  }),
)

/** Ordinary words that lie one letter beside one of ours, and are never taken for it. */
const ordinary: ReadonlySet<string> = new Set(
  `strike strikes strips stripped strived strained wished vantage sweeter fellow mellow channel packet
  picket foodie mutton written bitten kitten rotten batten bottom camina camino caminata gustado gustada
  pasado pasada posado marchas mirado mirada vertido banca banco falta santa manga mandado cuadra grandpa
  whole whose shorts thirty shirty skirts smell smells stall shall tense dressing printing painting
  parking painted waiting wearing warming blankly clearly cleanly cleaner closet clothes cloths clothing
  coated courage village finger ginger single stitch stretch strong string strings street stroll
  flavour flower flowers flowery follow follower friend friends marriage married marred marrying
  cousin cotton casual castle candle handle hundred medial median mediums father gather mother bother
  brother broken brown browse button buttons wallet wallets pallet ballet patient pattern patter
  wonder wonderful winter winner pleased please placed plains plainly planned brand branch
  cuando cuanto cuenta cuentan tienda tiempo trabajo llevado llevada hablado cosido cocido vestida
  vestidor parado parada pesada ganado ganada casado casada cansado cansada cuidado cuidada regalo regalado
  recuerdo recuerdos pequena mediano cortado cortada comprado guardado quedado quedo querido herida
  puntos juntos juntas pintada pinta planta plantas blando blanda negado colado volado`.split(
    /\s+/,
  ),
)

const slips = once((): ReadonlyMap<string, ReadonlyMap<LanguageCode, string>> => {
  const all = new Map<string, Map<LanguageCode, string>>()
  for (const { code, helps } of lexicons)
    for (const [slip, meant] of Object.entries(helps.spellings)) {
      const word = plainWord(slip)
      all.set(word, (all.get(word) ?? new Map<LanguageCode, string>()).set(code, plainWord(meant)))
    }
  return all
})

const tellsNothing: ReadonlySet<string> = new Set([
  'blocks',
  'fillers',
  'modifies',
  'asks',
  'asksAnywhere',
  'hedges',
  'negates',
  'negatesBefore',
  'besides',
  'supposes',
])

/** Words that tell something and are long enough to be known through a slip. */
const targets = once((): Readonly<Record<LanguageCode, readonly string[]>> => {
  const of = { en: new Set<string>(), es: new Set<string>() }
  for (const entries of vocabulary().values())
    for (const { words, role, language } of entries)
      if (!tellsNothing.has(role))
        for (const word of words) if (word.length >= mending.swappedFrom) of[language].add(word)
  return { en: [...of.en], es: [...of.es] }
})

/** What turns a word's meaning round is never taken away or added by mending. */
const reversed = (a: string, b: string): boolean => {
  const [short, long] = a.length < b.length ? [a, b] : [b, a]
  return (
    /^(un|in|im|des|dis|non)/.test(long) &&
    /^(un|in|im|des|dis|non)/.exec(long)![0] + short === long
  )
}

const isSwap = (a: string, b: string): boolean =>
  a.length === b.length && [...a].sort().join('') === [...b].sort().join('')

function nearest(word: string, language: LanguageCode): string | null {
  if (word.length < mending.swappedFrom || word.length > 20) return null
  const most = word.length >= mending.twoSlipsFrom ? 2 : 1
  let best: string[] = []
  let least = most + 1
  for (const target of targets()[language]) {
    if (target[0] !== word[0] || Math.abs(target.length - word.length) > most) continue
    if (Math.min(target.length, word.length) < mending.shortest && !isSwap(word, target)) continue
    const apart = lettersApart(word, target, most)
    if (apart > most || apart > least || reversed(word, target)) continue
    if (apart < least) best = []
    least = apart
    best.push(target)
  }
  const [first] = best
  // Several that are equally near are one word in its forms, or nobody knows which was meant.
  return first && best.every((other) => other.slice(0, 4) === first.slice(0, 4)) ? first : null
}

const found = new Map<string, string | null>()
const mostFound = 2_000

/** A word of a language, its slip mended; null: it is none of ours, nor beside one alone. */
function meantBy(word: string, language: LanguageCode): string | null {
  const often = slips().get(word)?.get(language)
  if (often !== undefined) return often
  const key = `${language} ${word}`
  const before = found.get(key)
  if (before !== undefined) return before
  if (found.size >= mostFound) found.clear()
  const meant = nearest(word, language)
  found.set(key, meant)
  return meant
}

/** "Marino" in the middle of a sentence is a person; in a line all of capitals it may be anything. */
function isNamed(tokens: readonly Token[], at: number): boolean {
  const { text, sentence } = tokens[at]!
  const before = tokens[at - 1]
  const isFirst = before === undefined || before.sentence !== sentence || before.isMark
  return !isFirst && /^\p{Lu}\p{Ll}/u.test(text)
}

/** Mends slips in place: those that are made often, then words that lie beside one of ours alone. */
export function mend(
  tokens: readonly Token[],
  languages: readonly LanguageCode[],
  isName: (word: string) => boolean,
): void {
  for (const [at, token] of tokens.entries()) {
    const { word } = token
    if (token.isMark || /\d/.test(word) || ordinary.has(word) || isName(word)) continue
    const often = languages.some((language) => slips().get(word)?.has(language))
    if (!often && (knownWords().has(word) || isNamed(tokens, at))) continue
    for (const language of languages) {
      const meant = meantBy(word, language)
      if (meant === null) continue
      token.word = meant
      break
    }
  }
}
