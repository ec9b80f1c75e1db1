import { z } from 'zod'
import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { type Role, roles } from '../quilt/layout.ts'
import type { Store } from '../store/open.ts'
import { changeMarks, type MarkChange, type PlanMark, standingMarks } from './plan-marks.ts'

/** Roles that staff let a garment play alone. */
export interface GivenRoles {
  readonly roles: readonly Role[]
  readonly by: string
  readonly at: number
}

const body = z.object({ roles: z.array(z.enum(roles)).min(1) })

const rolesIn = (mark: PlanMark): Role[] => body.parse(mark.body).roles

/** What staff said of the roles of a pile's garments, by the garment's number; the rest may play any. */
export const givenRoles = (marks: readonly PlanMark[]): ReadonlyMap<number, GivenRoles> =>
  new Map(
    standingMarks(marks, 'role').map((mark) => [
      mark.garment!,
      { roles: rolesIn(mark), by: mark.who.name, at: mark.at },
    ]),
  )

/** In the order of all roles, each once. */
const inOrder = (given: readonly Role[]): Role[] => roles.filter((role) => given.includes(role))

export interface GivingRoles {
  /** Empty: any. */
  readonly roles: readonly Role[]
  /** The account's id. */
  readonly who: string
  /** When the roles that the page showed of the garment were given; 0: it showed none. */
  readonly seen: number
}

/**
 * Lets a garment play these roles alone. The same once more changes nothing. Throws `not_found`, or
 * `decided_meanwhile` where somebody gave it others after the page was made.
 */
export const giveRoles = (
  at: { readonly store: Store; readonly clock: Clock },
  pileId: string,
  garment: number,
  { roles: wanted, who, seen }: GivingRoles,
): Promise<void> =>
  changeMarks(at, pileId, who, async (marks, db) => {
    const known = await db
      .selectFrom('garment')
      .select('item')
      .where('pile_id', '=', pileId)
      .where('item', '=', garment)
      .where('dropped', '=', 0)
      .executeTakeFirst()
    if (!known) throw new Failure('not_found')
    const change = rolesGiven(marks, garment, wanted)
    if (change.undo.length === 0 && change.add.length === 0) return change
    if ((standingRole(marks, garment)?.at ?? 0) !== seen) throw new Failure('decided_meanwhile')
    return change
  })

const standingRole = (marks: readonly PlanMark[], garment: number): PlanMark | undefined =>
  standingMarks(marks, 'role').find((mark) => mark.garment === garment)

/** What becomes of the marks so that a garment plays these roles alone; nothing where it does already. */
export function rolesGiven(
  marks: readonly PlanMark[],
  garment: number,
  wanted: readonly Role[],
): MarkChange {
  const standing = standingRole(marks, garment)
  const given = inOrder(wanted)
  if (isSame(standing, given)) return { undo: [], add: [] }
  return {
    undo: standing ? [standing.id] : [],
    add: given.length > 0 ? [{ kind: 'role', garment, body: { roles: given } }] : [],
  }
}

const isSame = (standing: PlanMark | undefined, given: readonly Role[]): boolean =>
  (standing ? rolesIn(standing) : []).join() === given.join()
