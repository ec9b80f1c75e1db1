import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { create } from 'fontkit'
import { expect, test } from 'vitest'
import { cutFace } from '../../../src/papers/pdf/cut-face.ts'
import { runsOf } from '../../../src/papers/pdf/faces.ts'
import { trueTypeOf } from '../../../src/papers/pdf/woff2.ts'

const { resolve } = createRequire(import.meta.url)
const file = (name: string): Buffer =>
  readFileSync(resolve(`@fontsource-variable/${name}-wght-normal.woff2`))

const files = [
  'atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin',
  'atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-latin-ext',
  'fraunces/files/fraunces-latin',
  'fraunces/files/fraunces-latin-ext',
  'fraunces/files/fraunces-vietnamese',
]

// fontkit reads WOFF2 by a code of its own, which this project does not use.
test.each(files)('%s unpacked has the outlines and widths that another reader finds', (name) => {
  const [packed, unpacked] = [create(file(name)), create(trueTypeOf(file(name)))]
  expect(unpacked.numGlyphs).toBe(packed.numGlyphs)
  expect(unpacked.numGlyphs).toBeGreaterThan(100)
  expect(unpacked.characterSet).toEqual(packed.characterSet)
  for (let n = 0; n < packed.numGlyphs; n += 1) {
    const [theirs, ours] = [packed.getGlyph(n), unpacked.getGlyph(n)]
    expect(ours.path.commands, `glyph ${n}`).toEqual(theirs.path.commands)
    expect(ours.advanceWidth, `glyph ${n}`).toBe(theirs.advanceWidth)
  }
})

test('a weight cut out of a typeface has the outlines that its variation has, accents too', () => {
  const font = trueTypeOf(file(files[0]!))
  const bold = create(font).getVariation({ wght: 700 })
  const cut = create(cutFace(font, 700))
  const regular = create(font)
  const corners = (glyph: ReturnType<typeof cut.getGlyph>) =>
    glyph.path.commands.flatMap(({ args }) => args)
  let heavier = 0
  for (let n = 0; n < cut.numGlyphs; n += 1) {
    const [theirs, ours] = [bold.getGlyph(n), cut.getGlyph(n)]
    expect(Math.abs(ours.advanceWidth - theirs.advanceWidth)).toBeLessThanOrEqual(0.5)
    const reach = (args: readonly number[]) => [Math.min(...args), Math.max(...args)]
    const [a, b] = [reach(corners(theirs)), reach(corners(ours))]
    if (Number.isFinite(a[0])) {
      expect(Math.abs(a[0]! - b[0]!)).toBeLessThanOrEqual(1)
      expect(Math.abs(a[1]! - b[1]!)).toBeLessThanOrEqual(1)
    }
    if (ours.advanceWidth > regular.getGlyph(n).advanceWidth) heavier += 1
  }
  expect(heavier).toBeGreaterThan(cut.numGlyphs / 2)
})

test('what is no WOFF2, or only a part of one, is refused', () => {
  expect(() => trueTypeOf(Buffer.from('OTTO'.padEnd(100, 'x')))).toThrow('not a WOFF2 font')
  expect(() => trueTypeOf(file(files[0]!).subarray(0, 2000))).toThrow()
})

test.each([
  ['shirt', ['atkinson latin 400']],
  ['Łukasz', ['atkinson latin-ext 400', 'atkinson latin 400']],
  // No part of the first family has it: the whole word is set in the other.
  ['Nguyễn', ['fraunces latin 400', 'fraunces vietnamese 400', 'fraunces latin 400']],
  ['李', [null]],
])('%s is set in the fonts that have it', (word, fonts) => {
  const runs = runsOf(word, 'text')
  expect(runs.map(({ font }) => font?.name ?? null)).toEqual(fonts)
  expect(runs.map(({ text }) => text).join('')).toBe(word)
})
