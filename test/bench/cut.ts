import type { PanelToCut } from '../../src/quilt/cut/panel.ts'
import { patterns } from '../../src/quilt/cut/patterns.ts'
import { replayed } from '../help/replay-cuts.ts'
import { random } from '../help/xorshift.ts'

/** A panel as large as a garment's, quarter inches: up to four sizes, three defects, one graphic in three. */
function panelFrom(below: (most: number) => number, least: number): PanelToCut {
  const side = () => least + below(50)
  const [W, H] = [48 + below(64), 64 + below(72)]
  const pieces = Array.from({ length: 1 + below(4) }, () => ({
    w: side(),
    h: side(),
    rot: below(2) === 0,
  }))
  const defects = Array.from({ length: below(4) }, () => ({
    x: below(W),
    y: below(H),
    w: 4 + below(20),
    h: 4 + below(20),
  }))
  if (below(3) > 0) return { W, H, pieces, defects }
  const [gw, gh] = [16 + below(30), 16 + below(30)]
  const feature = {
    gx: below(Math.max(1, W - gw + 1)),
    gy: below(Math.max(1, H - gh + 1)),
    gw,
    gh,
    bw: gw + 6 + below(8),
    bh: gh + 6 + below(8),
    tol2: below(4),
    required: below(2) === 0,
  }
  return { W, H, pieces, defects, feature }
}

/**
 * How long all patterns and their lists of cuts take, over random panels at garment size. Every list is
 * followed. `least` is the shortest side of a piece, quarter inches.
 */
export async function benchCut(given: readonly string[]): Promise<void> {
  const [panels = 150, least = 20, seed = 11] = given.map(Number)
  const below = random(seed)
  const took: number[] = []
  let lists = 0
  for (let n = 0; n < panels; n += 1) {
    const panel = panelFrom(below, least)
    const start = performance.now()
    const found = patterns(panel)
    took.push(performance.now() - start)
    for (const pattern of found) {
      const [wrong] = replayed(panel, pattern)
      if (wrong) throw new Error(`panel ${n}: ${wrong}`)
    }
    lists += found.length
  }
  const sorted = took.toSorted((a, b) => a - b)
  const at = (share: number) => sorted[Math.min(panels - 1, Math.floor(share * panels))]!.toFixed(1)
  process.stdout.write(
    `${panels} panels, ${lists} lists of cuts, all followed: median ${at(0.5)} ms, p90 ${at(0.9)} ms, longest ${at(1)} ms\n`,
  )
}
