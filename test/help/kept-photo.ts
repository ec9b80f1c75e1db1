import type { SafePhoto } from '../../src/photo/safe.ts'

/** A photo as it comes from being made safe, its pictures words that tell them apart. */
export const photoOf = (full: string): SafePhoto => ({
  width: 1,
  height: 1,
  full: Buffer.from(full),
  view: Buffer.from(`${full} view`),
  thumb: Buffer.from(`${full} thumb`),
  cloth: Buffer.from(`${full} cloth`),
  seen: { mean: '#35619f', main: [{ colour: '#35619f', share: 1 }] },
})
