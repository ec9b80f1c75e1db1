import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { overlap } from '../../../src/photo/words/missed.ts'
import { loadModels } from '../../../src/photo/words/models.ts'
import type { Slab } from '../../../src/photo/words/picture.ts'
import { type LabelSense, readWords } from '../../../src/photo/words/read.ts'
import { readLines } from '../../../src/textile/label-lines.ts'
import { labelSense } from '../../../src/textile/label-sense.ts'

const slab = (x: number, y: number, w: number): Slab => ({ x, y, w, h: 20, turn: 0 })

test('a share that stands apart in the row of its name is not what was known', () => {
  expect(overlap(slab(100, 50, 120), slab(300, 50, 40))).toBe(false)
})

test('a line that was found before is known, in whole or in part', () => {
  const known = slab(100, 50, 120)
  expect(overlap(known, known)).toBe(true)
  expect(overlap(known, slab(150, 53, 200))).toBe(true)
})

test('the row below is another line, though their slabs touch', () => {
  expect(overlap(slab(100, 50, 120), slab(100, 66, 120))).toBe(false)
})

/** Drawn by test/labels: the shares stand at the far edge, short and bold. */
const label = readFileSync(new URL('label-shares-apart.jpg', import.meta.url))

test('shares that a first look misses are found by the second, and read beside their names', async () => {
  const looks: string[][] = []
  const sense: LabelSense = {
    ...labelSense,
    settle: (lines) => {
      looks.push(lines.map(({ text }) => text))
      return labelSense.settle(lines)
    },
  }
  const { lines } = await readWords(label, await loadModels(), sense)
  expect(looks[0]!.join()).not.toMatch(/95|29/)
  expect(looks).toHaveLength(2)
  const { blocks } = readLines(lines)
  expect(blocks.map(({ section, fibres }) => [section, ...fibres])).toMatchObject([
    ['body', { fibre: 'polyester', percent: 95 }, { fibre: 'metallised', percent: 5 }],
    ['rib', { fibre: 'wool', percent: 71 }, { fibre: 'cotton', percent: 29 }],
  ])
})
