import type { Chance } from '../help/chance.ts'
import type { Point } from './camera.ts'
import { bend, circle, corner, type Mark, type Outline, type Part, pathOf } from './outline.ts'
import type { Side } from './tops.ts'

export type CollarKind = 'band' | 'rib' | 'shirt' | 'hood' | 'bound'

interface Neckline {
  readonly neck: number
  readonly drop: number
  readonly nape: number
  readonly side: Side
  readonly length: number
  readonly half: number
}

type Collar = Pick<Outline, 'parts' | 'marks'> & { readonly points: readonly Point[] }

export function collarOf(chance: Chance, kind: CollarKind, line: Neckline): Collar {
  const { neck, drop, nape, side, length, half } = line
  const front = side === 'front'
  const low = front ? drop : nape
  const round = [
    corner(-neck, 0),
    bend(-neck * 0.72, low * 0.66),
    bend(0, low),
    bend(neck * 0.72, low * 0.66),
    corner(neck, 0),
  ]
  const opening = pathOf(round, false)
  // Seen through the opening: the inside of the back.
  const inside: Part[] = front
    ? [{ path: pathOf([...round, bend(0, nape)]), from: [0, 0], turn: 0, shade: -0.32 }]
    : []
  if (kind === 'hood') {
    const wide = neck * chance.real(1.25, 1.5)
    const tall = chance.real(230, 320)
    const hood = pathOf([
      corner(-neck, 12),
      bend(-wide, -tall * 0.45),
      bend(-wide * 0.62, -tall * 0.93),
      bend(0, -tall),
      bend(wide * 0.62, -tall * 0.93),
      bend(wide, -tall * 0.45),
      corner(neck, 12),
      bend(0, front ? low : nape + 20),
    ])
    const dark = pathOf([
      bend(-neck * 0.75, -10),
      bend(-wide * 0.5, -tall * 0.52),
      bend(0, -tall * 0.72),
      bend(wide * 0.5, -tall * 0.52),
      bend(neck * 0.75, -10),
      bend(0, low * 0.72),
    ])
    const cords =
      front && chance.happens(0.7)
        ? [-1, 1].map(
            (way): Mark => ({
              path: pathOf(
                [
                  bend(way * neck * 0.42, low * 0.6),
                  bend(way * (neck * 0.5 + chance.real(-10, 20)), low + 70),
                  bend(way * (neck * 0.45 + chance.real(-20, 20)), low + chance.real(120, 190)),
                ],
                false,
              ),
              ink: 'cord',
              wide: 6,
            }),
          )
        : []
    return {
      parts: [
        { path: hood, from: [0, 0], turn: 0 },
        ...(front ? [{ path: dark, from: [0, 0] as Point, turn: 0, shade: -0.4 }] : []),
      ],
      marks: [
        {
          path: pathOf([bend(-neck, 8), bend(0, front ? low : nape + 20), bend(neck, 8)], false),
          ink: 'seam',
          wide: 3,
        },
        ...(front
          ? []
          : [
              {
                path: pathOf([bend(0, -tall), bend(0, nape + 20)], false),
                ink: 'seam' as const,
                wide: 2.4,
              },
            ]),
        ...cords,
      ],
      points: [
        [0, -tall - 4],
        [-wide - 4, -tall / 2],
        [wide + 4, -tall / 2],
      ],
    }
  }
  if (kind === 'shirt') {
    const stand = 26
    if (!front)
      return {
        parts: [
          {
            path: pathOf([
              corner(-neck - 8, 14),
              bend(0, -stand - 6),
              corner(neck + 8, 14),
              bend(0, nape + 14),
            ]),
            from: [0, 0],
            turn: 0,
          },
        ],
        marks: [
          {
            path: pathOf([bend(-neck - 8, 14), bend(0, nape + 14), bend(neck + 8, 14)], false),
            ink: 'seam',
            wide: 2.4,
          },
          {
            path: pathOf([bend(-half * 0.84, 105), bend(0, 112), bend(half * 0.84, 105)], false),
            ink: 'seam',
            wide: 2,
          },
        ],
        points: [[0, -stand - 10]],
      }
    const wing = (way: number) =>
      pathOf([
        corner(way * neck * 0.96, -stand),
        bend(way * (neck + 12), 4),
        corner(way * neck * 0.95, low + 42),
        corner(way * 3, low - 8),
        bend(way * neck * 0.6, low * 0.35),
      ])
    const count = Math.round((length - low - 120) / 88)
    const placket = pathOf([
      corner(-17, low - 2),
      corner(17, low - 2),
      corner(17, length + 1),
      corner(-17, length + 1),
    ])
    return {
      parts: [
        {
          path: pathOf([
            corner(-neck, -4),
            bend(0, -stand),
            corner(neck, -4),
            bend(neck * 0.6, low * 0.5),
            corner(0, low),
            bend(-neck * 0.6, low * 0.5),
          ]),
          from: [0, 0],
          turn: 0,
          shade: -0.3,
        },
        { path: placket, from: [chance.real(-9, 9), chance.real(-9, 9)], turn: 0 },
        { path: wing(-1), from: [0, 0], turn: 0.6 },
        { path: wing(1), from: [0, 0], turn: -0.6 },
      ],
      marks: [
        {
          path: pathOf([corner(17, low + 10), corner(17, length - 4)], false),
          ink: 'lap',
          wide: 3,
        },
        {
          path: pathOf([corner(-15, low + 10), corner(-15, length - 6)], false),
          ink: 'stitch',
          wide: 1.2,
        },
        { path: wing(-1), ink: 'lap', wide: 3 },
        { path: wing(1), ink: 'lap', wide: 3 },
        ...Array.from(
          { length: count },
          (_, n): Mark => ({ path: circle(0, low + 30 + n * 88, 5.6), ink: 'button' }),
        ),
        ...(chance.happens(0.65) ? pocket(half * 0.46, low + 120, 105) : []),
        ...(chance.happens(0.35) ? pocket(-half * 0.46, low + 120, 105) : []),
      ],
      points: [[0, -stand - 4]],
    }
  }
  const wide = kind === 'rib' ? 26 : kind === 'band' ? 19 : 9
  return {
    parts: inside,
    marks: [
      { path: opening, ink: 'lap', wide: wide + 3 },
      { path: opening, ink: 'rib', wide },
      ...(front
        ? []
        : [
            {
              path: pathOf(
                [bend(-neck - 16, 16), bend(0, nape + wide), bend(neck + 16, 16)],
                false,
              ),
              ink: 'stitch' as const,
              wide: 1.4,
            },
          ]),
    ],
    points: [
      [0, -wide / 2],
      [-neck - wide / 2, -wide / 3],
      [neck + wide / 2, -wide / 3],
    ],
  }
}

export const pocket = (x: number, y: number, wide: number): Mark[] => {
  const w = wide / 2
  return [
    {
      path: pathOf([
        corner(x - w, y),
        corner(x + w, y),
        corner(x + w, y + wide * 0.95),
        corner(x, y + wide * 1.15),
        corner(x - w, y + wide * 0.95),
      ]),
      ink: 'seam',
      wide: 2,
    },
    {
      path: pathOf([corner(x - w, y + 22), corner(x + w, y + 22)], false),
      ink: 'stitch',
      wide: 1.4,
    },
  ]
}

export const pouch = (half: number, length: number): Mark[] => {
  const top = length * 0.62
  const low = length * 0.9
  return [
    {
      path: pathOf([
        corner(-half * 0.34, top),
        corner(half * 0.34, top),
        bend(half * 0.5, top + (low - top) * 0.45),
        corner(half * 0.62, low),
        corner(-half * 0.62, low),
        bend(-half * 0.5, top + (low - top) * 0.45),
      ]),
      ink: 'lap',
      wide: 3,
    },
  ]
}
