/** Pixels that hang together. */
export interface Pieces {
  /** For each pixel the number of its piece from 1, or 0. */
  readonly of: Int32Array
  readonly sizes: readonly number[]
  readonly atEdge: readonly boolean[]
}

/** Pixels of a value that hang together side by side. */
export function piecesOf(data: Uint8Array, width: number, height: number, value: number): Pieces {
  const of = new Int32Array(width * height)
  const sizes: number[] = []
  const atEdge: boolean[] = []
  const stack: number[] = []
  for (let start = 0; start < data.length; start += 1) {
    if (data[start] !== value || of[start] !== 0) continue
    const piece = sizes.length + 1
    let [size, edge] = [0, false]
    of[start] = piece
    stack.push(start)
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      size += 1
      const x = at % width
      const reach = (to: number): void => {
        if (data[to] !== value || of[to] !== 0) return
        of[to] = piece
        stack.push(to)
      }
      if (x > 0) reach(at - 1)
      else edge = true
      if (x < width - 1) reach(at + 1)
      else edge = true
      if (at >= width) reach(at - width)
      else edge = true
      if (at < data.length - width) reach(at + width)
      else edge = true
    }
    sizes.push(size)
    atEdge.push(edge)
  }
  return { of, sizes, atEdge }
}
