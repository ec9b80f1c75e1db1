import { inchesPerYard, quartersPerInch } from '../../base/units.ts'
import type { BoughtCloth, GivenPieces, Settled } from '../settled.ts'
import { type Called, calledOf, type Pile } from './instance.ts'
import type { Plan, RoleCloth, Supplied } from './plan.ts'

const inches = (quarters: number): number => quarters / quartersPerInch

function numberOf(id: Called): number {
  if (typeof id === 'number') return id
  throw new TypeError(`a garment of a pile goes by its number, and this one by "${id}"`)
}

/** What a role is called in its quilt, and which quilt that is. */
function roleOf(pile: Pile, at: number): Pick<GivenPieces, 'role' | 'quilt'> {
  const role = pile.roles[at]!
  return { role: calledOf(role), quilt: role.quilt ?? 0 }
}

function given(pile: Pile, { garment, role, size, count }: Supplied): GivenPieces {
  const { w, h } = pile.sizes[size]!
  return {
    garment: numberOf(pile.garments[garment]!.id),
    ...roleOf(pile, role),
    size: { w: inches(w), h: inches(h) },
    count,
  }
}

function bought(pile: Pile, { buy }: Plan, { role, steps, strips }: RoleCloth): BoughtCloth {
  const length = strips.reduce((sum, { height, times }) => sum + height * times, 0)
  return {
    ...roleOf(pile, role),
    yards: inches(steps * pile.cloth.step) / inchesPerYard,
    pieces: buy.reduce((sum, one) => sum + (one.role === role ? one.count : 0), 0),
    lengthIn: inches(length),
  }
}

/** What a plan of a pile settles for materials and price. Its garments go by their numbers. */
export const settledOf = (pile: Pile, plan: Plan, proven: boolean): Settled => ({
  pieces: plan.supply.filter(({ count }) => count > 0).map((one) => given(pile, one)),
  cloth: plan.cloth.filter(({ steps }) => steps > 0).map((one) => bought(pile, plan, one)),
  proven,
})
