import type { Better } from '../garment/better.ts'
import type { Facts, Recipient } from '../garment/facts.ts'
import type { Grade, Grading } from '../garment/grade.ts'
import type { Language, Say } from '../words/words.ts'
import { gainSentence } from './better-words.ts'
import { flagWords } from './flag-words.ts'
import { gradeNext, gradeSentence } from './grade-words.ts'
import { weightWords } from './weight-words.ts'

/** A garment as the papers need it; `name` is what it is called in the reader's language. */
export interface ListedGarment {
  readonly n: number
  readonly code: string
  readonly name: string
  readonly facts: Facts
  readonly grading: Grading
  /** What the customer could still do for it; null: nothing was looked for. */
  readonly better: Better | null
}

export interface Listed {
  readonly n: number
  readonly code: string
  readonly name: string
  readonly kind: string
  readonly grade: Grade
  /** What to do before it goes into the box, in order. */
  readonly steps: readonly string[]
}

export interface KeptHome {
  readonly n: number
  readonly name: string
  readonly reason: string
  readonly next: string | null
}

/** The packing checklist, in the customer's words. */
export interface Checklist {
  readonly packed: readonly Listed[]
  /** A person looks before these are posted. */
  readonly waiting: readonly Listed[]
  readonly keptHome: readonly KeptHome[]
  /** How to pack the box, in order. */
  readonly packing: readonly string[]
  readonly cautions: readonly string[]
  /** What happens next, in order. */
  readonly ahead: readonly string[]
}

/** What to post the garments in. Inches and grams; the weight is of all boxes together. */
export interface Box {
  readonly weightG: number
  readonly count: number
  readonly w: number
  readonly h: number
  readonly d: number
}

/** At the box a better grade or layout is past; what helps at the iron is still worth a note. */
const atTheIron = ['press', 'backing', 'heat'] as const

/** What telling more about one reason could bring. */
function couldBring(code: string, better: Better | null, language: Language): string | null {
  const step = better?.steps.find(({ act }) => act.answers.includes(code))
  return step ? gainSentence(step, atTheIron, better!.now, { wished: null }, language) : null
}

/**
 * What to do before a garment goes into the box: the packing step of each reason that has one, with
 * what it could bring.
 */
function packingOf({ grading, better }: ListedGarment, language: Language): string[] {
  const { say, has } = language
  const steps = grading.flags
    .filter(({ for: readers, code }) => readers.includes('customer') && has(packKey(code)))
    .map(({ code }) => [say(packKey(code)), couldBring(code, better, language)])
  return [...new Set(steps.map((step) => step.filter(Boolean).join(' ')))]
}

const packKey = (code: string): string => `trade.flags.${code}.pack`

/** What to do while a person has not looked yet: the next step of each grave reason. */
const waitingOf = (grading: Grading, language: Language): string[] =>
  flagWords(grading, 'customer', language).flatMap(({ severity, next }) =>
    severity === 'stop' && next ? [next] : [],
  )

const listed = (garment: ListedGarment, steps: readonly string[]): Listed => ({
  n: garment.n,
  code: garment.code,
  name: garment.name,
  kind: garment.facts.kind,
  grade: garment.grading.grade,
  steps,
})

const keptHome = ({ n, name, grading }: ListedGarment, language: Language): KeptHome => ({
  n,
  name,
  reason: gradeSentence(grading, language.say),
  next: gradeNext(grading, language),
})

const packingSteps = ['pockets', 'tags', 'photograph', 'dry', 'bag', 'list', 'box', 'post'] as const

/** What must be said wherever a quilt for a small child is spoken of. */
export const childCautions = (recipient: Recipient, say: Say): string[] => [
  ...(recipient === 'under1' ? [say('cautions.safe-sleep')] : []),
  ...(recipient === 'under1' || recipient === 'under3' ? [say('cautions.small-parts')] : []),
]

function cautionsOf(recipient: Recipient, garments: readonly ListedGarment[], say: Say): string[] {
  const soiled = garments.some(({ facts }) =>
    ['body-fluid', 'pests', 'mould', 'chemical'].includes(facts.soil),
  )
  return [
    ...childCautions(recipient, say),
    ...(soiled ? [say('cautions.soiled')] : []),
    say('cautions.label-first'),
  ]
}

/** What to pack, what waits, what stays, and how: from the graded garments of a pile. */
export function checklist(
  pile: {
    readonly recipient: Recipient
    readonly garments: readonly ListedGarment[]
    readonly box: Box | null
    readonly leftovers: string
  },
  language: Language,
): Checklist {
  const { say, locale } = language
  const graded = (...wanted: Grade[]) =>
    pile.garments.filter(({ grading }) => wanted.includes(grading.grade))
  const waiting = graded('eyes')
  const gaps = pile.box
    ? {
        ...weightWords(pile.box.weightG, locale),
        count: pile.box.count,
        w: pile.box.w,
        h: pile.box.h,
        d: pile.box.d,
      }
    : null
  return {
    packed: graded('sound', 'care').map((garment) => listed(garment, packingOf(garment, language))),
    waiting: waiting.map((garment) => listed(garment, waitingOf(garment.grading, language))),
    keptHome: graded('home').map((garment) => keptHome(garment, language)),
    packing: packingSteps
      .filter((step) => step !== 'box' || gaps)
      .map((step) => say(`packing.${step}`, gaps ?? {})),
    cautions: cautionsOf(pile.recipient, pile.garments, say),
    ahead: [
      say('ahead.person', { count: waiting.length }),
      say('ahead.answer'),
      say('ahead.post'),
      say('ahead.nothing_cut'),
      say(`ahead.leftovers.${pile.leftovers}`),
    ],
  }
}
