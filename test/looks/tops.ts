import type { Chance } from '../labels/chance.ts'
import type { Point } from './camera.ts'
import {
  bend,
  boxAround,
  corner,
  limb,
  type Mark,
  type Outline,
  type Part,
  pathOf,
} from './outline.ts'

export type Side = 'front' | 'back'

/** What sets one kind of top apart from another; lengths in mm, most from the least to the most. */
interface Cut {
  readonly chest: readonly [number, number]
  /** Of the chest's width. */
  readonly length: readonly [number, number]
  readonly shoulder: number
  readonly neck: readonly [number, number]
  readonly drop: readonly [number, number]
  readonly sleeve: 'none' | 'short' | 'long'
  readonly hem: 'stitched' | 'rib' | 'curved' | 'snaps'
  readonly collar: 'band' | 'rib' | 'shirt' | 'hood' | 'bound'
  /** Wider at the hem than at the chest by so much. */
  readonly flare: readonly [number, number]
}

export const topKinds = [
  't-shirt',
  'long-sleeve',
  'shirt',
  'hoodie',
  'jumper',
  'onesie',
  'vest',
] as const
export type TopKind = (typeof topKinds)[number]

const cuts: Readonly<Record<TopKind, Cut>> = {
  't-shirt': {
    chest: [380, 620],
    length: [1.22, 1.42],
    shoulder: 0.88,
    neck: [150, 200],
    drop: [75, 115],
    sleeve: 'short',
    hem: 'stitched',
    collar: 'band',
    flare: [0.97, 1.03],
  },
  'long-sleeve': {
    chest: [400, 600],
    length: [1.22, 1.42],
    shoulder: 0.86,
    neck: [150, 195],
    drop: [70, 115],
    sleeve: 'long',
    hem: 'stitched',
    collar: 'band',
    flare: [0.97, 1.03],
  },
  shirt: {
    chest: [460, 640],
    length: [1.2, 1.4],
    shoulder: 0.86,
    neck: [150, 180],
    drop: [60, 85],
    sleeve: 'long',
    hem: 'curved',
    collar: 'shirt',
    flare: [0.98, 1.02],
  },
  hoodie: {
    chest: [480, 660],
    length: [1.08, 1.2],
    shoulder: 0.9,
    neck: [190, 230],
    drop: [70, 100],
    sleeve: 'long',
    hem: 'rib',
    collar: 'hood',
    flare: [0.9, 0.98],
  },
  jumper: {
    chest: [440, 640],
    length: [1.08, 1.25],
    shoulder: 0.88,
    neck: [170, 220],
    drop: [50, 100],
    sleeve: 'long',
    hem: 'rib',
    collar: 'rib',
    flare: [0.9, 0.99],
  },
  onesie: {
    chest: [200, 270],
    length: [1.62, 1.85],
    shoulder: 0.84,
    neck: [110, 140],
    drop: [40, 60],
    sleeve: 'short',
    hem: 'snaps',
    collar: 'bound',
    flare: [1, 1.08],
  },
  vest: {
    chest: [380, 560],
    length: [1.3, 1.5],
    shoulder: 0.62,
    neck: [150, 210],
    drop: [110, 170],
    sleeve: 'none',
    hem: 'stitched',
    collar: 'bound',
    flare: [0.98, 1.06],
  },
}

