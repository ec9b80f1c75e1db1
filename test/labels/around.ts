import type { Chance } from '../help/chance.ts'
import { countries, countriesInJapanese, type DrawnLanguage, phrases } from './phrases.ts'
import { type Layout, onLines, type Printed, type Setting } from './setting.ts'
import type { Stranger } from './strangers.ts'
import { wrap } from './wrap.ts'

/** What stands above the make-up: names, sizes, offers. */
export function headOf(chance: Chance, layout: Layout): Printed[] {
  const sizes = ['M', 'L', 'XS', 'SIZE M 40', 'EUR 38 / US 8', '12-14', 'T. 42']
  const words = ['SOFT & EASY', 'Relaxed Fit', 'GARMENT DYED', 'No. 17', 'everyday', '20 % OFF']
  const large = (text: string): Printed => ({ is: 'large', text })
  if (layout === 'loop') return [large(chance.one(words)), large(chance.one(sizes)), { is: 'gap' }]
  return chance.happens(0.2) ? [large(chance.one(sizes)), { is: 'gap' }] : []
}

/** What stands at the end: where it was made, numbers and words that nobody needs here. */
export function footOf(
  chance: Chance,
  set: Setting,
  languages: readonly DrawnLanguage[],
  among: readonly Stranger[],
): Printed[] {
  const language = languages[0]
  const made =
    language === undefined
      ? among[0]!.madeIn
      : `${phrases[language].madeIn} ${chance.one(language === 'ja' ? countriesInJapanese : countries)}`
  const numbers = [
    `RN 0${chance.whole(10000, 99999)}`,
    `CA 0${chance.whole(1000, 9999)}`,
    `STYLE ${chance.whole(10000, 99999)}-${chance.whole(10, 99)}`,
    `LOT ${chance.whole(100, 999)}/${chance.whole(10, 99)}`,
    `${String(chance.whole(1, 12)).padStart(2, '0')}/20${chance.whole(11, 25)}`,
    `Art. ${chance.whole(100, 999)}.${chance.whole(100, 999)}`,
    'SIZE M 40',
    '20 % OFF',
    'KEEP AWAY FROM FIRE',
    'Qualor Tevin Marsh',
  ]
  const drawn = chance.some(numbers, chance.whole(0, 3))
  return [
    ...(chance.happens(0.6) ? onLines(set, made, language) : []),
    ...drawn.flatMap((text) =>
      wrap(text, set.width, 'long-words').map((line): Printed => ({ is: 'text', text: line })),
    ),
  ]
}
