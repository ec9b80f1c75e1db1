import { readFileSync } from 'node:fs'
import { type IronFact, limitOf } from '../../src/textile/iron.ts'
import { readLabel } from '../../src/textile/label.ts'
import type { IronLevel } from '../../src/textile/reading.ts'

/** What a label says; a fibre whose share the label does not print has `percent` null. */
export interface Meant {
  readonly blocks: readonly MeantBlock[]
  readonly iron: {
    readonly level: IronLevel | null
    readonly noSteam: boolean
    readonly notOnPrint: boolean
    readonly wrongSide: boolean
  }
}

interface MeantBlock {
  readonly section: string | null
  readonly fibres: readonly { readonly fibre: string; readonly percent: number | null }[]
}

/** A label text written without sight of the reader, and what its writer says it means. */
export interface BlindLabel extends Meant {
  readonly id: string
  readonly text: string
  readonly mustNotBeSure: boolean
  /** Further readings that are as good. */
  readonly accept?: readonly Meant[]
  readonly why: string
}

export interface Judged {
  readonly label: BlindLabel
  readonly exact: boolean
  readonly ironing: boolean
  /** Make-up and ironing together, as one of the readings that count. */
  readonly right: boolean
  readonly sure: boolean
  readonly sureAndWrong: boolean
  readonly hotter: boolean
}

export const blindLabels = (name: string): readonly BlindLabel[] =>
  JSON.parse(readFileSync(new URL(`blind/${name}.json`, import.meta.url), 'utf8'))

/**
 * Judges the reader by one label. Fibres count in any order. Where no reading may be sure, only
 * that and the heat of the iron are judged.
 */
export function judge(label: BlindLabel): Judged {
  const reading = readLabel(label.text)
  const meant = [label, ...(label.accept ?? [])]
  const blocks = makeUp(reading.blocks)
  const iron = ironLine(reading.iron)
  const exact = meant.some((one) => makeUp(one.blocks) === blocks)
  const ironing = meant.some((one) => ironLine(one.iron) === iron)
  const right = meant.some((one) => makeUp(one.blocks) === blocks && ironLine(one.iron) === iron)
  const hottest = Math.max(...meant.map((one) => capOf(one.iron.level)))
  const hotter = capOf(reading.iron.level) > hottest
  const { sure } = reading
  if (label.mustNotBeSure) {
    const held = !sure && !hotter
    return { label, exact: held, ironing: !hotter, right: held, sure, sureAndWrong: sure, hotter }
  }
  return { label, exact, ironing, right, sure, sureAndWrong: sure && !right, hotter }
}

/** Where no level is named the cap for silent labels holds. */
const capOf = (level: IronLevel | null): number => limitOf(level ?? ('silent' satisfies IronFact))

const ironLine = ({ level, noSteam, notOnPrint, wrongSide }: Meant['iron']): string =>
  `${level} ${noSteam ? 's' : ''}${notOnPrint ? 'p' : ''}${wrongSide ? 'r' : ''}`

// A label that names no part speaks of the outer cloth.
const partOf = (section: string | null): string =>
  section === null ? 'body' : (otherPartNames[section] ?? section)

const otherPartNames: Readonly<Record<string, string>> = { sleeves: 'sleeve' }

/** Fibres without a share make no block. */
const makeUp = (blocks: readonly MeantBlock[]): string =>
  blocks
    .map(({ section, fibres }) => ({
      section,
      shares: fibres.flatMap(({ fibre, percent }) =>
        percent === null ? [] : `${percent} ${fibre}`,
      ),
    }))
    .filter(({ shares }) => shares.length > 0)
    .map(({ section, shares }) => `${partOf(section)}: ${[...new Set(shares)].sort().join(', ')}`)
    .sort()
    .join(' | ')
