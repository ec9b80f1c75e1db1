import sharp from 'sharp'
import { expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'
import { chanceOf } from '../help/chance.ts'
import { degrade } from './degrade.ts'
import { drawLabel } from './draw.ts'
import { drawLook, type Look } from './look.ts'
import { kinds, misreadOf } from './truth.ts'
import { wrap } from './wrap.ts'

const drawn = kinds.flatMap((kind) =>
  Array.from({ length: kind === 'main' ? 60 : 12 }, (_, at) => drawLabel(5, kind, at + 1)),
)

test('the same seed draws the same label, and another draws another', () => {
  expect(drawLabel(5, 'main', 3)).toEqual(drawLabel(5, 'main', 3))
  const texts = drawn.map(({ contents }) => contents.text)
  expect(new Set(texts).size).toBe(texts.length)
  expect(drawLabel(6, 'main', 3).contents.text).not.toBe(drawLabel(5, 'main', 3).contents.text)
})

test('the shares of every part make a whole, each fibre once', () => {
  for (const { contents } of drawn)
    for (const { fibres } of contents.blocks) {
      expect(fibres.reduce((sum, { percent }) => sum + percent, 0)).toBe(100)
      expect(fibres.every(({ percent }) => Number.isInteger(percent) && percent > 0)).toBe(true)
      expect(new Set(fibres.map(({ fibre }) => fibre)).size).toBe(fibres.length)
    }
})

test('the words of a label say what its truth says, where a table knows its language', () => {
  const known = drawn.filter(({ contents }) => contents.languages.length > 0)
  expect(known.length).toBeGreaterThan(90)
  for (const { contents } of known)
    expect(misreadOf(contents, readLabel(contents.text)), contents.text).toBeNull()
})

test('lines hold to their width, and words are parted by a hyphen or behind a slash', () => {
  expect(wrap('60% polyester 40% cotton', 13, 'long-words')).toEqual([
    '60% polyester',
    '40% cotton',
  ])
  expect(wrap('60% polyester 40%', 10, 'any-words')).toEqual(['60% polye-', 'ster 40%'])
  expect(wrap('cotton/coton/algodón', 14, 'long-words')).toEqual(['cotton/coton/', 'algodón'])
  expect(wrap('elastomultiester', 10, 'long-words')).toEqual(['elastomul-', 'tiester'])
})

const side = 96

/** A picture whose upper half is white and whose lower half is black. */
const halves = (): Promise<Buffer> =>
  sharp({ create: { width: side, height: 2 * side, channels: 3, background: '#000' } })
    .composite([
      {
        input: {
          create: { width: side, height: side, channels: 3 as const, background: '#fff' },
        },
        left: 0,
        top: 0,
      },
    ])
    .jpeg({ quality: 98 })
    .toBuffer()

/** Of a square within the photo, 0 to 255. */
async function brightness(photo: Buffer, left: number, top: number): Promise<number> {
  // Statistics are those of a whole picture, whatever is asked of it before.
  const part = await sharp(photo).extract({ left, top, width: 24, height: 24 }).toBuffer()
  return (await sharp(part).stats()).channels[0]!.mean
}

test.each([1, 3, 6, 8] as const)(
  'a photo of EXIF orientation %s is shown with its words turned as the look says',
  async (exif) => {
    const look: Look = {
      ...drawLook(chanceOf(1), drawLabel(5, 'main', 1).contents),
      curl: { depth: 0, waves: 1, phase: 0 },
      shake: null,
      exif,
    }
    const picture = { image: await halves(), em: 10, capital: 7 }
    const shown = async (turn: Look['turn']) =>
      await sharp(await degrade(picture, { ...look, turn }))
        .autoOrient()
        .toBuffer({ resolveWithObject: true })

    const upright = await shown(0)
    expect([upright.info.width, upright.info.height]).toEqual([side, 2 * side])
    expect(await brightness(upright.data, 36, 24)).toBeGreaterThan(
      2 * (await brightness(upright.data, 36, 144)),
    )
    // A quarter clockwise: what was above is on the right.
    const quarter = await shown(90)
    expect([quarter.info.width, quarter.info.height]).toEqual([2 * side, side])
    expect(await brightness(quarter.data, 144, 36)).toBeGreaterThan(
      2 * (await brightness(quarter.data, 24, 36)),
    )
  },
)
