import type { MootLine } from '../../textile/label-sense.ts'
import { median, type Slab } from './picture.ts'

/** Words that were read from one slab of an upright picture. */
export interface ReadSlab extends MootLine {
  readonly slab: Slab
}

/** Two slabs are of one line where the middle of the one lies within this share of the other's height. */
const sameLine = 0.5
/** A gap between columns is at least this share of a line's height. */
const columnGap = 0.3
/** Words that run up or down by this share of a line's height, until the number beside them, may be of another row. */
const otherRow = 0.5
/** So sure is a line then. */
const sureOfRow = 0.2
/** Seen askew, columns lean: the strips between them that are tried, upright ones first. */
export const leans = [0, 0.05, -0.05, 0.1, -0.1, 0.15, -0.15, 0.2, -0.2] as const
/** Columns that lean have so many lines. */
const leaningLines = 3
/** A share that stands apart from its name. */
const bareShare = /^\d{1,3} ?[%xX]$/
/** A column of phrases has lines of so many letters on average. */
const lettersOfPhrase = 9

/** The lines of a label in the order they are read: column by column, each from above, its words from the left. */
export function inOrder(read: readonly ReadSlab[]): MootLine[] {
  const columns = columnsOf(read)
  return columns.flatMap((column) => linesOf(column).map(joined))
}

export const left = ({ slab }: ReadSlab): number => slab.x - slab.w / 2
export const right = ({ slab }: ReadSlab): number => slab.x + slab.w / 2

/** Words side by side are columns where an empty strip parts them and both sides have words of their own. */
export function columnsOf(read: readonly ReadSlab[]): ReadSlab[][] {
  for (const lean of leans) {
    const parted = partedAlong(read, lean)
    if (parted) return [parted.near, ...columnsOf(parted.far)]
  }
  return [[...read]]
}

/** The first column and the others, where the strip between them goes so far to the right for each pixel down. */
function partedAlong(
  read: readonly ReadSlab[],
  lean: number,
): { readonly near: ReadSlab[]; readonly far: ReadSlab[] } | null {
  const begin = (one: ReadSlab): number => left(one) - lean * one.slab.y
  const sorted = read.toSorted((a, b) => begin(a) - begin(b))
  const height = median(read.map(({ slab }) => slab.h))
  let reach = -Infinity
  for (const [n, one] of sorted.entries()) {
    if (n > 0 && begin(one) - reach > columnGap * height) {
      const [near, far] = [sorted.slice(0, n), sorted.slice(n)]
      const enough = lean === 0 || Math.min(near.length, far.length) >= leaningLines
      if (enough && isColumn(near) && isColumn(far) && !areRowsOf(near, far)) return { near, far }
    }
    reach = Math.max(reach, begin(one) + one.slab.w)
  }
  return null
}

/**
 * Several lines, most of them with words, and shares of its own or whole phrases: no mere column of shares
 * beside their names, nor of names beside their shares. A share may stand apart from its name.
 */
export function isColumn(read: readonly ReadSlab[]): boolean {
  const worded = read.filter(({ text }) => /\p{L}{3}/u.test(text)).length
  const shares = read.filter(({ text }) => bareShare.test(text)).length
  if (read.length < 2 || worded < 0.6 * (read.length - Math.min(shares, worded))) return false
  const letters = read.reduce((sum, { text }) => sum + text.length, 0) / read.length
  return letters >= lettersOfPhrase || read.some(({ text }) => /%|\d ?[xX](?!\p{L})/u.test(text))
}

/** Names without shares, beside which the shares stand row by row: one column, however long the names are. */
function areRowsOf(names: readonly ReadSlab[], shares: readonly ReadSlab[]): boolean {
  if (names.some(({ text }) => /\d ?[%xX]/.test(text))) return false
  const withShare = names.filter((name) => {
    const beside = shares.filter(
      ({ slab }) => Math.abs(slab.y - name.slab.y) < sameLine * Math.min(slab.h, name.slab.h),
    )
    const nearest = beside.toSorted((a, b) => left(a) - left(b))[0]
    return nearest !== undefined && bareShare.test(nearest.text)
  })
  return 2 * withShare.length >= names.length
}

function linesOf(column: readonly ReadSlab[]): ReadSlab[][] {
  const lines: ReadSlab[][] = []
  for (const one of column.toSorted((a, b) => a.slab.y - b.slab.y)) {
    const line = lines.find((other) => other.every((word) => areLevel(word, one)))
    if (line) line.push(one)
    else lines.push([one])
  }
  return lines.map((line) => line.toSorted((a, b) => left(a) - left(b)))
}

const areLevel = (a: ReadSlab, b: ReadSlab): boolean =>
  Math.abs(a.slab.y - b.slab.y) < sameLine * Math.min(a.slab.h, b.slab.h) &&
  (right(a) <= left(b) + a.slab.h || right(b) <= left(a) + b.slab.h)

/**
 * Whether a number that stands apart belongs to the words before it: on a label that hangs askew or is curled it
 * may be level with those of the row above or below, which shows in how these words run.
 */
const isOneRow = (line: readonly ReadSlab[]): boolean =>
  line.every((one, n) => {
    const before = line[n - 1]
    if (!before || !/^\W*\d{1,3}\W*$/.test(one.text)) return true
    const { slab } = before
    const rise = Math.abs((one.slab.x - slab.x) * Math.tan(slab.turn))
    return rise < otherRow * Math.min(slab.h, one.slab.h)
  })

const joined = (line: readonly ReadSlab[]): MootLine => ({
  text: line.map(({ text }) => text).join(' '),
  sure: Math.min(...line.map(({ sure }) => sure), isOneRow(line) ? 1 : sureOfRow),
  others: line.flatMap(({ others }, n) =>
    others.map(({ text, sure }) => ({
      text: line.map((one, at) => (at === n ? text : one.text)).join(' '),
      sure,
    })),
  ),
})
