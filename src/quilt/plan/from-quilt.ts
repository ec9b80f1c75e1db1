import { type Figure, practice } from '../../base/figure.ts'
import type { Facts } from '../../garment/facts.ts'
import { cutFor } from '../arithmetic.ts'
import type { PieceSize } from '../cut/panel.ts'
import { type Design, demand, designOf, sashCuts } from '../design.ts'
import { type Layout, type QuiltSize, type Role, roles } from '../layout.ts'
import type {
  Called,
  Contrast,
  PanelsAlike,
  Pile,
  PileGarment,
  PileRole,
  Sharing,
} from './instance.ts'
import {
  boxOf,
  holdsPicture,
  type Pictured,
  pictureFigures,
  pictureOf,
  pictureOn,
  pictureSide,
  quarters,
} from './pictures.ts'

/** A garment whose cloth suits the layout. */
export interface Suited extends Pictured {
  readonly id: Called
  readonly facts: Pick<Facts, 'pattern' | 'surface' | 'oneWay' | 'stretch'>
  readonly must: boolean
  /** Lightness, CIELAB L*; null: nobody told. */
  readonly L?: number | null
  /** Staff let it play these alone; null: all of the layout's. */
  readonly roles?: readonly Role[] | null
  /** What is left beside its single picture suits the layout as well; false: it plays focal alone. */
  readonly rest?: boolean
}

export interface QuiltWanted {
  readonly layout: Layout
  readonly size: QuiltSize
  /** Quilts of the same kind and size that share the pile. */
  readonly alike: number
  readonly garments: readonly Suited[]
  /** Usable width of bought cloth, inches. */
  readonly clothWidthIn: number
  /** How several quilts share the garments. */
  readonly sharing?: Sharing
}

/** Cloth is bought by the quarter yard, inches. */
const stepIn = 9

export const planFigures: readonly Figure[] = [
  { figure: 'plan/cloth is bought by', value: stepIn, unit: 'in', source: practice },
  ...pictureFigures,
]

/** Pile and one-way prints stay upright, and cloth cut on the bias; so does what nobody has told of. */
const mayTurn = ({ surface, oneWay, stretch }: Suited['facts']): boolean =>
  surface !== 'pile' && oneWay === 'no' && stretch !== 'bias'

/** The roles of a layout that a garment may play. */
function playedBy({ facts, roles: allowed, rest = true }: Suited): Role[] {
  const suited: readonly Role[] = facts.pattern === 'single' && !rest ? ['focal'] : roles
  return suited.filter((role) => allowed?.includes(role) ?? true)
}

/** Longer sides of the pictures that are kept whole, must-use ones first, then as they were told. */
function graphicsOf({ layout, garments }: QuiltWanted): number[] {
  const whole = garments.flatMap((garment) => {
    const picture = pictureOf(garment)
    const side = picture && pictureSide(layout, picture.graphicIn)
    if (!side || !playedBy(garment).includes('focal')) return []
    const { front, graphicIn } = picture
    const isWhole = holdsPicture(front, pictureOn(front, graphicIn, quarters(side)))
    return isWhole ? [{ graphicIn, must: garment.must }] : []
  })
  return whole.sort((a, b) => Number(b.must) - Number(a.must)).map(({ graphicIn }) => graphicIn)
}

/** The design of each quilt: pictures are dealt out among the quilts one by one. */
export function designsFor(wanted: QuiltWanted): Design[] {
  const graphics = graphicsOf(wanted)
  return Array.from({ length: wanted.alike }, (_, quilt) =>
    designOf(
      wanted.layout,
      wanted.size,
      graphics.filter((_, n) => n % wanted.alike === quilt),
    ),
  )
}

/** The size of the piece that a picture is cut in: its own, else the next larger one, else the largest. */
function sizeForPicture(sizes: readonly PieceSize[], side: number): number {
  const byArea = [...sizes.keys()].sort((a, b) => sizes[a]!.w - sizes[b]!.w)
  const squares = byArea.filter((size) => sizes[size]!.w === sizes[size]!.h)
  return squares.find((size) => sizes[size]!.w >= side) ?? squares.at(-1)!
}

/**
 * The panel with the picture keeps it whole in one block. `framed` are the sizes that are made to the measure
 * of pictures: nothing else is cut for them.
 */
function panelsOf(
  garment: Suited,
  sizes: readonly PieceSize[],
  framed: ReadonlySet<number>,
  layout: Layout,
): PanelsAlike[] {
  const picture = pictureOf(garment)
  const pictured = () => {
    const { front, graphicIn } = picture!
    const side = pictureSide(layout, graphicIn)
    const size = sizeForPicture(sizes, side === null ? Number.POSITIVE_INFINITY : quarters(side))
    return { picture: { size, feature: pictureOn(front, graphicIn, sizes[size]!.w) } }
  }
  return garment.panels.map((panel) => ({
    W: quarters(panel.w),
    H: quarters(panel.h),
    defects: panel.defects.map(boxOf),
    mult: panel.count,
    upright: !mayTurn(garment.facts),
    ...(framed.size > 0 && { only: [...sizes.keys()].filter((size) => !framed.has(size)) }),
    ...(panel === picture?.front && pictured()),
  }))
}

