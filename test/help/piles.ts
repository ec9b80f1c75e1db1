import type { PieceSize } from '../../src/quilt/cut/panel.ts'
import { patternCounts } from '../../src/quilt/cut/patterns.ts'
import { type Pile, readPile, type Sharing } from '../../src/quilt/plan/instance.ts'

/** Invented piles, the same for the same seed. Lengths in quarter inches. */
export interface PileJson {
  sizes: { w: number; h: number; rot: boolean }[]
  roles: { name: string; garments: boolean; quilt?: number }[]
  demand: { size: number; role: string; count: number }[]
  garments: {
    id: string
    L: number
    roles: string[]
    must: boolean
    minIfUsed: number
    panels: {
      W: number
      H: number
      defects: { x: number; y: number; w: number; h: number }[]
      mult: number
      patterns?: number[][]
    }[]
  }[]
  shareMax: number
  maxRolesPerGarment: number
  contrast: { light: string; dark: string; delta: number }[]
  cloth: { width: number; step: number }
  /** Not for the file of a pile: how its quilts share the garments. */
  sharing?: Sharing
}

/** mulberry32, a small generator in the public domain. */
export function dice(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

const known = new Map<string, number[][]>()

/** Cut patterns of a panel, worked out once for each kind of panel. */
export function patternsOf(
  panel: Omit<PileJson['garments'][number]['panels'][number], 'mult'>,
  pieces: readonly PieceSize[],
): number[][] {
  const { W, H, defects } = panel
  const key = JSON.stringify([W, H, defects, pieces])
  const found =
    known.get(key) ?? patternCounts({ W, H, defects, pieces }).map((counts) => [...counts])
  known.set(key, found)
  return found
}

/** Cut cloth of a top of 92 by 108 in with its seams: no quilt wants more, however large the pile. */
const largestQuilt = 92 * 4 * 108 * 4 * 1.2

export interface Wish {
  readonly garments: number
  /** How much cloth there is for what is wanted: below 1 there is too little. */
  readonly plenty?: number
  readonly seed: number
}

const kinds = [
  // body of a shirt, front and back, and its sleeves; neck and armholes are lost corners
  {
    panels: [
      [72, 100, 1, 'neck'],
      [72, 100, 1, 'plain'],
      [36, 28, 2, 'plain'],
    ],
  },
  {
    panels: [
      [84, 108, 1, 'neck'],
      [84, 108, 1, 'plain'],
      [64, 44, 2, 'plain'],
    ],
  },
  {
    panels: [
      [34, 104, 2, 'plain'],
      [76, 104, 1, 'plain'],
      [40, 72, 2, 'plain'],
    ],
  },
  { panels: [[44, 120, 4, 'plain']] },
  { panels: [[36, 48, 2, 'neck']] },
] as const

const sizeSets: readonly PieceSize[][] = [
  [{ w: 20, h: 20, rot: true }],
  [
    { w: 26, h: 26, rot: true },
    { w: 14, h: 14, rot: true },
  ],
  [
    { w: 54, h: 54, rot: true },
    { w: 28, h: 28, rot: true },
  ],
  [
    { w: 26, h: 26, rot: true },
    { w: 14, h: 26, rot: true },
    { w: 50, h: 26, rot: true },
  ],
]

/** A pile as a shop may meet it: shirts, trousers and baby clothes for a quilt of three roles. */
export function pileLike({ garments, plenty = 1, seed }: Wish): PileJson {
  const roll = dice(seed)
  const pick = <T>(all: readonly T[]): T => all[Math.floor(roll() * all.length)]!
  const sizes = pick(sizeSets)
  const roles = [
    { name: 'focal', garments: true },
    { name: 'background', garments: true },
    { name: 'accent', garments: roll() < 0.7 },
  ]
  const all = Array.from({ length: garments }, (_, g) => {
    const { panels } = pick(kinds)
    const L = Math.round(15 + roll() * 75)
    return {
      id: `g${g + 1}`,
      L,
      roles: roles.filter(() => roll() < 0.75).map(({ name }) => name),
      must: roll() < 0.3,
      minIfUsed: pick([1, 2, 3, 4]),
      panels: panels.map(([W, H, mult, what]) => {
        const defects = what === 'neck' ? [{ x: W / 2 - 10, y: 0, w: 20, h: 12 }] : []
        if (roll() < 0.2) defects.push({ x: 20, y: 30, w: 8, h: 8 })
        const panel = { W: W + 4 * Math.floor(roll() * 3), H, defects }
        return { ...panel, mult, patterns: patternsOf(panel, sizes) }
      }),
    }
  })
  const area = (counts: readonly number[]) =>
    counts.reduce((sum, count, size) => sum + count * sizes[size]!.w * sizes[size]!.h, 0)
  const cloth = all.reduce(
    (sum, { panels }) =>
      sum + panels.reduce((own, { mult, patterns: p }) => own + mult * Math.max(...p.map(area)), 0),
    0,
  )
  const wanted = Math.min(cloth / plenty, largestQuilt)
  const cells = sizes.flatMap((_, size) => roles.map(({ name }) => ({ size, role: name })))
  const shares = cells.map(() => 0.2 + roll())
  const whole = shares.reduce((sum, share) => sum + share, 0)
  const demand = cells
    .map(({ size, role }, n) => ({
      size,
      role,
      count: Math.floor((wanted * shares[n]!) / whole / sizes[size]!.w / sizes[size]!.h),
    }))
    .filter(({ count }) => count > 0)
  return {
    sizes,
    roles,
    demand,
    garments: all,
    shareMax: pick([0.2, 0.25, 0.35, 0.5]),
    maxRolesPerGarment: pick([1, 2]),
    contrast: roll() < 0.8 ? [{ light: 'background', dark: 'focal', delta: pick([10, 20]) }] : [],
    cloth: { width: 160, step: 36 },
  }
}

/** A small pile of every rule at once: its patterns are invented, and no real panel need give them. */
export function smallPile(seed: number): PileJson {
  const roll = dice(seed)
  const upTo = (most: number): number => Math.floor(roll() * (most + 1))
  const pick = <T>(all: readonly T[]): T => all[Math.floor(roll() * all.length)]!
  const sizes = [
    { w: 20, h: 20, rot: true },
    { w: 14, h: 30, rot: roll() < 0.5 },
  ].slice(0, 1 + upTo(1))
  const roles = [
    { name: 'focal', garments: true },
    { name: 'background', garments: true },
    { name: 'accent', garments: roll() < 0.5 },
  ].slice(0, 2 + upTo(1))
  // Few enough pieces that all that can be given may be listed.
  const most = [30, 30, 30, 16, 9, 6, 5][sizes.length * roles.length]!
  return {
    sizes,
    roles,
    demand: sizes.flatMap((_, size) =>
      roles.map(({ name }) => ({ size, role: name, count: upTo(most) })),
    ),
    garments: Array.from({ length: 4 + upTo(8) }, (_, g) => ({
      id: `g${g}`,
      L: 20 + 10 * upTo(6),
      roles: roles.filter(() => roll() < 0.7).map(({ name }) => name),
      must: roll() < 0.4,
      minIfUsed: 1 + upTo(3),
      panels: Array.from({ length: 1 + upTo(1) }, () => ({
        W: 60,
        H: 60,
        defects: [],
        mult: 1 + upTo(1),
        patterns: Array.from({ length: 1 + upTo(2) }, () => sizes.map(() => upTo(4))),
      })),
    })),
    shareMax: pick([0.2, 0.34, 0.5, 1]),
    maxRolesPerGarment: 1 + upTo(1),
    contrast:
      roll() < 0.8 ? [{ light: 'background', dark: 'focal', delta: pick([0, 10, 20, 30]) }] : [],
    cloth: { width: pick([50, 80, 100]), step: 36 },
  }
}

/** A small pile for two or three quilts of one or two roles each, with every rule at once. */
export function sharedPile(seed: number, sharing: Sharing): PileJson {
  const roll = dice(seed)
  const upTo = (most: number): number => Math.floor(roll() * (most + 1))
  const pick = <T>(all: readonly T[]): T => all[Math.floor(roll() * all.length)]!
  const quilts = 2 + upTo(1)
  const names = quilts === 3 ? ['focal'] : ['focal', 'background'].slice(0, 1 + upTo(1))
  const roles = Array.from({ length: quilts }, (_, quilt) =>
    names.map((name) => ({ name: `${name} ${quilt + 1}`, garments: true, quilt })),
  ).flat()
  return {
    ...smallPile(seed),
    sizes: [{ w: 20, h: 20, rot: true }],
    roles,
    demand: roles.map(({ name }) => ({ size: 0, role: name, count: 2 + upTo(4) })),
    garments: Array.from({ length: 3 + upTo(3) }, (_, g) => {
      const played = names.filter(() => roll() < 0.8)
      return {
        id: `g${g}`,
        L: 20 + 10 * upTo(6),
        roles: roles.map(({ name }) => name).filter((one) => played.includes(one.split(' ')[0]!)),
        must: roll() < 0.5,
        minIfUsed: 1 + upTo(2),
        panels: [
          { W: 60, H: 60, defects: [], mult: 1 + upTo(1), patterns: [[1 + upTo(2)], [upTo(3)]] },
        ],
      }
    }),
    shareMax: pick([0.5, 1]),
    maxRolesPerGarment: pick([2, 3, 6]),
    contrast:
      names.length === 2 && roll() < 0.6
        ? Array.from({ length: quilts }, (_, quilt) => ({
            light: `background ${quilt + 1}`,
            dark: `focal ${quilt + 1}`,
            delta: 20,
          }))
        : [],
    cloth: { width: pick([20, 40, 100]), step: 36 },
    sharing,
  }
}

/** The pile, with what the file of a plain one does not tell of. */
export function pileOf(json: PileJson): Pile {
  const pile = readPile(json)
  const roles = pile.roles.map((role, r) => {
    const { quilt } = json.roles[r]!
    return quilt === undefined ? role : { ...role, quilt }
  })
  return { ...pile, roles, ...(json.sharing && { sharing: json.sharing }) }
}
