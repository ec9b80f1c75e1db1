import { labOf } from '../../src/base/colour.ts'
import type { DrawnPiece, Print, QuiltToDraw } from '../../src/papers/quilt-picture.ts'
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
  readonly pieces: readonly DrawnPiece[]
}

/** A quilt of that layout from the nine garments, placed and ready to be drawn. */
export function sampleQuilt(layout: Layout, size: QuiltSize): SampleQuilt {
  const { finished, pieces } = gridOf(layout, size)
  const types = dealt(pieces)
  const adj = besideCosts(types.map(({ garment }) => labs[garment as number]!))
  const { cells, touching } = placeOn(boardOfPieces({ pieces, types, repeat: usualRepeat, adj }))
  const shown = new Set<string>()
  const drawn = pieces.map(({ parts }, n): DrawnPiece => {
    const { name, colour, print } = nine[types[cells[n]!]!.garment as number]!
    // One graphic is on one piece; the rest of its garment is plain.
    const isPlain = print === 'single' && shown.has(name)
    shown.add(name)
    return { parts, colour, print: isPlain ? 'solid' : print }
  })
  const quilt: QuiltToDraw = {
    finished,
    pieces: drawn,
    binding: { widthIn: 0.5, colour: '#27345a' },
    name: `sample-${layout.id}`,
    ...(layout.id === 'plain-squares' ? { border: { widthIn: 3, colour: '#8d9096' } } : {}),
  }
  return { quilt, touching, pieces: drawn }
}
