import { cornersOf, type Picture, type Slab } from './picture.ts'

/** Share of the longest line's height that is left around the words. */
const margin = 1.5

/** Which way most of the words run, radians from −90° to 90°, by the length of their lines. */
export function runOf(slabs: readonly Slab[]): number {
  // Doubled, directions that differ by half a turn are one.
  let [cos, sin] = [0, 0]
  for (const { w, h, turn } of slabs) {
    // A slab that is hardly longer than high says nothing of its direction.
    const weight = w - h
    cos += weight * Math.cos(2 * turn)
    sin += weight * Math.sin(2 * turn)
  }
  return Math.atan2(sin, cos) / 2
}

/** The slab that holds all the words, lying along them, with a margin: by default of the highest line. */
export function aroundAll(slabs: readonly Slab[], turn: number, wide?: number): Slab {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  let [u1, u2, v1, v2] = [Infinity, -Infinity, Infinity, -Infinity]
  let highest = 0
  for (const slab of slabs) {
    highest = Math.max(highest, slab.h)
    for (const { x, y } of cornersOf(slab)) {
      const [u, v] = [x * cos + y * sin, y * cos - x * sin]
      u1 = Math.min(u1, u)
      u2 = Math.max(u2, u)
      v1 = Math.min(v1, v)
      v2 = Math.max(v2, v)
    }
  }
  const [u, v] = [(u1 + u2) / 2, (v1 + v2) / 2]
  const around = 2 * (wide ?? margin * highest)
  return {
    x: u * cos - v * sin,
    y: u * sin + v * cos,
    w: u2 - u1 + around,
    h: v2 - v1 + around,
    turn,
  }
}

/** The same words seen with the picture turned by half a turn. */
export const turnedOver = (slab: Slab, { width, height }: Picture): Slab => ({
  ...slab,
  x: width - slab.x,
  y: height - slab.y,
})

/** A slab that is read from its other end. */
export const fromBehind = (slab: Slab): Slab => ({ ...slab, turn: slab.turn + Math.PI })

/** On a level picture a slab lies within an eighth of a turn of level, be it a single letter, higher than long. */
export function levelled(slab: Slab): Slab {
  const quarters = Math.round(slab.turn / (Math.PI / 2))
  const turn = slab.turn - (quarters * Math.PI) / 2
  return quarters % 2 === 0 ? { ...slab, turn } : { ...slab, w: slab.h, h: slab.w, turn }
}

/** A slab of the picture, seen from another slab that was cut out of it. */
export function within(around: Slab, slab: Slab): Slab {
  const [cos, sin] = [Math.cos(around.turn), Math.sin(around.turn)]
  const [dx, dy] = [slab.x - around.x, slab.y - around.y]
  return {
    ...slab,
    x: dx * cos + dy * sin + around.w / 2,
    y: dy * cos - dx * sin + around.h / 2,
    turn: slab.turn - around.turn,
  }
}

/** A slab of what was cut out of a picture, seen from the picture. */
export function outside(around: Slab, slab: Slab): Slab {
  const [cos, sin] = [Math.cos(around.turn), Math.sin(around.turn)]
  const [u, v] = [slab.x - around.w / 2, slab.y - around.h / 2]
  return {
    ...slab,
    x: around.x + u * cos - v * sin,
    y: around.y + u * sin + v * cos,
    turn: slab.turn + around.turn,
  }
}