export function drawTop(chance: Chance, kind: TopKind, side: Side): Outline {
  const cut = cuts[kind]
  const within = ([least, most]: readonly [number, number]) => chance.real(least, most)
  const chest = within(cut.chest)
  const length = chest * within(cut.length)
  const half = chest / 2
  const neck = Math.min(within(cut.neck), chest * 0.55) / 2
  const drop = within(cut.drop)
  const nape = side === 'front' ? chance.real(12, 22) : chance.real(14, 26)
  const shoulder = Math.max(neck + 30, half * cut.shoulder * chance.real(0.96, 1.03))
  const fall = (shoulder - neck) * chance.real(0.24, 0.36)
  const arm = fall + chest * chance.real(0.36, 0.44) + (cut.sleeve === 'none' ? 20 : 0)
  const hem = half * within(cut.flare)
  const sag = () => chance.real(-8, 8)

  const bottom = (): { nodes: ReturnType<typeof corner>[]; marks: Mark[] } => {
    if (cut.hem === 'snaps') {
      const crotch = chest * 0.2
      const leg = length * 0.76
      return {
        nodes: [
          corner(hem, leg),
          bend(hem * 0.62, leg + (length - leg) * 0.45),
          corner(crotch, length - 8),
          bend(0, length),
          corner(-crotch, length - 8),
          bend(-hem * 0.62, leg + (length - leg) * 0.45),
          corner(-hem, leg),
        ],
        marks: [
          {
            path: pathOf(
              [
                bend(hem - 3, leg - 12),
                bend(hem * 0.55, leg + (length - leg) * 0.32),
                bend(crotch - 4, length - 26),
              ],
              false,
            ),
            ink: 'stitch',
            wide: 2,
          },
          {
            path: pathOf(
              [
                bend(-hem + 3, leg - 12),
                bend(-hem * 0.55, leg + (length - leg) * 0.32),
                bend(-crotch + 4, length - 26),
              ],
              false,
            ),
            ink: 'stitch',
            wide: 2,
          },
          ...[-0.55, 0, 0.55].map(
            (at): Mark => ({ path: circle(at * crotch, length - 14, 4.5), ink: 'metal' }),
          ),
        ],
      }
    }
    if (cut.hem === 'curved') {
      const rise = chance.real(30, 80)
      return {
        nodes: [
          corner(hem, length - rise),
          bend(hem * 0.6, length - rise * 0.2),
          bend(0, length + sag() / 2),
          bend(-hem * 0.6, length - rise * 0.2),
          corner(-hem, length - rise),
        ],
        marks: [
          {
            path: pathOf(
              [
                bend(hem - 2, length - rise - 9),
                bend(hem * 0.6, length - rise * 0.2 - 9),
                bend(0, length - 9),
                bend(-hem * 0.6, length - rise * 0.2 - 9),
                bend(-hem + 2, length - rise - 9),
              ],
              false,
            ),
            ink: 'stitch',
            wide: 1.6,
          },
        ],
      }
    }
    const band = cut.hem === 'rib' ? chance.real(45, 80) : 22
    const low = sag()
    const across = pathOf(
      [bend(-hem, length - band), bend(0, length - band + low), bend(hem, length - band)],
      false,
    )
    return {
      nodes: [corner(hem, length), bend(0, length + low), corner(-hem, length)],
      marks:
        cut.hem === 'rib'
          ? [
              { path: across, ink: 'seam', wide: 2.4 },
              {
                path: pathOf([
                  corner(-hem, length - band),
                  bend(0, length - band + low),
                  corner(hem, length - band),
                  corner(hem, length),
                  bend(0, length + low),
                  corner(-hem, length),
                ]),
                ink: 'rib',
              },
            ]
          : [{ path: across, ink: 'stitch', wide: 1.6 }],
    }
  }

  const ends = bottom()
  const waist = (arm + length) / 2
  const nip = chance.real(-0.03, 0.02) * chest
  const armhole = (way: number) =>
    cut.sleeve === 'none'
      ? [
          bend(way * (shoulder - 6), fall + (arm - fall) * 0.4),
          bend(way * (shoulder + (half - shoulder) * 0.35), fall + (arm - fall) * 0.82),
        ]
      : []
  const body = pathOf([
    corner(-neck, 0),
    bend(0, nape),
    corner(neck, 0),
    corner(shoulder, fall),
    ...armhole(1),
    corner(half, arm),
    bend(half + nip, waist),
    ...ends.nodes,
    bend(-half - nip, waist),
    corner(-half, arm),
    ...armhole(-1).reverse(),
    corner(-shoulder, fall),
  ])

  const parts: Part[] = [{ path: body, from: [0, 0], turn: 0 }]
  const marks: Mark[] = [...ends.marks]
  const points: Point[] = [
    [-half, 0],
    [half, length + 8],
    [-hem, length],
    [hem, length],
    [0, 0],
    [-half - Math.max(0, nip), waist],
    [half + Math.max(0, nip), waist],
  ]
  if (cut.sleeve !== 'none') {
    const long = cut.sleeve === 'long' && !(kind === 'onesie')
    const even = chance.happens(0.5) ? chance.real(28, 70) : null
    for (const way of [-1, 1] as const) {
      const upper =
        even !== null ? even + chance.real(-5, 5) : chance.real(long ? 20 : 18, long ? 76 : 58)
      const bent = long && chance.happens(0.4) ? chance.real(-70, 45) : chance.real(-10, 12)
      const lower = Math.max(-60, Math.min(100, upper + bent))
      const reach = long
        ? chance.real(0.44, 0.52) * chest
        : chance.real(0.14, 0.2) * chest * (kind === 'onesie' ? 0.8 : 1)
      const deep = arm - fall
      const made = limb(
        way,
        [way * shoulder, fall],
        [way * half, arm],
        [reach, long ? reach * chance.real(0.9, 1.1) : reach],
        [upper, long ? lower : upper + chance.real(-4, 4)],
        [
          deep * (long ? 0.78 : 0.92),
          long ? Math.max(85, chest * 0.19) : deep * chance.real(0.72, 0.86),
        ],
        cut.hem === 'rib' ? 62 : kind === 'shirt' ? 58 : 20,
      )
      parts.push(...made.parts)
      marks.push(...made.marks)
      points.push(...made.points)
    }
  }
  const top = collar(chance, cut.collar, { neck, drop, nape, side, length, half })
  parts.push(...top.parts)
  marks.push(...top.marks)
  points.push(...top.points)
  if (cut.collar === 'hood' && side === 'front') marks.push(...pouch(half, length))
  if (kind === 't-shirt' && side === 'front' && chance.happens(0.08))
    marks.push(...pocket(half * 0.45, drop + chest * 0.16, 95))

  const start = side === 'front' ? drop + 30 : nape + 50
  return {
    parts,
    marks,
    front: {
      middle: [0, start + (length - start) * (kind === 'hoodie' ? 0.27 : 0.34)],
      width: (cut.sleeve === 'none' ? 1.5 : 1.72) * half,
      height:
        (length - start) *
        (kind === 'hoodie' && side === 'front' ? 0.48 : kind === 'onesie' ? 0.6 : 0.76),
    },
    chest: [half * 0.45, Math.max(drop + 20, chest * 0.32)],
    box: boxAround(points),
  }
}

const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0Z`

interface Neckline {
  readonly neck: number
  readonly drop: number
  readonly nape: number
  readonly side: Side
  readonly length: number
  readonly half: number
}

type Sewn = Pick<Outline, 'parts' | 'marks'> & { readonly points: readonly Point[] }

function collar(chance: Chance, kind: Cut['collar'], line: Neckline): Sewn {
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

const pocket = (x: number, y: number, wide: number): Mark[] => {
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

const pouch = (half: number, length: number): Mark[] => {
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
