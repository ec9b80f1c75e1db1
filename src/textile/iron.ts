import { type Figure, practice } from '../base/figure.ts'
import type { IronLevel } from './reading.ts'

/** What a garment's label says of ironing: the garment fact `iron`. */
export type IronFact = IronLevel | 'silent' | 'missing'

export interface SolePlateLimit {
  readonly level: Exclude<IronLevel, 'none'>
  readonly dots: 1 | 2 | 3
  /** °C that no sole plate may pass: ISO 3758:2012. */
  readonly limitC: number
  /** °C of the 2023 edition. Shown as information; a label does not tell its edition. */
  readonly limit2023C: number
}

/**
 * Limits of the dots. Sources: ISO 3758:2012 as in national guides (secondary); ISO 3758:2023 as in
 * notices on JIS L 0001:2024, which follows it (three agreeing secondary sources).
 */
export const solePlateLimits: readonly SolePlateLimit[] = [
  { level: 'cool', dots: 1, limitC: 110, limit2023C: 120 },
  { level: 'warm', dots: 2, limitC: 150, limit2023C: 160 },
  { level: 'hot', dots: 3, limitC: 200, limit2023C: 210 },
]

/** The cap where a label is silent on ironing or missing, °C. Common practice, no source. */
const silentLimitC = 150

/** Sole-plate limit of an ironing line in °C; 0 is "do not iron". */
export function limitOf(iron: IronFact): number {
  if (iron === 'none') return 0
  return solePlateLimits.find(({ level }) => level === iron)?.limitC ?? silentLimitC
}

export const ironFigures: readonly Figure[] = [
  ...solePlateLimits.flatMap(({ level, limitC, limit2023C }): Figure[] => [
    {
      figure: `iron/${level}`,
      value: limitC,
      unit: '°C',
      source: 'ISO 3758:2012, as in national guides (secondary)',
    },
    {
      figure: `iron/${level}, edition of 2023`,
      value: limit2023C,
      unit: '°C',
      source: 'ISO 3758:2023, as in notices on JIS L 0001:2024 (secondary)',
    },
  ]),
  { figure: 'iron/silent or missing label', value: silentLimitC, unit: '°C', source: practice },
]

/**
 * The warmest level whose limit does not pass a temperature in °C. The limits of the 2023 edition
 * name the level they are printed for.
 */
export function levelAt(celsius: number): IronLevel {
  const exact = solePlateLimits.find(({ limit2023C }) => limit2023C === celsius)
  if (exact) return exact.level
  const level = solePlateLimits.findLast(({ limitC }) => limitC <= celsius)
  return level?.level ?? 'cool'
}
