import { namesFibre } from './names-fibre.ts'

/** A way of taking what was read behind a number for its percent sign. */
type Mend = readonly [RegExp, string]

const end = '(?=$|[ ,./]|-(?!\\d)|\\p{L}{3})'
const alone = '(?<![\\p{L}\\d.,/°])'

/** "3 7% cotton", "856 cotton", "40N cotton", "75° cotton", "700%". No share is more than a hundred. */
const certain: readonly Mend[] = [
  [new RegExp(`${alone}(\\d) (?=\\d ?%)|${alone}(10) (?=0 ?%)`, 'gu'), '$1$2'],
  [new RegExp(`${alone}[47IlT]00(?= ?%)`, 'gu'), '100'],
  [new RegExp(`${alone}(\\d{2}|100)[4-9]${end}`, 'gu'), '$1%'],
  [new RegExp(`${alone}(\\d{1,2}|100) ?[NnHKMmW°*'"#]${end}`, 'gu'), '$1%'],
]

/** "24 elastane" for "2%", "55 1" and "61" for "55 %" and "6 %", "24 elastane" for "24%": any may have been printed. */
const possible: readonly Mend[] = [
  [new RegExp(`${alone}(\\d)[4-9]${end}`, 'gu'), '$1%'],
  [new RegExp(`${alone}(\\d{1,2}|100) ?[1Il|xX]${end}`, 'gu'), '$1%'],
  [new RegExp(`${alone}(\\d{1,2}|100)(?! ?%)${end}`, 'gu'), '$1%'],
]

/**
 * The lines with numbers beside names of fibres taken for percentages, in every way that is worth a try: each
 * holds only where it makes the shares a whole.
 */
export function mendedShares(lines: readonly string[]): string[][] {
  const isShare = lines.map((line, at) => [lines[at - 1], line, lines[at + 1]].some(namesAny))
  const mended = (mends: readonly Mend[], from: readonly string[]): string[] =>
    from.map((line, at) =>
      isShare[at]
        ? mends.reduce((text, [read, meant]) => text.replaceAll(read, meant), line)
        : line,
    )
  const first = mended(certain, lines)
  const ways = [first, ...possible.map((mend) => mended([mend], first))]
  return ways.filter((way, at) =>
    [lines, ...ways.slice(0, at)].every((other) => way.some((line, i) => line !== other[i])),
  )
}

const namesAny = (line: string | undefined): boolean =>
  (line?.match(/\p{L}{3,}/gu) ?? []).some(namesFibre)
