import { labOf } from '../../src/base/colour.ts'
import { type BoughtColours, type GarmentCloth, quiltsDrawn } from '../../src/papers/quilt-drawn.ts'
import type { Print, QuiltToDraw } from '../../src/papers/quilt-picture.ts'
import { designOf } from '../../src/quilt/design.ts'
import type { Layout, QuiltSize, Role } from '../../src/quilt/layout.ts'
import { besideCosts, type Lab, usualRepeat } from '../../src/quilt/place/colours.ts'
import { gridOf, type QuiltGrid } from '../../src/quilt/place/grid.ts'
import { placeOn } from '../../src/quilt/place/index.ts'
import type { PieceType } from '../../src/quilt/place/instance.ts'
import { boardOfPieces } from '../../src/quilt/place/pieces.ts'

interface Garment {
  readonly name: string
  readonly colour: string
  readonly print: Print
  readonly roles: readonly Role[]
}

/** Nine invented garments. */
export const nine: readonly Garment[] = [
  { name: 'navy work shirt', colour: '#27345a', print: 'solid', roles: ['focal', 'accent'] },
  { name: 'denim shirt', colour: '#5b7ba3', print: 'solid', roles: ['focal', 'background'] },
  { name: 'grey choir top', colour: '#8d9096', print: 'single', roles: ['focal'] },
  {
    name: 'red check flannel',
    colour: '#9c3b36',
    print: 'stripe-check',
    roles: ['focal', 'accent'],
  },
  {
    name: 'green garden shirt',
    colour: '#4e6b4a',
    print: 'stripe-check',
    roles: ['focal', 'accent'],
  },
  { name: 'sky blouse', colour: '#a9c3d9', print: 'allover', roles: ['background'] },
  { name: 'cream shirt', colour: '#ebe2cd', print: 'solid', roles: ['background'] },
  { name: 'white striped shirt', colour: '#dfe4ea', print: 'stripe-check', roles: ['background'] },
  { name: 'yellow summer dress', colour: '#dcb450', print: 'allover', roles: ['focal', 'accent'] },
]

const labs: readonly Lab[] = nine.map(({ colour }) => {
  const { l, a, b } = labOf(colour)
  return [l, a, b]
})

/** Each role's pieces dealt out among the garments that may have it. */
function dealt(pieces: QuiltGrid['pieces']): PieceType[] {
  const roles = [...new Set(pieces.map(({ role }) => role))]
  return roles.flatMap((role) => {
    const count = pieces.filter((piece) => piece.role === role).length
    const among = nine.flatMap((garment, n) => (garment.roles.includes(role) ? [n] : []))
    return among.map((garment, n) => ({
      garment,
      role,
      count: Math.floor((count + n) / among.length),
    }))
  })
}

export interface SampleQuilt {
  readonly quilt: QuiltToDraw
  readonly touching: number
}

/** The sample's bought cloth. */
export const bought: BoughtColours = {
  focal: '#6f7f99',
  background: '#efe7d6',
  accent: '#c08a52',
  sashing: '#dcd0b6',
  binding: '#27345a',
}

/** What is known of the nine garments' cloth. */
export const cloths: readonly GarmentCloth[] = nine.map(({ colour, print }, n) => ({
  garment: n + 1,
  colour,
  second: null,
  print,
  photo: null,
  graphicIn: print === 'single' ? 10 : null,
}))

/** A quilt of that layout from the nine garments, placed and ready to be drawn. */
export function sampleQuilt(layout: Layout, size: QuiltSize): SampleQuilt {
  const { finished, pieces } = gridOf(designOf(layout, size, []))
  const types = dealt(pieces)
  const adj = besideCosts(types.map(({ garment }) => labs[garment as number]!))
  const { cells, touching } = placeOn(boardOfPieces({ pieces, types, repeat: usualRepeat, adj }))
  const laid = { finished, pieces, cells: cells.map((t) => 1 + (types[t]!.garment as number)) }
  const isBordered = layout.id === 'plain-squares'
  const [quilt] = quiltsDrawn({
    quilts: [laid],
    cloths,
    bought,
    ...(isBordered && { border: { widthIn: 3, colour: '#8d9096' } }),
  })
  return { quilt: quilt!, touching }
}
