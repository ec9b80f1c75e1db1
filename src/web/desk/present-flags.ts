import { garmentVerdicts } from '../../desk/decisions.ts'
import { graveFlags, standingFlag } from '../../desk/flag-decisions.ts'
import type { SourcedFact } from '../../desk/provenance.ts'
import type { ReviewedGarment } from '../../desk/review.ts'
import type { Flag, Grade } from '../../garment/grade.ts'
import type { Language } from '../../words/words.ts'
import { factName, factValue } from './fact-words.ts'
import { deskPaths } from './paths.ts'
import type { Desk } from './present-decision.ts'
import { type Asked, flagWhy } from './present-why.ts'
import type { FlagForm, StaffFlag } from './view.ts'
import { momentWords } from './when.ts'

/** Where a garment stands, and who looks. */
interface Place {
  readonly number: number
  readonly desk: Desk
  /** Of the whole pile. */
  readonly isDecided: boolean
}

const severities = { note: 'note', care: 'care', eyes: 'stop', home: 'stop' } as const

/** A reason may rest on things of the pile; those are not facts of the garment. */
function becauseWords(flag: Flag, facts: readonly SourcedFact[], language: Language): string[] {
  return flag.because.map((name) => {
    const fact = facts.find((one) => one.fact === name)
    if (!fact) return factName(name, language)
    return language.say('desk.because', {
      fact: factName(name, language),
      value: factValue(fact, language),
      from: language.say(`desk.from.${fact.from}`),
    })
  })
}

/** What a reason asks of somebody at the desk, as a sentence. */
export function flagSentence(code: string, { say, has }: Language): string {
  const own = `trade.flags.${code}.staff`
  return say(has(own) ? own : `trade.flags.${code}.message`)
}

/** The form to decide of one reason; null: it holds nothing up, or the pile is decided. */
function decideOf(
  { code }: Flag,
  { garment, flagDecisions }: ReviewedGarment,
  { number, desk, isDecided }: Place,
): FlagForm | null {
  const { say, locale } = desk.language
  const stands = standingFlag(flagDecisions, garment.n, code)
  const grave = graveFlags(garment.grading?.flags ?? []).some((flag) => flag.code === code)
  if (!grave) return null
  return {
    postTo: isDecided ? null : deskPaths.decideFlag(number, garment.n, code),
    csrf: desk.csrf,
    seen: stands?.at ?? 0,
    standing: stands
      ? {
          verdict: stands.verdict,
          words: say(`desk.flag.stands.${stands.verdict}`),
          reason: stands.reason,
          by: say('desk.by', { name: stands.by, at: momentWords(stands.at, locale) }),
        }
      : null,
    buttons: garmentVerdicts.map((value) => ({ value, label: say(`desk.flag.verdicts.${value}`) })),
  }
}

/**
 * Reasons to read first, and those to unfold. The questions of a garment that stays at home end early,
 * so what nobody was asked about it says nothing that matters.
 */
function sorted(
  flags: readonly Flag[],
  grade: Grade | null,
  facts: readonly SourcedFact[],
): [grave: readonly Flag[], minor: readonly Flag[]] {
  const untold = (name: string) => facts.find(({ fact }) => fact === name)?.from === 'untold'
  const isMinor = ({ severity, because }: Flag) =>
    severity === 'note' || (grade === 'home' && severity !== 'home' && because.some(untold))
  return [flags.filter((flag) => !isMinor(flag)), flags.filter(isMinor)]
}

/** Reasons of a garment to read first, and those to unfold. */
export function flagsOf(
  reviewed: ReviewedGarment,
  asked: Asked,
  place: Place,
): { readonly grave: StaffFlag[]; readonly minor: StaffFlag[] } {
  const { grading } = reviewed.garment
  const { facts, language } = asked
  const [grave, minor] = sorted(grading?.flags ?? [], grading?.grade ?? null, facts)
  const worded = (flags: readonly Flag[]) =>
    flags.map(
      (flag): StaffFlag => ({
        severity: severities[flag.severity],
        lead: language.say(`desk.severity.${flag.severity}`),
        message: flagSentence(flag.code, language),
        because: becauseWords(flag, facts, language),
        why: flagWhy(flag.code, asked),
        decide: decideOf(flag, reviewed, place),
      }),
    )
  return { grave: worded(grave), minor: worded(minor) }
}
