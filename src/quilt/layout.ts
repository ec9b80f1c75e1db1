import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import { type Figure, practice } from '../base/figure.ts'
import { type Setting, settings } from '../garment/facts.ts'
import { quarteredNinePatch } from './arithmetic.ts'

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
/** Their halves are still whole quarters. */
const evenInches = z.number().positive().multipleOf(0.5)
const share = z.number().min(0).max(1)

const blockSchema = z.discriminatedUnion('make', [
  /** Patches of one size, sewn as the grid of roles shows. `patch_in` is finished. */
  z.strictObject({ make: z.literal('grid'), patch_in: inches, roles: roleGrid }),
  /** Three by three squares, cut at `cut_in`, then quartered and sewn together again. */
  z.strictObject({ make: z.literal('quartered'), cut_in: inches, roles: roleGrid }),
  /**
   * One piece, `side_in` finished; for a picture as large as it wants, from `least_in` in steps of
   * `step_in`, and strips of bought cloth, none under `strip_least_in`, make it up to the side.
   */
  z.strictObject({
    make: z.literal('framed'),
    side_in: evenInches,
    step_in: evenInches,
    least_in: evenInches,
    strip_least_in: inches,
    role,
    frame_role: role,
  }),
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
  sash: z
    .strictObject({
      width_in: inches,
      role,
      corner_role: role,
      from: z.enum(['bought', 'garments']).default('bought'),
    })
    .optional(),
  /** As many `picture` blocks as the pile has pictures, within shares of all blocks; the rest are `other`. */
  mix: z
    .strictObject({ picture: z.string(), other: z.string(), least: share, most: share })
    .optional(),
  /** Garments of the light role are lighter than those of the dark one, by `delta` of CIELAB L*. */
  contrast: z
    .strictObject({ light: role, dark: role, delta: z.number().positive().max(100) })
    .optional(),
  /** About how many different garments: least, most. */
  garments: perSize(z.tuple([count, count])),
  sizes: perSize(z.strictObject({ columns: count, rows: count })),
  /** Where the figures come from. */
  sources: z
    .strictObject({
      seam_in: z.string(),
      garments: z.string(),
      sizes: z.string(),
      frame: z.string(),
      mix: z.string(),
      contrast: z.string(),
    })
    .partial()
    .default({}),
})

type File = z.infer<typeof layoutSchema>
export type Block = z.infer<typeof blockSchema>

export interface Layout {
  readonly id: string
  readonly setting: Setting
  readonly seamIn: number
  /** Finished side of every block, inches. */
  readonly blockIn: number
  readonly blocks: Readonly<Record<string, Block>>
  readonly set: readonly (readonly string[])[]
  readonly sash: File['sash']
  readonly mix: File['mix']
  readonly contrast: File['contrast']
  /** Roles that are cut from new cloth and never from garments. */
  readonly bought: readonly Role[]
  readonly garments: Readonly<Record<QuiltSize, readonly [number, number]>>
  readonly sizes: Readonly<Record<QuiltSize, { readonly columns: number; readonly rows: number }>>
  readonly sources: File['sources']
}

function refuse(layout: unknown, why: string): never {
  throw new Failure('flows_invalid', { file: `layouts/${layout}.yaml`, line: 1, why })
}

function sideOf(block: Block, seam: number): Extent {
  if (block.make === 'framed') return { w: block.side_in, h: block.side_in }
  const [down, across] = [block.roles.length, block.roles[0]!.length]
  if (block.make === 'quartered') {
    const side = quarteredNinePatch(block.cut_in, seam).finished
    return { w: side, h: side }
  }
  return { w: across * block.patch_in, h: down * block.patch_in }
}

const rolesIn = (block: Block): Role[] =>
  block.make === 'framed' ? [block.role] : block.roles.flat()

/** Roles of new cloth, which garments play nowhere in the layout. */
function boughtRoles({ layout, blocks, sash }: File): Role[] {
  const all = Object.values(blocks)
  const frames = all.flatMap((block) => (block.make === 'framed' ? [block.frame_role] : []))
  const strips = sash ? [sash.role, sash.corner_role] : []
  const bought = new Set([...frames, ...(sash?.from === 'bought' ? strips : [])])
  const given = [...all.flatMap(rolesIn), ...(sash?.from === 'garments' ? strips : [])]
  const both = given.find((one) => bought.has(one))
  if (both) refuse(layout, `${both} is cut from garments and bought as well`)
  return roles.filter((one) => bought.has(one))
}

