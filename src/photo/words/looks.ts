import type { Step } from './beam.ts'

/** What the reading network saw along one line. */
export interface Look {
  readonly steps: readonly Step[]
  /** So many of the steps lie along the line, the others beyond its end; need not be whole. */
  readonly along: number
}

/**
 * What several looks along one line show together: at each place of the one with the most steps the mean of them
 * all. A letter that each of them doubts, in another place, is often clear to all together. At least one look.
 */
export function seenTogether(looks: readonly Look[]): Step[] {
  const finest = looks.reduce((a, b) => (b.along > a.along ? b : a))
  return finest.steps.map((_, at) => {
    const likely = new Map<string, number>()
    for (const { steps, along } of looks) {
      const nth = Math.floor(((at + 0.5) * along) / finest.along)
      for (const guess of steps[Math.min(nth, steps.length - 1)]!)
        likely.set(guess.letter, (likely.get(guess.letter) ?? 0) + guess.likely / looks.length)
    }
    return [...likely]
      .map(([letter, share]) => ({ letter, likely: share }))
      .sort((a, b) => b.likely - a.likely)
  })
}
