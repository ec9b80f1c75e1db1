import type { IronLevel } from '../reading.ts'
import { has, type Item } from './items.ts'
import { ownLine, type Phrase, verbLast } from './phrase.ts'
import { hasFor, isFiller, isLevelWord } from './verbs.ts'
import { meaningOf, shareWords } from './vocabulary.ts'

/** What a hot level may be taken as, where not all of its clause was understood. */
export function cautious(phrase: Phrase, unread: boolean): IronLevel | null | 'hot' {
  const own = ownLine(phrase)
  const clause = [...own.before, ...own.after]
  const behind = [...own.after, ...phrase.beyond]
  if (behind[0]?.raw === '?' || clause.some(({ raw }) => raw === '?')) return 'cool'
  if (bansLeft(clause, phrase)) return 'cool'
  const warns = phrase.verbBefore?.role === 'otherVerbs' || saysThatItIs(own.after)
  return unread || warns ? null : 'hot'
}

/** "Bügeln nicht empfohlen": a ban that could not be given to its verb stands, where no level does. */
export const untold = (phrase: Phrase): IronLevel | null => {
  const { before, after } = ownLine(phrase)
  if (bansLeft([...before, ...after], phrase)) return 'none'
  // "At 1 10 °C": a temperature that no label names is misread.
  return !phrase.leadsOn && after.some(({ kind }) => kind === 'degree') ? 'cool' : null
}

const banRoles = ['not', 'notAfter', 'notEither', 'except'] as const

/** A ban in the clause that neither spares the print nor forbids steam, nor belongs to another verb. */
function bansLeft(items: readonly Item[], phrase: Phrase): boolean {
  return items.some((item, at) => {
    if (!banRoles.some((role) => hasFor(item, role, phrase.languages))) return false
    const behind = items.slice(at + 1)
    if (phrase.leadsOn && behind.every(isFiller) && phrase.after.includes(item)) return false
    return !behind.some(isSpared) && !(isVerbLast(phrase) && items.slice(0, at).some(isSpared))
  })
}

const isVerbLast = ({ languages }: Phrase): boolean =>
  languages.some((code) => verbLast.includes(code))

const sparedRoles = ['print', 'steam', 'noSteam', 'reverse', 'face', 'than'] as const

const isSpared = (item: Item): boolean =>
  sparedRoles.some((role) => has(item, role)) || (item.kind === 'number' && item.value >= 100)

const copulas =
  /^(?:be|is|are|was|gets|est|était|sont|está|es|è|é|ist|sind|is|wordt|jest|är|er|este|e|je)$/i

/** "The iron is hot" warns; it gives no leave. */
function saysThatItIs(after: readonly Item[]): boolean {
  const level = after.findIndex(isLevelWord)
  const said = after.slice(0, Math.max(0, level))
  return said.some(({ raw }) => copulas.test(raw)) && !said.some(({ raw }) => /^[,，]$/.test(raw))
}

/** "Wool setting": the irons of two makers differ in what they mean by it. */
export const namesSetting = (items: readonly Item[]): boolean =>
  items.some(
    (item) =>
      isLevelWord(item) &&
      item.term!.words.length > 1 &&
      item.term!.words.some((word) => meaningOf(shareWords().single(word), 'fibre')),
  )
