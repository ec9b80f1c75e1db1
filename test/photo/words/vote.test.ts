import { expect, test } from 'vitest'
import type { Slab } from '../../../src/photo/words/picture.ts'
import type { ReadLine } from '../../../src/photo/words/spell.ts'
import { voted } from '../../../src/photo/words/vote.ts'
import { labelSense } from '../../../src/textile/label-sense.ts'

const line = (n: number): Slab => ({ x: 100, y: 40 * n, w: 300 - n, h: 20, turn: 0 })
const lines = Array.from({ length: 12 }, (_, n) => line(n))

const readAs = (text: string, likely: number): ReadLine => ({
  text,
  letters: [...text.replaceAll(' ', '')].map(() => likely),
  sure: likely,
  others: [],
})

/** What each line says ahead and from behind, and how often lines were read. */
async function votedOn(ahead: ReadLine, behind: ReadLine, from: readonly Slab[] = lines) {
  let glances = 0
  const glance = async ({ turn }: Slab) => {
    glances += 1
    return turn === 0 ? ahead : behind
  }
  const { isUpright, known } = await voted(from, glance, labelSense.weigh)
  return { isUpright, known, glances }
}

const nothing = readAs('', 1)
/** As the network read a blurred line that said "Lavar A Maquina En": no letter is likely. */
const blurred = readAs('Las L Miqeias La', 0.45)

test('blurred letters tell which end is up, though the other end shows none at all', async () => {
  expect((await votedOn(blurred, nothing)).isUpright).toBe(true)
  expect((await votedOn(nothing, blurred)).isUpright).toBe(false)
})

test('what was read the way that won is handed on, and a clear vote asks few lines', async () => {
  const clear = readAs('MACHINE WASH COLD', 0.95)
  const { known, glances } = await votedOn(clear, readAs('0 e a', 0.3))
  expect(new Set(known.values())).toEqual(new Set([clear]))
  expect(glances).toBeLessThanOrEqual(2 * 2)
})

test('all lines are asked where few of them tell anything', async () => {
  const { glances, isUpright } = await votedOn(readAs('on', 0.5), readAs('e', 0.4))
  expect(glances).toBe(2 * lines.length)
  expect(isUpright).toBe(true)
})
