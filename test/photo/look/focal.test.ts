import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { focalOf } from '../../../src/photo/look/focal.ts'

/**
 * A block by hand after CIPA DC-008: the TIFF header, a first directory that points (tag 8769, LONG) to the Exif
 * directory, which holds a focal length as a ratio (920A) and one in terms of 35 mm film (A405, SHORT).
 */
function block(little: boolean, focal: number, type = 3, count = 1): Uint8Array {
  const bytes = new Uint8Array(64)
  const view = new DataView(bytes.buffer)
  view.setUint16(0, little ? 0x4949 : 0x4d4d)
  view.setUint16(2, 42, little)
  view.setUint32(4, 8, little)
  const entry = (at: number, tag: number, type: number, count: number) => {
    view.setUint16(at, tag, little)
    view.setUint16(at + 2, type, little)
    view.setUint32(at + 4, count, little)
  }
  view.setUint16(8, 1, little)
  entry(10, 0x8769, 4, 1)
  view.setUint32(18, 26, little)
  view.setUint16(26, 2, little)
  entry(28, 0x920a, 5, 1)
  entry(40, 0xa405, type, count)
  if (type === 4) view.setUint32(48, focal, little)
  else view.setUint16(48, focal, little)
  return bytes
}

describe('the focal length that a file tells', () => {
  test.each([
    ['the least byte first', block(true, 26), 26],
    ['the greatest byte first', block(false, 26), 26],
    ['a long number', block(false, 28, 4), 28],
    ['its name before it', new Uint8Array([0x45, 0x78, 0x69, 0x66, 0, 0, ...block(true, 52)]), 52],
  ])('is read with %s', (_, bytes, told) => {
    expect(focalOf(bytes)).toBe(told)
  })

  test('is read off a file that a library of pictures wrote', async () => {
    const jpeg = await sharp({
      create: { width: 300, height: 300, channels: 3, background: '#888' },
    })
      .withExif({ IFD2: { FocalLengthIn35mmFilm: '27' } })
      .jpeg()
      .toBuffer()
    expect(focalOf((await sharp(jpeg).metadata()).exif)).toBe(27)
  })

  test.each([
    ['no block', undefined],
    ['an empty block', new Uint8Array()],
    ['0, which stands for unknown', block(true, 0)],
    ['one that no camera has', block(true, 60_000)],
    ['a text in its place', block(true, 26, 2)],
    ['many numbers in its place', block(true, 26, 3, 4_000_000_000)],
    ['another byte order', block(true, 26).with(0, 0x58)],
    ['a directory beyond the end', block(true, 26).with(4, 0xff).with(7, 0xff)],
    ['an Exif directory beyond the end', block(true, 26).with(18, 0xff).with(21, 0xff)],
    ['more entries than there is room', block(true, 26).with(26, 0xff).with(27, 0xff).with(40, 0)],
  ])('is none with %s', (_, bytes) => {
    expect(focalOf(bytes)).toBeNull()
  })

  test('never reads beyond a block that is cut off', () => {
    const whole = block(true, 26)
    for (let length = 0; length < 52; length += 1)
      expect(focalOf(whole.slice(0, length))).toBeNull()
    expect(focalOf(whole.slice(0, 52))).toBe(26)
  })
})
