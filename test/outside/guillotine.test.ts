import { expect, test } from 'vitest'
import type { Fronts } from '../../src/quilt/cut/fronts.ts'
import { CutTree } from '../../src/quilt/cut/tree.ts'
import { limited, panelOf, published } from '../help/plates.ts'

/** What a rectangle is worth at most, copies without limit. */
const worth = (values: readonly number[]): Fronts<number> => ({
  impossible: -1,
  nothing: 0,
  piece: (size) => values[size]!,
  best: (alone, pairs) => Math.max(...alone, ...pairs.map(([a, b]) => a + b)),
})

test.each(['gcut1', 'gcut2', 'gcut3', 'gcut4', 'gcut5', 'gcut6', 'gcut9'])(
  '%s is cut to its published optimum, fixed and turned',
  (name) => {
    const set = published(name)
    const most = (rot: boolean) => {
      const panel = panelOf(set, rot)
      const fronts = worth(set.pieces.map(({ value }) => value))
      const tree = new CutTree(panel, fronts, { defects: [], block: null })
      return tree.frontOf([0, 0, panel.W, panel.H])
    }
    expect(most(false)).toBe(set.optimum.fixed_orientation)
    expect(most(true)).toBe(set.optimum.rotation_90_allowed)
  },
)

test.each([
  ['cgcut1', false],
  ['cgcut1', true],
])('%s, whose copies are limited, is cut to its published optimum, turned: %s', (name, rot) => {
  const { most, published } = limited(name, rot)
  expect(most).toBe(published)
})
