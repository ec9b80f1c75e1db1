import { formatMoney } from '../../base/money.ts'
import type { KeptFactSet } from '../../desk/fact-sets.ts'
import { sourcedFacts } from '../../desk/provenance.ts'
import type { ReviewedGarment } from '../../desk/review.ts'
import type { Standing, Tried } from '../../desk/try-facts.ts'
import { domains, sizes } from '../../garment/facts.ts'
import { settableFacts } from '../../intake/set-facts.ts'
import { priceChangeWords } from '../../papers/price-change-words.ts'
import { tallyWords } from '../../papers/tally-words.ts'
import { priceChange } from '../../quilt/price-change.ts'
import type { Language } from '../../words/words.ts'
import { factName, factValue } from './fact-words.ts'
import { deskPaths } from './paths.ts'
import { flagSentence } from './present-flags.ts'
import type { FactField, FactSetLine, FactsEffect, FactsPage } from './view-facts.ts'
import { momentWords } from './when.ts'

/** Facts that one chooses from a list; a label's words and colours are another matter. */
export const chosenFacts = settableFacts.filter((fact) => fact !== 'label' && fact !== 'colours')

type ChosenFact = (typeof chosenFacts)[number]

const isSize = (fact: string): fact is 'size' => fact === 'size'

function nameOf(fact: ChosenFact, language: Language): string {
  return isSize(fact) ? language.say('intake.size.short') : factName(fact, language)
}

function valueWords(fact: ChosenFact, value: string, language: Language): string {
  if (!isSize(fact)) return factValue({ fact, value }, language)
  const key = `intake.size.options.${value}`
  return language.has(key) ? language.say(key) : language.say('desk.set.size_unknown')
}

/** What stands for each fact that may be chosen. */
export function standingValues({ garment }: ReviewedGarment): ReadonlyMap<ChosenFact, string> {
  return new Map(
    chosenFacts.map((fact) => [fact, isSize(fact) ? garment.told.size : garment.facts[fact]]),
  )
}

function fieldsOf(
  reviewed: ReviewedGarment,
  wanted: Readonly<Record<string, string>>,
  language: Language,
): FactField[] {
  const now = standingValues(reviewed)
  const from = new Map(sourcedFacts(reviewed.garment).map((one) => [String(one.fact), one.from]))
  return chosenFacts.map((fact) => {
    const stands = now.get(fact)!
    const value = wanted[fact] ?? stands
    const words = valueWords(fact, stands, language)
    const source = from.get(fact)
    return {
      name: fact,
      label: nameOf(fact, language),
      now: source ? `${words} (${language.say(`desk.from.${source}`)})` : words,
      value,
      options: (isSize(fact) ? sizes : domains[fact]).map((one) => ({
        value: one,
        label: valueWords(fact, one, language),
      })),
      changed: value !== stands,
    }
  })
}

function setLine(set: KeptFactSet, language: Language): FactSetLine {
  const { say, locale } = language
  const { id, fact, value, reason, who, at, undone } = set
  const words =
    fact === 'label' || fact === 'colours'
      ? say('desk.set.line', { fact: say(`desk.set.${fact}`), value })
      : say('desk.set.line', {
          fact: nameOf(fact, language),
          value: valueWords(fact, value, language),
        })
  return {
    id,
    words,
    by: say('desk.by', { name: who.name, at: momentWords(at, locale) }),
    reason,
    undone:
      undone && say('desk.set.undone', { name: undone.by, at: momentWords(undone.at, locale) }),
  }
}

const codesOf = ({ garment }: Standing) =>
  (garment.grading?.flags ?? []).filter(({ severity }) => severity !== 'note')

function effectOf({ before, after }: Tried, language: Language): FactsEffect {
  const { say, locale } = language
  const was = codesOf(before).map(({ code }) => code)
  const is = codesOf(after).map(({ code }) => code)
  const press = (one: Standing) => one.garment.grading?.press.method
  const words = (one: Standing) => tallyWords(one.tally, one.wish, say)
  const sentences = [
    ...is
      .filter((code) => !was.includes(code))
      .map((code) => say('desk.set.comes', { flag: flagSentence(code, language) })),
    ...was
      .filter((code) => !is.includes(code))
      .map((code) => say('desk.set.goes', { flag: flagSentence(code, language) })),
    ...(press(before) !== press(after) && press(after)
      ? [say('desk.set.press', { press: say(`trade.press.${press(after)}`) })]
      : []),
    ...(words(before) === words(after) ? [] : [words(after)]),
    ...(before.estimate && after.estimate
      ? [
          priceChangeWords(
            priceChange(before.estimate, after.estimate),
            say('desk.set.so'),
            language,
          ),
          say('desk.set.likely', {
            likely: formatMoney(
              { minor: after.estimate.total.likely, currency: after.estimate.currency },
              locale,
            ),
          }),
        ]
      : []),
  ]
  return {
    before: before.garment.grading?.grade ?? null,
    after: after.garment.grading?.grade ?? null,
    sentences,
  }
}

export interface FactsShown {
  readonly number: number
  readonly reviewed: ReviewedGarment
  readonly sets: readonly KeptFactSet[]
  /** When the newest that the page shows was set or undone; 0: none. */
  readonly seen: number
  /** What was chosen and typed. */
  readonly wanted: Readonly<Record<string, string>>
  readonly reason: string
  readonly csrf: string
  readonly error: string | null
  readonly tried: Tried | null
}

export function factsPage(shown: FactsShown, name: string, language: Language): FactsPage {
  const { number, reviewed, sets, seen, wanted, reason, csrf, error, tried } = shown
  const { n } = reviewed.garment
  return {
    page: 'facts',
    title: language.say('desk.set.title', { name }),
    back: { label: language.say('desk.pile', { number }), href: deskPaths.garment(number, n) },
    postTo: deskPaths.facts(number, n),
    csrf,
    seen,
    reason,
    fields: fieldsOf(reviewed, wanted, language),
    sets: sets.map((one) => setLine(one, language)).reverse(),
    undoAt: deskPaths.undoFact(number, n),
    error,
    effect: tried && effectOf(tried, language),
  }
}
