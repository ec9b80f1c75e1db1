/** Layers of a small network: each sums its inputs by weight, all but the last then cut off below zero. */
export interface Net {
  /** How each input is brought to about −1 to 1: less the mean, divided by the spread. */
  readonly mean: readonly number[]
  readonly spread: readonly number[]
  readonly layers: readonly Layer[]
}

/** `weights` holds the inputs of the first output, then those of the next. */
export interface Layer {
  readonly weights: readonly number[]
  readonly bias: readonly number[]
}

/** Further off than so many spreads, an input says nothing more. */
export const furthest = 4

/**
 * A net made ready: takes its inputs from an array, from a place on, and answers in one that it keeps. In
 * double precision, which these machines multiply without turning numbers over.
 */
export function runner({
  mean,
  spread,
  layers,
}: Net): (inputs: ArrayLike<number>, from?: number) => Float64Array {
  const scaled = new Float64Array(mean.length)
  const ready = layers.map(({ weights, bias }) => ({
    weights: Float64Array.from(weights),
    bias: Float64Array.from(bias),
    out: new Float64Array(bias.length),
  }))
  const factor = Float64Array.from(spread, (one) => 1 / one)
  const middle = Float64Array.from(mean)
  return (inputs, start = 0) => {
    for (let n = 0; n < scaled.length; n += 1) {
      const value = (inputs[start + n]! - middle[n]!) * factor[n]!
      scaled[n] = Math.max(-furthest, Math.min(furthest, value))
    }
    let from = scaled
    for (let n = 0; n < ready.length; n += 1) {
      const { weights, bias, out } = ready[n]!
      const last = n === ready.length - 1
      const width = from.length
      for (let to = 0, at = 0; to < out.length; to += 1) {
        let sum = bias[to]!
        for (let k = 0; k < width; k += 1, at += 1) sum += weights[at]! * from[k]!
        out[to] = last || sum > 0 ? sum : 0
      }
      from = out
    }
    return from
  }
}
