import { differenceCiede2000 } from 'culori'
import sharp, { type Sharp } from 'sharp'
import { describe, expect, test } from 'vitest'
import { labOf } from '../../../src/base/colour.ts'
import { lookAt, measureByMarks, see } from '../../../src/photo/look/look.ts'
import type { Box } from '../../../src/photo/look/looked.ts'
import { marksOff } from '../../../src/photo/look/marked-sheet.ts'
import type { Sizes } from '../../../src/photo/look/measured.ts'
import { plain } from '../../help/pictures.ts'

const ciede2000 = differenceCiede2000()

const shirt =
  'M330 170 L270 190 L130 330 L200 400 L270 340 L270 760 L630 760 L630 340 L700 400 L770 330 L630 190 L570 170 Q450 230 330 170 Z'
const picture =
  '<circle cx="450" cy="450" r="90" fill="#f2d024"/><path d="M400 430h100v60h-100z" fill="#204060"/>'
const stripes = Array.from(
  { length: 30 },
  (_, n) => `<path d="M100 ${150 + 44 * n}h700v22h-700z" fill="#f4f0e6"/>`,
).join('')

/** An invented shirt on an invented table, as pixels: print over cloth, cut to the outline; and what lies beside it. */
const scene = (cloth: string, print = '', beside = '') =>
  sharp(
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="900"><rect width="900" height="900" fill="#b9b2a4"/>${beside}
      <clipPath id="shirt"><path d="${shirt}"/></clipPath>
      <g clip-path="url(#shirt)"><rect width="900" height="900" fill="${cloth}"/>${print}</g></svg>`,
    ),
  )

const jpegOf = (photo: Sharp) => photo.jpeg({ quality: 92, chromaSubsampling: '4:4:4' }).toBuffer()

function iou(one: Box, other: Box): number {
  const w = Math.min(one.x + one.w, other.x + other.w) - Math.max(one.x, other.x)
  const h = Math.min(one.y + one.h, other.y + other.h) - Math.max(one.y, other.y)
  const both = Math.max(0, w) * Math.max(0, h)
  return both / (one.w * one.h + other.w * other.h - both)
}

const garment = { x: 130 / 900, y: 170 / 900, w: 640 / 900, h: 590 / 900 }
const graphic = { x: 0.4, y: 0.4, w: 0.2, h: 0.2 }

describe('a shirt with one picture', () => {
  test('is told with its box, its picture, its colour and its lightness', async () => {
    const look = await lookAt(await jpegOf(scene('#963232', picture)))
    expect([look.width, look.height]).toEqual([900, 900])
    expect(look.print.class).toBe('single')
    expect(iou(look.garment!, garment)).toBeGreaterThan(0.95)
    expect(iou(look.graphic!, graphic)).toBeGreaterThan(0.85)
    const [l, a, b] = look.colours[0]!.lab
    expect(ciede2000(labOf('#963232'), { mode: 'lab65', l, a, b })).toBeLessThan(1.5)
    // Cloth of 36.0 with a twelfth of yellow at 84.0 comes to about 40: no longer dark.
    expect(look.value).toBe('medium')
  })

  test('has the turned boxes where the photo is turned', async () => {
    const look = await lookAt(
      await jpegOf(sharp(await jpegOf(scene('#963232', picture))).rotate(90)),
    )
    const turned = ({ x, y, w, h }: Box) => ({ x: 1 - y - h, y: x, w: h, h: w })
    expect(look.print.class).toBe('single')
    expect(iou(look.garment!, turned(garment))).toBeGreaterThan(0.95)
    expect(iou(look.graphic!, turned(graphic))).toBeGreaterThan(0.85)
  })

  test.each([0.8, 1.1])('stays one in %f times the light', async (times) => {
    const look = await lookAt(await jpegOf(scene('#963232', picture).linear(times)))
    expect(look.print.class).toBe('single')
    expect(iou(look.graphic!, graphic)).toBeGreaterThan(0.8)
  })
})

describe('the box of a picture', () => {
  const ofPrint = async (cloth: string, print: string): Promise<Box> =>
    (await lookAt(await jpegOf(scene(cloth, print)))).graphic!

  test.each([
    [540, 232],
    [530, 246],
  ])('leaves out a collar of another colour close to a mark at %i, %i', async (x, y) => {
    const collar =
      '<path d="M330 170Q450 330 570 170" fill="none" stroke="#e8e2d0" stroke-width="24"/>'
    const mark = `<path d="M${x} ${y}h60v56h-60z" fill="#e0b020"/><path d="M${x + 10} ${y + 10}h40v16h-40z" fill="#701818"/>`
    const box = { x: x / 900, y: y / 900, w: 60 / 900, h: 56 / 900 }
    expect(iou(await ofPrint('#2d2a28', collar + mark), box)).toBeGreaterThan(0.8)
  })

  test('holds the thin lines that reach out of it', async () => {
    const beetle =
      '<ellipse cx="450" cy="450" rx="36" ry="28" fill="#101020"/><path d="M450 450L432 344M450 450L563 487M450 450L333 482M450 450L357 483M450 450L419 586" stroke="#101020" stroke-width="3.3"/>'
    const box = { x: 333 / 900, y: 344 / 900, w: 230 / 900, h: 242 / 900 }
    expect(iou(await ofPrint('#963232', beetle), box)).toBeGreaterThan(0.8)
  })
})

test('a shirt without a print is solid, with lines across it striped; neither has a picture', async () => {
  const one = await lookAt(await jpegOf(scene('#2f5d8c')))
  expect([one.print.class, one.graphic]).toEqual(['solid', null])
  const other = await lookAt(await jpegOf(scene('#2f5d8c', stripes)))
  expect([other.print.class, other.graphic]).toEqual(['stripe-check', null])
  expect(other.colours.length).toBeGreaterThanOrEqual(2)
})

test('scores are shares of one, and the confidence is the largest', async () => {
  const { print } = await lookAt(await jpegOf(scene('#2f5d8c')))
  const scores = Object.values(print.scores)
  expect(scores.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 6)
  expect(print.confidence).toBe(Math.max(...scores))
})

describe('beside a sheet of Letter paper', () => {
  // 8.5 by 11 inches (ANSI/ASME Y14.1); straight above, 20 pixels an inch.
  const sheet = '<path d="M30 520h170v220h-170z" transform="rotate(4 115 630)" fill="#f6f6f2"/>'
  const photo = async () => await jpegOf(scene('#963232', picture, sheet))

  test('a shirt is measured, and the picture it carries', async () => {
    const { scale, size } = await lookAt(await photo())
    expect(scale).toMatchObject({ by: 'letter' })
    expect(100 * Math.abs((scale!.mmPerPx * 20) / 25.4 - 1)).toBeLessThan(scale!.errorPct)
    expect(scale!.errorPct).toBeLessThan(3)
    const corners = [...scale!.corners].sort(([, a], [, b]) => a - b)
    expect(corners[0]![1]).toBeCloseTo(514.3, 0)
    expect(size!.garmentWidthIn / (640 / 20)).toBeCloseTo(1, 1.5)
    expect(size!.garmentLengthIn / (590 / 20)).toBeCloseTo(1, 1.5)
    expect(size!.graphicWidthIn! / (180 / 20)).toBeCloseTo(1, 1.5)
    expect(size!.graphicHeightIn! / (180 / 20)).toBeCloseTo(1, 1.5)
  })

  test('its scale is in pixels of the photo as it is, however large', async () => {
    const small = await lookAt(await photo())
    const large = await lookAt(await jpegOf(sharp(await photo()).resize(2000)))
    expect(large.scale!.mmPerPx / small.scale!.mmPerPx).toBeCloseTo(900 / 2000, 2)
  })

  test('a blurred photo tells where the sheet lies, and no size', async () => {
    const sharp = scene('#963232', picture, sheet)
    const { fitness, scale, size } = await lookAt(await jpegOf(sharp.blur(5)))
    expect(fitness.problems).toContain('blurred')
    expect(scale).toMatchObject({ by: 'letter' })
    expect(100 * Math.abs((scale!.mmPerPx * 20) / 25.4 - 1)).toBeLessThan(scale!.errorPct)
    expect(size).toBeNull()
  })

  // Its right side along the shirt's own.
  const touching = '<path d="M100 420h170v220h-170z" fill="#f6f6f2"/>'

  test('that touches it a shirt is measured, and the sheet is no part of it', async () => {
    const {
      scale,
      size,
      garment: seen,
    } = await lookAt(await jpegOf(scene('#5d88b0', picture, touching)))
    expect(scale).toMatchObject({ by: 'letter' })
    expect(iou(seen!, garment)).toBeGreaterThan(0.95)
    expect(size!.garmentWidthIn / (640 / 20)).toBeCloseTo(1, 1.5)
    expect(size!.garmentLengthIn / (590 / 20)).toBeCloseTo(1, 1.5)
  })

  test('that touches it and was marked by hand, the sheet is no part of the garment either', async () => {
    const corners = [
      [100, 420],
      [270, 420],
      [270, 640],
      [100, 640],
    ].map(([x, y]) => [x! / 900, y! / 900] as const)
    const photo = await jpegOf(scene('#5d88b0', picture, touching))
    const sizes = await measureByMarks(photo, { sheet: 'letter', corners, off: marksOff.fine })
    expect(sizes).toMatchObject({ size: { garmentWidthIn: expect.any(Number) } })
    const { size } = sizes as Sizes
    expect(size!.garmentWidthIn / (640 / 20)).toBeCloseTo(1, 1.5)
  })

  test('without the sheet nothing is measured', async () => {
    const { scale, size } = await lookAt(await jpegOf(scene('#963232', picture)))
    expect([scale, size]).toEqual([null, null])
  })
})

test('of two sheets and no garment none is measured by: either may be something else', async () => {
  const sheets = `<rect width="900" height="900" fill="#24406a"/>
    <path d="M80 520h170v220h-170z" transform="rotate(4 165 630)" fill="#e9e9e6"/>
    <path d="M400 200h424v300h-424z" transform="rotate(3 500 300)" fill="#d4d4d0"/>`
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="900" height="900">${sheets}</svg>`
  const { scale, fitness } = await lookAt(await jpegOf(sharp(Buffer.from(svg))))
  expect(fitness.problems).toContain('no-garment')
  expect(scale).toBeNull()
})

test('an empty table is no garment', async () => {
  const look = await lookAt(await jpegOf(plain(900, 900, '#b9b2a4')))
  expect(look.fitness.ok).toBe(false)
  expect(look.fitness.problems).toContain('no-garment')
  expect({ ...look, print: null }).toMatchObject({ garment: null, graphic: null, colours: [] })
})

test('a grey photo of one channel is read too', async () => {
  const { mask } = await see(await jpegOf(scene('#404040').greyscale()))
  expect(mask.data.reduce((sum, one) => sum + one, 0) / mask.data.length).toBeGreaterThan(0.2)
})

test('what is no photo is refused by name', async () => {
  await expect(lookAt(new Uint8Array())).rejects.toMatchObject({ code: 'empty_file' })
  await expect(lookAt(await jpegOf(plain(200, 900)))).rejects.toMatchObject({ code: 'too_small' })
  const whole = await jpegOf(scene('#963232'))
  await expect(lookAt(whole.subarray(0, whole.length / 2))).rejects.toMatchObject({
    code: 'corrupt_image',
  })
})
