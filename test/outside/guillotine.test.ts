import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { type Fronts, listed, VectorFronts } from '../../src/quilt/cut/fronts.ts'
import { CutTree } from '../../src/quilt/cut/tree.ts'

// Data: J. E. Beasley, J. Oper. Res. Soc. 36 (1985) 297 (gcut), and N. Christofides and C. Whitlock,
// Operations Research 25 (1977) 30 (cgcut), distributed as OR-Library, read from the ESICUP collection
// (CC0). Optima of cgcut, fixed: a stored benchmark file; the others were computed by exact programs
// that share nothing with this one, as the files say under "verification".
interface Published {
  readonly plate: { readonly length: number; readonly width: number }
  readonly pieces: readonly {
    readonly length: number
    readonly width: number
    readonly value: number
    readonly max_copies?: number
  }[]
  readonly optimum: { readonly fixed_orientation: number; readonly rotation_90_allowed: number }
}

const published = (name: string): Published =>
  JSON.parse(readFileSync(new URL(`cutting/${name}.json`, import.meta.url), 'utf8'))

const panelOf = ({ plate, pieces }: Published, rot: boolean) => ({
  W: plate.length,
  H: plate.width,
  pieces: pieces.map(({ length, width }) => ({ w: length, h: width, rot })),
})

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
  ['cgcut1', [false, true]],
  ['cgcut2', [false]],
  ['cgcut3', [false]],
] as const)('%s, whose copies are limited, is cut to its published optimum', (name, turning) => {
  const set = published(name)
  const bounds = set.pieces.map(({ max_copies }) => max_copies!)
  const value = (counts: readonly number[]) =>
    counts.reduce((sum, count, size) => sum + count * set.pieces[size]!.value, 0)
  for (const rot of turning) {
    const panel = panelOf(set, rot)
    const fronts = new VectorFronts(panel.pieces.length, bounds)
    const tree = new CutTree(panel, fronts, { defects: [], block: null })
    const most = Math.max(...listed(tree.frontOf([0, 0, panel.W, panel.H])).map(value))
    expect(most).toBe(set.optimum[rot ? 'rotation_90_allowed' : 'fixed_orientation'])
  }
})
