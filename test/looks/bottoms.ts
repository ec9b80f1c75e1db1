import type { Chance } from '../help/chance.ts'
import { bend, boxAround, corner, limb, type Mark, type Outline, pathOf } from './outline.ts'
import type { Side } from './tops.ts'

export const bottomKinds = ['jeans', 'dress'] as const
export type BottomKind = (typeof bottomKinds)[number]

export const drawBottom = (chance: Chance, kind: BottomKind, side: Side): Outline =>
  kind === 'jeans' ? drawJeans(chance, side) : drawDress(chance, side)

function drawJeans(chance: Chance, side: Side): Outline {
  const waist = chance.real(360, 480) / 2
  const hip = waist * chance.real(1.14, 1.26)
  const rise = chance.real(235, 300)
  const inside = chance.real(640, 800)
  const band = 42
  const shorts = chance.happens(0.15)
  const length = shorts ? inside * chance.real(0.2, 0.35) : inside
  const wide = hip * chance.real(0.92, 1)
  const ankle = shorts ? wide * 0.95 : chance.real(150, 250)
  const splay = chance.real(1, 8)
  const legs = ([-1, 1] as const).map((way) =>
    limb(
      way,
      [way * hip, rise * 0.86],
      [way * 2, rise],
      [length * 0.5, length * 0.5],
      [90 - splay - chance.real(0, 3), 90 - splay - chance.real(-3, 3)],
      [(wide + ankle) / 2, ankle],
      26,
    ),
  )
  const seat = pathOf([
    corner(-waist, 0),
    bend(0, 8),
    corner(waist, 0),
    bend(hip * 0.98, rise * 0.55),
    corner(hip, rise * 0.88),
    bend(hip * 0.6, rise + 12),
    corner(0, rise + 14),
    bend(-hip * 0.6, rise + 12),
    corner(-hip, rise * 0.88),
    bend(-hip * 0.98, rise * 0.55),
  ])
  const belt = pathOf([bend(-waist - 6, band), bend(0, band + 8), bend(waist + 6, band)], false)
  const loops = [-0.78, -0.3, 0.3, 0.78].map(
    (at): Mark => ({
      path: pathOf([corner(at * waist, 0), corner(at * waist, band + 8)], false),
      ink: 'lap',
      wide: 10,
    }),
  )
  const frontMarks: Mark[] = [
    {
      path: pathOf(
        [corner(6, band), corner(6, rise * 0.7), bend(2, rise * 0.86), corner(0, rise)],
        false,
      ),
      ink: 'seam',
      wide: 2.4,
    },
    {
      path: pathOf(
        [corner(40, band), corner(38, rise * 0.6), bend(24, rise * 0.78), corner(4, rise * 0.84)],
        false,
      ),
      ink: 'stitch',
      wide: 1.8,
    },
    ...([-1, 1] as const).map(
      (way): Mark => ({
        path: pathOf(
          [
            bend(way * waist * 0.5, band),
            bend(way * waist * 0.62, band + 60),
            bend(way * hip * 0.97, band + 82),
          ],
          false,
        ),
        ink: 'stitch',
        wide: 2.2,
      }),
    ),
    { path: `M-8 ${band / 2}a9 9 0 1 0 18 0a9 9 0 1 0 -18 0Z`, ink: 'metal' },
  ]
  const backMarks: Mark[] = [
    { path: pathOf([corner(0, band), corner(0, rise + 10)], false), ink: 'seam', wide: 2.6 },
    {
      path: pathOf([bend(-hip, band + 40), bend(0, band + 80), bend(hip, band + 40)], false),
      ink: 'stitch',
      wide: 2,
    },
    ...([-1, 1] as const).map((way): Mark => {
      const x = way * hip * 0.52
      return {
        path: pathOf([
          corner(x - 66, 110),
          corner(x + 66, 110),
          corner(x + 62, 225),
          corner(x, 250),
          corner(x - 62, 225),
        ]),
        ink: 'stitch',
        wide: 2.2,
      }
    }),
  ]
  const points = legs.flatMap((leg) => leg.points)
  return {
    parts: [
      ...legs.flatMap((leg) => leg.parts),
      { path: seat, from: [0, 0], turn: 0, flush: true },
    ],
    marks: [
      ...legs.flatMap((leg) => leg.marks.filter(({ ink }) => ink !== 'seam')),
      { path: belt, ink: 'stitch', wide: 2 },
      ...loops,
      ...(side === 'front' ? frontMarks : backMarks),
    ],
    front: { middle: [hip * 0.5, rise + length * 0.4], width: ankle * 0.8, height: length * 0.4 },
    chest: [hip * 0.5, rise * 0.6],
    box: boxAround([...points, [-waist, 0], [waist, 0], [-hip, rise], [hip, rise]]),
  }
}

