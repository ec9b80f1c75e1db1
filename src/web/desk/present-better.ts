import type { Better, Chance, Step } from '../../garment/better.ts'
import type { Outcome } from '../../garment/better-outcome.ts'
import type { FactName } from '../../garment/facts.ts'
import { actSentence, togetherSentence, type Wished } from '../../papers/better-words.ts'
import type { Language } from '../../words/words.ts'
import { factName, factValue } from './fact-words.ts'
import type { DeskBetter, DeskChance } from './view.ts'

const outcomeWords = (
  { grade, method, backing, ceilingC }: Outcome,
  { say }: Language,
): Pick<DeskChance, 'grade' | 'press'> => ({
  grade: say(`grades.${grade}`),
  press: [
    say(`trade.press.${method}`),
    ...(ceilingC === null ? [] : [say('desk.press.ceiling', { celsius: ceilingC })]),
    say(`trade.backing.${backing}`),
  ].join(' · '),
})

const factWords = (fact: string, value: string, language: Language): string =>
  language.say('desk.better.fact', { fact: factName(fact, language), value })

function chanceLine({ fact, value, outcome }: Chance, step: Step, language: Language): DeskChance {
  const worded = factValue({ fact, value }, language)
  const stands = step.now[fact] === value
  return {
    turned: factWords(
      fact,
      stands ? language.say('desk.better.as_now', { value: worded }) : worded,
      language,
    ),
    ...outcomeWords(outcome, language),
  }
}

/** A layout is no fact of the garment: only the best of them is told. */
const layoutLine = ({ best: { layout, outcome } }: Step, language: Language): DeskChance[] =>
  layout === null
    ? []
    : [
        {
          turned: factWords('layout', language.say(`trade.layouts.${layout}.name`), language),
          ...outcomeWords(outcome, language),
        },
      ]

const nowWords = (step: Step, language: Language): string[] =>
  Object.entries(step.now).map(([fact, value]) =>
    factWords(fact, factValue({ fact: fact as FactName, value }, language), language),
  )

/** Every act that may help, with what each value would come to. */
export function deskBetter({ steps }: Better, language: Language): DeskBetter[] {
  return steps.map((step) => ({
    act: step.act.act,
    text: actSentence(step.act, language),
    by: language.say(`desk.better.by.${step.act.by}`),
    now: nowWords(step, language),
    chances: [
      ...layoutLine(step, language),
      ...step.chances.map((chance) => chanceLine(chance, step, language)),
    ],
  }))
}

/** What the acts could bring only together; null: no more than each alone. */
export function deskTogether(
  { now, together }: Better,
  wish: Wished,
  language: Language,
): string | null {
  if (!together) return null
  const acts = together.acts.map((act) => actSentence(act, language))
  return [...acts, togetherSentence('together', together.best, now, wish, language)].join(' ')
}
