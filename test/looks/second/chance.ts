import type { Chance as FullChance } from '../../help/chance.ts'
import { randomFrom } from '../learn-chance.ts'

/**
 * What a photo of the second maker draws from. Numbers come one after the other, so the order of drawing is
 * part of a photo: arguments, operands and entries draw as they are written, from left to right, and whoever
 * moves one makes other photos of the same seeds.
 */
export type Chance = Pick<FullChance, 'whole' | 'real' | 'happens' | 'one'>

/** From the least up to the most. */
export type Range = readonly [least: number, most: number]

/** Sets keep so far from each other that no photo of one begins as one of the next does. */
const photosBetweenSets = 100_003
/** 2^32 over the golden ratio: seeds that lie close together begin far apart (Knuth, from memory). */
const scatter = 2_654_435_761
/** First numbers of close seeds are alike still. */
const thrownAway = 10

/** The chance of one photo of a set. */
export function chanceOf(seed: number, number: number): Chance {
  const { real: next } = randomFrom((seed * photosBetweenSets + number) * scatter)
  for (let n = 0; n < thrownAway; n++) next()

  const real = (least: number, most: number) => least + (most - least) * next()
  return {
    real,
    whole: (least, most) => Math.floor(real(least, most + 1)),
    happens: (share) => next() < share,
    one: <T>(among: readonly T[]): T => among[Math.floor(next() * among.length)]!,
  }
}
