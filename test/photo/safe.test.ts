import sharp from 'sharp'
import { expect, test } from 'vitest'
import { makeSafe } from '../../src/photo/safe.ts'
import { grain, plain, segments, withSegment } from '../help/pictures.ts'

const kept = ['full', 'view', 'thumb', 'cloth'] as const

/** Segments a picture needs (ITU-T T.81, table B.1), and JFIF's APP0 (ITU-T T.871). */
const needed = [0xe0, 0xdb, 0xc0, 0xc2, 0xc4, 0xdd, 0xda]

const secrets = ['Ana Ejemplo', 'PhoneMaker', 'Ninth Street', 'shirt-notes', 'Colour of Ana']

async function telling(): Promise<Buffer> {
  const exif = {
    IFD0: { Make: 'PhoneMaker', Artist: 'Ana Ejemplo', ImageDescription: 'Ninth Street 9' },
    IFD3: {
      GPSLatitudeRef: 'N',
      GPSLatitude: '51/1 30/1 0/1',
      GPSLongitudeRef: 'W',
      GPSLongitude: '0/1 7/1 0/1',
    },
  }
  const xmp =
    '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="Ana Ejemplo"/></rdf:RDF></x:xmpmeta>'
  const photo = await plain().withExif(exif).withIccProfile('p3').withXmp(xmp).jpeg().toBuffer()
  const commented = withSegment(photo, 0xfe, Buffer.from('shirt-notes'))
  const iptc = withSegment(commented, 0xed, Buffer.from('Photoshop 3.0\0Colour of Ana'))
  return Buffer.concat([iptc, Buffer.from('PK\x03\x04 Ninth Street')])
}

test('a photo keeps no place where it was taken, nor any other word', async () => {
  const photo = await telling()
  const before = await sharp(photo).metadata()
  expect([before.exif, before.icc, before.xmp]).not.toContain(undefined)
  for (const secret of secrets) expect(photo.includes(secret)).toBe(true)

  const safe = await makeSafe(photo)
  for (const size of kept) {
    const { markers, after } = segments(safe[size])
    expect(markers.filter((marker) => !needed.includes(marker))).toEqual([])
    expect(after).toBe(0)
    for (const secret of secrets) expect(Buffer.from(safe[size]).includes(secret)).toBe(false)
  }
})

// Exif 2.3 (CIPA DC-008), tag 0x0112: on which side of the seen picture the stored row 0 and
// column 0 lie.
test.each([
  [1, 'top', 'left'],
  [2, 'top', 'right'],
  [3, 'bottom', 'right'],
  [4, 'bottom', 'left'],
  [5, 'left', 'top'],
  [6, 'right', 'top'],
  [7, 'right', 'bottom'],
  [8, 'left', 'bottom'],
])('a photo of orientation %i stands upright', async (orientation, row0, column0) => {
  const stored = await storedAs(row0, column0).withMetadata({ orientation }).jpeg().toBuffer()
  const safe = await makeSafe(stored)
  expect([safe.width, safe.height]).toEqual([seen.width, seen.height])
  expect((await sharp(safe.full).metadata()).orientation).toBeUndefined()

  for (const [x, y, colour] of seen.corners) {
    const pixel = await sharp(safe.full)
      .extract({ left: x, top: y, width: 1, height: 1 })
      .raw()
      .toBuffer()
    expect(near([...pixel], colour)).toBe(true)
  }
})

/** The picture as it must be seen: red, green, blue and yellow quarters, read like a page. */
const seen = {
  width: 480,
  height: 320,
  corners: [
    [40, 40, [220, 30, 30]],
    [440, 40, [30, 200, 30]],
    [40, 280, [30, 30, 220]],
    [440, 280, [230, 220, 30]],
  ] as [x: number, y: number, colour: number[]][],
}

const colourAt = (x: number, y: number) =>
  seen.corners[(y < seen.height / 2 ? 0 : 2) + (x < seen.width / 2 ? 0 : 1)]![2]

