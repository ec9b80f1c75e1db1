import fc from 'fast-check'
import { labelLanguages } from '../../src/textile/languages/all.ts'
import type { LanguageCode } from '../../src/textile/languages/types.ts'
import { type RandomLabel, randomLabels } from './random-labels.ts'

/** A label with a trap: what it says of shares is what it said without, or no reader may be sure. */
export interface TrapLabel extends RandomLabel {
  /** No reading may be sure: the trap unsays or limits the shares. */
  readonly ask: boolean
  /** A line of its own bans a hot iron, or any. */
  readonly bansHeat: boolean
}

interface Trap {
  readonly line: string
  readonly ask?: true
  readonly bansHeat?: true
}

// Lines that unsay nothing: other numbers, machines, threads, looks, prices.
const harmless: readonly Trap[] = [
  { line: 'Size 40 / 19,95 €' },
  { line: 'Wool cycle 30' },
  { line: 'Save 20% today' },
  { line: 'Silk look' },
  { line: 'Sewn with polyester thread' },
  { line: 'No wool' },
  { line: 'Sin lana' },
  { line: 'Ohne Wolle' },
  { line: 'Toucher cachemire' },
  { line: 'Cor: linho cru' },
  { line: 'Programma wol' },
  { line: 'Kolor: len naturalny' },
  { line: 'Suni deri' },
  { line: '不含羊毛' },
  { line: '綿のような風合い' },
  { line: '캐시미어 느낌' },
  { line: 'of which 20% recycled' },
  { line: 'davon 30% recycelt' },
  { line: 'dont 40% recyclé' },
  { line: '(50% reciclado)' },
  { line: 'Shrinks up to 4%' },
  { line: '98% happy customers' },
]

// Lines after which the shares are no longer told for sure.
const unsaying: readonly Trap[] = [
  { line: 'I think', ask: true },
  { line: 'or 100% linen', ask: true },
  { line: 'oder 100% Leinen', ask: true },
  { line: 'ou 100% lin', ask: true },
  { line: 'feels like 100% cashmere', ask: true },
  { line: 'creo', ask: true },
  { line: 'glaube ich', ask: true },
  { line: 'forse', ask: true },
  { line: 'chyba', ask: true },
  { line: 'kanske', ask: true },
  { line: 'måske', ask: true },
  { line: 'misschien', ask: true },
  { line: 'talvez', ask: true },
  { line: 'belki', ask: true },
  { line: 'možná', ask: true },
  { line: 'たぶん', ask: true },
  { line: '아마', ask: true },
]

const heatBans: readonly Trap[] = [
  { line: 'Never a hot iron', bansHeat: true },
  { line: 'Iron may be hot!', bansHeat: true },
  { line: 'Keep away from hot irons', bansHeat: true },
  { line: 'Nicht heiß bügeln', bansHeat: true },
  { line: 'Pas de fer chaud', bansHeat: true },
  { line: 'Evitar la plancha caliente', bansHeat: true },
  { line: 'Niet heet strijken', bansHeat: true },
  { line: 'Undvik hett strykjärn', bansHeat: true },
  { line: '避免高温熨烫', bansHeat: true },
  { line: '高温のアイロンは避けてください', bansHeat: true },
]

// Limits and slips stand before a share, on its line.
const limits: Readonly<Record<LanguageCode, readonly string[]>> = {
  en: ['min.', 'at least', 'about', '60 no wait', '55, sorry,'],
  fr: ['environ', 'au moins', 'max.', '60 non pardon'],
  es: ['mínimo', 'unos', '60, digo'],
  de: ['mindestens', 'ca.', 'höchstens', '60 nein'],
  it: ['circa', 'almeno', '40 anzi'],
  pt: ['cerca de', 'pelo menos', '30, aliás'],
  nl: ['ongeveer', 'minstens', '60 nee'],
  pl: ['około', 'co najmniej', '60, nie,'],
  sv: ['ungefär', 'minst', '60 nej'],
  da: ['omkring', 'mindst', '60 nej'],
  ro: ['aproximativ', 'cel puțin', '60 nu,'],
  cs: ['přibližně', 'alespoň', '60 ne'],
  tr: ['yaklaşık', 'en az', '60 değil'],
  zh: ['至少', '大约', '60不对'],
  ja: ['およそ', '60いや'],
  ko: ['최대', '60 아니'],
}

const limitTraps: readonly Trap[] = labelLanguages.flatMap(({ code }) =>
  limits[code].map((line): Trap => ({ line, ask: true })),
)

/** Random labels with one trap: on a line of its own, or in front of a share. */
export const trapLabels: fc.Arbitrary<TrapLabel> = fc
  .record({
    label: randomLabels,
    trap: fc.constantFrom(...harmless, ...unsaying, ...heatBans, ...limitTraps),
    at: fc.nat(20),
  })
  .map(({ label, trap, at }) => {
    const lines = label.text.split('\n')
    if (limitTraps.includes(trap)) {
      const shares = lines.flatMap((line, i) =>
        /^\d+ ?% ?\p{L}/u.test(line) && !line.endsWith('off') ? [i] : [],
      )
      const place = shares[at % Math.max(1, shares.length)]
      if (place === undefined) return { ...label, ask: false, bansHeat: false }
      lines[place] = `${trap.line} ${lines[place]}`
    } else lines.splice(at % (lines.length + 1), 0, trap.line)
    return {
      ...label,
      text: lines.join('\n'),
      ask: trap.ask === true,
      bansHeat: trap.bansHeat === true,
    }
  })
