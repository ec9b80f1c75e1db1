import type { Facts } from '../garment/facts.ts'
import { sizesOf } from '../garment/garment-sizes.ts'
import { flatMeasures, type GarmentSize } from '../garment/panels.ts'
import { type Part, partsOf } from '../garment/spots.ts'
import type { Look } from '../photo/look/looked.ts'

/** Which side of the garment a photo shows. */
export type View = 'front' | 'back'

/** Sleeves and body of a garment on a photo, as far as its box and its usual measures tell. */
interface Where {
  /** From the wearer's right to the left as seen from the front, and down, in shares of the garment's box. */
  readonly across: number
  readonly down: number
  /** The share of the box's width that the body takes. */
  readonly body: number
}

/** Below this share of the box there is no short sleeve. */
const shortSleeveTo = 0.5

/** However wide the sleeves lie, the body is no narrower than this share. */
const leastBody = 0.35

const shortSleeved: readonly Facts['kind'][] = ['tshirt', 'polo', 'jersey', 'blouse', 'uniform']

function whereOf(
  { x, y }: { readonly x: number; readonly y: number },
  { garment, width, height }: Pick<Look, 'garment' | 'width' | 'height'>,
  kind: Facts['kind'],
  size: GarmentSize,
): Where | null {
  if (!garment) return null
  const across = (x - garment.x) / garment.w
  const down = (y - garment.y) / garment.h
  if (Math.min(across, down) < 0 || Math.max(across, down) > 1) return null
  const sizes = sizesOf(kind)
  const flat =
    flatMeasures(kind, size === 'unknown' && sizes.includes('M') ? 'M' : size) ??
    flatMeasures(kind, 'unknown')
  const boxAspect = (garment.w * width) / (garment.h * height)
  const body = flat ? flat.widthIn / flat.lengthIn / boxAspect : 1
  return { across, down, body: Math.min(1, Math.max(leastBody, body)) }
}

const mirrored: Readonly<Partial<Record<Part, Part>>> = {
  'left-sleeve': 'right-sleeve',
  'right-sleeve': 'left-sleeve',
  'left-front': 'right-front',
  'right-front': 'left-front',
  'left-leg-front': 'right-leg-front',
  'right-leg-front': 'left-leg-front',
  'left-leg-back': 'right-leg-back',
  'right-leg-back': 'left-leg-back',
}

/** As seen from the front: the wearer's right lies at the picture's left. */
function fromTheFront(parts: readonly Part[], view: View, where: Where, kind: Facts['kind']) {
  const { across, down, body } = where
  const side = across < 0.5 ? 'right' : 'left'
  const has = (part: Part) => (parts.includes(part) ? part : null)
  const atSleeves = !shortSleeved.includes(kind) || down < shortSleeveTo
  if (atSleeves && Math.abs(across - 0.5) > body / 2) {
    const sleeve = has(`${side}-sleeve`)
    if (sleeve) return sleeve
  }
  return has(`${side}-leg-${view}`) ?? (view === 'front' ? has(`${side}-front`) : null) ?? has(view)
}

/**
 * The part of a garment in which a place on its photo lies, as an estimate: the garment is taken to lie upright,
 * and its hem to end the box. Null where the photo does not tell.
 */
export function partSeen(
  at: { readonly x: number; readonly y: number },
  look: Pick<Look, 'garment' | 'width' | 'height'> | null,
  view: View | null,
  { kind, size }: { readonly kind: Facts['kind']; readonly size: GarmentSize },
): Part | null {
  const parts = partsOf(kind)
  const [only, ...others] = parts
  if (only && others.length === 0) return only
  const where = look && view && whereOf(at, look, kind, size)
  if (!where || !view) return null
  const seen = fromTheFront(parts, view, where, kind)
  return seen && view === 'back' ? (mirrored[seen] ?? seen) : seen
}