function storedAs(row0: string, column0: string) {
  const turned = row0 === 'left' || row0 === 'right'
  const [width, height] = turned ? [seen.height, seen.width] : [seen.width, seen.height]
  /** Distance from the named side of the seen picture, as a coordinate of it. */
  const along = (side: string, n: number) =>
    side === 'right' ? seen.width - 1 - n : side === 'bottom' ? seen.height - 1 - n : n
  const pixels = Buffer.alloc(width * height * 3)
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < width; column += 1) {
      const [byRow, byColumn] = [along(row0, row), along(column0, column)]
      const colour = turned ? colourAt(byRow, byColumn) : colourAt(byColumn, byRow)
      pixels.set(colour, (row * width + column) * 3)
    }
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
}

const near = (a: readonly number[], b: readonly number[], by = 12) =>
  a.length === b.length && a.every((value, n) => Math.abs(value - b[n]!) < by)

test.each([
  ['a large one is made smaller', 4000, 3200, [3000, 2400], [1200, 960], [320, 256], [192, 192]],
  ['a small one is never made larger', 300, 260, [300, 260], [300, 260], [300, 260], [94, 94]],
  [
    'a tall one is measured by its height',
    1000,
    3900,
    [769, 3000],
    [308, 1200],
    [82, 320],
    [192, 192],
  ],
])('of the sizes kept, %s', async (_, width, height, ...sizes) => {
  const safe = await makeSafe(await grain(width, height))
  for (const [n, size] of kept.entries()) {
    const header = await sharp(safe[size]).metadata()
    expect([header.width, header.height]).toEqual(sizes[n])
    expect(header.format).toBe('jpeg')
  }
  expect([safe.width, safe.height]).toEqual(sizes[0])
})

test.each([
  ['a PNG of 16 bits', () => plain().toColourspace('rgb16').png(), [163, 84, 60]],
  ['a wide-gamut JPEG', () => plain().withIccProfile('p3').jpeg(), [163, 84, 60]],
  ['a grey JPEG', () => plain(640, 480, '#777').greyscale().jpeg(), [119, 119, 119]],
  ['a lossless WebP', () => plain().webp({ lossless: true }), [163, 84, 60]],
  ['an AVIF', () => plain().avif({ effort: 0 }), [163, 84, 60]],
  ['a see-through PNG, laid on white', () => plain().ensureAlpha(0).png(), [255, 255, 255]],
])('%s keeps its colour', async (_, make, colour) => {
  const safe = await makeSafe(await make().toBuffer())
  const { data, info } = await sharp(safe.full).raw().toBuffer({ resolveWithObject: true })
  expect(info.channels).toBe(3)
  expect(near([...data.subarray(0, 3)], colour)).toBe(true)
})

// Inks without a profile say only roughly what colour they make.
test('a CMYK JPEG becomes red, green and blue of about the same colour', async () => {
  const inks = await plain().toColourspace('cmyk').jpeg().toBuffer()
  expect((await sharp(inks).metadata()).space).toBe('cmyk')
  const safe = await makeSafe(inks)
  const { data, info } = await sharp(safe.full).raw().toBuffer({ resolveWithObject: true })
  expect(info.channels).toBe(3)
  expect(near([...data.subarray(0, 3)], [163, 84, 60], 25)).toBe(true)
})

test('of a moving picture the first frame is kept', async () => {
  const frames = await Promise.all(
    ['#d01010', '#1010d0'].map((c) => plain(400, 300, c).png().toBuffer()),
  )
  const moving = await sharp(frames, { join: { animated: true } })
    .webp({ lossless: true, delay: [100, 100] })
    .toBuffer()
  expect((await sharp(moving).metadata()).pages).toBe(2)

  const safe = await makeSafe(moving)
  expect([safe.width, safe.height]).toEqual([400, 300])
  const pixel = await sharp(safe.full).raw().toBuffer()
  expect(near([...pixel.subarray(0, 3)], [208, 16, 16])).toBe(true)
})

test('the same photo gives the same bytes, so that it has one name', async () => {
  const photo = await grain(500, 400)
  expect(await makeSafe(photo)).toEqual(await makeSafe(photo))
})
