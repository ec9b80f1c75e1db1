const aslant = Math.SQRT2

/**
 * How far each pixel lies from the nearest marked one, px, straight steps counted 1 and slanting ones √2 (a chamfer
 * distance: Borgefors, Computer Vision, Graphics, and Image Processing 34 (1986) 344). Infinity where none is marked.
 */
export function distances(marks: Uint8Array, width: number, height: number): Float32Array {
  const far = Float32Array.from(marks, (mark) => (mark ? 0 : Number.POSITIVE_INFINITY))
  const nearer = (at: number, by: number, step: number): void => {
    far[at] = Math.min(far[at]!, far[at + by]! + step)
  }
  for (let y = 0, at = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1, at += 1) {
      if (x > 0) nearer(at, -1, 1)
      if (y === 0) continue
      nearer(at, -width, 1)
      if (x > 0) nearer(at, -width - 1, aslant)
      if (x < width - 1) nearer(at, 1 - width, aslant)
    }
  }
  for (let y = height - 1, at = width * height - 1; y >= 0; y -= 1) {
    for (let x = width - 1; x >= 0; x -= 1, at -= 1) {
      if (x < width - 1) nearer(at, 1, 1)
      if (y === height - 1) continue
      nearer(at, width, 1)
      if (x < width - 1) nearer(at, width + 1, aslant)
      if (x > 0) nearer(at, width - 1, aslant)
    }
  }
  return far
}