function drawDress(chance: Chance, side: Side): Outline {
  const half = chance.real(350, 470) / 2
  const waist = half * chance.real(0.82, 0.95)
  const hem = half * chance.real(1.3, 2.1)
  const drop = side === 'front' ? chance.real(90, 160) : chance.real(30, 60)
  const neck = half * chance.real(0.42, 0.58)
  const shoulder = half * chance.real(0.74, 0.86)
  const arm = half * chance.real(0.95, 1.1)
  const middle = arm + half * chance.real(0.75, 1)
  const length = middle + chance.real(420, 720)
  const sleeved = chance.happens(0.5)
  const wave = chance.real(6, 16)
  const armhole = (way: number) => (sleeved ? [] : [bend(way * shoulder * 0.95, arm * 0.6)])
  const body = pathOf([
    corner(-neck, 0),
    bend(-neck * 0.7, drop * 0.7),
    bend(0, drop),
    bend(neck * 0.7, drop * 0.7),
    corner(neck, 0),
    corner(shoulder, 28),
    ...armhole(1),
    corner(half, arm),
    bend(waist, middle),
    bend((waist + hem) / 2 + 6, (middle + length) / 2),
    corner(hem, length - 30),
    bend(hem * 0.62, length - 6 + wave),
    bend(hem * 0.2, length - wave),
    bend(-hem * 0.3, length + wave),
    bend(-hem * 0.7, length - wave),
    corner(-hem, length - 30),
    bend(-(waist + hem) / 2 - 6, (middle + length) / 2),
    bend(-waist, middle),
    corner(-half, arm),
    ...armhole(-1),
    corner(-shoulder, 28),
  ])
  const sleeves = sleeved
    ? ([-1, 1] as const).map((way) =>
        limb(
          way,
          [way * shoulder, 28],
          [way * half, arm],
          [70, 60],
          [chance.real(30, 60), chance.real(30, 60)],
          [arm * 0.9, arm * 0.8],
          16,
        ),
      )
    : []
  const gathers = Array.from({ length: 9 }, (_, n): Mark => {
    const x = (n - 4) / 4.6
    return {
      path: pathOf(
        [bend(x * waist, middle + 4), bend(x * waist * 1.12, middle + chance.real(60, 150))],
        false,
      ),
      ink: 'seam',
      wide: 3,
    }
  })
  return {
    parts: [{ path: body, from: [0, 0], turn: 0 }, ...sleeves.flatMap(({ parts }) => parts)],
    marks: [
      ...sleeves.flatMap(({ marks }) => marks),
      {
        path: pathOf([bend(-waist, middle), bend(0, middle + 6), bend(waist, middle)], false),
        ink: 'seam',
        wide: 3,
      },
      ...(chance.happens(0.6) ? gathers : []),
      {
        path: pathOf(
          [bend(-hem + 4, length - 48), bend(0, length - 22), bend(hem - 4, length - 48)],
          false,
        ),
        ink: 'stitch',
        wide: 1.6,
      },
      {
        path: pathOf(
          [
            corner(-neck, 0),
            bend(-neck * 0.7, drop * 0.7),
            bend(0, drop),
            bend(neck * 0.7, drop * 0.7),
            corner(neck, 0),
          ],
          false,
        ),
        ink: 'lap',
        wide: 6,
      },
    ],
    front: {
      middle: [0, (drop + middle) / 2 + 10],
      width: waist * 1.6,
      height: (middle - drop) * 0.86,
    },
    chest: [half * 0.45, arm * 0.8],
    box: boxAround([
      [-hem, length + wave],
      [hem, length + wave],
      [0, 0],
      [-half, arm],
      [half, arm],
      ...sleeves.flatMap(({ points }) => points),
    ]),
  }
}
