import type { Chance } from './chance.ts'

/** Across and down from a garment's middle, in parts of a garment: about 1 is its longer side. */
type Point = readonly [x: number, y: number]
/** A point of an outline, and which of its numbers differ from garment to garment. */
type Corner = readonly [x: number, y: number, differs?: 'x' | 'xy']

/** The right half of each kind's outline, from the neck or the waist down to the hem. */
const halves = {
  tee: [
    [0, -0.44],
    [0.1, -0.46],
    [0.22, -0.42],
    [0.5, -0.22, 'xy'],
    [0.42, -0.1, 'xy'],
    [0.27, -0.2],
    [0.27, 0.48, 'x'],
    [0, 0.5],
  ],
  long: [
    [0, -0.44],
    [0.1, -0.46],
    [0.22, -0.42],
    [0.36, -0.2],
    [0.5, 0.3, 'xy'],
    [0.41, 0.33, 'xy'],
    [0.27, -0.1],
    [0.27, 0.48, 'x'],
    [0, 0.49],
  ],
  hood: [
    [0, -0.5],
    [0.12, -0.48],
    [0.14, -0.36],
    [0.24, -0.32],
    [0.36, -0.1],
    [0.47, 0.32, 'xy'],
    [0.38, 0.35, 'xy'],
    [0.27, 0],
    [0.28, 0.48],
    [0, 0.5],
  ],
  vest: [
    [0, -0.3],
    [0.08, -0.34],
    [0.12, -0.48],
    [0.2, -0.48],
    [0.2, -0.3],
    [0.28, -0.16],
    [0.29, 0.48],
    [0, 0.5],
  ],
  dress: [
    [0, -0.42],
    [0.1, -0.48],
    [0.2, -0.45],
    [0.3, -0.3],
    [0.22, -0.25],
    [0.18, 0],
    [0.4, 0.48, 'x'],
    [0, 0.5],
  ],
  pants: [
    [0, -0.5],
    [0.2, -0.5],
    [0.24, -0.2],
    [0.26, 0.5],
    [0.06, 0.5],
    [0.02, -0.1],
    [0, -0.12],
  ],
  skirt: [
    [0, -0.4],
    [0.18, -0.4],
    [0.42, 0.4, 'x'],
    [0, 0.43],
  ],
  onesie: [
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
  ],
} satisfies Record<string, readonly Corner[]>

export type Kind = keyof typeof halves

/** As often as they are laid down: T-shirts twice as often as others. */
export const kinds: readonly Kind[] = [
  'tee',
  'tee',
  'long',
  'hood',
  'vest',
  'dress',
  'pants',
  'skirt',
  'onesie',
]

/** How far a corner may differ from its kind's, and one side from the other, parts of a garment. */
const ownCut = 0.02
const uneven = 0.01

/** A garment's outline as the data of an SVG path, in parts of the garment about its middle. */
export function outlineOf(chance: Chance, kind: Kind): string {
  const cut = (value: number) => value + chance.real(-ownCut, ownCut)
  const corners: readonly Corner[] = halves[kind]
  const right = corners.map(
    ([x, y, differs]): Point => [differs ? cut(x) : x, differs === 'xy' ? cut(y) : y],
  )
  const left = right
    .filter(([x]) => x !== 0)
    .reverse()
    .map(([x, y]): Point => [-x + chance.real(-uneven, uneven), y + chance.real(-uneven, uneven)])
  return rounded([...right, ...left])
}

/** How far along a side to a corner its rounding begins. */
const straight = 0.7

function rounded(points: readonly Point[]): string {
  const told = ([x, y]: Point) => `${x.toFixed(4)},${y.toFixed(4)}`
  const near = ([fromX, fromY]: Point, [toX, toY]: Point): Point => [
    fromX * (1 - straight) + toX * straight,
    fromY * (1 - straight) + toY * straight,
  ]
  const corners = points.map((before, n) => {
    const corner = points[(n + 1) % points.length]!
    const after = points[(n + 2) % points.length]!
    return `${told(near(before, corner))} Q${told(corner)} ${told(near(after, corner))}`
  })
  return `M${corners.join('L')}Z`
}
