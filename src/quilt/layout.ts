import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import { type Figure, practice } from '../base/figure.ts'
import { type Setting, settings } from '../garment/facts.ts'
import { cornerstones, cutFor, quarteredNinePatch, sashStrips, setSize } from './arithmetic.ts'

export const quiltSizes = ['crib', 'throw', 'twin', 'full', 'queen'] as const
export type QuiltSize = (typeof quiltSizes)[number]

/** What a garment's cloth does in the quilt. */
export const roles = ['focal', 'background', 'accent'] as const
export type Role = (typeof roles)[number]

/** Inches, across and down. */
export interface Extent {
  readonly w: number
  readonly h: number
}

const role = z.enum(roles)
const roleGrid = z.array(z.array(role).min(1)).min(1)
const inches = z.number().positive().multipleOf(0.25)

const blockSchema = z.discriminatedUnion('make', [
  /** Patches of one size, sewn as the grid of roles shows. `patch_in` is finished. */
  z.strictObject({ make: z.literal('grid'), patch_in: inches, roles: roleGrid }),
  /** Three by three squares, cut at `cut_in`, then quartered and sewn together again. */
  z.strictObject({ make: z.literal('quartered'), cut_in: inches, roles: roleGrid }),
])

const perSize = <T extends z.ZodType>(schema: T) =>
  z.strictObject({ crib: schema, throw: schema, twin: schema, full: schema, queen: schema })

const count = z.number().int().positive()

const layoutSchema = z.strictObject({
  layout: z.string().regex(/^[a-z][a-z-]*$/),
  setting: z.enum(settings),
  seam_in: inches,
  blocks: z.record(z.string(), blockSchema),
  /** Blocks by name, repeated across and down until the quilt is full. */
  set: z.array(z.array(z.string()).min(1)).min(1),
  sash: z.strictObject({ width_in: inches, role, corner_role: role }).optional(),
  /** About how many different garments: least, most. */
  garments: perSize(z.tuple([count, count])),
  sizes: perSize(z.strictObject({ columns: count, rows: count })),
  /** Where the figures come from. */
  sources: z
    .strictObject({ seam_in: z.string(), garments: z.string(), sizes: z.string() })
    .partial()
    .default({}),
})

type Block = z.infer<typeof blockSchema>

export interface Layout {
  readonly id: string
  readonly setting: Setting
  readonly seamIn: number
  /** Finished side of every block, inches. */
  readonly blockIn: number
  readonly blocks: Readonly<Record<string, Block>>
  readonly set: readonly (readonly string[])[]
  readonly sash: z.infer<typeof layoutSchema>['sash']
  readonly garments: Readonly<Record<QuiltSize, readonly [number, number]>>
  readonly sizes: Readonly<Record<QuiltSize, { readonly columns: number; readonly rows: number }>>
  readonly sources: z.infer<typeof layoutSchema>['sources']
}

/** Pieces of one size and role, as cut. */
export interface Wanted {
  readonly size: Extent
  readonly role: Role
  readonly count: number
}

export interface Demand {
  readonly columns: number
  readonly rows: number
  readonly blocks: number
  readonly finished: Extent
  readonly pieces: readonly Wanted[]
}

function refuse(layout: unknown, why: string): never {
  throw new Failure('flows_invalid', { file: `layouts/${layout}.yaml`, line: 1, why })
}

function sideOf(block: Block, seam: number): Extent {
  const [down, across] = [block.roles.length, block.roles[0]!.length]
  if (block.make === 'quartered') {
    const side = quarteredNinePatch(block.cut_in, seam).finished
    return { w: side, h: side }
  }
  return { w: across * block.patch_in, h: down * block.patch_in }
}

/** A layout file's value, checked. Throws `flows_invalid` with the layout's name and what is wrong. */
export function readLayout(value: unknown): Layout {
  const parsed = layoutSchema.safeParse(value)
  if (!parsed.success) {
    const { layout } = (value ?? {}) as { layout?: unknown }
    refuse(layout, z.prettifyError(parsed.error))
  }
  const { layout, seam_in, blocks, set, ...rest } = parsed.data
  for (const name of set.flat()) if (!blocks[name]) refuse(layout, `no block is named ${name}`)
  for (const [name, { make, roles: grid }] of Object.entries(blocks)) {
    if (grid.some((row) => row.length !== grid[0]!.length)) refuse(layout, `${name} is not even`)
    if (make === 'quartered' && (grid.length !== 3 || grid[0]!.length !== 3)) {
      refuse(layout, `${name} wants three by three squares`)
    }
  }
  const sides = Object.values(blocks).flatMap((block) => Object.values(sideOf(block, seam_in)))
  if (new Set(sides).size !== 1) refuse(layout, 'the blocks are not squares of one size')
  return { id: layout, seamIn: seam_in, blockIn: sides[0]!, blocks, set, sash: rest.sash, ...rest }
}

