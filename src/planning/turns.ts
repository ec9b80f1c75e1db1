import { Failure } from '../base/failures.ts'

/** Takes its turn: the work before it is done first. */
export type Turn = <T>(work: () => Promise<T>) => Promise<T>

export interface Turns {
  /** What comes before the turn is done while others work. Throws `busy` where too many are waiting or at work. */
  take<T>(work: (turn: Turn) => Promise<T>): Promise<T>
  /** How many are waiting or at work. */
  waiting(): number
}

/** Work that takes turns, of `most` who are waiting or at work. */
export function takingTurns(most: number): Turns {
  let waiting = 0
  let last: Promise<unknown> = Promise.resolve()
  const turn: Turn = (work) => {
    const mine = last.then(work)
    last = mine.catch(() => {})
    return mine
  }
  return {
    async take(work) {
      if (waiting >= most) throw new Failure('busy')
      waiting += 1
      try {
        return await work(turn)
      } finally {
        waiting -= 1
      }
    },
    waiting: () => waiting,
  }
}