/** Ids of garments whose lightness nobody has told, for which the layout's contrast is left out; else none. */
export const contrastWants = ({ layout, garments }: QuiltWanted): Called[] =>
  layout.contrast ? garments.flatMap(({ id, L }) => (typeof L === 'number' ? [] : [id])) : []

/** Light against dark in every quilt, where all garments' lightness is known. */
function contrastsOf(wanted: QuiltWanted, placed: readonly PileRole[]): Contrast[] {
  const { contrast } = wanted.layout
  if (!contrast || contrastWants(wanted).length > 0) return []
  const at = (name: Role, quilt: number) =>
    placed.findIndex((role) => role.called === name && role.quilt === quilt)
  return Array.from({ length: wanted.alike }, (_, quilt) => ({
    light: at(contrast.light, quilt),
    dark: at(contrast.dark, quilt),
    delta: contrast.delta,
  })).filter(({ light, dark }) => light >= 0 && dark >= 0)
}

interface Cell {
  readonly size: string
  readonly role: Role
  readonly quilt: number
  readonly count: number
}

function rolesOf({ layout, alike }: QuiltWanted, cells: readonly Cell[]): PileRole[] {
  const used = roles.filter((role) => cells.some((cell) => cell.role === role))
  return Array.from({ length: alike }, (_, quilt) =>
    used.map((role) => ({
      name: quilt === 0 ? role : `${role} ${quilt + 1}`,
      called: role,
      quilt,
      garments: !layout.bought.includes(role),
    })),
  ).flat()
}

/** Places of the sizes of framed pieces that are smaller than their block. */
function framedSizes(designs: readonly Design[], names: readonly string[]): Set<number> {
  const sides = designs.flatMap(({ blocks, layout: { seamIn } }) =>
    Object.values(blocks).flatMap((block) =>
      block.make === 'framed' && block.piece_in < block.side_in
        ? [cutFor(block.piece_in, seamIn)]
        : [],
    ),
  )
  return new Set(sides.map((side) => names.indexOf(`${side}x${side}`)))
}

/**
 * Of all oblong pieces the sashing alone may lie either way: it is most of the new cloth. A frame's strips
 * lie across the cloth, as strips are cut; there are many sizes of them, and too many ways to lay them all.
 */
function sizeOf(layout: Layout, name: string): PieceSize {
  const [w, h] = name.split('x').map(Number) as [number, number]
  const { strip } = sashCuts(layout)
  const isFrame = w !== h && (w !== strip.w || h !== strip.h)
  return isFrame
    ? { w: quarters(Math.max(w, h)), h: quarters(Math.min(w, h)), rot: false }
    : { w: quarters(w), h: quarters(h), rot: w !== h }
}

/** A garment's share of a role; where a role has fewer pieces than a lively quilt has garments, one of them. */
function shareOf({ layout, size }: QuiltWanted, wanted: readonly number[]): number {
  const pieces = wanted.filter((count) => count > 0)
  return Math.max(1 / layout.garments[size][0], ...pieces.map((count) => 1 / count))
}

/**
 * What quilts ask of a pile, in whole quarter inches: sizes and counts from block arithmetic, each
 * garment's panels with the picture that stays whole, and no garment for more than its share of a lively
 * quilt. Each quilt has its own roles.
 */
export function pileFor(wanted: QuiltWanted): Pile {
  const { layout, garments, clothWidthIn, sharing } = wanted
  const designs = designsFor(wanted)
  const cells = designs.flatMap((design, quilt) =>
    demand(design).pieces.map(({ size: { w, h }, role, count }): Cell => {
      return { size: `${w}x${h}`, role, quilt, count }
    }),
  )
  const names = [...new Set(cells.map(({ size }) => size))]
  const sizes = names.map((name) => sizeOf(layout, name))
  const framed = framedSizes(designs, names)
  const placed = rolesOf(wanted, cells)
  const asked = names.map((name) =>
    placed.map(({ called, quilt }) =>
      cells
        .filter((cell) => cell.size === name && cell.role === called && cell.quilt === quilt)
        .reduce((sum, { count }) => sum + count, 0),
    ),
  )
  const given = placed.map((role, r) =>
    role.garments ? asked.reduce((sum, row) => sum + row[r]!, 0) : 0,
  )
  return {
    sizes,
    roles: placed,
    demand: asked,
    garments: garments.map((garment): PileGarment => {
      const played = playedBy(garment)
      return {
        id: garment.id,
        // Of no account where it is not known: then no contrast is asked for.
        L: garment.L ?? 0,
        roles: placed.flatMap(({ called, garments: may }, r) =>
          may && played.includes(called as Role) ? [r] : [],
        ),
        must: garment.must,
        minIfUsed: 1,
        panels: panelsOf(garment, sizes, framed, layout),
      }
    }),
    shareMax: shareOf(wanted, given),
    maxRoles: placed.length,
    contrast: contrastsOf(wanted, placed),
    cloth: { width: quarters(clothWidthIn), step: quarters(stepIn) },
    rolesBy: 'name',
    ...(sharing && { sharing }),
  }
}
