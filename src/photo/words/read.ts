import sharp from 'sharp'
import type { PicturedLine } from '../../textile/label-lines.ts'
import type { MootLine } from '../../textile/label-sense.ts'
import type { LabelFault, LabelWords } from '../label-words.ts'
import { bendOf, flattened } from './bend.ts'
import { bridgesIn } from './bridges.ts'
import { findLines } from './find.ts'
import { glancedAt, readLine } from './line.ts'
import { missedLines } from './missed.ts'
import type { Models } from './models.ts'
import { inOrder, type ReadSlab } from './order.ts'
import { cutOut, median, type Picture, type Slab } from './picture.ts'
import type { FoundLine } from './slabs.ts'
import type { ReadLine, Weigh } from './spell.ts'
import { aroundAll, fromBehind, levelled, outside, runOf, turnedOver, within } from './upright.ts'

/** What is known of the words that labels print. */
export interface LabelSense {
  readonly weigh: Weigh
  /** Picks, where a number may be another, the one with which the label makes sense. */
  readonly settle: (lines: readonly MootLine[]) => PicturedLine[]
  /** How much lines leave in doubt, nothing at 0. */
  readonly doubt: (lines: readonly PicturedLine[]) => number
}

/** Longest side of the picture that words are read from, pixels. */
const longest = 3000
/** So many lines, the longest ones, vote on which end is up. */
const voters = 6
/** By so many sure letters a vote is won before all lines have been asked. */
const clearVote = 8
/** Known words of so many letters tell which end is up. */
const tellingFrom = 5
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

/** The words on a photo of a label, and what may be wrong with the photo. `jpeg` stands upright or turned anyhow. */
export async function readWords(
  jpeg: Uint8Array,
  models: Models,
  { weigh, settle, doubt }: LabelSense,
): Promise<LabelWords> {
  const picture = await decoded(jpeg)
  const first = await findLines(picture, models)
  if (first.length === 0) return { lines: [], faults: faultsOf(picture, [], []) }
  const [level, slabs] = await laidLevel(picture, first, models)
  const glance = (slab: Slab) => glancedAt(level, slab, models, weigh)
  const read = async (slab: Slab, first?: ReadLine) =>
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
  const more = await wordsIn(await missedLines(level, slabs, models))
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

interface Vote {
  readonly isUpright: boolean
  /** What the lines that voted say at a glance, read the way that won. */
  readonly known: ReadonlyMap<Slab, ReadLine>
}

/** Long lines are read both ways, until one way has many more likely letters and known words than the other. */
async function voted(
  slabs: readonly Slab[],
  glance: (slab: Slab) => Promise<ReadLine>,
  weigh: Weigh,
): Promise<Vote> {
  const ahead = new Map<Slab, ReadLine>()
  const behind = new Map<Slab, ReadLine>()
  // Letters count the more the likelier they are: what is read upside down is likely nowhere.
  const worthOf = ({ text, letters }: ReadLine): number =>
    letters.reduce((sum, p) => sum + p ** 2 - 0.5, 0) + Math.max(0, weigh(tellingWords(text)))
  let votes = 0
  for (const slab of slabs.toSorted((a, b) => b.w / b.h - a.w / a.h).slice(0, voters)) {
    const [one, other] = [await glance(slab), await glance(fromBehind(slab))]
    ahead.set(slab, one)
    behind.set(slab, other)
    votes += worthOf(one) - worthOf(other)
    if (Math.abs(votes) > clearVote) break
  }
  const isUpright = votes >= 0
  return { isUpright, known: isUpright ? ahead : behind }
}

/** Short words are found in anything. */
const tellingWords = (text: string): string =>
  text
    .split(' ')
    .filter((word) => word.length >= tellingFrom || word.includes('%'))
    .join(' ')

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
