import sharp from 'sharp'
import type { PicturedLine } from '../../textile/label-lines.ts'
import type { MootLine } from '../../textile/label-sense.ts'
import type { LabelFault, LabelWords } from '../label-words.ts'
import { bendOf, flattened } from './bend.ts'
import { bridgesIn } from './bridges.ts'
import { broughtOut } from './brought-out.ts'
import { findLines } from './find.ts'
import { type Glance, glancedAt, readLine } from './line.ts'
import { missedLines } from './missed.ts'
import type { Models } from './models.ts'
import { inOrder, type ReadSlab } from './order.ts'
import { cutOut, median, type Picture, type Slab } from './picture.ts'
import type { FoundLine } from './slabs.ts'
import type { ReadLine, Weigh } from './spell.ts'
import { towersIn } from './towers.ts'
import { aroundAll, fromBehind, levelled, outside, runOf, turnedOver, within } from './upright.ts'
import { voted } from './vote.ts'

/** What is known of the words that labels print. */
export interface LabelSense {
  readonly weigh: Weigh
  /** Picks, where a number may be another, the one with which the label makes sense. */
  readonly settle: (lines: readonly MootLine[]) => PicturedLine[]
  /** How much lines leave in doubt, nothing at 0. */
  readonly doubt: (lines: readonly PicturedLine[]) => number
  /** Whether the shares that lines tell make a whole. */
  readonly isWhole: (lines: readonly PicturedLine[]) => boolean
}

/** All lines together are so likely on a label where one word at most is known (`weigh`). */
const hardlyAWord = 4
/** Longest side of the picture that words are read from, pixels. */
const longest = 3000
/** A second look stands where it finds so many lines. */
const enoughLines = 3
/** So far from level, in radians, the words are turned again; and so often they are looked at in all. */
const askew = 0.2
const mostLooks = 2
/** A picture laid flat stands where this share of its lines is found in it. */
const stillFound = 0.6
/** Lines that are no words, such as care signs, are read as letters that are on average less likely. */
const leastLikely = 0.5
/** Care signs that are read as letters of their shapes: tubs, crosses, circles. */
const signs = /^(?:[OoQ0XxMWwAaDVv△□○×] ?)+$/u
/** Lines lower than this in the picture are read badly; pixels. */
const lowLine = 14
/** Where the least sure letter of a line is on average less likely than this, the photo is not sharp. */
const sharply = 0.58
/** Of 255, the mean of a picture that is too dark to read. */
const darkMean = 40

/**
 * The words on a photo of a label, and what may be wrong with the photo. `jpeg` stands upright or turned anyhow.
 * Where hardly a word is read, or no shares that make a whole, it is looked at once more, brought out of the dark;
 * what that finds is never sure.
 */
export async function readWords(
  jpeg: Uint8Array,
  models: Models,
  sense: LabelSense,
): Promise<LabelWords> {
  const known = ({ lines }: LabelWords): number =>
    lines.reduce((sum, { text }) => sum + Math.max(0, sense.weigh(text)), 0)
  const picture = await decoded(jpeg)
  const found = await findLines(picture, models)
  const first = await seenOn(picture, found, models, sense)
  if (known(first) > hardlyAWord && sense.isWhole(first.lines)) return first
  const nearer = await broughtOut(picture, found)
  const second = await seenOn(nearer, await findLines(nearer, models), models, sense)
  const gain = Number(sense.isWhole(second.lines)) - Number(sense.isWhole(first.lines))
  if (gain < 0 || (gain === 0 && known(second) <= known(first))) return first
  const others = [...first.faults, ...second.faults].filter((fault) => fault !== 'no-words')
  return { lines: second.lines, faults: [...new Set<LabelFault>(['blurred', ...others])] }
}

