import { numberFormat } from '../base/formats.ts'
import type { Shortage } from '../quilt/plan/shortage.ts'
import type { Language } from '../words/words.ts'

const perInch = 4
const perYard = 36 * perInch

/** An amount of quarters as cloth is measured: 3/4, 1 1/4, 2; what is no whole quarter, in figures. */
function quarters(amount: number, locale: string): string {
  const fourths = amount * 4
  if (!Number.isInteger(fourths)) {
    return numberFormat(locale, { maximumFractionDigits: 2 }).format(amount)
  }
  const whole = Math.floor(amount)
  const part = ['', '1/4', '1/2', '3/4'][fourths % 4]!
  return [whole > 0 || part === '' ? String(whole) : '', part]
    .filter((word) => word !== '')
    .join(' ')
}

/** Quarter inches of cloth, in yards. */
export const yardWords = (length: number, locale: string): string =>
  quarters(length / perYard, locale)

/** What a plan leaves open, in a reader's words: what is short, and what there is to do, a sentence each. */
export function shortageSentences(shortage: Shortage, { say, locale }: Language): string[] {
  const { wanted, garments, roles, lacking, idle } = shortage
  if (wanted === 0) return [say('shortage.nothing_wanted')]
  const short = roles.filter(({ byGarments }) => byGarments)
  const bought = roles.filter(({ byGarments }) => !byGarments)
  const inches = (length: number) => quarters(length / perInch, locale)
  const amounts = ({ role, pieces, length }: Shortage['roles'][number]) => ({
    role,
    count: pieces,
    yards: yardWords(length, locale),
  })
  const inQuilt = (quilt: number | null, sentence: string): string =>
    quilt === null ? sentence : say('shortage.in_quilt', { number: quilt + 1, sentence })
  const sentences = [
    ...(garments === 0 ? [say('shortage.no_garments')] : []),
    ...short.map((one) => inQuilt(one.quilt, say('shortage.short', amounts(one)))),
    ...bought.map((one) => inQuilt(one.quilt, say('shortage.bought', amounts(one)))),
    ...lacking.map(({ role, quilt, pieces, w, h }) =>
      inQuilt(quilt, say('shortage.lacking', { role, count: pieces, w: inches(w), h: inches(h) })),
    ),
    ...idle.map(({ garment, why, least, missed }) =>
      say(`shortage.idle.${why}`, { garment: String(garment), least, missed }),
    ),
  ]
  if (short.length === 0 && lacking.length === 0 && garments > 0) {
    sentences.unshift(say('shortage.none'))
  }
  return sentences
}

/** The same, one after the other. */
export const shortageWords = (shortage: Shortage, language: Language): string =>
  shortageSentences(shortage, language).join(' ')
