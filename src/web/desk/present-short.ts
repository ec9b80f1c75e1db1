import { shortageSentences } from '../../papers/shortage-words.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import { shortageOf } from '../../quilt/plan/shortage.ts'
import type { Language } from '../../words/words.ts'

/** What a plan leaves open, in staff's words, a sentence each. Garments that give nothing are told apart, by their names. */
export function shortWords({ pile, plan }: Planned, language: Language): string[] {
  const inWords = <T extends { readonly role: string }>(short: T): T => ({
    ...short,
    role: language.say(`desk.plan.role.${short.role}`),
  })
  const { roles, lacking, ...rest } = shortageOf(pile, plan)
  return shortageSentences(
    { ...rest, roles: roles.map(inWords), lacking: lacking.map(inWords), idle: [] },
    language,
  )
}
