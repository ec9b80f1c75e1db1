import { expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'
import { composedLabels } from './composed-labels.ts'
import { furtherVariants } from './further-variants.ts'
import { hardLabels, type LabelCase } from './hard-labels.ts'
import { blocksTold, ironTold } from './told.ts'
import { unsureLabels } from './unsure-labels.ts'
import { variantLabels } from './variant-labels.ts'

const warmth = ['none', 'cool', 'warm', 'hot', '']

/** No level counts as the hottest: it leaves the cap for silent labels. */
const isHotter = (read: string, said: string): boolean =>
  warmth.indexOf(read.split(' ')[0]!) > warmth.indexOf(said.split(' ')[0]!)

const byHand = [...hardLabels, ...variantLabels, ...furtherVariants]
const judged = [...byHand, ...composedLabels].map((label) => judge(label))

function judge(label: LabelCase) {
  const reading = readLabel(label.text)
  const exact = blocksTold(reading) === label.blocks
  const ironing = ironTold(reading) === label.iron
  return {
    label,
    exact,
    ironing,
    sure: reading.sure,
    sureAndWrong: reading.sure && !(exact && ironing && !label.ask),
    hotter: isHotter(ironTold(reading), label.iron),
    mayBeSure: exact && ironing && !label.ask && label.blocks !== '',
  }
}

const texts = (rows: typeof judged): string[] => rows.map(({ label }) => label.text)
const share = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`

test('the figures of label reading are printed', () => {
  const right = judged.filter(({ mayBeSure }) => mayBeSure)
  const lines = [
    `label texts ${judged.length} (${byHand.length} by hand)`,
    `make-up exact ${share(judged.filter(({ exact }) => exact).length, judged.length)}`,
    `ironing exact ${share(judged.filter(({ ironing }) => ironing).length, judged.length)}`,
    `sure and wrong ${judged.filter(({ sureAndWrong }) => sureAndWrong).length}`,
    `read hotter ${judged.filter(({ hotter }) => hotter).length}`,
    `sure among the right ones ${share(right.filter(({ sure }) => sure).length, right.length)}`,
  ]
  process.stdout.write(`${lines.join('\n')}\n`)
  expect(judged.length).toBeGreaterThanOrEqual(300)
  expect(hardLabels.length).toBeGreaterThanOrEqual(100)
})

test('at least 98 in 100 make-ups are read exactly', () => {
  const wrong = judged.filter(({ exact }) => !exact)
  expect(wrong.length, texts(wrong).join('\n---\n')).toBeLessThanOrEqual(judged.length * 0.02)
})

test('at least 97 in 100 ironing lines are read exactly', () => {
  const wrong = judged.filter(({ ironing }) => !ironing)
  expect(wrong.length, texts(wrong).join('\n---\n')).toBeLessThanOrEqual(judged.length * 0.03)
})

test('no label is read wrong and for sure', () => {
  expect(texts(judged.filter(({ sureAndWrong }) => sureAndWrong))).toEqual([])
})

test('no ironing line is read hotter than it says', () => {
  expect(texts(judged.filter(({ hotter }) => hotter))).toEqual([])
})

test('at least 90 in 100 of the right readings are sure', () => {
  const right = judged.filter(({ mayBeSure }) => mayBeSure)
  const sure = right.filter((row) => row.sure)
  expect(sure.length).toBeGreaterThanOrEqual(right.length * 0.9)
})

test('what is guessed, limited, likened or just mended is never read for sure', () => {
  expect(unsureLabels.filter((text) => readLabel(text).sure)).toEqual([])
})
