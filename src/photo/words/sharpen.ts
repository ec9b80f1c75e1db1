import type { Picture } from './picture.ts'

/** Standard deviation of a blur that is taken back, pixels: of most that is in the way, and of one that is strong. */
export const blurs = { usual: 2.25, strong: 3.2 }
/** How often the guess is mended. */
const rounds = 10
/** Every pixel is so much brighter than black: what is divided by is never nothing. */
const lift = 1

/**
 * A small picture of a line as it was before it was blurred, in greys: Richardson and Lucy's rounds (W. H.
 * Richardson, J. Opt. Soc. Am. 62, 1972; L. B. Lucy, Astron. J. 79, 1974; from memory) with a bell-shaped blur.
 * It brings out strokes that ran together, and grain with them.
 */
export function sharpened({ width, height, data }: Picture, sigma: number): Picture {
  const bell = bellOf(sigma)
  const seen = new Float32Array(width * height)
  for (let at = 0; at < seen.length; at += 1)
    seen[at] = (data[at * 3]! + data[at * 3 + 1]! + data[at * 3 + 2]!) / 3 + lift
  const guess = Float32Array.from(seen)
  for (let round = 0; round < rounds; round += 1) {
    const again = blurred(guess, width, height, bell)
    for (let at = 0; at < again.length; at += 1) again[at] = seen[at]! / again[at]!
    const by = blurred(again, width, height, bell)
    for (let at = 0; at < guess.length; at += 1) guess[at] = guess[at]! * by[at]!
  }
  const grey = new Uint8ClampedArray(data.length)
  for (let at = 0; at < data.length; at += 1) grey[at] = guess[Math.floor(at / 3)]! - lift
  return { width, height, data: new Uint8Array(grey.buffer) }
}

/** Half of a bell and its middle, together with the other half one. */
function bellOf(sigma: number): readonly number[] {
  const heights = Array.from({ length: Math.ceil(3 * sigma) + 1 }, (_, n) =>
    Math.exp(-(n ** 2) / (2 * sigma ** 2)),
  )
  const sum = heights.reduce((all, one, n) => all + (n === 0 ? one : 2 * one), 0)
  return heights.map((one) => one / sum)
}

const blurred = (
  from: Float32Array,
  width: number,
  height: number,
  bell: readonly number[],
): Float32Array =>
  blurredAlong(blurredAlong(from, width, height, 1, bell), height, width, width, bell)

/** Blurs lines of `length` values that lie `step` apart; beyond its ends a line goes on as it ends. */
function blurredAlong(
  from: Float32Array,
  length: number,
  lines: number,
  step: number,
  bell: readonly number[],
): Float32Array {
  const to = new Float32Array(from.length)
  const nextLine = step === 1 ? length : 1
  const last = length - 1
  for (let line = 0; line < lines; line += 1) {
    const start = line * nextLine
    for (let at = 0; at < length; at += 1) {
      let sum = bell[0]! * from[start + at * step]!
      for (let n = 1; n < bell.length; n += 1) {
        const before = from[start + Math.max(0, at - n) * step]!
        sum += bell[n]! * (before + from[start + Math.min(last, at + n) * step]!)
      }
      to[start + at * step] = sum
    }
  }
  return to
}
