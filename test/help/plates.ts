import { readFileSync } from 'node:fs'
import { listed, VectorFronts } from '../../src/quilt/cut/fronts.ts'
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

export const published = (name: string): Published =>
  JSON.parse(readFileSync(new URL(`../outside/cutting/${name}.json`, import.meta.url), 'utf8'))

export const panelOf = ({ plate, pieces }: Published, rot: boolean) => ({
  W: plate.length,
  H: plate.width,
  pieces: pieces.map(({ length, width }) => ({ w: length, h: width, rot })),
})

/** What a plate is worth at most where copies are limited, pieces turned or not, and what was published. */
export function limited(name: string, rot: boolean): { most: number; published: number } {
  const set = published(name)
  const bounds = set.pieces.map(({ max_copies }) => max_copies!)
  const value = (counts: readonly number[]) =>
    counts.reduce((sum, count, size) => sum + count * set.pieces[size]!.value, 0)
  const panel = panelOf(set, rot)
  const fronts = new VectorFronts(panel.pieces.length, bounds)
  const tree = new CutTree(panel, fronts, { defects: [], block: null })
  const most = Math.max(...listed(tree.frontOf([0, 0, panel.W, panel.H])).map(value))
  return { most, published: set.optimum[rot ? 'rotation_90_allowed' : 'fixed_orientation'] }
}
