import { type Figure, practice } from '../../base/figure.ts'
import { quartersPerInch } from '../../base/units.ts'
import type { Facts } from '../../garment/facts.ts'
import type { Panel } from '../../garment/panels.ts'
import type { Box, Feature, PieceSize } from '../cut/panel.ts'
import { demand, type Layout, type QuiltSize, roles } from '../layout.ts'
import type { Called, PanelsAlike, Pile, PileGarment } from './instance.ts'

/** A garment whose cloth suits the layout. */
export interface Suited {
  readonly id: Called
  readonly facts: Pick<Facts, 'pattern' | 'surface' | 'oneWay'>
  /** Longer side of a single graphic, inches; null: none. */
  readonly graphicIn: number | null
  readonly must: boolean
  readonly panels: readonly Panel[]
}

export interface QuiltWanted {
  readonly layout: Layout
  readonly size: QuiltSize
  /** Quilts of the same kind and size that share the pile. */
  readonly alike: number
  readonly garments: readonly Suited[]
  /** Usable width of bought cloth, inches. */
  readonly clothWidthIn: number
}

/** Cloth is bought by the quarter yard, inches. */
const stepIn = 9

/** How far a picture may stand out of the middle of its block, and how far under the neckline it is printed, inches. */
const pictureIn = { offCentre: 0.25, underNeck: 3 }

export const planFigures: readonly Figure[] = [
  { figure: 'plan/cloth is bought by', value: stepIn, unit: 'in', source: practice },
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

const quarters = (inches: number): number => Math.round(inches * quartersPerInch)

const boxOf = ({ x, y, w, h }: { x: number; y: number; w: number; h: number }): Box => ({
  x: quarters(x),
  y: quarters(y),
  w: quarters(w),
  h: quarters(h),
})

/** Pile and one-way prints stay upright; so does what nobody has told of. */
const mayTurn = ({ surface, oneWay }: Suited['facts']): boolean =>
  surface !== 'pile' && oneWay === 'no'

/** Where nobody has marked the picture: in the middle across, a hand's breadth under the neckline. */
function pictureOn(panel: Panel, sideIn: number, block: PieceSize): Feature {
  const side = quarters(sideIn)
  const neck = panel.defects.find(({ what }) => what === 'neck')
  const top = neck ? quarters(neck.y + neck.h + pictureIn.underNeck) : quarters(pictureIn.underNeck)
  return {
    gx: Math.max(0, Math.floor((quarters(panel.w) - side) / 2)),
    gy: Math.min(top, Math.max(0, quarters(panel.h) - side)),
    gw: side,
    gh: side,
    bw: block.w,
    bh: block.h,
    tol2: 2 * quarters(pictureIn.offCentre),
    required: true,
  }
}

/** The panel with the picture keeps it whole in one block of the largest size. */
function panelsOf(
  { facts, graphicIn, panels }: Suited,
  sizes: readonly PieceSize[],
  largest: number,
) {
  const sideIn = facts.pattern === 'single' ? graphicIn : null
  const front = panels.find(({ name }) => name === 'front') ?? panels[0]
  return panels.map(
    (panel): PanelsAlike => ({
      W: quarters(panel.w),
      H: quarters(panel.h),
      defects: panel.defects.map(boxOf),
      mult: panel.count,
      upright: !mayTurn(facts),
      ...(sideIn !== null &&
        panel === front && {
          picture: { size: largest, feature: pictureOn(panel, sideIn, sizes[largest]!) },
        }),
    }),
  )
}

const garmentOf = (
  garment: Suited,
  sizes: readonly PieceSize[],
  largest: number,
  roleCount: number,
): PileGarment => ({
  id: garment.id,
  // Colours are not known yet: all are taken for equally light, and no contrast is asked for.
  L: 50,
  roles: Array.from({ length: roleCount }, (_, role) => role),
  must: garment.must,
  minIfUsed: 1,
  panels: panelsOf(garment, sizes, largest),
})

/**
 * What a quilt asks of a pile, in whole quarter inches: sizes and counts from block arithmetic, each
 * garment's panels with the ways to cut them, and no garment for more than its share of a lively quilt.
 */
export function pileFor({ layout, size, alike, garments, clothWidthIn }: QuiltWanted): Pile {
  const { pieces } = demand(layout, size)
  const used = roles.filter((role) => pieces.some((piece) => piece.role === role))
  const names = [...new Set(pieces.map(({ size: { w, h } }) => `${w}x${h}`))]
  const sizes = names.map((name): PieceSize => {
    const [w, h] = name.split('x').map((side) => quarters(Number(side)))
    return { w: w!, h: h!, rot: w !== h }
  })
  const wanted = names.map((name) =>
    used.map((role) =>
      pieces
        .filter((piece) => piece.role === role && `${piece.size.w}x${piece.size.h}` === name)
        .reduce((sum, { count }) => sum + count * alike, 0),
    ),
  )
  const areas = sizes.map(({ w, h }) => w * h)
  const largest = areas.indexOf(Math.max(...areas))
  return {
    sizes,
    roles: used.map((name) => ({ name, garments: true })),
    demand: wanted,
    garments: garments.map((one) => garmentOf(one, sizes, largest, used.length)),
    shareMax: 1 / (layout.garments[size][0] * alike),
    maxRoles: used.length,
    contrast: [],
    cloth: { width: quarters(clothWidthIn), step: quarters(stepIn) },
    rolesBy: 'name',
  }
}
