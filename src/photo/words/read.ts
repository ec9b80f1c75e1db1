import sharp from 'sharp'
import type { LabelFault, LabelWords } from '../label-words.ts'
import { findLines } from './find.ts'
import type { Models } from './models.ts'
import { inOrder, type ReadSlab } from './order.ts'
import { cutOut, type Picture, type Slab } from './picture.ts'
import { type ReadLine, readLine } from './recognise.ts'
import { aroundAll, fromBehind, levelled, runOf, turnedOver } from './upright.ts'

/** Longest side of the picture that words are read from, pixels. */
const longest = 3000
/** So many lines, the longest ones, vote on which end is up. */
const voters = 6
/** By so many sure letters a vote is won before all lines have been asked. */
const clearVote = 8
/** A second look stands where it finds so many lines. */
const enoughLines = 3
/** Marks that are no words: care signs read as a letter or two, by chance. */
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
export async function readWords(jpeg: Uint8Array, models: Models): Promise<LabelWords> {
  const picture = await decoded(jpeg)
  const first = await findLines(picture, models)
  if (first.length === 0) return { lines: [], faults: faultsOf(picture, [], []) }
  const [level, slabs] = await laidLevel(picture, first, models)
  const { isUpright, known } = await voted(level, slabs, models)
  const read: ReadSlab[] = []
  for (const slab of slabs) {
    const line =
      known.get(slab) ?? (await readLine(level, isUpright ? slab : fromBehind(slab), models))
    const text = line.text.trim()
    if (text === '' || signs.test(text) || average(line.likely) < leastLikely) continue
    read.push({ text, sure: sureOf(line), slab: isUpright ? slab : turnedOver(slab, level) })
  }
  return { lines: inOrder(read), faults: faultsOf(picture, slabs, read) }
}

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

/** The part with the words turned level, and the lines found anew in it, larger than before. */
async function laidLevel(
  picture: Picture,
  first: readonly Slab[],
  models: Models,
): Promise<[Picture, readonly Slab[]]> {
  const around = aroundAll(first, runOf(first))
  const level = cutOut(picture, around, Math.round(around.w), Math.round(around.h))
  const again = await findLines(level, models)
  const isEnough = again.length >= Math.min(enoughLines, first.length)
  const found = isEnough ? again : first.map((slab) => within(around, slab))
  return [level, found.map(levelled)]
}

/** A slab of the picture, seen from another slab that was cut out of it. */
function within(around: Slab, slab: Slab): Slab {
  const [cos, sin] = [Math.cos(around.turn), Math.sin(around.turn)]
  const [dx, dy] = [slab.x - around.x, slab.y - around.y]
  return {
    ...slab,
    x: dx * cos + dy * sin + around.w / 2,
    y: dy * cos - dx * sin + around.h / 2,
    turn: slab.turn - around.turn,
  }
}

interface Vote {
  readonly isUpright: boolean
  /** What the lines that voted say, read the way that won. */
  readonly known: ReadonlyMap<Slab, ReadLine>
}

/** Long lines are read both ways, until one way has many more likely letters than the other. */
async function voted(picture: Picture, slabs: readonly Slab[], models: Models): Promise<Vote> {
  const ahead = new Map<Slab, ReadLine>()
  const behind = new Map<Slab, ReadLine>()
  let votes = 0
  for (const slab of slabs.toSorted((a, b) => b.w / b.h - a.w / a.h).slice(0, voters)) {
    const [one, other] = [
      await readLine(picture, slab, models),
      await readLine(picture, fromBehind(slab), models),
    ]
    ahead.set(slab, one)
    behind.set(slab, other)
    votes += worthOf(one) - worthOf(other)
    if (Math.abs(votes) > clearVote) break
  }
  const isUpright = votes >= 0
  return { isUpright, known: isUpright ? ahead : behind }
}

/** Letters count the more the likelier they are: what is read upside down is likely nowhere. */
const worthOf = ({ likely }: ReadLine): number => likely.reduce((sum, p) => sum + p ** 2 - 0.5, 0)

const average = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length

/** The least likely of its letters counts. */
const sureOf = ({ likely }: ReadLine): number => Math.min(1, ...likely)

function faultsOf(
  picture: Picture,
  slabs: readonly Slab[],
  read: readonly ReadSlab[],
): LabelFault[] {
  const faults: LabelFault[] = []
  if (read.length === 0) faults.push('no-words')
  else if (average(read.map(({ sure }) => sure)) < sharply) faults.push('blurred')
  if (average(sampled(picture)) < darkMean) faults.push('dark')
  const heights = slabs.map(({ h }) => h).toSorted((a, b) => a - b)
  if (heights.length > 0 && heights[Math.floor(heights.length / 2)]! < lowLine) faults.push('small')
  return faults
}

/** One byte in many: enough for how light a picture is. */
const sampled = ({ data }: Picture): number[] =>
  Array.from({ length: 4000 }, (_, n) => data[Math.floor((n * data.length) / 4000)]!)
