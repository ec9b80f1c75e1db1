import type { Flow } from '../flow/grammar.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import { derivePile, type Garment, type Pile } from '../intake/pile.ts'
import type { Entry } from '../intake/rows.ts'
import { type Tally, tally } from '../quilt/tally.ts'
import type { PileRow } from '../store/schema.ts'
import type { GarmentVerdict } from './decisions.ts'

/** What a pile was derived from, so that it can be derived otherwise. */
export interface Grounds {
  readonly knowledge: Knowledge
  readonly flow: Flow
  readonly row: PileRow
  readonly entries: readonly Entry[]
  readonly pile: Pile
}

/** What the quilt comes to. */
export interface Outcome {
  readonly tally: Tally
  readonly estimate: Pile['estimate']
}

/** The verdict that stands for a garment, by its number. */
export type Verdicts = ReadonlyMap<number, GarmentVerdict>

/** The grade that a verdict of staff makes of a garment. */
export const gradeDecided = { take: 'sound', care: 'care', ask: 'eyes', decline: 'home' } as const

/** A decided garment counts as staff said, whatever its grade was. */
function tallyWith({ pile }: Grounds, verdicts: Verdicts): Tally {
  const counted = pile.garments.flatMap(({ n, dropped, grading, facts, panels }: Garment) => {
    if (dropped || !grading) return []
    const verdict = verdicts.get(n)
    const grade = verdict ? gradeDecided[verdict] : grading.grade
    return [{ grade, facts, panels, layouts: grading.layouts }]
  })
  return tally(counted, pile.wish.layout, pile.wish.size, pile.wish.quilts)
}

/** The estimate had the customer left the declined garments out. */
function estimateWith({ knowledge, flow, row, entries }: Grounds, verdicts: Verdicts) {
  const declined = [...verdicts].filter(([, verdict]) => verdict === 'decline')
  const left = declined.map(
    ([item], i): Entry => ({
      seq: entries.length + i + 1,
      at: row.changed_at,
      who: 'customer',
      act: { act: 'drop', item },
    }),
  )
  return derivePile(knowledge, flow, row, [...entries, ...left]).estimate
}

/** The quilt with these verdicts. */
export const outcomeOf = (grounds: Grounds, verdicts: Verdicts): Outcome => ({
  tally: tallyWith(grounds, verdicts),
  estimate: estimateWith(grounds, verdicts),
})

/** What one more decision would do: the cloth were the garment taken, the price were it left out. */
export interface Prospect {
  readonly taken: Tally
  readonly left: Pile['estimate']
}

export const prospectOf = (grounds: Grounds, verdicts: Verdicts, n: number): Prospect => ({
  taken: tallyWith(grounds, new Map([...verdicts, [n, 'take']])),
  left: estimateWith(grounds, new Map([...verdicts, [n, 'decline']])),
})
