import { shortageWords } from '../papers/shortage-words.ts'
import { openPlanningLane } from '../planning/lane.ts'
import { bestPlan, type Planned } from '../planning/plan-pile.ts'
import { type Called, readPile } from '../quilt/plan/instance.ts'
import { shortageOf } from '../quilt/plan/shortage.ts'
import { type Language, language, readPageWords } from '../words/words.ts'
import { eachFile, readJson } from './output.ts'

/** A plan as the file spoke: garments by their id, roles as they were asked for. */
function printed({ pile, plan, worth, proven, wrong }: Planned, english: Language) {
  const garment = (g: number): Called => pile.garments[g]!.id
  const role = (r: number): Called => (pile.rolesBy === 'name' ? pile.roles[r]!.name : r)
  const { V, Q, P, M } = worth
  if (wrong) process.stderr.write(`${JSON.stringify({ level: 'warn', planning: wrong })}\n`)
  return {
    V,
    Q,
    P,
    M,
    proven,
    supply: plan.supply.map((one) => ({
      garment: garment(one.garment),
      role: role(one.role),
      size: one.size,
      count: one.count,
    })),
    cuts: plan.cuts.map((one) => ({ ...one, garment: garment(one.garment) })),
    buy: plan.buy.map((one) => ({ ...one, role: role(one.role) })),
    cloth: plan.cloth.map((one) => ({ ...one, role: role(one.role) })),
    shortage: shortageWords(shortageOf(pile, plan), english),
  }
}

/** `plan <file.json…>`: who gives what, how it is cut, and what is bought. */
export async function planVerb(files: readonly string[]): Promise<number> {
  const english = language('en', readPageWords().get('en') ?? new Map())
  const lane = openPlanningLane()
  try {
    return await eachFile(files, async (file) =>
      printed(await bestPlan(readPile(readJson(file)), lane), english),
    )
  } finally {
    await lane.close()
  }
}
