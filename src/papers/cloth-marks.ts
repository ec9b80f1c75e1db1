import type { Mark, Point } from './drawing.ts'

/** A rectangle of a drawing, in its unit. */
export interface Extent {
  readonly left: number
  readonly top: number
  readonly w: number
  readonly h: number
}

export const two = (n: number): number => Math.round(n * 100) / 100

/** Whether two rectangles overlap, or come nearer to each other than `air`. */
export const overlap = (a: Extent, b: Extent, air = 0): boolean =>
  a.left < b.left + b.w + air &&
  b.left < a.left + a.w + air &&
  a.top < b.top + b.h + air &&
  b.top < a.top + a.h + air

const hatchStep = 1.6

/** A rectangle and slanting lines within it, mm: cloth that gives no piece. */
export function hatched({ left, top, w, h }: Extent): Mark[] {
  const lines: Mark[] = []
  for (let c = hatchStep; c < w + h; c += hatchStep) {
    const from: Point = [two(left + Math.min(c, w)), two(top + Math.max(0, c - w))]
    const to: Point = [two(left + Math.max(0, c - h)), two(top + Math.min(c, h))]
    lines.push({ mark: 'line', from, to, stroke: 'soft', width: 0.18 })
  }
  const border: Mark = {
    mark: 'rect',
    at: [two(left), two(top)],
    w: two(w),
    h: two(h),
    stroke: 'soft',
    width: 0.25,
  }
  return [border, ...lines]
}

/** Up, so that no piece is turned; `y` is its foot. */
export function upArrow(x: number, y: number, long: number): Mark[] {
  const head = Math.min(1.4, long / 3)
  const pen = { stroke: 'ink', width: 0.4 } as const
  return [
    { mark: 'line', from: [two(x), two(y)], to: [two(x), two(y - long)], ...pen },
    {
      mark: 'polyline',
      points: [
        [two(x - head), two(y - long + head)],
        [two(x), two(y - long)],
        [two(x + head), two(y - long + head)],
      ],
      ...pen,
    },
  ]
}
