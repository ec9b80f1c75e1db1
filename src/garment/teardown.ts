import type { Facts, Recipient } from './facts.ts'
import { type KeptThing, type KnownStep, steps, stops, type Tool } from './teardown-steps.ts'
import { type BenchPlan, either, has, type When } from './teardown-when.ts'

/** One step of taking a garment apart. Its sentence stands under `teardown.steps.<code>`. */
export interface TeardownStep {
  readonly code: string
  readonly tools: readonly Tool[]
  /** Codes of the words under `cautions`. */
  readonly cautions: readonly string[]
  /** What is kept and bagged under the garment's tag. */
  readonly keeps: readonly KeptThing[]
  /** The published source, or "common practice, no source". */
  readonly source: string
}

/** What each tool asks one to mind, on a garment of which this is so. From memory, unverified. */
const minded: readonly (readonly [caution: string, tools: readonly Tool[], when: When])[] = [
  ['sharp-blade', ['shears', 'rotary-cutter'], () => true],
  ['sharp-point', ['seam-ripper'], () => true],
  ['guard-your-eyes', ['nippers'], () => true],
  [
    'keep-the-marked-part',
    ['shears', 'rotary-cutter', 'iron', 'damp-white-cloth'],
    has('consent', 'part'),
  ],
  ['no-pull-test', ['seam-ripper', 'shears'], has('age', 'old', 'unknown')],
  ['thick-seams', ['shears'], has('weight', 'heavy', 'padded')],
  [
    'never-turn',
    ['rotary-cutter'],
    either(has('surface', 'pile'), has('oneWay', 'yes', 'unknown')),
  ],
  ['no-stitch-through', ['thread'], has('printMake', 'film', 'unknown')],
  ['hot-iron', ['iron'], () => true],
  ['dial-is-no-thermometer', ['iron'], () => true],
  [
    'no-steam',
    ['iron'],
    either(has('heat', 'cool'), has('iron', 'cool'), has('wash', 'never'), has('kind', 'tie')),
  ],
  [
    'never-iron-on-face',
    ['iron'],
    either(
      has('printMake', 'screen', 'film', 'unknown'),
      has('trims', 'meltable', 'glued', 'unknown'),
    ),
  ],
  ['from-the-back', ['iron'], has('printMake', 'screen', 'sublimated', 'film', 'unknown')],
  ['air-the-room', ['iron'], has('printMake', 'film', 'unknown')],
  ['may-be-acetate', ['iron'], has('kind', 'tie')],
  ['do-not-crush', ['backing', 'iron'], has('surface', 'pile')],
  [
    'hold-both-ways',
    ['backing'],
    either(has('kind', 'tie'), has('stretch', 'two-way', 'bias', 'unknown')),
  ],
  ['low-stretch-along-stretch', ['backing'], has('stretch', 'little', 'much')],
]

export const teardownCautions: readonly string[] = [
  ...new Set([
    ...minded.map(([caution]) => caution),
    ...[...stops, ...steps].flatMap(({ cautions }) => cautions),
  ]),
]

/**
 * How a garment is taken apart, in order, and held and tested as its press plan says. Where a person must decide first there are only the stops,
 * and nothing is opened, cut, warmed or wetted.
 */
export function teardownOf(
  kind: Facts['kind'],
  facts: Facts,
  recipient: Recipient,
  press: BenchPlan,
): TeardownStep[] {
  const garment: Facts = { ...facts, kind }
  const asked = (step: KnownStep): boolean => step.when(garment, recipient, press)

  const mindful = ({ code, tools, cautions, keeps, source }: KnownStep): TeardownStep => {
    const more = minded
      .filter(
        ([, about, when]) =>
          about.some((tool) => tools.includes(tool)) && when(garment, recipient, press),
      )
      .map(([caution]) => caution)
    return { code, tools, cautions: [...new Set([...cautions, ...more])], keeps, source }
  }

  const stopped = stops.filter(asked)
  return (stopped.length > 0 ? stopped : steps.filter(asked)).map(mindful)
}
