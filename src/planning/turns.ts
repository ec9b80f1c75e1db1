import { Failure } from '../base/failures.ts'

/** Takes its turn: the work before it is done first. */
export type Turn = <T>(work: () => Promise<T>) => Promise<T>

/**
 * Work that takes turns. What comes before the turn is done while others work. Throws `busy` where `most`
 * are waiting or at work.
 */
export function takingTurns(most: number): <T>(work: (turn: Turn) => Promise<T>) => Promise<T> {
  let waiting = 0
  let last: Promise<unknown> = Promise.resolve()
  const turn: Turn = (work) => {
    const mine = last.then(work)
    last = mine.catch(() => {})
    return mine
  }
  return async (work) => {
    if (waiting >= most) throw new Failure('busy')
    waiting += 1
    try {
      return await work(turn)
    } finally {
      waiting -= 1
    }
  }
}
