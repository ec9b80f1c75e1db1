/**
 * Sets of count vectors of which none is at least as good as another in every size: what a rectangle of
 * cloth can give. The program over rectangles knows them by this interface alone.
 */
export interface Fronts<F> {
  /** Nothing can be done with the rectangle at all. */
  readonly impossible: F
  /** It gives no piece. */
  readonly nothing: F
  readonly piece: (size: number) => F
  /** The best of `alone` and of every sum over a pair. */
  readonly best: (alone: readonly F[], pairs: readonly (readonly [F, F])[]) => F
}

/** `n` vectors of `counts.length / n` counts each, one after another, and the largest of each count. */
export interface Vectors {
  readonly n: number
  readonly counts: Uint16Array
  readonly most: Uint16Array
}

/** Up to so many cells a table of all vectors is walked; beyond it vectors are compared one by one. */
const tableCells = 1 << 20

/** A table with more cells than this for every sum takes longer to walk than the sums to compare. */
const cellsForSum = 16

/** Fronts of more counts than this are not looked for among those made so far. */
const alikeUpTo = 256

interface Clamping {
  readonly steps: readonly number[]
  /** The size whose count stands in the cell. */
  readonly last: number
  readonly over: readonly number[]
}

/** Vectors of `sizes` counts, clamped at `bounds` where those are given. */
export class VectorFronts implements Fronts<Vectors> {
  readonly impossible: Vectors
  readonly nothing: Vectors
  readonly #sizes: number
  readonly #bounds: readonly number[] | undefined
  #table = new Int32Array(1024)
  /** Small fronts made so far: the same front is the same object, which lets a tree pass over cuts. */
  readonly #alike = new Map<string, Vectors>()

  constructor(sizes: number, bounds?: readonly number[]) {
    this.#sizes = sizes
    this.#bounds = bounds
    this.impossible = { n: 0, counts: new Uint16Array(0), most: new Uint16Array(sizes) }
    this.nothing = { n: 1, counts: new Uint16Array(sizes), most: new Uint16Array(sizes) }
  }

  piece(size: number): Vectors {
    const counts = new Uint16Array(this.#sizes)
    counts[size] = Math.min(1, this.#bounds?.[size] ?? 1)
    return { n: 1, counts, most: counts }
  }

  best(alone: readonly Vectors[], pairs: readonly (readonly [Vectors, Vectors])[]): Vectors {
    const useful = pairs.filter(([a, b]) => a.n > 0 && b.n > 0)
    const single = alone.filter(({ n }) => n > 0)
    if (useful.length === 0 && single.length === 0) return this.impossible
    const all = [...useful, ...single.map((one) => [one, this.nothing] as const)]
    const most = this.#mostOf(all)
    const last = most.indexOf(Math.max(...most))
    const cells = most.reduce(
      (product, m, size) => (size === last ? product : product * (m + 1)),
      1,
    )
    const sums = all.reduce((total, [a, b]) => total + a.n * b.n, 0)
    return cells <= tableCells && cells <= cellsForSum * sums
      ? this.#tabled(all, most, last, cells)
      : this.#compared(all, most)
  }

  #mostOf(pairs: readonly (readonly [Vectors, Vectors])[]): number[] {
    const most = new Array<number>(this.#sizes).fill(0)
    for (const [a, b] of pairs) {
      for (let size = 0; size < this.#sizes; size += 1) {
        const sum = a.most[size]! + b.most[size]!
        if (sum > most[size]!) most[size] = sum
      }
    }
    return most.map((sum, size) => Math.min(sum, this.#bounds?.[size] ?? sum))
  }

  /** For each choice of all counts but one, the most of that one: sums are additions of cell numbers. */
  #tabled(
    pairs: readonly (readonly [Vectors, Vectors])[],
    most: readonly number[],
    last: number,
    cells: number,
  ): Vectors {
    const steps = most.map(() => 0)
    let step = 1
    for (let size = this.#sizes - 1; size >= 0; size -= 1) {
      if (size === last) continue
      steps[size] = step
      step *= most[size]! + 1
    }
    if (this.#table.length < cells) this.#table = new Int32Array(cells * 2)
    const table = this.#table.fill(-1, 0, cells)
    for (const [a, b] of pairs) {
      const over = this.#clampedSizes(a, b)
      if (over.length > 0) this.#addClamped(table, a, b, { steps, last, over })
      else this.#add(table, this.#cellsOf(a, steps), a, this.#cellsOf(b, steps), b, last)
    }
    return this.#undominated(table, most, steps, last, cells)
  }

  #cellsOf({ n, counts }: Vectors, steps: readonly number[]): Int32Array {
    const width = this.#sizes
    const at = new Int32Array(n)
    for (let v = 0; v < n; v += 1) {
      let cell = 0
      for (let size = 0; size < width; size += 1) cell += counts[v * width + size]! * steps[size]!
      at[v] = cell
    }
    return at
  }

  #add(
    table: Int32Array,
    cellsA: Int32Array,
    a: Vectors,
    cellsB: Int32Array,
    b: Vectors,
    last: number,
  ): void {
    const width = this.#sizes
    for (let i = 0; i < a.n; i += 1) {
      const cell = cellsA[i]!
      const count = a.counts[i * width + last]!
      for (let j = 0; j < b.n; j += 1) {
        const at = cell + cellsB[j]!
        const sum = count + b.counts[j * width + last]!
        if (sum > table[at]!) table[at] = sum
      }
    }
  }

  /** Sizes of which the two together could make more than is of use. */
  #clampedSizes(a: Vectors, b: Vectors): number[] {
    const bounds = this.#bounds
    if (!bounds) return []
    return [...bounds.keys()].filter((size) => a.most[size]! + b.most[size]! > bounds[size]!)
  }

  /** The sum's cell, less the steps of what goes beyond a bound. */
  #addClamped(table: Int32Array, a: Vectors, b: Vectors, { steps, last, over }: Clamping): void {
    const width = this.#sizes
    const bounds = this.#bounds!
    const [cellsA, cellsB] = [this.#cellsOf(a, steps), this.#cellsOf(b, steps)]
    const most = bounds[last]!
    for (let i = 0; i < a.n; i += 1) {
      const from = i * width
      for (let j = 0; j < b.n; j += 1) {
        let at = cellsA[i]! + cellsB[j]!
        for (const size of over) {
          const beyond = a.counts[from + size]! + b.counts[j * width + size]! - bounds[size]!
          if (beyond > 0) at -= beyond * steps[size]!
        }
        const sum = Math.min(a.counts[from + last]! + b.counts[j * width + last]!, most)
        if (sum > table[at]!) table[at] = sum
      }
    }
  }

  /** Cells that no cell with as much of everything reaches: the table becomes its own upper hull. */
  #undominated(
    table: Int32Array,
    most: readonly number[],
    steps: readonly number[],
    last: number,
    cells: number,
  ): Vectors {
    const width = this.#sizes
    const dimensions = most.flatMap((m, size) =>
      size === last ? [] : [{ size, m, step: steps[size]! }],
    )
    const found: number[] = []
    const counts = new Int32Array(width)
    // From the last cell down, what lies above has been seen; a cell stands if nothing above has as much.
    for (let cell = cells - 1; cell >= 0; cell -= 1) {
      let rest = cell
      let above = -1
      for (const { size, m, step } of dimensions) {
        const count = Math.floor(rest / step)
        rest -= count * step
        counts[size] = count
        if (count < m) above = Math.max(above, table[cell + step]!)
      }
      const own = table[cell]!
      if (own > above) {
        counts[last] = own
        for (let size = 0; size < width; size += 1) found.push(counts[size]!)
      } else {
        table[cell] = above
      }
    }
    return this.#made(found)
  }

