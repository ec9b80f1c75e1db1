import { withGuessedNames, withGuessedShares } from './label/guessed-shares.ts'
import { withLostShare } from './label/lost-share.ts'
import { isPieceOfName } from './label/name-pieces.ts'
import { namesFibre } from './label/names-fibre.ts'
import { mayNamePart } from './label/section-guess.ts'
import { mendedShares } from './label/share-mends.ts'
import { linesWithoutSlips } from './label/slips.ts'
import { readLabel } from './label.ts'
import { type LabelReading, type ProblemCode, problemWords } from './reading.ts'

/** A line that was read from a picture, and how sure its least sure word is, 0 to 1. */
export interface PicturedLine {
  readonly text: string
  readonly sure: number
}

/** Letters less likely than this may be others; measured over invented labels, see test/labels. */
export const surely = 0.3

/**
 * Reads the lines of a care label that were read from a picture. Lines with letters that may be others make the
 * whole doubtful, whatever the shares add up to, unless all other lines tell the same without them; so do a
 * picture that is not clear, and shares that may have lost the name of their part. Never throws.
 */
export function readLines(
  lines: readonly PicturedLine[],
  picture: { readonly isClear: boolean } = { isClear: true },
): LabelReading {
  const reading = read(lines)
  const code = reading.sure ? doubtOf(lines, picture.isClear, reading) : null
  return code ? doubted(reading, code) : reading
}

const doubted = (reading: LabelReading, code: ProblemCode): LabelReading => ({
  ...reading,
  sure: false,
  confidence: Math.min(reading.confidence, 0.6),
  problems: [...reading.problems, { code, message: problemWords[code] }],
})

function read(lines: readonly PicturedLine[]): LabelReading {
  const texts = linesWithoutSlips(lines.map(({ text }) => text))
  const reading = readLabel(texts.join('\n'))
  if (isWhole(reading)) return withNames(texts, reading)
  return mended(texts, reading) ?? mendedWithNames(texts) ?? reading
}

/** The reading with shares mended, guessed or worked out, where that makes them a whole. */
function mended(texts: readonly string[], reading: LabelReading): LabelReading | null {
  const others = mendedShares(texts).map((way) => readLabel(way.join('\n')))
  return others.find(isWhole) ?? guessed(texts, reading) ?? workedOut(texts, reading)
}

/** The same with every unknown word beside a share taken for the name that is most likely meant. */
function mendedWithNames(texts: readonly string[]): LabelReading | null {
  const [way] = withGuessedNames(texts)
  if (!way) return null
  const named = readLabel(way.join('\n'))
  const whole = isWhole(named) ? named : mended(way, named)
  return whole && !hasUnknown(whole) ? doubted(whole, 'letters_unclear') : null
}

/** The reading, where a share stands beside no known name with the name that is most likely meant. */
function withNames(texts: readonly string[], reading: LabelReading): LabelReading {
  if (!hasUnknown(reading) && !namesTwice(reading)) return reading
  const ways = withGuessedNames(texts).map((way) => readLabel(way.join('\n')))
  const whole = ways.find((way) => isWhole(way) && !hasUnknown(way) && !namesTwice(way))
  return whole ? doubted(whole, 'letters_unclear') : reading
}

const hasUnknown = ({ problems }: LabelReading): boolean =>
  problems.some(({ code }) => code === 'name_unknown')

/** The reading with letters beside names taken for digits, where that makes the shares a whole. */
function guessed(texts: readonly string[], reading: LabelReading): LabelReading | null {
  const way = withGuessedShares(texts)
  if (!way) return null
  const ways = [way, ...mendedShares(way)].map((lines) => readLabel(lines.join('\n')))
  const least = reading.problems.length
  const whole =
    ways.find(isWhole) ?? ways.find((one) => addsUp(one) && one.problems.length <= least)
  return whole ? doubted(whole, 'letters_unclear') : null
}

/** The reading with the one share that could not be read, where there is just one way to have it. */
function workedOut(texts: readonly string[], reading: LabelReading): LabelReading | null {
  const [first, ...others] = withLostShare(texts, reading)
    .map((way) => ({ way, whole: readLabel(way.join('\n')) }))
    .filter(({ whole }) => isWhole(whole))
  if (!first || !others.every(({ whole }) => sameBlocks(whole.blocks, first.whole.blocks)))
    return null
  return doubted(withNames(first.way, first.whole), 'share_worked_out')
}

/** Every part adds up, and no share or name is left over. */
const isWhole = (reading: LabelReading): boolean =>
  addsUp(reading) && !reading.problems.some(({ code }) => leftOver.has(code))

const addsUp = ({ blocks }: LabelReading): boolean =>
  blocks.length > 0 && blocks.every(({ total }) => total === 100)

const leftOver: ReadonlySet<ProblemCode> = new Set([
  'number_unexplained',
  'fibre_unexplained',
  'languages_disagree',
])

function doubtOf(
  lines: readonly PicturedLine[],
  pictureIsClear: boolean,
  reading: LabelReading,
): ProblemCode | null {
  if (!pictureIsClear || !tellsSurely(lines, reading)) return 'letters_unclear'
  if (namesTwice(reading)) return 'pairing'
  if (lines.some(({ text }) => isPieceOfName(text))) return 'fibre_unexplained'
  if (reading.blocks.every(({ section }) => section !== null && besides.has(section)))
    return 'section_unclear'
  if (reading.blocks.every(({ section }) => section === null) && mayHaveLostPart(lines))
    return 'section_unclear'
  // Shares above the first name of a part may have lost theirs.
  const isNameless = reading.blocks.length > 1 && reading.blocks.some(({ section }) => !section)
  return isNameless ? 'section_unclear' : null
}

/** Parts of a garment that its label tells besides what it is made of: where they stand alone, that was not seen. */
const besides: ReadonlySet<string> = new Set(
  'lining rib filling sleeve hood pocket collar trim coating insert embroidery lace waistband'.split(
    ' ',
  ),
)

/** The line above all that tells of fibres may name a part, though it was not read as one: what stood above it may be covered. */
function mayHaveLostPart(lines: readonly PicturedLine[]): boolean {
  const first = lines.findIndex(({ text }) => /\d ?%|% ?\d/.test(text) || namesFibre(text))
  const above = lines[first - 1]?.text
  return above !== undefined && !/\d/.test(above) && mayNamePart(above)
}

/** A part that names one fibre twice, where neither says what it is made of: a name in between was not read. */
const namesTwice = ({ blocks }: LabelReading): boolean =>
  blocks.some(
    ({ fibres }) =>
      new Set(fibres.map(({ fibre, detail }) => `${fibre} ${detail ?? ''}`)).size < fibres.length,
  )

function tellsSurely(lines: readonly PicturedLine[], reading: LabelReading): boolean {
  const clear = lines.filter(({ sure }) => sure >= surely)
  return clear.length === lines.length || tellsSame(read(clear), reading)
}

const tellsSame = (clear: LabelReading, whole: LabelReading): boolean =>
  clear.sure && clear.iron.level === whole.iron.level && sameBlocks(clear.blocks, whole.blocks)

const sameBlocks = (a: LabelReading['blocks'], b: LabelReading['blocks']): boolean =>
  JSON.stringify(a) === JSON.stringify(b)
