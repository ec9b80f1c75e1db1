import { expect, test } from 'vitest'
import { isClear } from '../../src/photo/label-words.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import { loadModels } from '../../src/photo/words/models.ts'
import { type LabelSense, readWords } from '../../src/photo/words/read.ts'
import { readLines } from '../../src/textile/label-lines.ts'
import { labelSense } from '../../src/textile/label-sense.ts'
import { openBrowser } from '../help/browser.ts'
import { degrade } from './degrade.ts'
import { drawLabel } from './draw.ts'
import { openEasel, takePicture } from './picture.ts'

/** Grey on black in half light and grain: a set's photo that has been looked at, on which a first look sees no word. */
const [set, number] = [9, 70]
const fibres = ['CACHEMIRA', 'ALPACA']

async function darkPhoto() {
  const { contents, look } = drawLabel(set, 'main', number)
  const browser = await openBrowser()
  try {
    const picture = await takePicture(await openEasel(browser), contents, look)
    return { contents, look, jpeg: await degrade(picture, look) }
  } finally {
    await browser.close()
  }
}

test('a dark label is read at a second look, and never surely', async () => {
  const { contents, look, jpeg } = await darkPhoto()
  expect([look.ground, look.light.level < 0.6, look.ink < 0.5]).toEqual(['black', true, true])
  const { full } = await makeSafe(jpeg)
  const looks: string[][] = []
  const settle: LabelSense['settle'] = (lines) => {
    looks.push(lines.map(({ text }) => text))
    return labelSense.settle(lines)
  }
  const seen = await readWords(full, await loadModels(), { ...labelSense, settle })
  const wordsOf = (lines: readonly string[]) =>
    fibres.filter((name) => contents.text.includes(name) && lines.join('\n').includes(name))
  expect(wordsOf(looks[0]!)).toEqual([])
  expect(wordsOf(seen.lines.map(({ text }) => text))).toEqual(fibres)
  expect(readLines(seen.lines, { isClear: isClear(seen) }).sure).toBe(false)
  expect(seen.faults).toContain('blurred')
}, 300_000)
