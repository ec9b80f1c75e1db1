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
