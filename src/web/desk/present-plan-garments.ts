import type { Review } from '../../desk/review.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import { shortageOf } from '../../quilt/plan/shortage.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { readerAt } from './present-garment.ts'
import { cutsHref, type PlannedGarments, pieceSize, roleName } from './present-plan-cuts.ts'
import { rolesForm } from './present-roles.ts'
import type { PlanGarment } from './view-plan.ts'
import { withoutIt } from './what-if-links.ts'

/** Why garments give nothing, by place; asked as though all of them had to be used. */
function idleOf({ pile, plan }: Planned): ReadonlyMap<number, string> {
  const asked = { ...pile, garments: pile.garments.map((one) => ({ ...one, must: true })) }
  const why = new Map(shortageOf(asked, plan).idle.map((one) => [one.garment, one.why]))
  return new Map(
    pile.garments.flatMap(({ id, must }, g) => {
      const reason = why.get(id)
      if (!reason || (reason === 'not-in-all' && !must)) return []
      return [[g, must && reason === 'no-room' ? 'must' : reason] as const]
    }),
  )
}

/** Who looks at the plan, and may say where garments go. */
export interface PlanReader {
  readonly review: Review
  readonly csrf: string
  readonly language: Language
}

/** What each garment gives; how it is cut once the plan `isSettled`. */
export function garmentRows(
  one: PlannedGarments,
  isSettled: boolean,
  reader: PlanReader,
): PlanGarment[] {
  const { language } = reader
  const { say } = language
  const { pile, plan } = one.planned
  const idle = idleOf(one.planned)
  return one.used.map((garment, g) => {
    const given = plan.supply.filter(({ garment: by, count }) => by === g && count > 0)
    const why = idle.get(g)
    const href = isSettled ? cutsHref(one, g) : null
    const name = nameOf(garment, readerAt(language))
    return {
      n: garment.n,
      code: garment.code,
      name,
      must: pile.garments[g]!.must,
      pieces: given.reduce((sum, { count }) => sum + count, 0),
      gives: given.map(({ role, size, count }) =>
        say('desk.plan.gives', {
          count,
          size: pieceSize(pile.sizes[size]!, say),
          role: roleName(pile, role, say),
        }),
      ),
      idle: why === undefined ? null : say(`desk.plan.idle.${why}`),
      cut: href === null ? null : { label: say('desk.plan.how', { name }), href },
      without: withoutIt(one.number, { n: garment.n, name }, language),
      roles: rolesForm(reader.review, garment, pile, reader),
    }
  })
}
