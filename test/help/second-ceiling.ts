/**
 * The heat ceiling a second time, for tests alone: written from published figures and sharing nothing
 * with the sources or the tables, so that the two can be held against each other. Whole °C; 0 is no iron.
 */

/** Dots of a label. ISO 3758:2012 as in national guides (secondary); the 2023 edition is 10 °C hotter. */
const dots = { none: 0, cool: 110, warm: 150, hot: 200 } as const

/** 16 CFR 423.6(b)(1): a label need not name ironing, so silence promises two dots at most (practice). */
const silence = 150

/**
 * The dot limit of the usual label of each fibre. Handbook table of thermal properties (from memory,
 * unverified), stepped down to the dots of ISO 3758:2012. 0: usually labelled "do not iron".
 */
export const bearable: Readonly<Record<string, 0 | 110 | 150 | 200>> = {
  ...all(200, ['cotton', 'linen', 'hemp', 'jute', 'ramie']),
  ...all(150, ['wool', 'virgin_wool', 'cashmere', 'mohair', 'alpaca', 'silk', 'viscose', 'modal']),
  ...all(150, ['lyocell', 'cupro', 'triacetate', 'polyester', 'aramid']),
  ...all(110, [
    'angora',
    'acetate',
    'triexta',
    'elastomultiester',
    'nylon6',
    'nylon66',
    'polyamide',
  ]),
  ...all(110, ['acrylic', 'elastane', 'metallised', 'vinylal', 'other', 'unknown']),
  ...all(0, ['modacrylic', 'elastodiene', 'polypropylene', 'polyethylene', 'elastolefin', 'saran']),
  ...all(0, ['chlorofibre', 'polylactide', 'polyurethane', 'glass', 'leather', 'down']),
}

function all<T extends number>(most: T, keys: readonly string[]): Record<string, T> {
  return Object.fromEntries(keys.map((key) => [key, most]))
}

/** A print, sequin, bead, foil, flock or coating: from the back at this or less (from memory). */
const layered = 110

/**
 * Disperse dye starts to move at about 129 °C (temperature-label maker's guide, secondary): the last
 * step of five degrees below it.
 */
const beforeDyeMoves = 125

/** Leather hardens, film of PVC shrinks from about 70 °C; a cloth not known may be either. */
const neverPressed = ['leather', 'fur', 'film', 'unknown']

export interface Worn {
  readonly fibres: readonly { readonly fibre: string; readonly percent: number }[]
  readonly iron: string
  readonly surface: string
  readonly printMake: string
  readonly trims: string
  readonly age: string
  readonly wear: string
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0)

/** The make-up is told in full: it sums to 97 to 103, nothing unknown, others 15 % at most (EU 1007/2011, Art. 9). */
function toldInFull({ fibres }: Worn): boolean {
  const total = sum(fibres.map(({ percent }) => percent))
  const others = sum(fibres.filter((it) => it.fibre === 'other').map(({ percent }) => percent))
  return (
    total >= 97 && total <= 103 && others <= 15 && fibres.every(({ fibre }) => fibre !== 'unknown')
  )
}

/** Elastane to 10 % is an allowance where the label itself says warm or hot (common practice). */
function cloth(worn: Worn): number {
  const elastane = sum(
    worn.fibres.filter(({ fibre }) => fibre === 'elastane').map(({ percent }) => percent),
  )
  const spared = elastane <= 10 && ['warm', 'hot'].includes(worn.iron)
  const counted = worn.fibres.filter(({ fibre }) => !(spared && fibre === 'elastane'))
  const named = Math.min(200, ...counted.map(({ fibre }) => bearable[fibre]!))
  if (toldInFull(worn) && counted.length > 0) return named
  // What is not known may be a modacrylic pile, which takes no iron; elsewhere the coldest dot.
  return worn.surface === 'pile' ? 0 : Math.min(named, 110)
}

function label({ iron }: Worn): number {
  return iron in dots ? dots[iron as keyof typeof dots] : silence
}

function onTheCloth({ printMake, trims }: Worn): number {
  const layer = ['screen', 'film', 'unknown'].includes(printMake)
  const sewnOn = ['meltable', 'glued', 'unknown'].includes(trims)
  if (layer || sewnOn) return layered
  return printMake === 'sublimated' ? beforeDyeMoves : 200
}

/** Historic and shattering cloth is not pressed, old cloth at two dots at most: common practice, no source. */
function years({ age, wear }: Worn): number {
  if (age === 'historic' || age === 'unknown' || wear === 'shattered') return 0
  return age === 'old' ? 150 : 200
}

/** The hottest sole plate in °C that all of these allow. */
export function secondCeiling(worn: Worn): number {
  const skin = neverPressed.includes(worn.surface) ? 0 : 200
  return Math.min(cloth(worn), label(worn), onTheCloth(worn), years(worn), skin)
}
