import { between } from './chance.ts'

/** In parts of a garment, from its middle. */
export type Point = [number, number]
/** The right half of an outline, from the neck or waist down. */
export function half(kind: string): Point[] {
  const j = (v: number) => v + between(-0.02, 0.02)
  switch (kind) {
    case 'tee':
      return [
        [0.0, -0.44],
        [0.1, -0.46],
        [0.22, -0.42],
        [j(0.5), j(-0.22)],
        [j(0.42), j(-0.1)],
        [0.27, -0.2],
        [j(0.27), 0.48],
        [0, 0.5],
      ]
    case 'long':
      return [
        [0, -0.44],
        [0.1, -0.46],
        [0.22, -0.42],
        [0.36, -0.2],
        [j(0.5), j(0.3)],
        [j(0.41), j(0.33)],
        [0.27, -0.1],
        [j(0.27), 0.48],
        [0, 0.49],
      ]
    case 'hood':
      return [
        [0, -0.5],
        [0.12, -0.48],
        [0.14, -0.36],
        [0.24, -0.32],
        [0.36, -0.1],
        [j(0.47), j(0.32)],
        [j(0.38), j(0.35)],
        [0.27, 0],
        [0.28, 0.48],
        [0, 0.5],
      ]
    case 'vest':
      return [
        [0, -0.3],
        [0.08, -0.34],
        [0.12, -0.48],
        [0.2, -0.48],
        [0.2, -0.3],
        [0.28, -0.16],
        [0.29, 0.48],
        [0, 0.5],
      ]
    case 'dress':
      return [
        [0, -0.42],
        [0.1, -0.48],
        [0.2, -0.45],
        [0.3, -0.3],
        [0.22, -0.25],
        [0.18, 0],
        [j(0.4), 0.48],
        [0, 0.5],
      ]
    case 'pants':
      return [
        [0, -0.5],
        [0.2, -0.5],
        [0.24, -0.2],
        [0.26, 0.5],
        [0.06, 0.5],
        [0.02, -0.1],
        [0, -0.12],
      ]
    case 'skirt':
      return [
        [0, -0.4],
        [0.18, -0.4],
        [j(0.42), 0.4],
        [0, 0.43],
      ]
    default:
      return [
        [0, -0.35],
        [0.1, -0.4],
        [0.22, -0.36],
        [0.42, -0.2],
        [0.36, -0.06],
        [0.24, -0.14],
        [0.24, 0.2],
        [0.2, 0.34],
        [0.1, 0.44],
        [0, 0.46],
      ]
  }
}
export const kinds = ['tee', 'tee', 'long', 'hood', 'vest', 'dress', 'pants', 'skirt', 'onesie']
/** The outline with its corners rounded. */
export const path = (pts: Point[]) => {
  const n = pts.length
  const mid = (a: Point, b: Point): Point => [a[0] * 0.3 + b[0] * 0.7, a[1] * 0.3 + b[1] * 0.7]
  let d = ''
  for (let i = 0; i < n; i++) {
    const a = pts[i]!,
      b = pts[(i + 1) % n]!,
      c = pts[(i + 2) % n]!
    const m1 = mid(a, b),
      m2 = mid(c, b)
    d += `${i ? 'L' : 'M'}${m1.map((v) => v.toFixed(4))} Q${b.map((v) => v.toFixed(4))} ${m2.map((v) => v.toFixed(4))}`
  }
  return `${d}Z`
}
