import type { Step } from './beam.ts'
import type { Look } from './looks.ts'
import type { Models } from './models.ts'
import { cutOut, type Picture, type Slab } from './picture.ts'

/** The reading network takes lines of this height, of any width; pixels. */
const height = 48
const leastWidth = 48
const mostWidth = 1600
/** Widths are rounded up to a multiple of this: fewer different ones are planned for. */
const step = 16
/** What is less likely at its place is left out. */
const leastLikely = 0.0005
/** So many guesses are kept of each place. */
const mostGuesses = 8

/** What the reading network sees along a slab of the picture, from its left to its right. */
export async function readSteps(picture: Picture, slab: Slab, models: Models): Promise<Look> {
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
  const count = dims[1]!
  const steps = stepsOf(classes as Float32Array, count, dims[2]!, models.letters)
  return { steps, along: (count * drawn) / width }
}

function stepsOf(
  classes: Float32Array,
  steps: number,
  count: number,
  letters: readonly string[],
): Step[] {
  return Array.from({ length: steps }, (_, at) => {
    const guesses: { letter: string; likely: number }[] = []
    for (let letter = 0; letter < count; letter += 1) {
      const likely = classes[at * count + letter]!
      if (likely >= leastLikely) guesses.push({ letter: letters[letter] ?? '', likely })
    }
    return guesses.sort((a, b) => b.likely - a.likely).slice(0, mostGuesses)
  })
}
