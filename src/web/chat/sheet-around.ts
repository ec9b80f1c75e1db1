/** Places in the order in which they lie around their middle, so that the line between them never crosses itself. */
export function around<T extends readonly [x: number, y: number]>(places: readonly T[]): T[] {
  const mean = (k: 0 | 1) => places.reduce((sum, place) => sum + place[k], 0) / places.length
  const [x, y] = [mean(0), mean(1)]
  const turn = (place: T) => Math.atan2(place[1] - y, place[0] - x)
  return [...places].sort((a, b) => turn(a) - turn(b))
}
