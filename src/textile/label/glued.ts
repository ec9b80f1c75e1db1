import { guessName } from './spelling.ts'
import { isLabelWord } from './vocabulary.ts'

const shortest = 7
const longest = 60
const longestPiece = 20
const mostPieces = 10

// Shorter words would be found inside almost any other word.
const shortPieces = new Set(['at', 'do', 'no', 'ne', 'on', 'if'])
const mayBePiece = (piece: string): boolean =>
  (piece.length >= 3 || shortPieces.has(piece)) && isLabelWord(piece)

/** "DONOTIRON", "COTTONPOLYESTER": known words printed without their spaces, the fewest that fit. */
export function splitGlued(word: string): readonly string[] | null {
  if (word.length < shortest || word.length > longest || isLabelWord(word)) return null
  const best: (readonly string[] | null)[] = [[]]
  for (let end = 1; end <= word.length; end++) {
    let fewest: readonly string[] | null = null
    for (let start = Math.max(0, end - longestPiece); start < end; start++) {
      const before = best[start]
      if (!before || (fewest && before.length + 1 >= fewest.length)) continue
      const piece = word.slice(start, end)
      if (mayBePiece(piece)) fewest = [...before, piece]
    }
    best.push(fewest)
  }
  const pieces = best[word.length]
  if (!pieces || pieces.length > mostPieces) return null
  // One slip in a single name is likelier than two words run together.
  return guessName(word) ? null : pieces
}
