import { fold } from './clean.ts'
import { guessName } from './spelling.ts'
import { meaningOf, shareWords } from './vocabulary.ts'

/** Whether a single word, as it was read, is the name of a fibre, be it through a slip that leaves no doubt. */
export function namesFibre(read: string): boolean {
  const word = fold(read)
  return (
    meaningOf(shareWords().single(word), 'fibre') !== undefined || guessName(word)?.sure === true
  )
}
