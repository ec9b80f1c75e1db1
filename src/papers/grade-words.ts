import type { Grading } from '../garment/grade.ts'
import type { Language, Say } from '../words/words.ts'
import { nextOf } from './flag-words.ts'

const bySeverity = ['home', 'eyes', 'care', 'note'] as const

/** The flag that decides a grade: the gravest that the customer may see. */
const deciding = (grading: Grading) =>
  grading.flags
    .filter((flag) => flag.for.includes('customer') && flag.severity !== 'note')
    .toSorted((a, b) => bySeverity.indexOf(a.severity) - bySeverity.indexOf(b.severity))[0]

/** The code of the reason that is told as the grade's; null for a sound garment. */
export const decidingCode = (grading: Grading): string | null => deciding(grading)?.code ?? null

/** Why a garment has its grade, in one sentence. */
export function gradeSentence(grading: Grading, say: Say): string {
  const flag = deciding(grading)
  return flag
    ? say(`trade.flags.${flag.code}.message`)
    : say(`trade.grades.${grading.grade}.sentence`)
}

/** What to do now; null where the sentence says it all. */
export function gradeNext(grading: Grading, language: Language): string | null {
  const flag = deciding(grading)
  return flag ? nextOf(flag, grading, language) : null
}
