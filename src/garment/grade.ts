import type { Facts, Recipient } from './facts.ts'
import type { Decision, Knowledge } from './knowledge.ts'
import { type LayoutFit, layoutFits, wishOf } from './layout-fit.ts'
import { type PressPlan, pressPlan } from './press.ts'

/** Best first: good to send; send it, we prepare it; a person looks first; best kept at home. */
export const grades = ['sound', 'care', 'eyes', 'home'] as const
export type Grade = (typeof grades)[number]

export const severities = ['note', 'care', 'eyes', 'home'] as const
export type Severity = (typeof severities)[number]

export type Reader = 'customer' | 'staff' | 'maker'

/** One reason. `because` names the facts it rests on; `message` is filled from the words. */
export interface Flag {
  readonly code: string
  readonly severity: Severity
  readonly for: readonly Reader[]
  readonly because: readonly string[]
  readonly message?: string
}

export interface Grading {
  readonly grade: Grade
  readonly flags: readonly Flag[]
  readonly press: PressPlan
  readonly layouts: readonly LayoutFit[]
}

export interface PileFacts {
  readonly recipient: Recipient
  /** A layout's id or a setting's name; absent while undecided. */
  readonly layout?: string | undefined
}

const gravity = (severity: Severity): number => severities.indexOf(severity)

const flagOf = ({ id, give }: Decision): Flag => ({
  code: id,
  severity: give.severity as Severity,
  for: give.for as readonly Reader[],
  because: give.because as readonly string[],
})

/** The gravest of the reasons; `sound` where none of them is graver than a note. */
export const gradeOf = (reasons: readonly Severity[]): Grade =>
  grades[Math.max(0, ...reasons.map(gravity))]!

/** The grade is the gravest of the reasons, so no grade but `sound` is ever without one. */
export function grade(facts: Facts, pile: PileFacts, knowledge: Knowledge): Grading {
  const layouts = layoutFits(facts, knowledge)
  const wish = wishOf(layouts, pile.layout)
  const flags = knowledge
    .decide('flags', { ...facts, recipient: pile.recipient, wish })
    .map(flagOf)
    .toSorted((a, b) => gravity(b.severity) - gravity(a.severity))
  return {
    grade: gradeOf(flags.map(({ severity }) => severity)),
    flags,
    press: pressPlan(facts, pile.recipient, knowledge),
    layouts,
  }
}

/** The same grading with each flag's sentence said in the reader's language. */
export const worded = (grading: Grading, say: (key: string) => string): Grading => ({
  ...grading,
  flags: grading.flags.map((flag) => ({ ...flag, message: say(`flags.${flag.code}.message`) })),
})
