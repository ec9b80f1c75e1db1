import type { Chance } from '../help/chance.ts'
import type { Point } from './camera.ts'
import type { Look } from './look.ts'
import { boxAround } from './outline.ts'
import { insideBy, type Sheet, sheetSizes, toSheet } from './reference.ts'

const degree = Math.PI / 180
/** Between garment and sheet, mm. */
const gap = 14

/**
 * Lays a sheet beside what is laid already, where the two take the least room; where it is to be covered,
 * partly beneath it.
 */
export function placeSheet(
  chance: Chance,
  { kind, lies }: NonNullable<Look['sheet']>,
  laid: readonly Point[],
  made: (at: Point, turn: number) => Sheet,
): Sheet | null {
  const { wide, tall } = sheetSizes[kind]
  const reach = Math.hypot(wide, tall) / 2
  const box = boxAround(laid)
  let best: { sheet: Sheet; room: number } | null = null
  const own = chance.happens(0.5) ? 0 : 90
  for (let attempt = 0; attempt < 160; attempt++) {
    const at: Point = [
      chance.real(box.left - reach - 60, box.right + reach + 60),
      chance.real(box.top - reach - 60, box.bottom + reach + 60),
    ]
    const sheet = made(at, (own + chance.real(-16, 16)) * degree)
    const under = countUnder(laid, sheet, (reach + gap) ** 2, lies === 'covered')
    if (lies === 'covered') {
      // The grid of points is 5 mm wide.
      const share = (under * 25) / (wide * tall)
      if (share < 0.12 || share > 0.5) continue
    } else if (under > 0) continue
    const across = Math.max(box.right, at[0] + reach) - Math.min(box.left, at[0] - reach)
    const down = Math.max(box.bottom, at[1] + reach) - Math.min(box.top, at[1] - reach)
    const room = across * down * chance.real(1, 1.25)
    if (!best || room < best.room) best = { sheet, room }
  }
  return best?.sheet ?? null
}

/** How many of the points lie on a sheet or within the gap about it; without `all`, whether any does. */
function countUnder(laid: readonly Point[], sheet: Sheet, near: number, all: boolean): number {
  let count = 0
  for (const point of laid) {
    const dx = point[0] - sheet.middle[0]
    const dy = point[1] - sheet.middle[1]
    if (dx * dx + dy * dy > near || insideBy(sheet, toSheet(sheet, point)) <= -gap) continue
    count++
    if (!all) break
  }
  return count
}
