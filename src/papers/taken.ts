import { type Extent, overlap } from './cloth-marks.ts'

const cell = 6

/** Rectangles of a drawing by where they lie, so that few are looked at. */
export class Taken {
  readonly #cells = new Map<string, Extent[]>()

  constructor(boxes: readonly Extent[]) {
    for (const box of boxes) this.add(box)
  }

  add(box: Extent): void {
    for (const key of cellsOf(box, 0)) {
      const there = this.#cells.get(key)
      if (there) there.push(box)
      else this.#cells.set(key, [box])
    }
  }

  /** Whether one overlaps the box, or comes nearer than `air`; those that are `own` do not count. */
  meets(box: Extent, air: number, own?: (other: Extent) => boolean): boolean {
    for (const key of cellsOf(box, air)) {
      for (const other of this.#cells.get(key) ?? []) {
        if (overlap(box, other, air) && !own?.(other)) return true
      }
    }
    return false
  }
}

function* cellsOf({ left, top, w, h }: Extent, air: number): Generator<string> {
  const at = (place: number): number => Math.floor(place / cell)
  for (let x = at(left - air); x <= at(left + w + air); x += 1) {
    for (let y = at(top - air); y <= at(top + h + air); y += 1) yield `${x},${y}`
  }
}
