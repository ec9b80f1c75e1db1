import { type Figure, practice } from '../../base/figure.ts'
import type { FibreKey } from '../fibres.ts'
import { fold } from './clean.ts'
import { meaningOf, once, shareWords, type Term } from './vocabulary.ts'

/** Letters that print blurs into one another, made the same. */
const skeleton = (word: string): string =>
  word
    .replaceAll(/[l1|!]/g, 'i')
    .replaceAll('0', 'o')
    .replaceAll('rn', 'm')
    .replaceAll('vv', 'w')

interface Name {
  readonly word: string
  readonly term: Term
  readonly fibre: FibreKey
}

const names = once((): readonly Name[] =>
  [...shareWords().all()].flatMap((term) => {
    const fibre = meaningOf(term, 'fibre')?.fibre
    const word = term.words[0]!
    return fibre && term.words.length === 1 && /^[a-z]{4,}$/.test(word)
      ? [{ word, term, fibre }]
      : []
  }),
)

/** Names of fibres of four letters or more, as they are compared. */
export const fibreNames = (): readonly string[] => names().map(({ word }) => word)

const bySkeleton = once((): ReadonlyMap<string, Name | null> => {
  const found = new Map<string, Name | null>()
  for (const name of names()) {
    const key = skeleton(name.word)
    const other = found.get(key)
    found.set(key, other === undefined || other?.fibre === name.fibre ? name : null)
  }
  return found
})

export interface Guess {
  readonly term: Term
  /** Near enough, and nothing else near, that it may be taken as read. */
  readonly sure: boolean
}

/**
 * How far a word may be from a name, in letters. Our own measure, common practice, no source: a short
 * name is soon another word, so it must be nearer, and its first letter right.
 */
const guessing = {
  shortest: 4,
  longest: 24,
  /** Words from here on may have two mistakes. */
  twoMistakesFrom: 7,
  firstLetterRightBelow: 5,
  /** Names that are sure enough to be taken as read: this long for one mistake, and for two. */
  sureFrom: { one: 6, two: 8 },
  /** Any other fibre's name must be so many mistakes further off. */
  clearBy: 2,
  /** Beside a share, and never surely, a word and one letter may have a mistake in every so many. */
  mistakeEvery: 3,
}

export const spellingFigures: readonly Figure[] = Object.entries(guessing).map(([name, value]) => ({
  figure: `label/misspelt names, ${name}`,
  value,
  unit: 'letters',
  source: practice,
}))

/** The name that a misspelt word most likely stands for; undefined where none or several are near. */
export function guessName(word: string): Guess | undefined {
  if (word.length < guessing.shortest || word.length > guessing.longest) return undefined
  const known = guesses.get(word)
  if (known !== undefined) return known ?? undefined
  const blurred = bySkeleton().get(skeleton(word))
  const guess = blurred ? { term: blurred.term, sure: true } : nearest(word)
  if (guesses.size >= mostGuesses) guesses.clear()
  guesses.set(word, guess ?? null)
  return guess
}

// A guess hangs on its word alone, and the same mistakes come again.
const guesses = new Map<string, Guess | null>()
const mostGuesses = 2_000

function nearest(word: string): Guess | undefined {
  const most = word.length >= guessing.twoMistakesFrom ? 2 : 1
  let best: Name | undefined
  let bestDistance = most + 1
  let otherDistance = most + guessing.clearBy + 1
  for (const name of names()) {
    const limit = Math.min(most + guessing.clearBy, otherDistance)
    if (Math.abs(name.word.length - word.length) > limit) continue
    const distance = lettersApart(word, name.word, limit)
    if (distance < bestDistance) {
      if (best && best.fibre !== name.fibre) otherDistance = Math.min(otherDistance, bestDistance)
      best = name
      bestDistance = distance
    } else if (best && name.fibre !== best.fibre) {
      otherDistance = Math.min(otherDistance, distance)
    }
  }
  if (!best || bestDistance > most || otherDistance <= bestDistance) return undefined
  // A short name is soon another word; the first letter is seldom misread.
  if (best.word.length < guessing.firstLetterRightBelow && word[0] !== best.word[0])
    return undefined
  const long = word.length >= guessing.sureFrom[bestDistance === 1 ? 'one' : 'two']
  return { term: best.term, sure: long && otherDistance - bestDistance >= guessing.clearBy }
}

/** Digits that letters are read as, each before the letter that it may be. */
const letterOf = new Map(
  ['0o', '1i', '3e', '4a', '5s', '7t', '8b'].map((pair) => [pair[0], pair[1]]),
)

/**
 * The name that a word of four signs or more that is none is nearest to, about a third of its letters away at most;
 * undefined where another fibre's is as near. Two names of one fibre that ran together, "WOOULAINE", are both given.
 */
export function nameMeant(read: string): string | undefined {
  if (read.length > guessing.longest) return undefined
  const word = fold(read).replaceAll(/\d/g, (digit) => letterOf.get(digit) ?? digit)
  const most = Math.floor((word.length + 1) / guessing.mistakeEvery)
  return nearestOf(word, most)?.word ?? glued(word)
}

function glued(word: string): string | undefined {
  for (let at = guessing.shortest; at <= word.length - guessing.shortest; at += 1) {
    const [one, other] = [nearestOf(word.slice(0, at), 1), nearestOf(word.slice(at), 1)]
    if (one && one.fibre === other?.fibre) return `${one.word}/${other.word}`
  }
  return undefined
}

/** The name `most` letters away at most, where no other fibre's is as near. */
function nearestOf(word: string, most: number): Name | undefined {
  const near = names().flatMap((name) => {
    const distance = lettersApart(word, name.word, most)
    return distance <= most && name.fibre !== 'other' ? [{ name, distance }] : []
  })
  const least = Math.min(...near.map(({ distance }) => distance))
  const [first, ...others] = near.filter(({ distance }) => distance === least)
  return others.every(({ name }) => name.fibre === first!.name.fibre) ? first?.name : undefined
}

/** Changed, added, dropped or swapped letters between two words, or more than `limit`. */
export function lettersApart(a: string, b: string, limit: number): number {
  let before: number[] = []
  let last = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    let least = i
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let cost = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1))
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      if (swapped) cost = Math.min(cost, before[j - 2]! + 1)
      row.push(cost)
      least = Math.min(least, cost)
    }
    if (least > limit) return limit + 1
    before = last
    last = row
  }
  return last[b.length]!
}
