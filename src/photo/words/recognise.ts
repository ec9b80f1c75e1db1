import type { Models } from './models.ts'
import { cutOut, type Picture, type Slab } from './picture.ts'

/** A line as read, and how likely each of its letters is, gaps left out, 0 to 1. */
export interface ReadLine {
  readonly text: string
  readonly likely: readonly number[]
}

/** The reading network takes lines of this height, of any width; pixels. */
const height = 48
const leastWidth = 48
const mostWidth = 1600
/** Widths are rounded up to a multiple of this: fewer different ones are planned for. */
const step = 16
/** So likely at least, in all steps between two letters, is a gap there. */
const enoughGap = 0.05

/** The words in a slab of the picture. */
export async function readLine(picture: Picture, slab: Slab, models: Models): Promise<ReadLine> {
  const { reading, runtime } = models
  const wanted = (slab.w / slab.h) * height
  const drawn = Math.round(Math.min(mostWidth, Math.max(8, wanted)))
  const width = Math.max(leastWidth, Math.ceil(drawn / step) * step)
  const { data } = cutOut(picture, slab, drawn, height)
  const plane = width * height
  // What is left of the width stays grey, as in training.
  const input = new Float32Array(3 * plane)
  for (let row = 0; row < height; row += 1) {
    for (let column = 0; column < drawn; column += 1) {
      const from = (row * drawn + column) * 3
      for (let channel = 0; channel < 3; channel += 1) {
        // Blue, green, red, from −1 to 1.
        input[channel * plane + row * width + column] = data[from + 2 - channel]! / 127.5 - 1
      }
    }
  }
  const tensor = new runtime.Tensor('float32', input, [1, 3, height, width])
  const found = await reading.run({ [reading.inputNames[0]!]: tensor })
  const { data: classes, dims } = found[reading.outputNames[0]!]!
  return spelled(classes as Float32Array, dims[1]!, dims[2]!, models.letters)
}

/**
 * The likeliest letter of each step, one of each run, "no letter" left out (connectionist temporal
 * classification). A gap between words is often read as no letter, with a gap the next likely: where that adds
 * up between two letters, it is one.
 */
function spelled(
  classes: Float32Array,
  steps: number,
  count: number,
  letters: readonly string[],
): ReadLine {
  const likely: number[] = []
  let text = ''
  let before = 0
  let gap = 0
  for (let at = 0; at < steps; at += 1) {
    let best = 0
    for (let letter = 1; letter < count; letter += 1) {
      if (classes[at * count + letter]! > classes[at * count + best]!) best = letter
    }
    if (best === 0) gap += classes[at * count + count - 1]!
    if (best !== 0 && best !== before) {
      const letter = letters[best] ?? ''
      if (gap > enoughGap && text !== '' && letter !== ' ' && !text.endsWith(' ')) text += ' '
      text += letter
      if (letter !== ' ') likely.push(classes[at * count + best]!)
    }
    if (best !== 0) gap = 0
    before = best
  }
  return { text, likely }
}
