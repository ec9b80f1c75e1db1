import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { loadModels } from '../../../src/photo/words/models.ts'
import { type LabelSense, readWords } from '../../../src/photo/words/read.ts'
import { labelSense } from '../../../src/textile/label-sense.ts'

/** Drawn by test/labels: sharp, well lit, and its shares make wholes. */
const label = readFileSync(new URL('label-shares-apart.jpg', import.meta.url))

/** Whether what is read makes a whole, as told in turn; what was read at each turn. */
function toldWhole(...wholes: readonly boolean[]) {
  const turns = [...wholes]
  const read: string[][] = []
  const sense: LabelSense = {
    ...labelSense,
    isWhole: (lines) => {
      read.push(lines.map(({ text }) => text))
      return turns.shift() ?? true
    },
  }
  return { sense, read }
}

test('a photo whose shares make a whole is looked at once', async () => {
  const { sense, read } = toldWhole(true)
  const { lines, faults } = await readWords(label, await loadModels(), sense)
  expect(lines.map(({ text }) => text)).toEqual(read[0])
  expect(faults).toEqual([])
  expect(read).toHaveLength(1)
})

test('one whose shares make none is looked at once more, and where that finds one it is never sure', async () => {
  // Asked of the first look, of the second, and of the first beside it.
  const { sense, read } = toldWhole(false, true, false)
  const { lines, faults } = await readWords(label, await loadModels(), sense)
  expect(faults).toEqual(['blurred'])
  expect(lines.map(({ text }) => text)).toEqual(read[1])
})

test('the first look stands where it made a whole and the second makes none', async () => {
  const { sense, read } = toldWhole(false, false, true)
  const { lines, faults } = await readWords(label, await loadModels(), sense)
  expect(faults).toEqual([])
  expect(lines.map(({ text }) => text)).toEqual(read[0])
})
