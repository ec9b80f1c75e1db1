import { type Figure, practice } from '../base/figure.ts'
import type { Facts } from './facts.ts'
import { down, type Panel, type Rect } from './panel-losses.ts'
import { partAt, type Spot, type SpotKind } from './spots.ts'

/**
 * A hole whose place in the panel nobody has measured, with its weak rim, inches; a marked stain or thin
 * place is cut around as widely. Common practice, no source.
 */
const holeIn = 4

/**
 * From the edge, inches: one and a half small squares, so that the hole falls into the pieces and not
 * into the cloth that is left over between them.
 */
const holeAtIn = 7.5

/** Half a small square above the hem, inches, where all above it is lost anyway. */
const nearEdgeIn = 2.5

export const holeFigures: readonly Figure[] = [
  { figure: 'panels/hole with its rim', value: holeIn, unit: 'in', source: practice },
  { figure: 'panels/hole from the edge', value: holeAtIn, unit: 'in', source: practice },
  { figure: 'panels/hole above the hem', value: nearEdgeIn, unit: 'in', source: practice },
]

const holeFrom = (side: number): number =>
  side >= holeAtIn + holeIn ? side - holeAtIn - holeIn : down(Math.max(0, side - holeIn) / 2)

const overlap = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h

/** Edge to edge along a side, as far as whole ones fit. */
const along = (side: number): number[] =>
  Array.from({ length: Math.floor(side / holeIn) }, (_, n) => n * holeIn)

/** Where it costs cloth: not within what is lost anyway, as long as there is such a place. */
function lossIn({ w, h, defects }: Panel, what: SpotKind): Rect {
  const [x, y] = [holeFrom(w), holeFrom(h)]
  const [lostW, lostH] = [Math.min(holeIn, w), Math.min(holeIn, h)]
  const at = (left: number, top: number): Rect => ({ what, x: left, y: top, w: lostW, h: lostH })
  const first = [x, w - lostW - x].flatMap((left) =>
    [y, h - lostH - y, Math.max(0, h - lostH - nearEdgeIn)].map((top) => at(left, top)),
  )
  const others = along(h).flatMap((top) => along(w).map((left) => at(left, top)))
  const isFree = (place: Rect) => !defects.some((lost) => overlap(place, lost))
  return first.find(isFree) ?? others.find(isFree) ?? first[0]!
}

const withLoss = (panel: Panel, what: SpotKind): Panel => ({
  ...panel,
  defects: [...panel.defects, lossIn(panel, what)],
})

const areaOf = ({ w, h }: Panel): number => w * h

/** One copy of the largest panel gets it; of two as large the back, which has no pouch. */
function pierced(panels: readonly Panel[], what: SpotKind): Panel[] {
  const largest = panels.reduce((most, one) => (areaOf(one) >= areaOf(most) ? one : most))
  return apart(largest, panels, [withLoss({ ...largest, count: 1 }, what)])
}

/** The panels with some copies of one of them told by themselves. */
function apart(panel: Panel, panels: readonly Panel[], copies: readonly Panel[]): Panel[] {
  const rest = { ...panel, count: panel.count - copies.length }
  return panels.flatMap((one) =>
    one !== panel ? [one] : rest.count > 0 ? [...copies, rest] : copies,
  )
}

/** Every marked spot in the part it lies in. A part that gives no panel has no cloth to lose. */
function marked(kind: Facts['kind'], panels: readonly Panel[], spots: readonly Spot[]): Panel[] {
  const told = new Map<string, number>()
  let all = [...panels]
  for (const panel of panels) {
    const before = told.get(panel.name) ?? 0
    told.set(panel.name, before + panel.count)
    const copies = Array.from({ length: panel.count }, (_, n) => {
      const part = partAt(kind, panel.name, before + n)
      const here = spots.filter((spot) => spot.part !== null && spot.part === part)
      return here.reduce((one, { what }) => withLoss(one, what), { ...panel, count: 1 })
    })
    const worn = copies.filter(({ defects }) => defects.length > panel.defects.length)
    if (worn.length > 0) all = apart(panel, all, worn)
  }
  return all
}

/**
 * Panels with what is lost to wear. A spot whose part is known costs cloth there. What is known to be there,
 * and not where, is laid into the largest panel: a spot of no part, and a hole that `wear` tells of or may
 * hide while no hole is marked.
 */
export function worn(
  kind: Facts['kind'],
  panels: readonly Panel[],
  wear: Facts['wear'] | undefined,
  spots: readonly Spot[],
): Panel[] {
  if (panels.length === 0) return []
  const placeless = spots.filter(({ part }) => part === null).map(({ what }) => what)
  const isOpen = wear === 'shattered' || wear === 'unknown'
  const untold = isOpen || (wear === 'holes' && !spots.some(({ what }) => what === 'hole'))
  const lost: SpotKind[] = untold ? [...placeless, 'hole'] : placeless
  return lost.reduce((all, what) => pierced(all, what), marked(kind, panels, spots))
}
