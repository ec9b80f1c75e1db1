import type { Better, Step } from '../garment/better.ts'
import type { Act } from '../garment/better-acts.ts'
import { type Gain, gainsOf, type Outcome } from '../garment/better-outcome.ts'
import type { Possible } from '../garment/better-trials.ts'
import type { Language } from '../words/words.ts'

/** An act that may help, as the customer reads it. */
export interface BetterLine {
  readonly act: Act
  /** What to do, and what it could bring. */
  readonly text: string
}

export interface BetterWords {
  readonly lines: readonly BetterLine[]
  /** What they could bring only together; null: no more than each alone. */
  readonly together: string | null
}

/** A customer is told no more than so many things to do. */
const mostLines = 3

const listed = (parts: readonly string[], { locale }: Language): string =>
  new Intl.ListFormat(locale, { type: 'conjunction' }).format(parts)

const layoutNames = (ids: readonly string[], language: Language): string =>
  listed(
    ids.map((id) => language.say(`trade.layouts.${id}.name`)),
    language,
  )

function backingGain(now: Outcome, { backing }: Outcome): string {
  if (backing === 'none') return 'no-backing'
  return now.backing === 'fused' ? 'firmer' : 'fused'
}

function gainWords(
  gain: Gain,
  now: Outcome,
  { layout, outcome }: Possible,
  wished: string | null,
  language: Language,
): string {
  const say = (name: string, gaps = {}) => language.say(`trade.better.gain.${name}`, gaps)
  switch (gain) {
    case 'grade':
      return say(outcome.grade)
    case 'layout':
      return say('layout', {
        layout: layoutNames([layout ?? wished ?? ''].filter(Boolean), language),
      })
    case 'backing':
      return say(backingGain(now, outcome))
    case 'layouts': {
      const more = outcome.layouts.filter((id) => !now.layouts.includes(id))
      return say('layouts', { layouts: layoutNames(more, language) })
    }
    default:
      return say(gain)
  }
}

/** `wished`: the id of the layout that the customer chose. */
export interface Wished {
  readonly wished: string | null
}

function couldBring(
  step: Step,
  gains: readonly Gain[],
  now: Outcome,
  { wished }: Wished,
  language: Language,
): Record<'hopes' | 'gain', string> {
  const hopes = Object.entries(step.hangsOn).map(([fact, value]) =>
    language.say(`trade.better.if.${fact}.${value}`),
  )
  const told = gains.map((gain) => gainWords(gain, now, step.best, wished, language))
  return { hopes: listed(hopes, language), gain: listed(told, language) }
}

/** What an act could bring in one sentence; null where none of `wanted` is among its gains. */
export function gainSentence(
  step: Step,
  wanted: readonly Gain[],
  now: Outcome,
  wish: Wished,
  language: Language,
): string | null {
  const gains = step.gains.filter((gain) => wanted.includes(gain))
  if (gains.length === 0) return null
  const gaps = couldBring(step, gains, now, wish, language)
  return language.say(gaps.hopes === '' ? 'better.then' : 'better.if', gaps)
}

export const actSentence = ({ act }: Act, { say }: Language): string =>
  say(`trade.better.acts.${act}`)

/** So many gains are told of one act; the rest are lighter. */
const mostGains = 2

/** Pressing goes without saying where the grade is better, and more layouts where anything is. */
function tellable({ gains }: Step): readonly Gain[] {
  const [first, ...rest] = gains
  const worth = rest.filter((gain) => gain !== 'layouts' && (gain !== 'press' || first !== 'grade'))
  return [first!, ...worth].slice(0, mostGains)
}

function lineOf(act: Act, better: Better, wish: Wished, language: Language): BetterLine {
  const step = better.steps.find((one) => one.act === act)
  const gain = step && gainSentence(step, tellable(step), better.now, wish, language)
  return { act, text: [actSentence(act, language), gain].filter(Boolean).join(' ') }
}

/** What acts could bring only together: a better grade, or a layout that suits. `begin`: not all are told. */
export function togetherSentence(
  how: 'together' | 'begin',
  best: Possible,
  now: Outcome,
  { wished }: Wished,
  language: Language,
): string {
  const gains = gainsOf(now, best.outcome).filter((gain) => gain === 'grade' || gain === 'layout')
  const told = gains.map((gain) => gainWords(gain, now, best, wished, language))
  return language.say(`better.${how}`, { gain: listed(told, language) })
}

/** What a customer can do so that the garment does better, the most helpful first. */
export function betterWords(better: Better, wish: Wished, language: Language): BetterWords {
  const { steps, together, now } = better
  const acts = [...new Set([...(together?.acts ?? []), ...steps.map(({ act }) => act)])]
  const all = together !== null && together.acts.length <= mostLines
  return {
    lines: acts.slice(0, mostLines).map((act) => lineOf(act, better, wish, language)),
    together:
      together && togetherSentence(all ? 'together' : 'begin', together.best, now, wish, language),
  }
}
