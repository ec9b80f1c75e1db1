import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { makeSafe } from '../../src/photo/safe.ts'
import { box, codedIn, gridOf, heifOf, type Item, sizeBox } from '../help/heif.ts'

const whole = readFileSync(new URL('../photo/shirt.heic', import.meta.url))
const [coded] = codedIn(whole)
const sized = (width: number, height: number): Item => ({
  ...coded!,
  properties: [...coded!.properties!, sizeBox(width, height)],
})
const shirt = sized(642, 482)
const grid = (refers: readonly number[], width = 1284, height = 964): Item => ({
  type: 'grid',
  data: gridOf(2, 2, width, height),
  properties: [sizeBox(width, height)],
  refers: ['dimg', refers],
})

const nested = (deep: number): Buffer =>
  Array.from({ length: deep }).reduce<Buffer>((inner) => box('iprp', inner), Buffer.alloc(0))

/** A box whose length says none, or that it goes on to the end (ISO/IEC 14496-12, 4.2). */
const boxOfLength = (length: number) =>
  Buffer.concat([Buffer.from([0, 0, 0, length]), Buffer.from('free')])

/** The same file with the length of its `meta` changed. */
function metaOfLength(length: number): Buffer {
  const changed = Buffer.from(whole)
  changed.writeUInt32BE(length, changed.indexOf('meta') - 4)
  return changed
}

test.each<[string, () => Buffer, string]>([
  ['that is its first box alone', () => heifOf([shirt]).subarray(0, 28), 'corrupt_image'],
  ['that ends among its boxes', () => whole.subarray(0, 300), 'corrupt_image'],
  ['that ends in its picture', () => whole.subarray(0, 9000), 'corrupt_image'],
  ['of a moving picture alone', () => sequence(['msf1', 'msf1', 'hevc']), 'unsupported_type'],
  ['of a moving picture that says it is none', () => sequence(['heic', 'heic']), 'corrupt_image'],
  ['of no picture', () => heifOf([], { primary: 1 }), 'corrupt_image'],
  ['whose first picture is not there', () => heifOf([shirt], { primary: 7 }), 'corrupt_image'],
  ['that says it is smaller than it is', () => heifOf([sized(300, 300)]), 'corrupt_image'],
  ['that says it is larger than it is', () => heifOf([sized(6000, 8000)]), 'corrupt_image'],
  ['that would fill the memory', () => heifOf([sized(60_000, 60_000)]), 'too_many_pixels'],
  ['that says it is an icon', () => heifOf([sized(200, 200)]), 'too_small'],
  ['that says it is a strip', () => heifOf([sized(3000, 300)]), 'too_small'],
  [
    'of tiles that are not there',
    () => heifOf([shirt, grid([8, 8, 8, 8])], { primary: 2 }),
    'corrupt_image',
  ],
  ['made of itself', () => heifOf([shirt, grid([2, 2, 2, 2])], { primary: 2 }), 'corrupt_image'],
  ['of too few tiles', () => heifOf([shirt, grid([1])], { primary: 2 }), 'corrupt_image'],
  [
    'of tiles that do not fill it',
    () => heifOf([shirt, grid([1, 1, 1, 1], 5000, 5000)], { primary: 2 }),
    'corrupt_image',
  ],
  [
    'of a thousand pictures',
    () => heifOf(Array.from({ length: 1000 }, () => shirt)),
    'corrupt_image',
  ],
  ['of boxes in boxes', () => heifOf([shirt], { more: [nested(5000)] }), 'corrupt_image'],
  [
    'of a box that is shorter than its own head',
    () => heifOf([shirt], { more: [boxOfLength(4)] }),
    'corrupt_image',
  ],
  ['of a box longer than the file', () => metaOfLength(0x7fff_ffff), 'corrupt_image'],
  ['of a box that cuts the next', () => metaOfLength(200), 'corrupt_image'],
  [
    'whose picture is a page',
    () => heifOf([{ ...shirt, data: Buffer.from('<html><script>1</script>') }]),
    'corrupt_image',
  ],
  [
    'whose picture is of no bytes',
    () => heifOf([{ ...shirt, data: Buffer.alloc(0) }]),
    'corrupt_image',
  ],
  ['of a kind that nobody knows', () => heifOf([{ ...shirt, type: 'wxyz' }]), 'corrupt_image'],
])('a HEIC %s is refused', async (_, make, code) => {
  await expect(makeSafe(make())).rejects.toMatchObject({ name: 'Failure', code })
})

/** Brands and an empty movie (ISO/IEC 14496-12, 8.2), no pictures. */
function sequence(brands: readonly string[]): Buffer {
  const first = heifOf([], { brands })
  return Buffer.concat([first.subarray(0, first.indexOf('meta') - 4), box('moov'), box('mdat')])
}

test('a HEIC with any of its bytes spoiled is refused by name or made safe, never anything else', async () => {
  for (let n = 0; n < 40; n += 1) {
    const spoiled = Buffer.from(whole)
    spoiled[n < 30 ? n * 31 : (n * 7919) % whole.length] = (n * 37) & 0xff
    const outcome = await makeSafe(spoiled).catch((error: unknown) => error)
    expect(outcome).toSatisfy(
      (o: { name?: string; width?: number }) => o.name === 'Failure' || (o.width ?? 0) > 0,
    )
  }
})
