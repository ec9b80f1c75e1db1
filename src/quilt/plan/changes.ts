import { capacityOf } from './capacity.ts'
import { calledOf, type Pile, type PileGarment } from './instance.ts'

/** Rules of a plan that a shop may let go of. */
export const rules = ['must', 'contrast', 'share'] as const
export type Rule = (typeof rules)[number]

/** The pile without a rule: no garment must be used, light and dark may meet, one garment may give all. */
export function withoutRule(pile: Pile, rule: Rule): Pile {
  switch (rule) {
    case 'must':
      return { ...pile, garments: pile.garments.map((one) => ({ ...one, must: false })) }
    case 'contrast':
      return { ...pile, contrast: [] }
    case 'share':
      return { ...pile, shareMax: Math.max(1, pile.shareMax) }
  }
}

/** Whether the pile is bound by the rule at all. */
export function hasRule(pile: Pile, rule: Rule): boolean {
  if (rule === 'must') return pile.garments.some(({ must }) => must)
  return rule === 'contrast' ? pile.contrast.length > 0 : pile.shareMax < 1
}

/** An ordinary garment of those that may play a role: half of them give it more, half less. */
function ordinaryFor(pile: Pile, role: number): PileGarment | null {
  const able = pile.garments
    .map((garment) => ({ garment, most: capacityOf(pile, garment).forRole[role]! }))
    .filter(({ most }) => most > 0)
    .sort((a, b) => a.most - b.most)
  return able[Math.floor(able.length / 2)]?.garment ?? null
}

/**
 * The pile with one more garment for a role, in whichever quilt, like an ordinary one of those that may play it; null where no
 * garment may. Panels need their patterns.
 */
export function withOneMore(pile: Pile, role: number): Pile | null {
  const like = ordinaryFor(pile, role)
  if (!like) return null
  const ids = new Set(pile.garments.map(({ id }) => id))
  let id = pile.garments.length
  while (ids.has(id)) id += 1
  const called = calledOf(pile.roles[role]!)
  const roles = pile.roles.flatMap((one, r) => (calledOf(one) === called ? [r] : []))
  const more = { ...like, id, must: false, roles }
  return { ...pile, garments: [...pile.garments, more] }
}

/** The pile when one garment stays home. */
export const withoutGarment = (pile: Pile, garment: number): Pile => ({
  ...pile,
  garments: pile.garments.filter((_, g) => g !== garment),
})
