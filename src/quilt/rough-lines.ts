import type { Choices } from './choices.ts'
import type { Line } from './lines.ts'
import { materialLines } from './material-lines.ts'
import { postLines } from './post-lines.ts'
import type { Rates } from './rates.ts'
import type { Supply } from './supply.ts'
import { workLines } from './work-lines.ts'

/** Every line of an estimate over all that may be, before any piece is planned. */
export function roughLines(choices: Choices, rates: Rates, supply: Supply): Line[] {
  const materials = materialLines(choices, rates, supply)
  return [
    ...workLines(choices, rates),
    ...materials.lines,
    ...postLines(choices, materials.grams, rates),
  ]
}
