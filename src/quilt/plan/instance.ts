import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import type { Box, Feature, PieceSize } from '../cut/panel.ts'

/** How a role or a garment is called by whoever asks: its name, or its place from 0. */
export type Called = string | number

/** `mult` panels alike. `patterns`: count vectors, one entry for each size; absent, they are worked out. */
export interface PanelsAlike {
  readonly W: number
  readonly H: number
  readonly defects: readonly Box[]
  readonly mult: number
  /** Its pieces are never turned: pile, nap, a one-way print. */
  readonly upright?: boolean
  /** A graphic that stays whole in one block of that size. */
  readonly picture?: { readonly size: number; readonly feature: Feature }
  /** Places of the sizes that are looked for beside the picture; absent: all that the garment may give. */
  readonly only?: readonly number[]
  readonly patterns?: readonly (readonly number[])[] | undefined
}

export interface PileGarment {
  readonly id: Called
  /** Lightness, CIELAB L*. */
  readonly L: number
  /** Places of the roles it may play. */
  readonly roles: readonly number[]
  readonly must: boolean
  /** It gives so many pieces, or none. */
  readonly minIfUsed: number
  readonly panels: readonly PanelsAlike[]
}

/** Some lightness T has every garment of the light role at T + delta or above, of the dark at T or below. */
export interface Contrast {
  readonly light: number
  readonly dark: number
  readonly delta: number
}

/**
 * What pieces are for. Several quilts that share a pile have roles of their own: `quilt` counts from 0, and
 * `called` is the role's name within it; `name` is the role's alone.
 */
export interface PileRole {
  readonly name: string
  readonly garments: boolean
  readonly quilt?: number
  readonly called?: string
}

/** How a role is called within its quilt. */
export const calledOf = ({ name, called = name }: PileRole): string => called

/**
 * How several quilts share the garments: must-use ones go into every quilt and the rest as it falls; every
 * garment that is used goes into every quilt; or as it falls.
 */
export const sharings = ['must-in-all', 'evenly', 'as-it-falls'] as const
export type Sharing = (typeof sharings)[number]

/** What a pile is to give. Lengths are whole quarter inches; sizes, roles and garments count from 0. */
export interface Pile {
  readonly sizes: readonly PieceSize[]
  readonly roles: readonly PileRole[]
  /** Pieces wanted of each size, for each role: `demand[size][role]`. */
  readonly demand: readonly (readonly number[])[]
  readonly garments: readonly PileGarment[]
  /** A garment gives at most this share of a role's pieces. */
  readonly shareMax: number
  readonly maxRoles: number
  readonly contrast: readonly Contrast[]
  /** Usable width of bought cloth, and the length it is sold by. */
  readonly cloth: { readonly width: number; readonly step: number }
  /** Roles were asked for by name, or by place: they are answered alike. */
  readonly rolesBy: 'name' | 'place'
  /** Absent: as it falls. */
  readonly sharing?: Sharing
}

const length = z.number().int().min(1).max(100_000)
const place = z.number().int().min(-100_000).max(100_000)
const count = z.number().int().min(0).max(10_000)
const called = z.union([z.string().max(200), z.number().int().min(0)])

const panel = z.object({
  W: z.number().int().min(0).max(100_000),
  H: z.number().int().min(0).max(100_000),
  defects: z
    .array(z.object({ x: place, y: place, w: place.min(0), h: place.min(0) }))
    .max(500)
    .default([]),
  mult: count.default(1),
  patterns: z.array(z.array(count)).max(20_000).nullish(),
})

const schema = z.object({
  sizes: z.array(z.object({ w: length, h: length, rot: z.boolean().default(false) })).max(24),
  roles: z
    .array(z.object({ name: z.string().min(1).max(200), garments: z.boolean().default(true) }))
    .max(24),
  demand: z.array(z.object({ size: z.number().int().min(0), role: called, count })).max(2000),
  garments: z
    .array(
      z.object({
        id: called.optional(),
        L: z.number(),
        roles: z.array(called).max(100),
        must: z.boolean().default(false),
        minIfUsed: count.default(1),
        panels: z.array(panel).max(100).default([]),
      }),
    )
    .max(1000),
  shareMax: z.number().min(0).default(1),
  maxRolesPerGarment: count.optional(),
  contrast: z.array(z.object({ light: called, dark: called, delta: z.number() })).default([]),
  cloth: z.object({ width: length, step: length }),
})

type Given = z.infer<typeof schema>

function refuse(field: string, why: string): never {
  throw new Failure('bad_input', { field, why })
}

function parse(given: unknown): Given {
  const parsed = schema.safeParse(given)
  if (parsed.success) return parsed.data
  const { path, message } = parsed.error.issues[0]!
  return refuse(path.join('.') || 'file', message)
}

/** Panels of the cutting programme are shorter than this. */
const panelBelow = 4096

function checkPanels(given: Given): void {
  for (const [g, { panels }] of given.garments.entries()) {
    for (const [p, { W, H, patterns }] of panels.entries()) {
      const field = `garments.${g}.panels.${p}`
      if (patterns?.some((counts) => counts.length !== given.sizes.length)) {
        refuse(`${field}.patterns`, 'a pattern has one count for each size')
      }
      if (!patterns && Math.max(W, H) >= panelBelow) {
        refuse(field, `a side is shorter than ${panelBelow} quarter inches`)
      }
    }
  }
}

function roleFinder(roles: Given['roles']): (role: Called, field: string) => number {
  const places = new Map(roles.map(({ name }, r) => [name, r]))
  if (places.size < roles.length) refuse('roles', 'two roles have one name')
  return (role, field) => {
    const found = typeof role === 'string' ? places.get(role) : roles[role] && role
    return found ?? refuse(field, `there is no role ${role}`)
  }
}

function demandOf(given: Given, roleAt: (role: Called, field: string) => number): number[][] {
  const demand = given.sizes.map(() => given.roles.map(() => 0))
  for (const [n, { size, role, count }] of given.demand.entries()) {
    const row = demand[size] ?? refuse(`demand.${n}.size`, `there is no size ${size}`)
    row[roleAt(role, `demand.${n}.role`)]! += count
  }
  return demand
}

function idsOf(garments: Given['garments']): Called[] {
  const ids = garments.map(({ id }, g) => id ?? g)
  if (new Set(ids).size < ids.length) refuse('garments', 'two garments have one id')
  return ids
}

/** Reads what `plan` is given; keys it does not know are ignored. Throws `bad_input`. */
export function readPile(json: unknown): Pile {
  const given = parse(json)
  checkPanels(given)
  const roleAt = roleFinder(given.roles)
  const ids = idsOf(given.garments)
  return {
    sizes: given.sizes,
    roles: given.roles,
    demand: demandOf(given, roleAt),
    garments: given.garments.map((garment, g) => ({
      ...garment,
      id: ids[g]!,
      roles: [...new Set(garment.roles.map((role) => roleAt(role, `garments.${g}.roles`)))],
      panels: garment.panels.map((one) => ({ ...one, patterns: one.patterns ?? undefined })),
    })),
    shareMax: given.shareMax,
    maxRoles: given.maxRolesPerGarment ?? given.roles.length,
    contrast: given.contrast.map(({ light, dark, delta }, n) => ({
      light: roleAt(light, `contrast.${n}.light`),
      dark: roleAt(dark, `contrast.${n}.dark`),
      delta,
    })),
    cloth: given.cloth,
    rolesBy: given.demand.some(({ role }) => typeof role === 'number') ? 'place' : 'name',
  }
}
