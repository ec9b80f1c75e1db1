import { place } from '../../src/quilt/place/index.ts'
import { plainBoard } from '../help/boards.ts'

/** What two kinds cost side by side: anything that is no pattern. */
const beside = (t: number, u: number): number => (t * u * 7 + (t + u) * 11) % 31

/** So many pieces of each kind, as even as they can be. */
const shared = (cells: number, kinds: number): number[] =>
  Array.from({ length: kinds }, (_, n) => Math.floor((cells + n) / kinds))

function tellOf(rows: number, cols: number, kinds: number): void {
  const counts = shared(rows * cols, kinds)
  const adj = counts.map((_, t) => counts.map((__, u) => beside(t, u)))
  const start = performance.now()
  const { proven, touching } = place({ ...plainBoard(rows, cols, counts), adj })
  const seconds = ((performance.now() - start) / 1000).toFixed(2)
  process.stdout.write(
    `${rows} by ${cols}, ${kinds} kinds: ${seconds} s, ${proven ? 'proven' : 'not proven'}, ${touching} pairs touch\n`,
  )
}

/** How long large grids take to lay, and which small ones are proven. */
export async function benchPlace(): Promise<void> {
  for (const kinds of [2, 4, 9, 30]) tellOf(20, 20, kinds)
  for (const kinds of [3, 5, 8, 11, 25]) tellOf(5, 5, kinds)
}
