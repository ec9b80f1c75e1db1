import { marked } from './planes.ts'

/**
 * The cheapest line that parts a picture in two (minimum cut by augmenting along search trees from both sides:
 * Boykov and Kolmogorov, IEEE PAMI 26 (2004) 1124). Each pixel leans to one side by `lean` (positive: inside);
 * to part two neighbours costs `bond`. Pixels that are `fixed` stay where their lean says.
 */
export interface Parting {
  readonly width: number
  readonly height: number
  readonly lean: Float32Array
  /** Eight for each pixel, in the order of `ways`; the same seen from both pixels, nothing beyond the edges. */
  readonly bond: Float32Array
  readonly fixed: Uint8Array
}

/** Where the neighbours lie; the one opposite to way `n` is way `7 - n`. */
export const ways = [
  [-1, -1],
  [0, -1],
  [1, -1],
  [-1, 0],
  [1, 0],
  [-1, 1],
  [0, 1],
  [1, 1],
] as const

const none = -1
const terminal = -2
const orphan = -3

/** For each pixel 1 where it lies inside. */
export function parted({ width, height, lean, bond, fixed }: Parting): Uint8Array {
  const size = width * height
  const step = ways.map(([x, y]) => y * width + x)
  const left = Float32Array.from(bond)
  const excess = Float32Array.from(lean)
  foldFixed({ width, height, lean, bond: left, fixed }, excess, step)

  const parent = new Int32Array(size).fill(none)
  const outer = new Uint8Array(size)
  const stamp = new Int32Array(size)
  const depth = new Int32Array(size)
  const queued = new Uint8Array(size)
  const queue = new Int32Array(size + 1)
  let [head, tail, held] = [0, 0, 0]
  const orphans: number[] = []
  let time = 0

  const activate = (node: number): void => {
    if (queued[node]) return
    queued[node] = 1
    queue[tail] = node
    tail = tail === size ? 0 : tail + 1
    held += 1
  }
  for (let node = 0; node < size; node += 1) {
    if (fixed[node] || excess[node] === 0) continue
    outer[node] = excess[node]! < 0 ? 1 : 0
    parent[node] = terminal
    depth[node] = 1
    activate(node)
  }

  /** The arc from the inner tree to the outer that the search met, or none. */
  const grow = (node: number): number => {
    for (let way = 0; way < 8; way += 1) {
      const arc = node * 8 + way
      const next = node + step[way]!
      if (bond[arc] === 0) continue
      const back = next * 8 + 7 - way
      if ((outer[node] ? left[back]! : left[arc]!) <= 0) continue
      if (parent[next] === none) {
        outer[next] = outer[node]!
        parent[next] = back
        stamp[next] = stamp[node]!
        depth[next] = depth[node]! + 1
        activate(next)
      } else if (outer[next] !== outer[node]) {
        return outer[node] ? back : arc
      } else if (stamp[next]! <= stamp[node]! && depth[next]! > depth[node]!) {
        parent[next] = back
        stamp[next] = stamp[node]!
        depth[next] = depth[node]! + 1
      }
    }
    return none
  }

  const toOf = (arc: number): number => (arc >> 3) + step[arc & 7]!
  const backOf = (arc: number): number => toOf(arc) * 8 + 7 - (arc & 7)

  const augment = (middle: number): void => {
    let least = left[middle]!
    let node = middle >> 3
    for (; parent[node] !== terminal; node = toOf(parent[node]!)) {
      least = Math.min(least, left[backOf(parent[node]!)]!)
    }
    least = Math.min(least, excess[node]!)
    for (node = toOf(middle); parent[node] !== terminal; node = toOf(parent[node]!)) {
      least = Math.min(least, left[parent[node]!]!)
    }
    least = Math.min(least, -excess[node]!)

    left[middle]! -= least
    left[backOf(middle)]! += least
    const lose = (lost: number): void => {
      parent[lost] = orphan
      orphans.push(lost)
    }
    for (node = middle >> 3; parent[node] !== terminal; ) {
      const up = parent[node]!
      const next = toOf(up)
      const down = backOf(up)
      left[up]! += least
      left[down]! -= least
      if (left[down]! <= 0) lose(node)
      node = next
    }
    excess[node]! -= least
    if (excess[node]! <= 0) lose(node)
    for (node = toOf(middle); parent[node] !== terminal; ) {
      const up = parent[node]!
      const next = toOf(up)
      left[backOf(up)]! += least
      left[up]! -= least
      if (left[up]! <= 0) lose(node)
      node = next
    }
    excess[node]! += least
    if (excess[node]! >= 0) lose(node)
  }

  const adopt = (node: number): void => {
    let [best, nearest] = [none, Infinity]
    for (let way = 0; way < 8; way += 1) {
      const arc = node * 8 + way
      if (bond[arc] === 0) continue
      const next = node + step[way]!
      if (outer[next] !== outer[node] || parent[next] === none) continue
      if ((outer[node] ? left[arc]! : left[next * 8 + 7 - way]!) <= 0) continue
      let far = 0
      let at = next
      for (;;) {
        if (stamp[at] === time) {
          far += depth[at]!
          break
        }
        const up = parent[at]!
        far += 1
        if (up === terminal) {
          stamp[at] = time
          depth[at] = 1
          break
        }
        if (up === orphan || up === none) {
          far = Infinity
          break
        }
        at = toOf(up)
      }
      if (far === Infinity) continue
      if (far < nearest) [best, nearest] = [arc, far]
      for (at = next; stamp[at] !== time; at = toOf(parent[at]!)) {
        stamp[at] = time
        depth[at] = far
        far -= 1
      }
    }
    parent[node] = best
    if (best !== none) {
      stamp[node] = time
      depth[node] = nearest + 1
      return
    }
    for (let way = 0; way < 8; way += 1) {
      const arc = node * 8 + way
      if (bond[arc] === 0) continue
      const next = node + step[way]!
      if (outer[next] !== outer[node] || parent[next] === none) continue
      if ((outer[node] ? left[arc]! : left[next * 8 + 7 - way]!) > 0) activate(next)
      const up = parent[next]!
      if (up !== terminal && up !== orphan && toOf(up) === node) {
        parent[next] = orphan
        orphans.push(next)
      }
    }
  }

  while (held > 0) {
    const node = queue[head]!
    if (parent[node] === none) {
      head = head === size ? 0 : head + 1
      held -= 1
      queued[node] = 0
      continue
    }
    const middle = grow(node)
    if (middle === none) {
      head = head === size ? 0 : head + 1
      held -= 1
      queued[node] = 0
      continue
    }
    time += 1
    augment(middle)
    for (let at = 0; at < orphans.length; at += 1) adopt(orphans[at]!)
    orphans.length = 0
  }
  return marked(size, (node) =>
    fixed[node] ? lean[node]! > 0 : parent[node] !== none && !outer[node],
  )
}

/** A bond to a fixed pixel is a lean to its side. */
function foldFixed(
  { width, height, lean, bond, fixed }: Parting,
  excess: Float32Array,
  step: readonly number[],
): void {
  for (let node = 0; node < width * height; node += 1) {
    for (let way = 0; way < 8; way += 1) {
      const arc = node * 8 + way
      if (bond[arc] === 0) continue
      const next = node + step[way]!
      if (!fixed[node] && !fixed[next]) continue
      if (!fixed[node]) excess[node]! += lean[next]! > 0 ? bond[arc]! : -bond[arc]!
      bond[arc] = 0
    }
  }
}