function checkBlock(layout: string, name: string, block: Block): void {
  if (block.make === 'framed') {
    if (block.least_in > block.side_in) refuse(layout, `${name} is smaller than its least piece`)
    return
  }
  const { make, roles: grid } = block
  if (grid.some((row) => row.length !== grid[0]!.length)) refuse(layout, `${name} is not even`)
  if (make === 'quartered' && (grid.length !== 3 || grid[0]!.length !== 3)) {
    refuse(layout, `${name} wants three by three squares`)
  }
}

function checkMix({ layout, blocks, mix }: File): void {
  if (!mix) return
  for (const name of [mix.picture, mix.other]) {
    if (!blocks[name]) refuse(layout, `no block is named ${name}`)
  }
  if (mix.least > mix.most) refuse(layout, 'the least share of pictures is above the most')
}

/** A layout file's value, checked. Throws `flows_invalid` with the layout's name and what is wrong. */
export function readLayout(value: unknown): Layout {
  const parsed = layoutSchema.safeParse(value)
  if (!parsed.success) {
    const { layout } = (value ?? {}) as { layout?: unknown }
    refuse(layout, z.prettifyError(parsed.error))
  }
  const { layout, seam_in, blocks, set, sash, mix, contrast, ...rest } = parsed.data
  for (const name of set.flat()) if (!blocks[name]) refuse(layout, `no block is named ${name}`)
  for (const [name, block] of Object.entries(blocks)) checkBlock(layout, name, block)
  checkMix(parsed.data)
  const sides = Object.values(blocks).flatMap((block) => Object.values(sideOf(block, seam_in)))
  if (new Set(sides).size !== 1) refuse(layout, 'the blocks are not squares of one size')
  const bought = boughtRoles(parsed.data)
  return {
    id: layout,
    seamIn: seam_in,
    blockIn: sides[0]!,
    blocks,
    set,
    sash,
    mix,
    contrast,
    bought,
    ...rest,
  }
}

/** Clear cloth wanted on each side of a graphic, inches. Common practice, no source. */
export const airIn = 0.75

export const graphicFigures: readonly Figure[] = [
  { figure: 'layouts/air around a graphic', value: airIn, unit: 'in', source: practice },
]

/** What a layout's file counts and measures. A figure nobody gave a source has an empty one. */
export function layoutFigures(layout: Layout): Figure[] {
  const { id, seamIn, garments, sizes, sources, blocks, mix, contrast } = layout
  const frames = Object.entries(blocks).flatMap(([name, block]) =>
    block.make === 'framed' ? [[name, block] as const] : [],
  )
  return [
    { figure: `layouts/${id}/seam`, value: seamIn, unit: 'in', source: sources.seam_in ?? '' },
    ...frames.flatMap(([name, block]) =>
      (['side_in', 'step_in', 'least_in', 'strip_least_in'] as const).map(
        (part): Figure => ({
          figure: `layouts/${id}/${name}/${part.replace(/_in$/, '')}`,
          value: block[part],
          unit: 'in',
          source: sources.frame ?? '',
        }),
      ),
    ),
    ...(mix
      ? [
          {
            figure: `layouts/${id}/share of pictures`,
            value: [mix.least, mix.most],
            source: sources.mix ?? '',
          },
        ]
      : []),
    ...(contrast
      ? [
          {
            figure: `layouts/${id}/contrast in L*`,
            value: contrast.delta,
            source: sources.contrast ?? '',
          },
        ]
      : []),
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

/** The side of the largest finished piece in a block, inches; 0: a picture would be cut up. */
const roomIn = (block: Block): number => {
  if (block.make === 'framed') return block.side_in
  return block.make === 'grid' ? block.patch_in : 0
}

/** Whether a graphic (inches) stays whole in some finished piece of the layout, with air around it. */
export const graphicFits = ({ blocks }: Pick<Layout, 'blocks'>, graphic: Extent): boolean =>
  Object.values(blocks).some((block) => Math.max(graphic.w, graphic.h) + 2 * airIn <= roomIn(block))
