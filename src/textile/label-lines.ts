import { withoutSlips } from './label/slips.ts'
import { readLabel } from './label.ts'
import { type LabelReading, problemWords } from './reading.ts'

/** A line that was read from a picture, and how sure its least sure letter is, 0 to 1. */
export interface PicturedLine {
  readonly text: string
  readonly sure: number
}

/** Letters less likely than this may be others; measured over invented labels, see test/labels. */
export const surely = 0.3

/**
 * Reads the lines of a care label that were read from a picture. Lines with letters that may be others make the
 * whole doubtful, whatever the shares add up to, unless all other lines tell the same without them. Never throws.
 */
export function readLines(lines: readonly PicturedLine[]): LabelReading {
  const reading = read(lines)
  const clear = lines.filter(({ sure }) => sure >= surely)
  if (!reading.sure || clear.length === lines.length || tellsSame(read(clear), reading))
    return reading
  const code = 'letters_unclear'
  return {
    ...reading,
    sure: false,
    confidence: Math.min(reading.confidence, 0.6),
    problems: [...reading.problems, { code, message: problemWords[code] }],
  }
}

const read = (lines: readonly PicturedLine[]): LabelReading =>
  readLabel(lines.map(({ text }) => withoutSlips(text)).join('\n'))

const tellsSame = (clear: LabelReading, whole: LabelReading): boolean =>
  clear.sure &&
  clear.iron.level === whole.iron.level &&
  JSON.stringify(clear.blocks) === JSON.stringify(whole.blocks)
