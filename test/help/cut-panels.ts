import { domains, type Facts } from '../../src/garment/facts.ts'
import { type Panel, panelsOf } from '../../src/garment/panels.ts'
import type { PanelOnSheet } from '../../src/papers/cut-sheet.ts'
import type { Feature, PanelToCut } from '../../src/quilt/cut/panel.ts'
import { patterns } from '../../src/quilt/cut/patterns.ts'

/** 5 in squares; quarter inches, as all of these. */
export const squares = [{ w: 20, h: 20, rot: false }] as const

/** A garment's panel as it is cut. */
export const toCut = (
  { w, h, defects }: Panel,
  pieces: PanelToCut['pieces'] = squares,
  feature?: Feature,
): PanelToCut => ({
  W: w * 4,
  H: h * 4,
  pieces,
  defects: defects.map((one) => ({ x: one.x * 4, y: one.y * 4, w: one.w * 4, h: one.h * 4 })),
  feature,
})

/** A picture of 10 by 10 in, 9 in below the shoulder, in a block of 14 1/2 in. */
export const chestPicture = ({ w }: Panel): Feature => ({
  gx: Math.floor(w * 2 - 20),
  gy: 36,
  gw: 40,
  gh: 40,
  bw: 58,
  bh: 58,
  tol2: 4,
  required: true,
})

/** The panels of a holed garment of a kind with the first of the ways to cut each. */
export function holedPanels(kind: Facts['kind'], name: (panel: Panel) => string): PanelOnSheet[] {
  const size = kind === 'baby-suit' ? '6-12m' : 'M'
  return panelsOf(kind, size, { wear: 'holes' }).flatMap((garmentPanel) => {
    const panel = toCut(garmentPanel)
    const [pattern] = patterns(panel)
    return pattern ? [{ name: name(garmentPanel), panel, pattern, times: garmentPanel.count }] : []
  })
}

/** A T-shirt's front around its picture: with two more sizes beside. */
export function pictureFront(name: string): PanelOnSheet {
  const front = panelsOf('tshirt', 'L', {})[0]!
  const pieces = [...squares, { w: 10, h: 10, rot: false }]
  const panel = toCut(front, pieces, chestPicture(front))
  return { name, panel, pattern: patterns(panel)[0]!, times: 1 }
}

export const kinds: readonly Facts['kind'][] = domains.kind
