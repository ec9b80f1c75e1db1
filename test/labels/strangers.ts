import type { FibreKey } from '../../src/textile/fibres.ts'

/** Words that labels print and no table here knows: other languages, and other scripts. From memory. */
export interface Stranger {
  readonly mark: string
  readonly fibres: Readonly<Partial<Record<FibreKey, string>>>
  readonly care: readonly string[]
  readonly madeIn: string
}

export const cyrillic: readonly Stranger[] = [
  {
    mark: 'RU',
    fibres: {
      cotton: 'хлопок',
      polyester: 'полиэстер',
      elastane: 'эластан',
      viscose: 'вискоза',
      wool: 'шерсть',
      polyamide: 'полиамид',
      acrylic: 'акрил',
      linen: 'лён',
    },
    care: ['Не отбеливать', 'Машинная стирка при 30°C', 'Не сушить в барабане'],
    madeIn: 'Сделано в Португалии',
  },
  {
    mark: 'UA',
    fibres: {
      cotton: 'бавовна',
      polyester: 'поліестер',
      elastane: 'еластан',
      viscose: 'віскоза',
      wool: 'вовна',
      polyamide: 'поліамід',
      acrylic: 'акрил',
      linen: 'льон',
    },
    care: ['Не відбілювати', 'Прання при 30°C'],
    madeIn: 'Зроблено в Португалії',
  },
  {
    mark: 'BG',
    fibres: {
      cotton: 'памук',
      polyester: 'полиестер',
      elastane: 'еластан',
      viscose: 'вискоза',
      wool: 'вълна',
      polyamide: 'полиамид',
      acrylic: 'акрил',
      linen: 'лен',
    },
    care: ['Да не се избелва', 'Да се пере при 30°C'],
    madeIn: 'Произведено в Португалия',
  },
]

export const latinAndGreek: readonly Stranger[] = [
  {
    mark: 'FI',
    fibres: {
      cotton: 'puuvilla',
      polyester: 'polyesteri',
      elastane: 'elastaani',
      viscose: 'viskoosi',
      wool: 'villa',
      polyamide: 'polyamidi',
      acrylic: 'akryyli',
      linen: 'pellava',
    },
    care: ['Ei valkaisua', 'Konepesu 30°C'],
    madeIn: 'Valmistettu: Portugali',
  },
  {
    mark: 'HU',
    fibres: {
      cotton: 'pamut',
      polyester: 'poliészter',
      elastane: 'elasztán',
      viscose: 'viszkóz',
      wool: 'gyapjú',
      polyamide: 'poliamid',
      acrylic: 'akril',
      linen: 'len',
    },
    care: ['Nem fehéríthető', 'Gépi mosás 30°C'],
    madeIn: 'Származási hely: Portugália',
  },
  {
    mark: 'EL',
    fibres: {
      cotton: 'βαμβάκι',
      polyester: 'πολυεστέρας',
      elastane: 'ελαστάν',
      viscose: 'βισκόζη',
      wool: 'μαλλί',
      polyamide: 'πολυαμίδιο',
      acrylic: 'ακρυλικό',
      linen: 'λινό',
    },
    care: ['Μη λευκαίνετε', 'Πλύσιμο στους 30°C'],
    madeIn: 'Κατασκευάζεται στην Πορτογαλία',
  },
]

/** Fibres that every stranger has a name for. */
export const strangersFibres: readonly FibreKey[] = [
  'cotton',
  'polyester',
  'elastane',
  'viscose',
  'wool',
  'polyamide',
  'acrylic',
  'linen',
]