/** The names of the blocks as they are set, row by row. */
export function blockGrid({ set, sizes }: Layout, size: QuiltSize): string[][] {
  const { columns, rows } = sizes[size]
  return Array.from({ length: rows }, (_, y) => {
    const row = set[y % set.length]!
    return Array.from({ length: columns }, (_, x) => row[x % row.length]!)
  })
}

const square = (side: number): Extent => ({ w: side, h: side })

function piecesOf(block: Block, seam: number): Wanted[] {
  const side = block.make === 'quartered' ? block.cut_in : cutFor(block.patch_in, seam)
  return block.roles.flat().map((role) => ({ size: square(side), role, count: 1 }))
}

function sashPieces({ sash, seamIn, blockIn, sizes }: Layout, size: QuiltSize): Wanted[] {
  if (!sash) return []
  const across = cutFor(sash.width_in, seamIn)
  return [
    {
      size: { w: across, h: cutFor(blockIn, seamIn) },
      role: sash.role,
      count: sashStrips(sizes[size]),
    },
    { size: square(across), role: sash.corner_role, count: cornerstones(sizes[size]) },
  ]
}

/** Like pieces counted together, the largest first, then by role. */
function counted(pieces: readonly Wanted[]): Wanted[] {
  const sums = new Map<string, Wanted>()
  for (const piece of pieces.filter(({ count }) => count > 0)) {
    const key = `${piece.size.w}x${piece.size.h} ${piece.role}`
    const sum = sums.get(key)
    sums.set(key, { ...piece, count: piece.count + (sum?.count ?? 0) })
  }
  const area = ({ size }: Wanted) => size.w * size.h
  return [...sums.values()].sort(
    (a, b) => area(b) - area(a) || roles.indexOf(a.role) - roles.indexOf(b.role),
  )
}

/** What a quilt of this size takes: finished inches, blocks, and every piece to cut by size and role. */
export function demand(layout: Layout, size: QuiltSize): Demand {
  const { columns, rows } = layout.sizes[size]
  const named = blockGrid(layout, size).flat()
  const inBlocks = Object.entries(layout.blocks).flatMap(([name, block]) => {
    const times = named.filter((one) => one === name).length
    return piecesOf(block, layout.seamIn).map((piece) => ({ ...piece, count: times }))
  })
  return {
    columns,
    rows,
    blocks: columns * rows,
    finished: setSize({ columns, rows, block: layout.blockIn, sash: layout.sash?.width_in ?? 0 }),
    pieces: counted([...inBlocks, ...sashPieces(layout, size)]),
  }
}

/** Clear cloth wanted on each side of a graphic, inches. Common practice, no source. */
const airIn = 0.75

export const graphicFigures: readonly Figure[] = [
  { figure: 'layouts/air around a graphic', value: airIn, unit: 'in', source: practice },
]

/** What a layout's file counts and measures. A figure nobody gave a source has an empty one. */
export function layoutFigures({ id, seamIn, garments, sizes, sources }: Layout): Figure[] {
  return [
    { figure: `layouts/${id}/seam`, value: seamIn, unit: 'in', source: sources.seam_in ?? '' },
    ...quiltSizes.flatMap((size): Figure[] => [
      {
        figure: `layouts/${id}/garments/${size}`,
        value: garments[size],
        unit: 'garments',
        source: sources.garments ?? '',
      },
      {
        figure: `layouts/${id}/sizes/${size}`,
        value: sizes[size],
        unit: 'blocks',
        source: sources.sizes ?? '',
      },
    ]),
  ]
}

/** Whether a graphic (inches) stays whole in some finished piece of the layout, with air around it. */
export function graphicFits({ blocks }: Pick<Layout, 'blocks'>, graphic: Extent): boolean {
  return Object.values(blocks).some(
    (block) =>
      block.make === 'grid' && Math.max(graphic.w, graphic.h) + 2 * airIn <= block.patch_in,
  )
}
