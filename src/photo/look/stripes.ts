/** A garment's differences from its base, straightened, in three planes. */
export interface Off {
  readonly width: number
  readonly height: number
  readonly planes: readonly Float32Array[]
}

/** What one window of cloth tells of stripes and checks. */
export interface Window {
  /** Standard deviation within it, CIELAB. */
  readonly busy: number
  /** How far the edges in it run along one direction or square to it, 0 to 1. */
  readonly square: number
  /** The share of its variance that lines along that direction tell, and lines square to it: larger first. */
  readonly along: number
  readonly across: number
  /** How far the profile of the larger repeats, 0 to 1. */
  readonly repeats: number
  /** That direction, radians, a quarter turn at most. */
  readonly turn: number
}

/** Reads windows of `side` pixels, half overlapping, wherever nine tenths of them lie in the garment. */
export function windowsOf(off: Off, inner: Uint8Array, side: number): Window[] {
  const found: Window[] = []
  const step = side >> 1
  for (let top = 0; top + side <= off.height; top += step) {
    for (let left = 0; left + side <= off.width; left += step) {
      const window = windowAt(off, inner, { left, top, side })
      if (window) found.push(window)
    }
  }
  return found
}

interface Place {
  readonly left: number
  readonly top: number
  readonly side: number
}

function windowAt(off: Off, inner: Uint8Array, { left, top, side }: Place): Window | null {
  const { width } = off
  let inside = 0
  for (let y = top; y < top + side; y += 2) {
    for (let x = left; x < left + side; x += 2) inside += inner[y * width + x]!
  }
  if (inside < 0.9 * (side / 2) ** 2) return null
  let [energy, cos, sin] = [1e-6, 0, 0]
  for (const plane of off.planes) {
    for (let y = top + 1; y < top + side - 1; y += 1) {
      for (let x = left + 1, at = y * width + x; x < left + side - 1; x += 1, at += 1) {
        if (!inner[at]) continue
        const gx = plane[at + 1]! - plane[at - 1]!
        const gy = plane[at + width]! - plane[at - width]!
        const [xx, yy, xy] = [gx * gx, gy * gy, gx * gy]
        const strength = xx + yy
        if (strength < 4) continue
        // The cosine and sine of four times the angle, so that directions square to each other are one.
        energy += strength
        cos += ((xx - yy) ** 2 - 4 * xy * xy) / strength
        sin += (4 * xy * (xx - yy)) / strength
      }
    }
  }
  const turn = Math.atan2(sin, cos) / 4
  const profiles = [turn, turn + Math.PI / 2].map((angle) =>
    profileOf(off, inner, { left, top, side }, angle),
  )
  const [one, two] = profiles as [Profile, Profile]
  const [more, less] = one.told >= two.told ? [one, two] : [two, one]
  return {
    busy: Math.sqrt(one.whole),
    square: Math.hypot(cos, sin) / energy,
    along: more.told,
    across: less.told,
    repeats: repeatsOf(more.means),
    turn,
  }
}

interface Profile {
  /** Share of the variance that the lines' means tell. */
  readonly told: number
  readonly whole: number
  /** The means of the plane that tells most, line by line. */
  readonly means: Float32Array
}

/** Means along lines square to `angle`, one pixel apart. */
function profileOf(
  off: Off,
  inner: Uint8Array,
  { left, top, side }: Place,
  angle: number,
): Profile {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const lines = Math.ceil(side * 1.42) + 2
  const middle = lines / 2
  let [told, whole] = [0, 0]
  let [best, means] = [-1, new Float32Array(0)]
  for (const plane of off.planes) {
    const sums = new Float32Array(lines)
    const counts = new Float32Array(lines)
    let [count, sum, squares] = [0, 0, 0]
    for (let y = 0; y < side; y += 1) {
      for (let x = 0, at = (top + y) * off.width + left; x < side; x += 1, at += 1) {
        if (!inner[at]) continue
        const line = (middle + (x - side / 2) * cos + (y - side / 2) * sin) | 0
        const value = plane[at]!
        sums[line]! += value
        counts[line]! += 1
        sum += value
        squares += value * value
        count += 1
      }
    }
    const mean = sum / count
    let between = 0
    const own = new Float32Array(lines)
    const kept: number[] = []
    for (let line = 0; line < lines; line += 1) {
      if (counts[line]! < 6) continue
      own[line] = sums[line]! / counts[line]!
      between += counts[line]! * (own[line]! - mean) ** 2
      if (counts[line]! > side / 3) kept.push(own[line]!)
    }
    told += between / count
    whole += squares / count - mean * mean
    if (between > best) [best, means] = [between, Float32Array.from(kept)]
  }
  return { told: told / (whole + 0.5), whole, means }
}

/** How alike the profile is to itself, moved along by the distance at which that is most so after the first dip. */
function repeatsOf(means: Float32Array): number {
  const size = means.length
  const mean = means.reduce((sum, one) => sum + one, 0) / size
  const alike = (by: number): number => {
    let [sum, one, other] = [0, 1e-6, 1e-6]
    for (let at = 0; at + by < size; at += 1) {
      const [a, b] = [means[at]! - mean, means[at + by]! - mean]
      sum += a * b
      one += a * a
      other += b * b
    }
    return sum / Math.sqrt(one * other)
  }
  let [best, dipped] = [0, false]
  for (let by = 2; by < size * 0.7; by += 1) {
    const found = alike(by)
    if (found < 0.1) dipped = true
    if (dipped && found > best) best = found
  }
  return best
}
