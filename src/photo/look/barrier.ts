import type { Plane } from './planes.ts'

/**
 * How much the values rise and fall at least on a way from a seed to each pixel: what has an outline all round
 * stands out, however the light falls off (the minimum barrier distance, by scanning to and fro: Zhang and
 * others, ICCV 2015, 1404).
 */
export function barriers(
  { width, height, data }: Plane,
  seeds: Uint8Array,
  passes = 4,
): Float32Array {
  const high = Float32Array.from(data)
  const low = Float32Array.from(data)
  const least = new Float32Array(data.length)
  for (let at = 0; at < data.length; at += 1) least[at] = seeds[at] ? 0 : 1e9
  const relax = (at: number, from: number): void => {
    const value = data[at]!
    const top = Math.max(high[from]!, value)
    const bottom = Math.min(low[from]!, value)
    if (top - bottom < least[at]!) {
      least[at] = top - bottom
      high[at] = top
      low[at] = bottom
    }
  }
  for (let pass = 0; pass < passes; pass += 1) {
    const forth = pass % 2 === 0
    for (let line = 0; line < height; line += 1) {
      const y = forth ? line : height - 1 - line
      for (let step = 0; step < width; step += 1) {
        const x = forth ? step : width - 1 - step
        const at = y * width + x
        if (forth) {
          if (x > 0) relax(at, at - 1)
          if (y > 0) relax(at, at - width)
        } else {
          if (x < width - 1) relax(at, at + 1)
          if (y < height - 1) relax(at, at + width)
        }
      }
    }
  }
  return least
}

/**
 * How much steepness, beyond what is usual, a way from a seed to each pixel must cross at least (a distance by
 * scanning to and fro, as above).
 */
export function crossings(
  { width, height, data }: Plane,
  seeds: Uint8Array,
  passes = 4,
): Float32Array {
  const least = new Float32Array(data.length)
  for (let at = 0; at < data.length; at += 1) least[at] = seeds[at] ? 0 : 1e9
  const slant = Math.SQRT2
  for (let pass = 0; pass < passes; pass += 1) {
    const forth = pass % 2 === 0
    const back = forth ? -1 : 1
    for (let line = 0; line < height; line += 1) {
      const y = forth ? line : height - 1 - line
      const beyondY = y + back >= 0 && y + back < height
      for (let step = 0; step < width; step += 1) {
        const x = forth ? step : width - 1 - step
        const at = y * width + x
        const cost = data[at]!
        let best = least[at]!
        if (x + back >= 0 && x + back < width) {
          best = Math.min(best, least[at + back]! + cost)
        }
        if (beyondY) {
          const above = at + back * width
          best = Math.min(best, least[above]! + cost)
          if (x > 0) best = Math.min(best, least[above - 1]! + slant * cost)
          if (x < width - 1) best = Math.min(best, least[above + 1]! + slant * cost)
        }
        least[at] = best
      }
    }
  }
  return least
}

/** The height to which water would stand at each pixel, were there an outlet all along the edge. */
export function filled({ width, height, data }: Plane, passes = 4): Float32Array {
  const level = new Float32Array(data.length).fill(1e9)
  for (let pass = 0; pass < passes; pass += 1) {
    const forth = pass % 2 === 0
    const back = forth ? -1 : 1
    for (let line = 0; line < height; line += 1) {
      const y = forth ? line : height - 1 - line
      for (let step = 0; step < width; step += 1) {
        const x = forth ? step : width - 1 - step
        const at = y * width + x
        const own = data[at]!
        if (x === 0 || y === 0 || x === width - 1 || y === height - 1) {
          level[at] = own
          continue
        }
        const lower = Math.min(level[at + back]!, level[at + back * width]!)
        level[at] = Math.min(level[at]!, Math.max(own, lower))
      }
    }
  }
  return level
}
