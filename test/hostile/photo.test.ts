import { crc32, deflateSync } from 'node:zlib'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import { accept } from '../../src/photo/accept.ts'
import { photoLimits } from '../../src/photo/accept-bytes.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import { grain, plain, segments, withSegment } from '../help/pictures.ts'

/** A PNG (W3C PNG, 11.2) whose header claims any size over hardly any data. */
function hollowPng(width: number, height: number): Buffer {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 2, 0, 0, 0], 8)
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(Buffer.alloc(1000))),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(name: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name), body])
  const around = Buffer.alloc(8)
  around.writeUInt32BE(body.length, 0)
  around.writeUInt32BE(crc32(named), 4)
  return Buffer.concat([around.subarray(0, 4), named, around.subarray(4)])
}

/** A JPEG whose frame header (ITU-T T.81, B.2.2) claims another size. */
async function resizedJpeg(width: number, height: number): Promise<Buffer> {
  const jpeg = await plain().jpeg().toBuffer()
  const frame = jpeg.indexOf(Buffer.from([0xff, 0xc0]))
  jpeg.writeUInt16BE(height, frame + 5)
  jpeg.writeUInt16BE(width, frame + 7)
  return jpeg
}

/** A lossless WebP whose header (RFC 9649, 3.4) claims 16383 by 16383, the most of the format's usual library. */
async function largestWebp(): Promise<Buffer> {
  const webp = await plain().webp({ lossless: true }).toBuffer()
  const bits = webp.indexOf('VP8L') + 9
  webp.writeUInt32LE(16_382 | (16_382 << 14), bits)
  return webp
}

/** A WebP's outer box (RFC 9649, 2.4) around anything. */
function webpBox(inside: string): Buffer {
  const length = Buffer.alloc(4)
  length.writeUInt32LE(inside.length + 4)
  return Buffer.concat([Buffer.from('RIFF'), length, Buffer.from(`WEBP${inside}`)])
}

