import { careCodesOf } from './label/care.ts'
import { cleanText } from './label/clean.ts'
import { compositionOf } from './label/composition.ts'
import { withDots } from './label/dots.ts'
import { splitGlued } from './label/glued.ts'
import { ironingOf } from './label/ironing.ts'
import { type Item, itemsOf } from './label/items.ts'
import { languagesOf } from './label/languages-of.ts'
import { withSpelledNumbers } from './label/spelled-numbers.ts'
import { tokenise } from './label/tokens.ts'
import { careWords, isLabelWord, shareWords } from './label/vocabulary.ts'
import {
  type CareCode,
  careCodes,
  type IronLevel,
  type LabelReading,
  type ProblemCode,
  problemWords,
} from './reading.ts'

/** Reads the words of a care label: typed ones, or lines that were read from a picture. Never throws. */
export function readLabel(text: string): LabelReading {
  const clean = cleanText(text)
  const tokens = tokenise(clean.text, { isWord: isLabelWord, split: splitGlued })
  const shares = withSpelledNumbers(itemsOf(tokens, shareWords()))
  const care = withDots(withoutSmallMarks(itemsOf(tokens, careWords())))

  const { blocks, problems } = compositionOf(shares)
  const ironing = ironingOf(care)
  const found = new Set<ProblemCode>(clean.lines.length === 0 ? ['no_words'] : problems)
  if (ironing.doubtful) found.add('iron_unclear')
  if (clean.cut) found.add('too_long')
  const codes = careCodesOf(care)
  if (ironing.reading.level) codes.add(ironCodes[ironing.reading.level])

  return {
    blocks,
    iron: ironing.reading,
    care: (Object.keys(careCodes) as CareCode[]).filter((code) => codes.has(code)),
    languages: languagesOf([...shares, ...care]),
    confidence: found.size === 0 ? 0.98 : Math.max(0.05, 0.6 ** found.size),
    sure: found.size === 0,
    problems: [...found].map((code) => ({ code, message: problemWords[code] })),
    text: clean.lines,
  }
}

// Hyphens, quotes and the point of "max." end no phrase of care, and a percentage is no heat.
const withoutSmallMarks = (items: readonly Item[]): Item[] =>
  items.filter(({ kind, raw }, at) => {
    const before = items[at - 1]
    if (kind === 'number') {
      const signed = before?.kind === 'percent' && items[at - 2]?.kind !== 'number'
      return !signed && items[at + 1]?.kind !== 'percent'
    }
    if (kind !== 'mark') return true
    return !/['’‘´`"“”\-‐‑–]/.test(raw) && !(raw === '.' && shortened.has(before?.text ?? ''))
  })

const shortened = new Set(['max', 'maks', 'temp', 'min', 'ca', 'evt', 'ev', 'máx', 'gr', 'vb'])

const ironCodes: Readonly<Record<IronLevel, CareCode>> = {
  none: 'no-iron',
  cool: 'iron-cool',
  warm: 'iron-warm',
  hot: 'iron-hot',
}
