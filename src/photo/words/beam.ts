/** What a place along a line may show: a letter, `''` for none, `' '` for a gap, and how likely, 0 to 1. */
export interface Guess {
  readonly letter: string
  readonly likely: number
}

/** The guesses at one place along a line, the likeliest first. */
export type Step = readonly Guess[]

/** One way to read some steps. */
export interface Way {
  readonly text: string
  /** 0 to 1; all ways together are one. */
  readonly likely: number
  /** How likely each of its letters is, gaps left out. */
  readonly letters: readonly number[]
}

/** A gap is often read as no letter, with a gap the next likely: so likely in all, between two letters, it is one. */
const enoughGap = 0.05
/** Guesses less likely than this are not followed. */
const leastGuess = 0.004

/** The letters so far, each with the step where it is likeliest. */
interface Path {
  readonly key: string
  readonly letters: readonly { readonly letter: string; readonly at: number; likely: number }[]
  /** Likelihood of ending in no letter, and in the last letter. */
  readonly bare: number
  readonly held: number
}

const start: Path = { key: '', letters: [], bare: 1, held: 0 }

/**
 * The likeliest ways to read steps of connectionist temporal classification, at most `most` of them, by prefix
 * beam search (A. Y. Hannun and others, arXiv:1408.2873, 2014; from memory): the same letters count together,
 * however long each is held.
 */
export function likeliestWays(steps: readonly Step[], most: number): Way[] {
  let paths: Path[] = [start]
  for (const [at, step] of steps.entries()) {
    const next = new Map<string, Path>()
    const add = (path: Path): void => {
      const known = next.get(path.key)
      next.set(path.key, known ? together(known, path) : path)
    }
    const none = step.reduce((sum, { letter, likely }) => sum + (isBare(letter) ? likely : 0), 0)
    const guesses = step.filter(({ letter, likely }) => !isBare(letter) && likely > leastGuess)
    for (const path of paths) {
      const { letters, bare, held } = path
      const last = letters.at(-1)
      add({ ...path, bare: (bare + held) * none, held: 0 })
      for (const { letter, likely } of guesses) {
        const own = { letter, at, likely }
        // A letter twice in a row needs a step without one in between.
        const again = last?.letter === letter
        if (again) add({ ...path, letters: withBest(letters, own), bare: 0, held: held * likely })
        const from = again ? bare : bare + held
        if (from > 0)
          add({
            key: path.key + letter,
            letters: [...letters, own],
            bare: 0,
            held: from * likely,
          })
      }
    }
    paths = [...next.values()].sort((a, b) => totalOf(b) - totalOf(a)).slice(0, most)
  }
  return paths.map((path) => ({
    text: spaced(path, steps),
    likely: totalOf(path),
    letters: path.letters.map(({ likely }) => likely),
  }))
}

export const isBare = (letter: string): boolean => letter === '' || letter === ' '

const totalOf = ({ bare, held }: Path): number => bare + held

type Letters = Path['letters']

function withBest(letters: Letters, own: Letters[number]): Letters {
  return letters.at(-1)!.likely >= own.likely ? letters : [...letters.slice(0, -1), own]
}

function together(a: Path, b: Path): Path {
  const best = a.letters.length > 0 ? withBest(a.letters, b.letters.at(-1)!) : a.letters
  return { key: a.key, letters: best, bare: a.bare + b.bare, held: a.held + b.held }
}

function spaced({ letters }: Path, steps: readonly Step[]): string {
  let text = ''
  for (const [n, { letter, at }] of letters.entries()) {
    const before = letters[n - 1]
    if (before && gapIn(steps.slice(before.at + 1, at)) > enoughGap) text += ' '
    text += letter
  }
  return text
}

/** How likely a gap is in steps that show no letter. */
export const gapIn = (steps: readonly Step[]): number =>
  steps.reduce((sum, step) => {
    const bare = isBare(step[0]?.letter ?? '')
    return sum + (bare ? (step.find(({ letter }) => letter === ' ')?.likely ?? 0) : 0)
  }, 0)
