import { domains, type FactName, type Facts, pileDomains } from '../../src/garment/facts.ts'
import { type Grading, grade } from '../../src/garment/grade.ts'
import { gradeInput } from '../../src/garment/input.ts'
import { type Conditions, keeps, readStatements } from '../../src/garment/must-hold.ts'
import { knowledge, readYaml } from '../help/knowledge.ts'
import { bearable, secondCeiling, type Worn } from '../help/second-ceiling.ts'
import { random } from '../help/xorshift.ts'

type Garment = Record<FactName, string> & Worn

export interface Compared {
  readonly combinations: number
  /** Gradings that were asked whether they keep a statement whose premise was so. */
  readonly claims: number
  /** Different ceilings that came up, °C. */
  readonly ceilings: readonly number[]
  readonly disagreements: readonly string[]
  readonly broken: readonly string[]
}

const names = (Object.keys(domains) as FactName[]).filter((name) => name !== 'heat')
const fibres = Object.keys(bearable)
const statements = readStatements(readYaml('tables/must-hold.yaml'))
const claims = statements.flatMap((one) =>
  'holds' in one ? one.holds.map((claim) => ({ id: one.id, claim })) : [],
)

const isSo = (conditions: Conditions, facts: Readonly<Record<string, string>>): boolean =>
  Object.entries(conditions).every(([name, values]) => values.includes(facts[name]!))

function makeUp(below: (most: number) => number): Worn['fibres'] {
  const parts = 1 + below(3)
  const first = below(4) === 0 ? 'elastane' : fibres[below(fibres.length)]!
  const others = Array.from({ length: parts - 1 }, () => fibres[below(fibres.length)]!)
  const shares = others.map(() => 1 + below(44))
  // One in eight does not sum to a hundred, as a label that was read in part.
  const rest = 100 - shares.reduce((a, b) => a + b, 0) - (below(8) === 0 ? below(12) : 0)
  const percents = parts === 1 ? [rest] : [shares[0]!, rest, ...shares.slice(1)]
  return [first, ...others].map((fibre, at) => ({ fibre, percent: percents[at]! }))
}

/** Facts at random; most take their first, best value, or nearly all would end at "no iron". */
function garmentFrom(below: (most: number) => number): Garment {
  const told = names.map((name) => {
    const values = domains[name]
    return [name, values[below(2) === 0 ? 0 : below(values.length)]!]
  })
  return { ...Object.fromEntries(told), fibres: makeUp(below) } as Garment
}

const ceilingOf = ({ press }: Grading): number => press.ceilingC ?? 0

/** Grades combinations of facts and holds each against the second ceiling and every statement. */
export function compareCeilings(combinations: number, seed = 20_260_101): Compared {
  const below = random(seed)
  const disagreements: string[] = []
  const broken: string[] = []
  const ceilings = new Set<number>()
  let asked = 0
  for (let at = 0; at < combinations; at += 1) {
    const garment = garmentFrom(below)
    const recipient = pileDomains.recipient[below(pileDomains.recipient.length)]!
    const { facts, pile } = gradeInput({ garment, pile: { recipient } }, knowledge)
    const grading = grade(facts, pile, knowledge)
    const here: Readonly<Record<string, string>> = { ...(facts as Facts), recipient }
    const expected = secondCeiling(garment)
    ceilings.add(ceilingOf(grading))
    const pressed = grading.press.method !== 'do-not-press'
    if (ceilingOf(grading) !== expected || pressed !== expected > 0) {
      disagreements.push(
        `grade ${ceilingOf(grading)}, figures ${expected}: ${JSON.stringify(garment)}`,
      )
    }
    for (const { id, claim } of claims) {
      if (!claim.when.some((conditions) => isSo(conditions, here))) continue
      asked += 1
      if (!keeps(claim, grading, knowledge)) broken.push(`${id}: ${JSON.stringify(here)}`)
    }
  }
  return {
    combinations,
    claims: asked,
    ceilings: [...ceilings].sort((a, b) => a - b),
    disagreements,
    broken,
  }
}
