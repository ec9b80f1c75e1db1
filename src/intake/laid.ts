import { labOf } from '../base/colour.ts'
import { Failure } from '../base/failures.ts'
import { quartersPerInch } from '../base/units.ts'
import type { Planned } from '../planning/plan-pile.ts'
import type { Plans } from '../planning/plans.ts'
import type { Design } from '../quilt/design.ts'
import { type Role, roles } from '../quilt/layout.ts'
import type { Lab } from '../quilt/place/colours.ts'
import { gridOf, type QuiltGrid } from '../quilt/place/grid.ts'
import type { LayJob, PiecesGiven } from '../quilt/place/lay-quilt.ts'
import { calledOf } from '../quilt/plan/instance.ts'
import type { ClothOfGarment } from './cloth-colours.ts'
import type { AsPlanned } from './planned.ts'

/** A quilt of a pile with what lies where. */
export interface LaidDesign {
  readonly design: Design
  readonly grid: QuiltGrid
  /** The garment's number for each piece of the grid; null: bought cloth. */
  readonly cells: readonly (number | null)[]
  /** What it was laid from. */
  readonly job: LayJob
}

/**
 * What a person has put at a place. The place is the upper left corner of a piece's first part, finished
 * inches: it outlives a change of the quilt that moves the piece to another place in its grid's order.
 */
export interface FixedPiece {
  /** From 0. */
  readonly quilt: number
  readonly x: number
  readonly y: number
  /** The garment's number; null: bought cloth. */
  readonly garment: number | null
}

/** The piece at a place, in the grid's order; −1: there is none. */
export const pieceAt = (
  { pieces }: Pick<QuiltGrid, 'pieces'>,
  { x, y }: Pick<FixedPiece, 'x' | 'y'>,
): number => pieces.findIndex(({ parts: [first] }) => first!.x === x && first!.y === y)

/** Whether it lies where a person has put it: it does not where the quilt or the plan has become another. */
export const liesThere = ({ grid, cells }: LaidDesign, fixed: FixedPiece): boolean =>
  cells[pieceAt(grid, fixed)] === fixed.garment

/** Laid; still being planned or laid; there is nothing to lay; not to be had now. */
export type LaidState = 'laid' | 'laying' | 'none' | 'failed'

/** The quilts of a pile, as far as they are known. */
export interface AsLaid {
  readonly state: LaidState
  /** All of the pile's quilts, or none. */
  readonly quilts: readonly LaidDesign[]
}

export interface LayingOf {
  readonly cloths: readonly ClothOfGarment[]
  /** Of bought cloth, `#rrggbb`. */
  readonly bought: Readonly<Record<Role, string>>
  /** Where two want one piece, the first has it. */
  readonly fixed: readonly FixedPiece[]
  /** So long each quilt is waited for, ms; left out: about a second. */
  readonly patienceMs?: number
}

const tuple = (colour: string, value: number | null): Lab => {
  const { l, a, b } = labOf(colour)
  return [value ?? l, a, b]
}

/** What garments give to one of the quilts, as the plan has it. */
function givenTo({ pile, plan }: Planned, quilt: number): PiecesGiven[] {
  return plan.supply.flatMap(({ garment, role, size, count }) => {
    const of = pile.roles[role]!
    if (count === 0 || (of.quilt ?? 0) !== quilt) return []
    const { w, h } = pile.sizes[size]!
    return {
      garment: Number(pile.garments[garment]!.id),
      role: calledOf(of),
      size: { w: w / quartersPerInch, h: h / quartersPerInch },
      count,
    }
  })
}

function jobOf(planned: Planned, quilt: number, grid: QuiltGrid, of: LayingOf): LayJob {
  return {
    pieces: grid.pieces,
    given: givenTo(planned, quilt),
    colours: of.cloths.map(({ garment, colour, value }) => ({
      garment,
      colour: colour === null ? null : tuple(colour, value),
    })),
    cloth: Object.fromEntries(roles.map((role) => [role, tuple(of.bought[role], null)])),
    seed: 0,
    pins: of.fixed
      .filter((one) => one.quilt === quilt)
      .map((one) => ({ cell: pieceAt(grid, one), garment: one.garment })),
  }
}

const nothing = (state: LaidState): AsLaid => ({ state, quilts: [] })

/**
 * The quilts of a planned pile with every piece in its place. What takes longer than is waited for, or finds
 * the planning too busy, is a state, and no fault.
 */
export async function asLaid(
  { asked, state, best }: AsPlanned,
  plans: Pick<Plans, 'laid'>,
  of: LayingOf,
): Promise<AsLaid> {
  if (state === 'empty') return nothing('none')
  if (!best) return nothing(state === 'failed' ? 'failed' : 'laying')
  const grids = asked.designs.map((design) => ({ design, grid: gridOf(design) }))
  const quilts: LaidDesign[] = []
  for (const [quilt, { design, grid }] of grids.entries()) {
    const job = jobOf(best, quilt, grid, of)
    const { laid, working } = await layIn(plans, job, of.patienceMs)
    if (!laid) return nothing(working ? 'laying' : 'failed')
    quilts.push({ design, grid, cells: laid.cells, job })
  }
  return { state: 'laid', quilts }
}

async function layIn(plans: Pick<Plans, 'laid'>, job: LayJob, patienceMs: number | undefined) {
  try {
    return await plans.laid(job, patienceMs)
  } catch (error) {
    if (error instanceof Failure && error.code === 'busy') return { laid: null, working: false }
    throw error
  }
}
