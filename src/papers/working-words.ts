import type { Working } from '../quilt/lines.ts'
import type { Language } from '../words/words.ts'
import { weightWords } from './weight-words.ts'

/** What is named by a word of its own. */
const named: Readonly<Record<string, (name: string) => string>> = {
  roll: (name) => (name === 'sewn-in' ? 'trade.backing.sewn-in' : `trade.interfacing.${name}`),
  role: (name) => `trade.roles.${name}`,
}

const weighed: ReadonlySet<string> = new Set(['grams', 'came', 'added'])

/** How a line was counted, with what went into it, as a sentence. */
export function workingWords({ code, values }: Working, { say, locale }: Language): string {
  const gaps: Record<string, string | number> = {}
  for (const [key, value] of Object.entries(values)) {
    const word = named[key]
    if (word) {
      gaps[key] = say(word(String(value)))
    } else if (weighed.has(key)) {
      const { kg, lb } = weightWords(Number(value), locale)
      gaps[`${key}Kg`] = kg
      gaps[`${key}Lb`] = lb
    } else {
      gaps[key] = value
    }
  }
  const sentence = say(`trade.estimate.how.${code}`, gaps)
  return sentence.charAt(0).toLocaleUpperCase(locale) + sentence.slice(1)
}