  #made(found: readonly number[]): Vectors {
    const width = this.#sizes
    const counts = Uint16Array.from(found)
    const most = new Uint16Array(width)
    for (let at = 0; at < counts.length; at += 1) {
      const size = at % width
      if (counts[at]! > most[size]!) most[size] = counts[at]!
    }
    const made = { n: counts.length / width, counts, most }
    if (counts.length > alikeUpTo) return made
    const key = counts.join()
    const known = this.#alike.get(key)
    if (known) return known
    this.#alike.set(key, made)
    return made
  }

  /** Each vector is one number, a digit for each size, so that the same one is looked at once. */
  #compared(pairs: readonly (readonly [Vectors, Vectors])[], most: readonly number[]): Vectors {
    const width = this.#sizes
    const sums = new Set<number>()
    for (const [a, b] of pairs) {
      for (let i = 0; i < a.n; i += 1) {
        for (let j = 0; j < b.n; j += 1) {
          let sum = 0
          for (let size = 0; size < width; size += 1) {
            const count = a.counts[i * width + size]! + b.counts[j * width + size]!
            sum = sum * (most[size]! + 1) + Math.min(count, most[size]!)
          }
          sums.add(sum)
        }
      }
    }
    const vectors = [...sums].map((sum) => digits(sum, most))
    const kept: Uint16Array[] = []
    for (const { counts } of vectors.sort((a, b) => b.total - a.total)) {
      if (!kept.some((other) => covers(other, counts))) kept.push(counts)
    }
    return this.#made(kept.flatMap((vector) => [...vector]))
  }
}

function digits(sum: number, most: readonly number[]): { counts: Uint16Array; total: number } {
  const counts = new Uint16Array(most.length)
  let [rest, total] = [sum, 0]
  for (let size = most.length - 1; size >= 0; size -= 1) {
    const base = most[size]! + 1
    counts[size] = rest % base
    rest = Math.floor(rest / base)
    total += counts[size]!
  }
  return { counts, total }
}

function covers(a: Uint16Array, b: Uint16Array): boolean {
  for (let size = 0; size < a.length; size += 1) if (a[size]! < b[size]!) return false
  return true
}

/** The vectors of a front, descending lexicographically. */
export function listed({ n, counts }: Vectors): number[][] {
  const width = n === 0 ? 0 : counts.length / n
  return Array.from({ length: n }, (_, v) => [...counts.subarray(v * width, (v + 1) * width)]).sort(
    (a, b) => {
      const at = a.findIndex((count, size) => count !== b[size])
      return at < 0 ? 0 : b[at]! - a[at]!
    },
  )
}
