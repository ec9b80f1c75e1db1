import type { PanelToCut } from '../../src/quilt/cut/panel.ts'
import type { Pattern } from '../../src/quilt/cut/patterns.ts'

type Rect = readonly [x1: number, y1: number, x2: number, y2: number]

/**
 * Cuts a panel as a list says and tells what is wrong with the list; empty where nothing is. Every cut
 * goes right across a rectangle that is there, and every piece is a rectangle that is left in the end.
 */
export function replayed(
  { W, H, pieces, defects, feature }: PanelToCut,
  pattern: Pattern,
): string[] {
  const wrong: string[] = []
  const left = new Map<string, Rect>([[`0,0,${W},${H}`, [0, 0, W, H]]])
  for (const { cut, at, rect } of pattern.cuts) {
    const [x1, y1, x2, y2] = rect
    const inside = cut === 'V' ? at > x1 && at < x2 : at > y1 && at < y2
    if (!left.delete(rect.join()) || !inside) {
      wrong.push(`no rectangle ${rect.join()} to cut ${cut} at ${at}`)
      continue
    }
    const parts: Rect[] =
      cut === 'V'
        ? [
            [x1, y1, at, y2],
            [at, y1, x2, y2],
          ]
        : [
            [x1, y1, x2, at],
            [x1, at, x2, y2],
          ]
    for (const part of parts) left.set(part.join(), part)
  }
  const counts = pattern.counts.map(() => 0)
  const meets = (a: Rect, x: number, y: number, w: number, h: number) =>
    a[0] < x + w && x < a[2] && a[1] < y + h && y < a[3]
  for (const { k, x, y, w, h } of pattern.items) {
    const rect: Rect = [x, y, x + w, y + h]
    if (!left.delete(rect.join())) wrong.push(`no rectangle ${rect.join()} is left for size ${k}`)
    counts[k] = (counts[k] ?? 0) + 1
    if (defects.some((d) => meets(rect, d.x, d.y, d.w, d.h)))
      wrong.push(`${rect.join()} is spoiled`)
    if (k === pieces.length) {
      const { gx, gy, gw, gh, bw, bh, tol2 } = feature!
      if (w !== bw || h !== bh) wrong.push('the block has the wrong size')
      if (x > gx || y > gy || x + w < gx + gw || y + h < gy + gh) wrong.push('the graphic is cut')
      if (Math.abs(2 * x + w - 2 * gx - gw) > tol2 || Math.abs(2 * y + h - 2 * gy - gh) > tol2) {
        wrong.push('the graphic is not in the middle')
      }
      continue
    }
    const size = pieces[k]!
    const lies = (w === size.w && h === size.h) || (size.rot && w === size.h && h === size.w)
    if (!lies) wrong.push(`${w} by ${h} is not size ${k}`)
    if (feature && meets(rect, feature.gx, feature.gy, feature.gw, feature.gh)) {
      wrong.push(`${rect.join()} cuts the graphic`)
    }
  }
  if (counts.join() !== pattern.counts.join()) {
    wrong.push(`cuts give ${counts.join()}, said ${pattern.counts.join()}`)
  }
  return wrong
}
