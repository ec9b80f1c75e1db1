import { differenceCiede2000 } from 'culori'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { labOf } from '../../src/base/colour.ts'
import { clothIn } from '../../src/photo/cloth.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import { plain } from '../help/pictures.ts'
import { random } from '../help/xorshift.ts'

const ciede2000 = differenceCiede2000()
const unlike = (one: string, other: string) => ciede2000(labOf(one), labOf(other))

const bytesOf = (hex: string) => hex.match(/[0-9a-f]{2}/g)!.map((part) => Number.parseInt(part, 16))

/** Invented cloth, as a picture whose pixel at (x, y) has the colour that `colourAt` names. */
function woven(width: number, height: number, colourAt: (x: number, y: number) => string) {
  const data = Buffer.alloc(width * height * 3)
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) data.set(bytesOf(colourAt(x, y)), (y * width + x) * 3)
  }
  return sharp(data, { raw: { width, height, channels: 3 } })
}

const quality = { quality: 90, chromaSubsampling: '4:4:4' }

describe('one plain colour', () => {
  test.each(['#35619f', '#b3282d', '#f5f5f3', '#1d1d20', '#ecc63f', '#4b3223'])(
    '%s is told as it is, through JPEG and back',
    async (colour) => {
      const { seen } = await makeSafe(await plain(640, 480, colour).jpeg(quality).toBuffer())
      expect(seen.main).toHaveLength(1)
      expect(seen.main[0]!.share).toBe(1)
      expect(unlike(seen.mean, colour)).toBeLessThan(1)
      expect(unlike(seen.main[0]!.colour, colour)).toBeLessThan(1)
    },
  )

  test('grey without colour is told too', async () => {
    const grey = await plain(300, 300, '#777777').greyscale().jpeg(quality).toBuffer()
    const { seen } = await makeSafe(grey)
    expect(unlike(seen.mean, '#777777')).toBeLessThan(1)
  })

  test('light that falls off over it leaves it one colour', async () => {
    const shaded = await woven(600, 600, (x) => {
      const grey = (90 + Math.round(x / 15)).toString(16)
      return `#${grey}${grey}${grey}`
    })
      .png()
      .toBuffer()
    expect((await makeSafe(shaded)).seen.main).toHaveLength(1)
  })
})

describe('checks', () => {
  const [red, white] = ['#b3282d', '#f5f5f3']

  // Squares of 20 pixels: the middle of 500 by 500 is 180 wide, nine squares each way, of which one more is red.
  test('both colours are told with their shares, the larger first', async () => {
    const checked = await woven(500, 500, (x, y) =>
      (Math.floor(x / 20) + Math.floor(y / 20)) % 2 === 0 ? red : white,
    )
      .png()
      .toBuffer()
    const { main } = (await makeSafe(checked)).seen
    expect(main.map(({ share }) => share)).toEqual([0.506, 0.494])
    expect(main.map(({ colour }) => colour)).toEqual([red, white])
  })

  test('stripes as fine as one pixel are counted as they are', async () => {
    const striped = await woven(400, 300, (x) => (x % 4 === 0 ? white : red))
      .png()
      .toBuffer()
    const { main } = (await makeSafe(striped)).seen
    expect(main).toEqual([
      { colour: red, share: 0.75 },
      { colour: white, share: 0.25 },
    ])
  })

  // IEC 61966-2-1: half of full light is the value 188 of 255, where the mean of the codes would be 128.
  test('their mean is that of their light', async () => {
    const checked = await woven(400, 400, (x) => (x % 2 === 0 ? '#000000' : '#ffffff'))
      .png()
      .toBuffer()
    expect((await makeSafe(checked)).seen.mean).toBe('#bcbcbc')
  })

  test('a thread of another colour is no main colour', async () => {
    const threaded = await woven(500, 500, (_, y) => (y % 50 === 0 ? white : red))
      .png()
      .toBuffer()
    expect((await makeSafe(threaded)).seen.main.map(({ colour }) => colour)).toEqual([red])
  })
})

describe('where the cloth is looked for', () => {
  // The middle of 500 by 300 is 108 wide: from 196 to 303 across, from 96 to 203 down.
  const inMiddle = (x: number, y: number) => x >= 196 && x < 304 && y >= 96 && y < 204

  test('the middle, 36 hundredths of the shorter side, and nothing around it', async () => {
    const framed = await woven(500, 300, (x, y) => (inMiddle(x, y) ? '#3f7d4e' : '#ff00ff'))
      .png()
      .toBuffer()
    const { seen, cloth } = await makeSafe(framed)
    expect(seen).toEqual({ mean: '#3f7d4e', main: [{ colour: '#3f7d4e', share: 1 }] })
    const { data, info } = await sharp(cloth).raw().toBuffer({ resolveWithObject: true })
    expect([info.width, info.height]).toEqual([108, 108])
    const corner = `#${data.subarray(0, 3).toString('hex')}`
    expect(unlike(corner, '#3f7d4e')).toBeLessThan(1)
  })

  // Exif 2.3 (CIPA DC-008), tag 0x0112: at 6 the stored row 0 is the right side of the seen picture.
  test('a photo that lies on its side is looked at upright', async () => {
    const stored = await woven(500, 300, (x, y) =>
      !inMiddle(x, y) ? '#ff00ff' : x < 250 ? '#b3282d' : '#35619f',
    )
      .withMetadata({ orientation: 6 })
      .jpeg({ ...quality, quality: 100 })
      .toBuffer()
    const { cloth } = await makeSafe(stored)
    const { data, info } = await sharp(cloth).raw().toBuffer({ resolveWithObject: true })
    const at = (x: number, y: number) => {
      const from = (y * info.width + x) * 3
      return `#${data.subarray(from, from + 3).toString('hex')}`
    }
    const [middle, high, low] = [54, 10, 98]
    expect(unlike(at(middle, high), '#b3282d')).toBeLessThan(3)
    expect(unlike(at(middle, low), '#35619f')).toBeLessThan(3)
  })

  test('a single pixel is a cloth of its colour', () => {
    const pixels = {
      data: Uint8Array.of(0x35, 0x61, 0x9f),
      width: 1,
      height: 1,
      channels: 3 as const,
    }
    expect(clothIn(pixels)).toEqual({
      square: { left: 0, top: 0, side: 1 },
      seen: { mean: '#35619f', main: [{ colour: '#35619f', share: 1 }] },
    })
  })
})

test('whatever the photo shows, there are one to three colours, the largest first', () => {
  const below = random(7)
  for (const tints of [2, 5, 256]) {
    const side = 300
    const tint = () => Math.floor((below(tints) * 255) / (tints - 1))
    const data = Uint8Array.from({ length: side * side * 3 }, tint)
    const { mean, main } = clothIn({ data, width: side, height: side, channels: 3 }).seen
    expect(mean).toMatch(/^#[0-9a-f]{6}$/)
    const shares = main.map(({ share }) => share)
    expect(shares.length).toBeGreaterThanOrEqual(1)
    expect(shares.length).toBeLessThanOrEqual(3)
    expect(shares.toSorted((a, b) => b - a)).toEqual(shares)
    // Each is rounded to a thousandth.
    expect(shares.reduce((a, b) => a + b)).toBeLessThan(1.002)
  }
})
