import { fold } from './clean.ts'
import { fibreNames } from './spelling.ts'
import { isLabelWord, once } from './vocabulary.ts'

/** Letters of a piece, and of what is missing, at least. */
const least = { head: 3, tail: 4, missing: 3 }

const pieces = once((): ReadonlySet<string> => {
  const found = new Set<string>()
  for (const name of fibreNames()) {
    const most = name.length - least.missing
    for (let head = least.head; head <= most; head += 1) found.add(name.slice(0, head))
    for (let tail = least.tail; tail <= most; tail += 1) found.add(name.slice(-tail))
  }
  return found
})

/** Whether a line is a single word that is none, and the head or tail of a fibre's name: the rest lies in a fold. */
export function isPieceOfName(line: string): boolean {
  const [word, ...others] = line.match(/[\p{L}\d%]+/gu) ?? []
  if (word === undefined || others.length > 0) return false
  const folded = fold(word)
  return pieces().has(folded) && !isLabelWord(folded)
}
