import { furthest, type Net } from '../../src/photo/look/net.ts'
import { randomFrom } from './learn-chance.ts'

/** What a net is to learn: inputs one example's after another's, and for each what it should say. */
export interface Lesson {
  readonly inputs: Float32Array
  /** Inputs of one example. */
  readonly width: number
  /** With one output how likely it is, 0 to 1; with several the number of the right one. */
  readonly wanted: ArrayLike<number>
  readonly weights?: ArrayLike<number>
}

export interface Manner {
  readonly hidden: readonly number[]
  readonly outputs: number
  readonly rounds: number
  readonly batch: number
  readonly seed: number
  /** Inputs are shaken by so much of their spread, and weights drawn to nothing, so that little is learnt by heart. */
  readonly noise: number
  readonly decay: number
}

const rate = 3e-3

/** Trains a small net by batches (Adam: Kingma and Ba, 2015, from memory), the same for the same seed. */
export function learn(lesson: Lesson, manner: Manner): Net {
  const { inputs, width, wanted, weights } = lesson
  const { real, normal } = randomFrom(manner.seed)
  const count = inputs.length / width
  const { mean, spread } = scaleOf(inputs, width)
  const sizes = [width, ...manner.hidden, manner.outputs]
  const layers = sizes.slice(1).map((size, n) => layerOf(sizes[n]!, size, normal))
  const values = sizes.map((size) => new Float64Array(size))
  const blame = sizes.map((size) => new Float64Array(size))
  const order = Array.from({ length: count }, (_, n) => n)
  const steps = Math.ceil(count / manner.batch) * manner.rounds
  let step = 0
  for (let round = 0; round < manner.rounds; round += 1) {
    for (let n = count - 1; n > 0; n -= 1) {
      const other = Math.floor(real() * (n + 1))
      ;[order[n], order[other]] = [order[other]!, order[n]!]
    }
    for (let from = 0; from < count; from += manner.batch) {
      const batch = order.slice(from, from + manner.batch)
      for (const example of batch) {
        for (let k = 0; k < width; k += 1) {
          const off = (inputs[example * width + k]! - mean[k]!) / spread[k]!
          values[0]![k] = Math.max(-furthest, Math.min(furthest, off)) + normal() * manner.noise
        }
        forward(layers, values)
        blameOutputs(values.at(-1)!, blame.at(-1)!, wanted[example]!, weights?.[example] ?? 1)
        backward(layers, values, blame)
      }
      step += 1
      const eased = rate * (0.5 + 0.5 * Math.cos((Math.PI * step) / steps))
      for (const layer of layers)
        improve(layer, { eased, step, batch: batch.length, decay: manner.decay })
    }
  }
  const short = (values: Float64Array): number[] =>
    Array.from(values, (one) => Number(one.toPrecision(4)))
  return {
    mean: short(mean),
    spread: short(spread),
    layers: layers.map(({ weights: all, bias }) => ({
      weights: short(all.now),
      bias: short(bias.now),
    })),
  }
}

function scaleOf(
  inputs: Float32Array,
  width: number,
): { mean: Float64Array; spread: Float64Array } {
  const [mean, spread] = [new Float64Array(width), new Float64Array(width)]
  const count = inputs.length / width
  for (const [n, value] of inputs.entries()) mean[n % width]! += value / count
  for (const [n, value] of inputs.entries())
    spread[n % width]! += (value - mean[n % width]!) ** 2 / count
  return { mean, spread: spread.map((one) => Math.sqrt(one) + 1e-6) }
}

/** Numbers that are learnt: as they are, what the batch says of them, and the two running means of that. */
interface Learnt {
  readonly now: Float64Array
  readonly slope: Float64Array
  readonly drift: Float64Array
  readonly swing: Float64Array
}

interface Layer {
  readonly weights: Learnt
  readonly bias: Learnt
}

const learnt = (now: Float64Array): Learnt => ({
  now,
  slope: new Float64Array(now.length),
  drift: new Float64Array(now.length),
  swing: new Float64Array(now.length),
})

const layerOf = (from: number, to: number, normal: () => number): Layer => ({
  weights: learnt(Float64Array.from({ length: from * to }, () => normal() * Math.sqrt(2 / from))),
  bias: learnt(new Float64Array(to)),
})

function forward(layers: readonly Layer[], values: readonly Float64Array[]): void {
  for (const [n, { weights, bias }] of layers.entries()) {
    const [from, to] = [values[n]!, values[n + 1]!]
    const last = n === layers.length - 1
    for (let j = 0, at = 0; j < to.length; j += 1) {
      let sum = bias.now[j]!
      for (let k = 0; k < from.length; k += 1, at += 1) sum += weights.now[at]! * from[k]!
      to[j] = last || sum > 0 ? sum : 0
    }
  }
}

/** Of the likelihood's logarithm: with one output by the logistic function, else by shares of one. */
function blameOutputs(
  out: Float64Array,
  blame: Float64Array,
  wanted: number,
  weight: number,
): void {
  if (out.length === 1) {
    blame[0] = weight * (1 / (1 + Math.exp(-out[0]!)) - wanted)
    return
  }
  const most = Math.max(...out)
  const whole = out.reduce((sum, one) => sum + Math.exp(one - most), 0)
  for (let j = 0; j < out.length; j += 1) {
    blame[j] = weight * (Math.exp(out[j]! - most) / whole - Number(j === wanted))
  }
}

function backward(
  layers: readonly Layer[],
  values: readonly Float64Array[],
  blame: readonly Float64Array[],
): void {
  for (let n = layers.length - 1; n >= 0; n -= 1) {
    const { weights, bias } = layers[n]!
    const [from, own, below] = [values[n]!, blame[n + 1]!, blame[n]!]
    below.fill(0)
    for (let j = 0; j < own.length; j += 1) {
      const part = own[j]!
      if (part === 0) continue
      bias.slope[j]! += part
      for (let k = 0, at = j * from.length; k < from.length; k += 1, at += 1) {
        weights.slope[at]! += part * from[k]!
        below[k]! += part * weights.now[at]!
      }
    }
    if (n > 0) for (let k = 0; k < from.length; k += 1) if (from[k]! <= 0) below[k] = 0
  }
}

interface Step {
  readonly eased: number
  readonly step: number
  readonly batch: number
  readonly decay: number
}

function improve({ weights, bias }: Layer, how: Step): void {
  move(weights, how, how.decay)
  move(bias, how, 0)
}

function move(
  { now, slope, drift, swing }: Learnt,
  { eased, step, batch }: Step,
  decay: number,
): void {
  const [one, two] = [1 - 0.9 ** step, 1 - 0.999 ** step]
  for (let k = 0; k < now.length; k += 1) {
    const own = slope[k]! / batch
    drift[k] = 0.9 * drift[k]! + 0.1 * own
    swing[k] = 0.999 * swing[k]! + 0.001 * own * own
    now[k]! -= eased * (drift[k]! / one / (Math.sqrt(swing[k]! / two) + 1e-8) + decay * now[k]!)
    slope[k] = 0
  }
}
