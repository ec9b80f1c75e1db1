import { expect, test } from 'vitest'
import { type Parting, parted, ways } from '../../../src/photo/look/cut.ts'
import { random } from '../../help/xorshift.ts'

const below = random(77)

function drawn(): Parting {
  const [width, height] = [2 + below(3), 2 + below(3)]
  const size = width * height
  const bond = new Float32Array(size * 8)
  for (let at = 0; at < size; at += 1) {
    for (const way of [4, 5, 6, 7]) {
      const [dx, dy] = ways[way]!
      const x = (at % width) + dx
      const y = Math.floor(at / width) + dy
      if (x < 0 || x >= width || y >= height) continue
      const cost = below(5) === 0 ? 0 : below(10)
      bond[at * 8 + way] = cost
      bond[(y * width + x) * 8 + 7 - way] = cost
    }
  }
  return {
    width,
    height,
    lean: Float32Array.from({ length: size }, () => below(21) - 10),
    bond,
    fixed: Uint8Array.from({ length: size }, () => Number(below(7) === 0)),
  }
}

/** What a parting costs; one that moves a fixed pixel is out of the question. */
function costOf({ width, lean, bond, fixed }: Parting, inside: (at: number) => boolean): number {
  let cost = 0
  for (let at = 0; at < lean.length; at += 1) {
    if (inside(at) !== lean[at]! > 0) {
      if (fixed[at]) return Infinity
      cost += Math.abs(lean[at]!)
    }
    for (const way of [4, 5, 6, 7]) {
      const [dx, dy] = ways[way]!
      const to = at + dy * width + dx
      if (bond[at * 8 + way]! > 0 && inside(at) !== inside(to)) cost += bond[at * 8 + way]!
    }
  }
  return cost
}

// Against every one of the up to 65,536 ways to part a small picture.
test('no parting is cheaper than the one that is found', () => {
  for (let round = 0; round < 60; round += 1) {
    const parting = drawn()
    const found = parted(parting)
    let least = Infinity
    for (let way = 0; way < 1 << found.length; way += 1) {
      least = Math.min(
        least,
        costOf(parting, (at) => ((way >> at) & 1) === 1),
      )
    }
    expect(costOf(parting, (at) => found[at] === 1)).toBeCloseTo(least, 3)
  }
})
