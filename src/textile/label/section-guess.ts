import type { Section } from '../languages/types.ts'
import { fold } from './clean.ts'
import type { Element } from './elements.ts'
import { lettersApart } from './spelling.ts'
import { once, shareWords } from './vocabulary.ts'

interface Name {
  readonly words: string
  readonly section: Section
}

const names = once((): readonly Name[] =>
  [...shareWords().all()].flatMap(({ words, roles }) => {
    const name = words.join(' ')
    const sections = roles.flatMap(({ section }) => section ?? [])
    const isOne = sections.length === 1 && roles.length === 1
    return isOne && name.length >= guessing.shortest && /^[a-z ]+$/.test(name)
      ? [{ words: name, section: sections[0]! }]
      : []
  }),
)

/** How far a line may be from the name of a part, in letters. Our own measure, common practice, no source. */
const guessing = {
  shortest: 4,
  /** Names from here on may have two mistakes. */
  twoMistakesFrom: 8,
  /** From here on one mistake leaves the name clear, where no other part's is near. */
  clearFrom: 6,
  /** A line that was read badly, or in part, may be a name with a mistake in every so many letters. */
  mistakeEvery: 3,
}

/** No name of a part has more words. */
const mostWords = 3

/** Reads lines that are nearly the name of a part, right before a share, as that name: "Shel:", "Forrro". */
export function guessSections(elements: readonly Element[]): Element[] {
  const read: Element[] = []
  for (let at = 0; at < elements.length; at++) {
    const end = endOfHead(elements, at)
    const guess = end === null ? null : guessOf(elements.slice(at, end))
    if (guess === null || end === null) read.push(elements[at]!)
    else {
      read.push(guess)
      at = end - 1
    }
  }
  return read
}

const isEnd = ({ kind, raw }: Element): boolean =>
  kind === 'line' || (kind === 'mark' && /^[:.;,]$/.test(raw))

/** Where words end that stand alone on their line, with a share behind; null where they do not. */
function endOfHead(elements: readonly Element[], from: number): number | null {
  const before = elements[from - 1]
  if (before && before.kind !== 'line') return null
  let end = from
  while (end < from + mostWords && isPlain(elements[end])) end++
  const next = elements[end]
  if (end === from || !next || !isEnd(next)) return null
  if (!elements.slice(from, end).some(({ kind }) => kind === 'word')) return null
  const behind = elements.slice(end).find((element) => !isEnd(element))
  const isShare = behind?.kind === 'fibre' || (behind?.kind === 'number' && behind.percent)
  return isShare ? end : null
}

const isPlain = (element: Element | undefined): boolean =>
  element?.kind === 'word' || element?.kind === 'filler' || element?.kind === 'section'

function guessOf(line: readonly Element[]): Element | null {
  const raw = line.map((element) => element.raw).join(' ')
  const words = fold(raw)
  let best: Name | null = null
  let distance = Infinity
  let other = Infinity
  for (const name of names()) {
    const most = name.words.length >= guessing.twoMistakesFrom ? 2 : 1
    const limit = most + 1
    if (Math.abs(name.words.length - words.length) > limit) continue
    const apart = lettersApart(words, name.words, limit)
    if (apart <= most && apart < distance) {
      if (best && best.section !== name.section) other = Math.min(other, distance)
      best = name
      distance = apart
    } else if (best?.section !== name.section) other = Math.min(other, apart)
  }
  if (!best || other <= distance) return null
  const clear = distance === 1 && best.words.length >= guessing.clearFrom && other > 2
  return { kind: 'section', sections: [best.section], raw, guessed: !clear }
}

/** Whether a line that stands above shares may be the name of a part, read badly or cut short: "INNCK L". */
export function mayNamePart(line: string): boolean {
  const words = fold(line)
    .replaceAll(/[^a-z ]/g, '')
    .trim()
  if (words.length < guessing.shortest) return false
  const most = Math.floor(words.length / guessing.mistakeEvery)
  return names().some(
    (name) => lettersApart(words, name.words.slice(0, words.length), most) <= most,
  )
}
