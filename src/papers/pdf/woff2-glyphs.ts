import { Bytes } from './bytes.ts'
import { joined, Words } from './sfnt.ts'

interface Point {
  readonly on: boolean
  readonly x: number
  readonly y: number
}

/** The separate streams of a transformed glyf table. */
interface Streams {
  readonly contours: Bytes
  readonly points: Bytes
  readonly flags: Bytes
  readonly glyphs: Bytes
  readonly composites: Bytes
  readonly boxes: Bytes
}

const signed = (bit: number, value: number): number => (bit & 1 ? value : -value)

/** Steps between points, packed in one to four bytes by the standard's table of triplets. */
function readStep(flag: number, glyphs: Bytes): [dx: number, dy: number] {
  if (flag < 10) return [0, signed(flag, ((flag & 14) << 7) + glyphs.u8())]
  if (flag < 20) return [signed(flag, (((flag - 10) & 14) << 7) + glyphs.u8()), 0]
  if (flag < 84) {
    const [high, low] = [flag - 20, glyphs.u8()]
    return [
      signed(flag, 1 + (high & 0x30) + (low >> 4)),
      signed(flag >> 1, 1 + ((high & 0x0c) << 2) + (low & 0x0f)),
    ]
  }
  if (flag < 120) {
    const high = flag - 84
    return [
      signed(flag, 1 + (Math.floor(high / 12) << 8) + glyphs.u8()),
      signed(flag >> 1, 1 + (((high % 12) >> 2) << 8) + glyphs.u8()),
    ]
  }
  if (flag < 124) {
    const [first, middle, last] = [glyphs.u8(), glyphs.u8(), glyphs.u8()]
    return [
      signed(flag, (first << 4) + (middle >> 4)),
      signed(flag >> 1, ((middle & 0x0f) << 8) + last),
    ]
  }
  const [dx, dy] = [glyphs.u16(), glyphs.u16()]
  return [signed(flag, dx), signed(flag >> 1, dy)]
}

function readPoints({ flags, glyphs }: Streams, count: number): Point[] {
  let [x, y] = [0, 0]
  return Array.from({ length: count }, () => {
    const flag = flags.u8()
    const [dx, dy] = readStep(flag & 0x7f, glyphs)
    x += dx
    y += dy
    return { on: flag < 0x80, x, y }
  })
}

function simple(streams: Streams, contours: number, box: readonly number[] | null): Uint8Array {
  let last = -1
  const ends = Array.from({ length: contours }, () => {
    last += streams.points.u16of255()
    return last
  })
  const points = readPoints(streams, last + 1)
  streams.glyphs.u16of255()
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  const reach = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]
  const steps = (along: readonly number[]) => along.map((at, n) => at - (along[n - 1] ?? 0))

  const head = new Words()
  head.add(contours, ...(box ?? reach), ...ends, 0)
  const tail = new Words()
  tail.add(...steps(xs), ...steps(ys))
  const flags = Uint8Array.from(points, ({ on }) => (on ? 1 : 0))
  return joined([head.bytes, flags, tail.bytes])
}

const more = 0x20
const hasInstructions = 0x100

function composite({ composites, glyphs }: Streams, box: readonly number[]): Uint8Array {
  const parts = new Words()
  parts.add(-1, ...box)
  let [flags, instructed] = [more, false]
  while (flags & more) {
    flags = composites.u16()
    instructed ||= (flags & hasInstructions) !== 0
    const scale = flags & 0x08 ? 2 : flags & 0x40 ? 4 : flags & 0x80 ? 8 : 0
    const rest = new Bytes(composites.take(2 + (flags & 1 ? 4 : 2) + scale))
    parts.add(flags & ~hasInstructions, rest.u16())
    for (let n = 0; n < (flags & 1 ? 2 : 1) + scale / 2; n += 1) parts.add(rest.u16())
  }
  if (instructed) glyphs.u16of255()
  return parts.bytes
}

function streamsOf(bytes: Bytes, glyphs: number): Streams & { boxed: (glyph: number) => boolean } {
  const sizes = Array.from({ length: 7 }, () => bytes.u32())
  const [contours, points, flags, glyph, composites, boxes] = sizes.map((size) => bytes.take(size))
  const map = boxes!.subarray(0, 4 * ((glyphs + 31) >> 5))
  return {
    contours: new Bytes(contours!),
    points: new Bytes(points!),
    flags: new Bytes(flags!),
    glyphs: new Bytes(glyph!),
    composites: new Bytes(composites!),
    boxes: new Bytes(boxes!, map.length),
    boxed: (n) => (map[n >> 3]! & (0x80 >> (n & 7))) !== 0,
  }
}

function glyphsOf(table: Uint8Array): Uint8Array[] {
  const bytes = new Bytes(table, 4)
  const count = bytes.u16()
  bytes.u16()
  const streams = streamsOf(bytes, count)
  return Array.from({ length: count }, (_, n) => {
    const contours = streams.contours.i16()
    const { boxes } = streams
    const box = streams.boxed(n) ? [boxes.i16(), boxes.i16(), boxes.i16(), boxes.i16()] : null
    if (contours === 0) return new Uint8Array(0)
    return contours < 0 ? composite(streams, box!) : simple(streams, contours, box)
  })
}

/** The widths and left bearings, those that were left out found again: a glyph's left edge. */
function metricsTable(
  hmtx: Uint8Array,
  metrics: number,
  glyphs: readonly Uint8Array[],
): Uint8Array {
  const bytes = new Bytes(hmtx)
  const flags = bytes.u8()
  const widths = Array.from({ length: metrics }, () => bytes.u16())
  const bearings = glyphs.map((glyph, n) => {
    const leftOut = n < metrics ? flags & 1 : flags & 2
    if (!leftOut) return bytes.i16()
    return glyph.length === 0 ? 0 : new Bytes(glyph, 2).i16()
  })
  const table = new Words()
  for (const [n, bearing] of bearings.entries()) {
    if (n < metrics) table.add(widths[n]!)
    table.add(bearing)
  }
  return table.bytes
}

/** The tables that WOFF2 packs in its own way, as TrueType has them; offsets of loca are long. */
export function glyphTables({
  glyf,
  hmtx,
  metrics,
  bearingsLeftOut,
}: {
  readonly glyf: Uint8Array
  readonly hmtx: Uint8Array
  /** How many widths hmtx has. */
  readonly metrics: number
  readonly bearingsLeftOut: boolean
}): Record<'glyf' | 'loca' | 'hmtx', Uint8Array> {
  const glyphs = glyphsOf(glyf)
  const loca = new Uint8Array(4 * (glyphs.length + 1))
  const view = new DataView(loca.buffer)
  let at = 0
  for (const [n, glyph] of glyphs.entries()) {
    view.setUint32(4 * n, at)
    at += glyph.length
  }
  view.setUint32(4 * glyphs.length, at)
  return {
    glyf: joined(glyphs),
    loca,
    hmtx: bearingsLeftOut ? metricsTable(hmtx, metrics, glyphs) : hmtx,
  }
}
