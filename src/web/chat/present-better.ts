import type { Garment, Wish } from '../../intake/pile.ts'
import { betterWords } from '../../papers/better-words.ts'
import { paths } from './paths.ts'
import type { Reader } from './present-garment.ts'
import type { BetterStep, Link } from './view.ts'

export interface ShownBetter {
  readonly better: readonly BetterStep[]
  readonly together: string | null
  /** Codes of the reasons whose own next step these say already. */
  readonly answers: ReadonlySet<string>
}

const nothing: ShownBetter = { better: [], together: null, answers: new Set() }

/** The layout that the customer chose, by its id. */
export const wishedOf = ({ layout, layoutChosen }: Wish) => ({
  wished: layoutChosen ? layout.id : null,
})

/** The question that an act answers, asked again: of the garment, or of the whole pile. */
function linkOf(question: string | null, garment: Garment, reader: Reader): Link | null {
  if (question === null) return null
  const ofGarment = garment.path.some((step) => step.question.id === question)
  return {
    label: reader.language.say(`intake.${question}.short`),
    href: paths.question(reader.key, ofGarment ? garment.n : 0, question),
  }
}

/** What the customer can still do for a garment; nothing where answers may no longer be changed. */
export function shownBetter(garment: Garment, wish: Wish, reader: Reader): ShownBetter {
  if (!garment.better || garment.dropped || !reader.editable) return nothing
  const { lines, together } = betterWords(garment.better.customer, wishedOf(wish), reader.language)
  return {
    better: lines.map(({ act, text }) => ({
      act: act.act,
      text,
      link: linkOf(act.question, garment, reader),
    })),
    together,
    answers: new Set(lines.flatMap(({ act }) => act.answers)),
  }
}
