import type { Chance } from './chance.ts'

/** What a camera's hand, sensor and file do to a picture. */

/** How the pixels of a photo of an EXIF orientation are kept for a viewer to turn them back, degrees clockwise. */
export const storedTurn: Readonly<Record<1 | 3 | 6 | 8, number>> = { 1: 0, 3: 180, 6: 270, 8: 90 }

/** A kernel that smears along a line, `reach` px to either side; degrees. */
export function streak(reach: number, towards: number) {
  const side = 2 * reach + 1
  const kernel = new Array<number>(side * side).fill(0)
  const dx = Math.cos((towards * Math.PI) / 180)
  const dy = Math.sin((towards * Math.PI) / 180)
  for (let step = -reach; step <= reach; step += 0.5)
    kernel[Math.round(reach + step * dy) * side + Math.round(reach + step * dx)] = 1
  return { width: side, height: side, kernel }
}

/** How many numbers `bell` gives: a power of two. */
export const bells = 1 << 14

/** Numbers about 0 as noise has them, of a standard deviation. */
export const bell = (chance: Chance, deviation: number): Float32Array =>
  Float32Array.from({ length: bells }, () => {
    const far = Math.sqrt(-2 * Math.log(chance.real(1e-6, 1)))
    return deviation * far * Math.cos(2 * Math.PI * chance.real(0, 1))
  })
