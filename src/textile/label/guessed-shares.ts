import { namesFibre } from './names-fibre.ts'
import { nameMeant } from './spelling.ts'

/** What a reader of pictures gives for a digit, on print that is hard to read. */
const digitOf: Readonly<Record<string, string>> = {
  ...{ O: '0', o: '0', Q: '0', D: '0', C: '0', e: '0', E: '0', U: '0' },
  ...{ l: '1', I: '1', i: '1', '|': '1', '!': '1', T: '1' },
  ...{ Z: '2', z: '2', S: '5', s: '5', B: '8', R: '8', g: '9' },
}

const signs = String.raw`[\d${Object.keys(digitOf).join('')}]`
/** "1e x", "SSX", "oo%": signs before a percent sign, or before what is often read for one. */
const beforeSign = new RegExp(
  String.raw`(?<![\p{L}\d.,/°])(${signs}{1,4}) ?[%xX](?=$|[ ,./]|-(?!\d))`,
  'gu',
)
/** "BO KATOEN": two signs right before a name. */
const beforeName = new RegExp(String.raw`(?<![\p{L}\d.,/°])(${signs}{2})(?= (\p{L}{3,}))`, 'gu')

/** The share that signs may stand for; null: none. */
function shareOf(read: string): string | null {
  const digits = read.replaceAll(/\D/gu, (sign) => digitOf[sign]!)
  // Of a hundred the "1" is soon lost, and nothing else ends so.
  if (/^[14]?00$/.test(digits)) return '100%'
  return /^[1-9]\d?$/.test(digits) ? `${digits}%` : null
}

/**
 * The lines with letters beside names of fibres taken for the digits they look like; null where there are none.
 * It holds only where it makes the shares a whole, and never for sure.
 */
export function withGuessedShares(lines: readonly string[]): string[] | null {
  const isShare = lines.map((line, at) => [lines[at - 1], line, lines[at + 1]].some(namesAny))
  const guessed = lines.map((line, at) =>
    isShare[at]
      ? line
          .replaceAll(beforeSign, (whole, read: string) => shareOf(read) ?? whole)
          .replaceAll(beforeName, (whole, read: string, name: string) =>
            namesFibre(name) ? (shareOf(read) ?? whole) : whole,
          )
      : line,
  )
  return guessed.some((line, at) => line !== lines[at]) ? guessed : null
}

const namesAny = (line: string | undefined): boolean =>
  (line?.match(/\p{L}{3,}/gu) ?? []).some(namesFibre)

/** So many names are tried at most. */
const mostNames = 8

/**
 * The lines with words that stand beside shares and are no names taken for the names that they are nearest to,
 * "COOL 29%" for wool, where those are of just one fibre: all of them at once, then each alone. It holds only
 * where it makes the shares a whole, and never for sure.
 */
export function withGuessedNames(lines: readonly string[]): string[][] {
  const alone: string[][] = []
  const all = lines.map((line, at) =>
    line.replaceAll(besideShare, (word: string, index: number) => {
      const name = namesFibre(word) ? undefined : nameMeant(word)
      if (name === undefined) return word
      alone.push(lines.with(at, line.slice(0, index) + name + line.slice(index + word.length)))
      return name
    }),
  )
  if (alone.length < 2) return alone
  return [all, ...alone.slice(0, mostNames)]
}

const besideShare =
  /(?<!\p{L})\p{L}{4,}(?=:? ?\d{1,3} ?[%xX])|(?<=\d ?%? ?)(?<![\p{L}\d])\p{L}[\p{L}\d]{3,}/gu
