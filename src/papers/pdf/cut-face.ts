import { create, type FontGlyph } from 'fontkit'
import { joined, sfnt, tablesOf, Words } from './sfnt.ts'

interface Corner {
  readonly on: boolean
  readonly x: number
  readonly y: number
}

function contoursOf({ path }: FontGlyph): Corner[][] {
  const contours: Corner[][] = []
  for (const { command, args } of path.commands) {
    const points = Array.from({ length: args.length / 2 }, (_, n) => ({
      on: 2 * n + 2 === args.length,
      x: Math.round(args[2 * n]!),
      y: Math.round(args[2 * n + 1]!),
    }))
    if (command === 'moveTo') contours.push(points)
    else contours.at(-1)?.push(...points)
  }
  // Closing a contour draws the last line: a last point that is the first again is one too many.
  return contours.map((points) => {
    const [first, last] = [points[0]!, points.at(-1)!]
    const twice = points.length > 1 && last.on && last.x === first.x && last.y === first.y
    return twice ? points.slice(0, -1) : points
  })
}

function outline(glyph: FontGlyph): Uint8Array {
  const contours = contoursOf(glyph)
  const points = contours.flat()
  if (points.length === 0) return new Uint8Array(0)
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  let last = -1
  const ends = contours.map((contour) => {
    last += contour.length
    return last
  })
  const steps = (along: readonly number[]) => along.map((at, n) => at - (along[n - 1] ?? 0))
  const head = new Words()
  head.add(contours.length, Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys))
  head.add(...ends, 0)
  const tail = new Words()
  tail.add(...steps(xs), ...steps(ys))
  return joined([head.bytes, Uint8Array.from(points, ({ on }) => (on ? 1 : 0)), tail.bytes])
}

/** Tables that say how the weights differ. */
const varying = ['fvar', 'gvar', 'avar', 'HVAR', 'MVAR', 'STAT', 'cvar']

/**
 * One weight cut out of a variable TrueType font, every outline drawn out: accents are set right at every weight,
 * and what reads the font need not know of weights.
 */
export function cutFace(font: Uint8Array, weight: number): Uint8Array {
  const whole = create(font)
  const face = whole.getVariation({ wght: weight })
  const glyphs = Array.from({ length: whole.numGlyphs }, (_, n) => face.getGlyph(n))
  const outlines = glyphs.map(outline)
  const [loca, hmtx] = [new Uint8Array(4 * (glyphs.length + 1)), new Words()]
  const offsets = new DataView(loca.buffer)
  let at = 0
  for (const [n, drawn] of outlines.entries()) {
    offsets.setUint32(4 * n, at)
    at += drawn.length
    const left = drawn.length === 0 ? 0 : new DataView(drawn.buffer, drawn.byteOffset).getInt16(2)
    hmtx.add(Math.round(glyphs[n]!.advanceWidth), left)
  }
  offsets.setUint32(4 * glyphs.length, at)

  const tables = new Map(tablesOf(font))
  for (const tag of varying) tables.delete(tag)
  tables.set('glyf', joined(outlines)).set('loca', loca).set('hmtx', hmtx.bytes)
  const hhea = new Uint8Array(tables.get('hhea')!)
  new DataView(hhea.buffer).setUint16(34, glyphs.length)
  tables.set('hhea', hhea)
  return sfnt(tables)
}
