import { Bytes } from './bytes.ts'

/** Numbers of 16 bits, one after the other. */
export class Words {
  readonly #words: number[] = []

  add(...words: readonly number[]): void {
    for (const word of words) this.#words.push(word & 0xffff)
  }

  get bytes(): Uint8Array {
    const bytes = new Uint8Array(this.#words.length * 2)
    const view = new DataView(bytes.buffer)
    for (const [n, word] of this.#words.entries()) view.setUint16(n * 2, word)
    return bytes
  }
}

const padded = (n: number): number => (n + 3) & ~3

/** Parts one after the other, up to a whole group of four bytes. */
export function joined(parts: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(padded(parts.reduce((sum, part) => sum + part.length, 0)))
  let at = 0
  for (const part of parts) {
    whole.set(part, at)
    at += part.length
  }
  return whole
}

/** The sum of a table's numbers of 32 bits, as TrueType has it. */
function sumOf(data: Uint8Array): number {
  const view = new DataView(data.buffer, data.byteOffset, data.byteLength)
  const whole = data.length & ~3
  let sum = 0
  for (let n = 0; n < whole; n += 4) sum = (sum + view.getUint32(n)) >>> 0
  for (let n = whole; n < data.length; n += 1)
    sum = (sum + data[n]! * 2 ** (24 - 8 * (n & 3))) >>> 0
  return sum
}

/** By which the sum of a whole font comes to what it should be. */
const wholeSum = 0xb1b0afba

/** A TrueType font of its tables. */
export function sfnt(tables: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const sorted = [...tables].sort(([a], [b]) => (a < b ? -1 : 1))
  const start = 12 + 16 * sorted.length
  const long = sorted.reduce((sum, [, data]) => sum + padded(data.length), start)
  const file = new Uint8Array(long)
  const view = new DataView(file.buffer)
  view.setUint32(0, 0x00010000)
  view.setUint16(4, sorted.length)
  let [at, head] = [start, 0]
  for (const [n, [tag, data]] of sorted.entries()) {
    const entry = 12 + 16 * n
    for (let i = 0; i < 4; i += 1) file[entry + i] = tag.charCodeAt(i)
    view.setUint32(entry + 4, sumOf(data))
    view.setUint32(entry + 8, at)
    view.setUint32(entry + 12, data.length)
    file.set(data, at)
    if (tag === 'head') head = at
    at += padded(data.length)
  }
  if (head > 0) {
    view.setUint32(head + 8, 0)
    view.setUint32(head + 8, (wholeSum - sumOf(file)) >>> 0)
  }
  return file
}

/** The tables of a TrueType font, by tag. */
export function* tablesOf(font: Uint8Array): Generator<[tag: string, data: Uint8Array]> {
  const bytes = new Bytes(font, 4)
  const count = bytes.u16()
  bytes.at = 12
  for (let n = 0; n < count; n += 1) {
    const tag = bytes.text(4)
    bytes.u32()
    const [at, long] = [bytes.u32(), bytes.u32()]
    yield [tag, font.subarray(at, at + long)]
  }
}
