import { checkSign } from '../base/tag.ts'
import { readSubjectKey } from '../custody/subject.ts'

/** Signs that a tag never has, or not in that place, and what was meant. */
const slips = {
  letter: { '8': 'B', '6': 'G', '4': 'A' },
  digit: { B: '8', G: '6', S: '5', Z: '2', A: '4' },
  number: { O: '0', I: '1', S: '5', Z: '2', B: '8' },
} as const satisfies Record<string, Readonly<Record<string, string>>>

const mend = (sign: string, from: Readonly<Record<string, string>>): string => from[sign] ?? sign

/** Letter, digit, letter, digit …: a sign of the other sort is a slip. */
const mendPile = (code: string): string =>
  [...code].map((sign, at) => mend(sign, at % 2 === 0 ? slips.letter : slips.digit)).join('')

const mendNumber = (part: string): string =>
  [...part].map((sign) => mend(sign, slips.number)).join('')

function mendKey(key: string): string {
  const [, sign = '', number = ''] = /^([FXPQL]?)(.*)$/.exec(key)!
  return sign + mendNumber(number)
}

/** A code that was scanned or typed, without its check sign. */
export interface ScannedCode {
  readonly code: string
  /** Its check sign fits, or it has none, as tags of before and codes copied by hand have. */
  readonly fits: boolean
}

/**
 * What was scanned or typed, as it stands on tags: from a tag's link, in small letters, with a space for the hyphen,
 * with signs that look alike. Null where it can be no code.
 */
export function scannedCode(text: string): ScannedCode | null {
  const last = /\/t\/([^/?#\s]+)/.exec(text)?.[1]
  const plain = (last === undefined ? text : decoded(last))
    .trim()
    .toUpperCase()
    .replaceAll(/[\s_.‐-―−]+/g, '-')
  if (plain.length > 24) return null
  const [pile = '', ...rest] = plain.split('-')
  // No part but the check sign, which stands last, is a single sign behind a key.
  const sign = rest.length > 1 && /^[0-9A-Z]$/.test(rest.at(-1)!) ? rest.pop()! : null
  const [key, bag] = rest
  if (!pile || !key || rest.length > 2) return null
  const code = [mendPile(pile), mendKey(key), ...(bag ? [mendKey(bag)] : [])]
  const isPile = /^[A-Z]\d(?:[A-Z]\d)*[A-Z]?$/.test(code[0]!)
  if (!isPile || !readSubjectKey(code.slice(1).join('-'))) return null
  const whole = code.join('-')
  return { code: whole, fits: sign === null || sign === checkSign(whole) }
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text)
  } catch {
    return text
  }
}
