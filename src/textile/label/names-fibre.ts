import type { FibreKey } from '../fibres.ts'
import { fold } from './clean.ts'
import { guessName } from './spelling.ts'
import { meaningOf, shareWords } from './vocabulary.ts'

/** The fibre that a single word names, as it was read, be it through a slip that leaves no doubt. */
export function fibreNamed(read: string): FibreKey | undefined {
  const word = fold(read)
  const known = meaningOf(shareWords().single(word), 'fibre')
  if (known) return known.fibre
  const guess = guessName(word)
  return guess?.sure ? meaningOf(guess.term, 'fibre')?.fibre : undefined
}

export const namesFibre = (read: string): boolean => fibreNamed(read) !== undefined