const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="500" height="500"><image href="file:///etc/passwd"/></svg>`
const gif = () =>
  sharp({ create: { width: 300, height: 300, channels: 3, background: '#111' } })
    .gif()
    .toBuffer()
const tiff = () => plain().tiff().toBuffer()
const jpeg = () => grain(600, 500)

test.each<[string, () => Uint8Array | Promise<Uint8Array>, string]>([
  ['no bytes at all', () => Buffer.alloc(0), 'empty_file'],
  ['zeros', () => Buffer.alloc(5000), 'unsupported_type'],
  ['text', () => Buffer.from('this is a shirt, believe me'), 'unsupported_type'],
  ['a drawing in SVG', () => Buffer.from(svg), 'unsupported_type'],
  ['a document', () => Buffer.from('%PDF-1.7\n%âãÏÓ\n1 0 obj'), 'unsupported_type'],
  ['a page', () => Buffer.from('<!doctype html><script>1</script>'), 'unsupported_type'],
  ['an archive', () => Buffer.from('PK\x03\x04\x14\0photo.jpg', 'latin1'), 'unsupported_type'],
  ['a bitmap', () => Buffer.from('BM\x36\x10\x0e\0\0\0\0\0', 'latin1'), 'unsupported_type'],
  [
    'a picture behind the page that shows it',
    async () => Buffer.concat([Buffer.from('<html><img src=x>'), await jpeg()]),
    'unsupported_type',
  ],
  ['a page inside a WebP box', () => webpBox('<html><script>1</script>'), 'corrupt_image'],
  ['a WebP of no length', () => webpBox(''), 'corrupt_image'],
  ['a GIF', gif, 'unsupported_type'],
  ['a TIFF', tiff, 'unsupported_type'],
  [
    'a script that begins like a GIF',
    () => Buffer.from('GIF89a/*...*/=1;alert(1)'),
    'unsupported_type',
  ],
  [
    'SVG behind a JPEG signature',
    () => Buffer.from(`\xff\xd8\xff${svg}`, 'latin1'),
    'corrupt_image',
  ],
  ['three bytes of a JPEG', () => Buffer.from([0xff, 0xd8, 0xff]), 'corrupt_image'],
  ['the signature of a PNG alone', () => hollowPng(400, 400).subarray(0, 8), 'corrupt_image'],
  [
    'an AVIF box and nothing in it',
    () => Buffer.from('\0\0\0\x14ftypavif\0\0\0\0avif', 'latin1'),
    'corrupt_image',
  ],
  ['a JPEG that ends half way', async () => (await jpeg()).subarray(0, 20_000), 'corrupt_image'],
  ['a JPEG that ends in its header', async () => (await jpeg()).subarray(0, 300), 'corrupt_image'],
  [
    'a PNG that ends half way',
    async () =>
      (
        await sharp(await jpeg())
          .png()
          .toBuffer()
      ).subarray(0, 40_000),
    'corrupt_image',
  ],
  [
    'a WebP that ends half way',
    async () =>
      (
        await sharp(await jpeg())
          .webp()
          .toBuffer()
      ).subarray(0, 20_000),
    'corrupt_image',
  ],
  ['a PNG that claims more than it holds', () => hollowPng(5000, 5000), 'corrupt_image'],
  ['a PNG that would fill the memory', () => hollowPng(60_000, 60_000), 'too_many_pixels'],
  ['a PNG a million wide', () => hollowPng(1_000_000, 1_000_000), 'too_many_pixels'],
  ['a PNG of just too many pixels', () => hollowPng(6000, 10_001), 'too_many_pixels'],
  ['a JPEG that would fill the memory', () => resizedJpeg(65_000, 65_000), 'too_many_pixels'],
  ['a WebP that would fill the memory', largestWebp, 'too_many_pixels'],
  ['a PNG wider than any picture', () => hollowPng(0x7fff_ffff, 9), 'corrupt_image'],
  ['more than 25 MB', () => Buffer.alloc(photoLimits.bytes + 1, 0xff), 'too_large'],
  ['an icon', () => plain(255, 600).png().toBuffer(), 'too_small'],
  ['a strip', () => plain(300, 1201).png().toBuffer(), 'too_small'],
])('%s is refused, whatever it is called', async (_, make, code) => {
  await expect(makeSafe(await make())).rejects.toMatchObject({ name: 'Failure', code })
})

test.each([
  ['the smallest', 256, 256, 'png'],
  ['the longest', 300, 1200, 'webp'],
] as const)('%s picture allowed is accepted', async (_, width, height, type) => {
  const bytes = await plain(width, height)[type]().toBuffer()
  expect(await accept(bytes)).toEqual({ type, width, height })
})

test('a picture of the most pixels is accepted by its header', async () => {
  expect(await accept(hollowPng(6000, 10_000))).toMatchObject({ width: 6000, height: 10_000 })
})

/** A chunk of a PNG's own words (W3C PNG, 11.3.3), behind its header. */
async function wordedPng(words: string): Promise<Buffer> {
  const png = await plain().png().toBuffer()
  const header = 8 + 25
  return Buffer.concat([
    png.subarray(0, header),
    chunk('tEXt', Buffer.from(`Comment\0${words}`)),
    png.subarray(header),
  ])
}

async function manyFrames(count: number): Promise<Buffer> {
  const frame = await plain(300, 260).raw().toBuffer()
  const all = Buffer.concat(Array.from({ length: count }, () => frame))
  const raw = { width: 300, height: 260 * count, channels: 3 as const, pageHeight: 260 }
  return sharp(all, { raw }).webp({ effort: 0, quality: 1 }).toBuffer()
}

test.each<[string, () => Promise<Buffer>]>([
  ['a PNG with a script among its words', () => wordedPng('<script>alert(1)</script>')],
  [
    'a JPEG with three megabytes of metadata',
    async () =>
      Array.from({ length: 48 }, (_, n) => n).reduce(
        (photo, n) => withSegment(photo, 0xe1, Buffer.alloc(65_000, `<script id="${n}">`)),
        await grain(400, 300),
      ),
  ],
  [
    'a JPEG with a page behind its end',
    async () => Buffer.concat([await jpeg(), Buffer.from('<html><script>1</script></html>')]),
  ],
  ['a picture of several hundred frames', () => manyFrames(300)],
])('%s is made safe', async (_, make) => {
  const { full, view, thumb, cloth } = await makeSafe(await make())
  for (const kept of [full, view, thumb, cloth]) {
    expect(Buffer.from(kept).includes('<script')).toBe(false)
    expect(Buffer.from(kept).includes('<html')).toBe(false)
    expect(segments(kept).after).toBe(0)
    // All frames but the first are gone.
    expect(await sharp(kept).metadata()).not.toHaveProperty('pages')
  }
})

test('what hides in a photo is not in what is kept of it', async () => {
  const script = '<script>alert(1)</script>'
  const archive = Buffer.from('PK\x03\x04 hidden.zip PK\x05\x06')
  const polyglot = Buffer.concat([withSegment(await jpeg(), 0xfe, Buffer.from(script)), archive])

  const { full, view, thumb, cloth } = await makeSafe(polyglot)
  for (const kept of [full, view, thumb, cloth]) {
    expect(Buffer.from(kept).includes(script)).toBe(false)
    expect(Buffer.from(kept).includes('hidden.zip')).toBe(false)
    expect(segments(kept).after).toBe(0)
  }
})

test('a photo with any of its bytes spoiled is refused by name or made safe, never anything else', async () => {
  const photo = await grain(300, 260)
  for (let n = 0; n < 60; n += 1) {
    const spoiled = Buffer.from(photo)
    const at = (n * 7919) % photo.length
    spoiled[n < 30 ? n * 20 : at] = (n * 37) & 0xff
    const outcome = await makeSafe(spoiled).catch((error: unknown) => error)
    expect(outcome).toSatisfy(
      (o: { name?: string; width?: number }) => o.name === 'Failure' || (o.width ?? 0) > 0,
    )
  }
})
