import type { FactName } from '../../garment/facts.ts'
import type { Language } from '../../words/words.ts'

/** A fact of the garment, or a thing of the pile that a reason rests on, by its name. */
export const factName = (fact: string, { say }: Language): string => say(`desk.facts.${fact}.name`)

export const factValue = (
  { fact, value }: { readonly fact: FactName; readonly value: string },
  { say }: Language,
): string =>
  fact === 'kind' ? say(`intake.kind.options.${value}`) : say(`desk.facts.${fact}.${value}`)
