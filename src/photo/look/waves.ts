import { waveSide } from './fourier.ts'

/** Waves that turn so often in a window: what is slower are folds, what is faster is the sensor's noise. */
const [slowest, fastest] = [2, 24]
/** From here on waves are counted as of middle length, and as fine. */
const [middle, fine] = [5, 12]
/** A direction takes in waves this far beside it. */
const beside = 1.5
/** Directions that are tried for two lines square to each other. */
const directions = 24
/** Two waves run different ways where the sine of the angle between them is larger. */
const otherWay = 0.5

interface Wave {
  /** Where it and the same that turns the other way stand in the square. */
  readonly at: number
  readonly back: number
  readonly x: number
  readonly y: number
  readonly turns: number
}

/** Each wave stands twice, turning either way: half of the square is enough. */
const halfPlane: readonly Wave[] = Array.from({ length: waveSide ** 2 }, (_, at): Wave => {
  const signed = (n: number): number => (n < waveSide / 2 ? n : n - waveSide)
  const [x, y] = [signed(at % waveSide), signed(Math.floor(at / waveSide))]
  return { at, back: placeOf(-x, -y), x, y, turns: Math.hypot(x, y) }
}).filter(({ x, y }) => y > 0 || (y === 0 && x > 0))

/** The waves that may be a print's. */
export const printWaves = halfPlane.filter(({ turns }) => turns >= slowest && turns <= fastest)
export const noiseWaves = halfPlane.filter(({ turns }) => turns > fastest && turns <= waveSide / 2)

function placeOf(x: number, y: number): number {
  return ((y + waveSide) % waveSide) * waveSide + ((x + waveSide) % waveSide)
}

const numberAt = new Map(
  printWaves.flatMap(({ at, back }, number) => [[at, number] as const, [back, number] as const]),
)

/** For each direction the numbers of waves along it, and of those square to it alone. */
const lines = Array.from({ length: directions }, (_, n) => {
  const angle = (n * Math.PI) / 2 / directions
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  const along: number[] = []
  const across: number[] = []
  for (const [number, { x, y }] of printWaves.entries()) {
    if (Math.abs(y * cos - x * sin) <= beside) along.push(number)
    else if (Math.abs(x * cos + y * sin) <= beside) across.push(number)
  }
  return { angle, along: Uint16Array.from(along), across: Uint16Array.from(across) }
})

/** The share of waves so long that runs along two such lines where none stands out. */
const usual = Float64Array.from(printWaves, ({ turns }) =>
  Math.min(1, (8 * beside) / (2 * Math.PI * turns)),
)

/** For each wave the numbers of those next to it, and its own. */
const around = printWaves.map(({ x, y }) => {
  const near = new Set<number>()
  for (let dy = -1; dy <= 1; dy += 1)
    for (let dx = -1; dx <= 1; dx += 1) {
      const number = numberAt.get(placeOf(x + dx, y + dy))
      if (number !== undefined) near.add(number)
    }
  return Uint16Array.from(near)
})

/** What the waves of one window, or of many together, tell; shares are of all their power. */
export interface Told {
  /** Of waves of middle length, and of fine ones. */
  readonly middle: number
  readonly fine: number
  /** Of the strongest wave with its neighbours, and of the strongest that runs another way. */
  readonly first: number
  readonly second: number
  /** How often the strongest turns in a window. */
  readonly turns: number
  /** Of waves along two lines square to each other: the stronger line's, both, and both beyond what is usual. */
  readonly along: number
  readonly both: number
  readonly beyond: number
  /** Where those lines run, radians, a quarter turn at most. */
  readonly angle: number
}

/** `power`: of each of the `printWaves`. Stripes lie along one line, checks along two, other prints all over. */
export function toldByWaves(power: Float64Array): Told {
  const whole = power.reduce((sum, one) => sum + one, 1e-9)
  const peaks = new Float64Array(power.length)
  let best = 0
  for (let n = 0; n < power.length; n += 1) {
    const near = around[n]!
    let sum = 0
    for (let k = 0; k < near.length; k += 1) sum += power[near[k]!]!
    peaks[n] = sum
    if (sum > peaks[best]!) best = n
  }
  const first = printWaves[best]!
  let [inMiddle, inFine, expected, second] = [0, 0, 0, 0]
  for (let n = 0; n < power.length; n += 1) {
    const { x, y, turns } = printWaves[n]!
    if (turns >= fine) inFine += power[n]!
    else if (turns >= middle) inMiddle += power[n]!
    expected += power[n]! * usual[n]!
    const runsElse = Math.abs(x * first.y - y * first.x) > otherWay * turns * first.turns
    if (runsElse && peaks[n]! > second) second = peaks[n]!
  }
  const square = squareIn(power)
  return {
    middle: inMiddle / whole,
    fine: inFine / whole,
    first: peaks[best]! / whole,
    second: second / whole,
    turns: first.turns,
    along: square.along / whole,
    both: square.both / whole,
    beyond: (square.both - expected) / whole,
    angle: square.angle,
  }
}

/** The two lines square to each other that take in most. */
function squareIn(power: Float64Array): { along: number; both: number; angle: number } {
  let found = { along: 0, both: -1, angle: 0 }
  for (const { along, across, angle } of lines) {
    let [one, two] = [0, 0]
    for (let k = 0; k < along.length; k += 1) one += power[along[k]!]!
    for (let k = 0; k < across.length; k += 1) two += power[across[k]!]!
    if (one + two > found.both) found = { along: Math.max(one, two), both: one + two, angle }
  }
  return found
}