async function seenOn(
  picture: Picture,
  first: readonly Slab[],
  models: Models,
  { weigh, settle, doubt }: LabelSense,
): Promise<LabelWords> {
  if (first.length === 0) return { lines: [], faults: faultsOf(picture, [], []) }
  const [level, slabs] = await laidLevel(picture, first, models)
  const glance = (slab: Slab) => glancedAt(level, slab, models, weigh)
  const read = async (slab: Slab, first?: Glance) =>
    readLine(level, slab, models, weigh, first ?? (await glance(slab)))
  const { isUpright, known } = await voted(slabs, glance, weigh)
  const readUpright = (slab: Slab) => read(isUpright ? slab : fromBehind(turnedOver(slab, level)))
  const wordsIn = async (from: readonly Slab[]): Promise<(ReadLine & ReadSlab)[]> => {
    const words: (ReadLine & ReadSlab)[] = []
    for (const slab of from) {
      const line = await read(isUpright ? slab : fromBehind(slab), known.get(slab))
      if (!isNoise(line, weigh))
        words.push({ ...line, slab: isUpright ? slab : turnedOver(slab, level) })
    }
    return words
  }
  const words = await wordsIn(slabs)
  const sharpness = words.map(({ letters }) => Math.min(1, ...letters))
  const faults = faultsOf(picture, slabs, sharpness)
  let lines: ReadSlab[] = words
  for (const { whole, parts } of bridgesIn(lines)) {
    const halves: ReadSlab[] = []
    for (const slab of parts) halves.push({ ...(await readUpright(slab)), slab })
    const said = halves.reduce((sum, { text }) => sum + weigh(text), 0)
    if (said >= weigh(whole.text)) lines = lines.flatMap((one) => (one === whole ? halves : [one]))
  }
  const settled = settle(inOrder(lines))
  const inDoubt = doubt(settled)
  if (inDoubt === 0) return { lines: settled, faults }
  // Time is taken for a second look only where something is missing; what it finds stands where it helps.
  const { lines: seen, rows } = towersIn(slabs)
  const missed = await missedLines(level, [...seen, ...rows], models)
  const more = await wordsIn([...rows, ...missed])
  if (more.length === 0) return { lines: settled, faults }
  const withMore = settle(inOrder([...lines, ...more]))
  return { lines: doubt(withMore) < inDoubt ? withMore : settled, faults }
}

/** Marks that are no words, read as a letter or two by chance. */
const isNoise = ({ text, letters }: ReadLine, weigh: Weigh): boolean =>
  text === '' || signs.test(text) || (average(letters) < leastLikely && weigh(text) <= 0)

/** A photo as pixels, upright, at most 3000 a side. */
export async function decoded(jpeg: Uint8Array): Promise<Picture> {
  const { data, info } = await sharp(jpeg)
    .autoOrient()
    .resize(longest, longest, { fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#fff' })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true })
  return { width: info.width, height: info.height, data }
}

/**
 * The part with the words turned level, and the lines found anew in it, larger than before. What is woven into
 * the cloth around may have been taken for lines: where the new ones run another way, it is turned once more.
 * A label that is bent is laid flat.
 */
async function laidLevel(
  picture: Picture,
  first: readonly Slab[],
  models: Models,
): Promise<[Picture, readonly Slab[]]> {
  let found = first
  for (let look = 1; ; look += 1) {
    const around = aroundAll(found, runOf(found))
    const level = cutOut(picture, around, Math.round(around.w), Math.round(around.h))
    const again = await findLines(level, models)
    const isEnough = again.length >= Math.min(enoughLines, found.length)
    if (!isEnough) return [level, found.map((slab) => levelled(within(around, slab)))]
    if (look === mostLooks || Math.abs(runOf(again)) < askew)
      return await laidFlat(level, again, models)
    found = again.map((slab) => outside(around, slab))
  }
}

async function laidFlat(
  level: Picture,
  lines: readonly FoundLine[],
  models: Models,
): Promise<[Picture, readonly Slab[]]> {
  const bend = bendOf(lines, level)
  const flat = bend && flattened(level, bend)
  const again = flat ? await findLines(flat, models) : []
  // What was bent the wrong way falls to pieces or runs together.
  const isBetter = flat && again.length >= stillFound * lines.length
  return isBetter ? [flat, again.map(levelled)] : [level, lines.map(levelled)]
}

const average = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length

function faultsOf(
  picture: Picture,
  slabs: readonly Slab[],
  sharpness: readonly number[],
): LabelFault[] {
  const faults: LabelFault[] = []
  if (sharpness.length === 0) faults.push('no-words')
  else if (average(sharpness) < sharply) faults.push('blurred')
  if (average(sampled(picture)) < darkMean) faults.push('dark')
  if (slabs.length > 0 && median(slabs.map(({ h }) => h)) < lowLine) faults.push('small')
  return faults
}

/** One byte in many: enough for how light a picture is. */
const sampled = ({ data }: Picture): number[] =>
  Array.from({ length: 4000 }, (_, n) => data[Math.floor((n * data.length) / 4000)]!)
