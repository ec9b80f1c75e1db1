import { type Figure, practice } from '../../base/figure.ts'
import { quartersPerInch } from '../../base/units.ts'
import type { Facts } from '../../garment/facts.ts'
import type { Panel } from '../../garment/panels.ts'
import { cutFor } from '../arithmetic.ts'
import { type Box, type Feature, overlaps } from '../cut/panel.ts'
import { framedPiece } from '../design.ts'
import { airIn, type Layout } from '../layout.ts'

/** How far a picture may stand out of the middle of its block, and how far under the neckline it is printed, inches. */
const pictureIn = { offCentre: 0.25, underNeck: 3 }

export const pictureFigures: readonly Figure[] = [
  {
    figure: 'plan/picture out of the middle',
    value: pictureIn.offCentre,
    unit: 'in',
    source: practice,
  },
  {
    figure: 'plan/picture under the neckline',
    value: pictureIn.underNeck,
    unit: 'in',
    source: practice,
  },
]

/** What tells of a garment's picture. */
export interface Pictured {
  readonly facts: Pick<Facts, 'pattern'>
  /** Longer side of a single graphic, inches; null: none, or not measured. */
  readonly graphicIn: number | null
  readonly panels: readonly Panel[]
}

export const quarters = (inches: number): number => Math.round(inches * quartersPerInch)

export const boxOf = ({ x, y, w, h }: Box): Box => ({
  x: quarters(x),
  y: quarters(y),
  w: quarters(w),
  h: quarters(h),
})

/** The panel that the picture is on, and its longer side in inches; null: no single picture was measured. */
export function pictureOf({ facts, graphicIn, panels }: Pictured) {
  const front = panels.find(({ name }) => name === 'front') ?? panels[0]
  return facts.pattern === 'single' && graphicIn !== null && front ? { front, graphicIn } : null
}

/** Cut side of the piece that a picture gets in a layout, inches; null: it stays whole in none. */
export function pictureSide({ blocks, seamIn }: Layout, graphicIn: number): number | null {
  const wanted = graphicIn + 2 * airIn
  const sides = Object.values(blocks).flatMap((block) => {
    if (block.make === 'framed') return [framedPiece(block, graphicIn)]
    return block.make === 'grid' ? [block.patch_in] : []
  })
  const room = sides.filter((side) => side >= wanted)
  return room.length > 0 ? cutFor(Math.min(...room), seamIn) : null
}

/** The picture in its block. Where nobody has marked it: in the middle across, a hand's breadth under the neckline. */
export function pictureOn(panel: Panel, graphicIn: number, block: number): Feature {
  const side = quarters(graphicIn)
  const neck = panel.defects.find(({ what }) => what === 'neck')
  const top = neck ? quarters(neck.y + neck.h + pictureIn.underNeck) : quarters(pictureIn.underNeck)
  return {
    gx: Math.max(0, Math.floor((quarters(panel.w) - side) / 2)),
    gy: Math.min(top, Math.max(0, quarters(panel.h) - side)),
    gw: side,
    gh: side,
    bw: block,
    bh: block,
    tol2: 2 * quarters(pictureIn.offCentre),
    required: true,
  }
}

/** Where a block may begin so that the graphic is in its middle, as near as may be, and it lies on the panel. */
function begins(graphic: number, long: number, block: number, tol2: number, panel: number) {
  const middle = 2 * graphic + long - block
  const from = Math.max(0, Math.ceil((middle - tol2) / 2))
  const to = Math.min(panel - block, Math.floor((middle + tol2) / 2))
  return Array.from({ length: Math.max(0, to - from + 1) }, (_, n) => from + n)
}

/** Whether the picture's block lies on the panel, on nothing that may not be cut. */
export function holdsPicture(panel: Panel, { gx, gy, gw, gh, bw, bh, tol2 }: Feature): boolean {
  const defects = panel.defects.map(boxOf)
  const across = begins(gx, gw, bw, tol2, quarters(panel.w))
  return begins(gy, gh, bh, tol2, quarters(panel.h)).some((y) =>
    across.some((x) => !defects.some((defect) => overlaps(defect, { x, y, w: bw, h: bh }))),
  )
}
