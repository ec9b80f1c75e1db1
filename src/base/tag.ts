// No I, O, S, Z, 0, 1: read aloud or scribbled, they are taken for each other.
const letters = 'ABCDEFGHJKLMNPQRTUVWXY'
const digits = '23456789'

/**
 * A short code for a running number from 1: letter, digit, letter, digit … ("K7"), never the same for
 * two numbers. At least two characters.
 */
export function pileCode(number: number): string {
  let rest = number
  let code = ''
  for (let place = 0; place < 2 || rest > 0; place++) {
    const signs = place % 2 === 0 ? letters : digits
    code = code + signs[rest % signs.length]
    rest = Math.floor(rest / signs.length)
  }
  return code
}

/** The number pinned to a garment for its whole stay: pile code and running number, "K7-2". */
export const tagCode = (pileNumber: number, item: number): string =>
  `${pileCode(pileNumber)}-${item}`

/** Every sign that a code may hold, in the order of ISO 7064. */
const signs = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'

/**
 * The check sign of a code by ISO/IEC 7064, system MOD 37,36 (from memory; held by a published identifier in the
 * tests). Hyphens do not count. One sign that is wrong always makes another check sign.
 */
export function checkSign(code: string): string {
  const most = signs.length
  let product = most
  for (const sign of code.replaceAll('-', '')) {
    const sum = (product + signs.indexOf(sign)) % most || most
    product = (sum * 2) % (most + 1)
  }
  return signs[(most + 1 - product) % most]!
}

/** A code as it is printed on a tag, with its check sign behind it: "B2-1-S". */
export const checkedTag = (code: string): string => `${code}-${checkSign(code)}`
