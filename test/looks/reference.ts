import type { Chance } from '../help/chance.ts'
import type { Point } from './camera.ts'
import { hexOfLch, lightOfHex } from './light.ts'

export type SheetKind = 'letter' | 'a4' | 'id1'

/**
 * Sizes in mm: Letter is 8.5 by 11 inches (ANSI/ASME Y14.1), A4 is ISO 216, a card of the size ID-1 is
 * ISO/IEC 7810, its corners rounded by 3.18 mm.
 */
export const sheetSizes: Readonly<
  Record<SheetKind, { readonly wide: number; readonly tall: number; readonly round: number }>
> = {
  letter: { wide: 215.9, tall: 279.4, round: 0 },
  a4: { wide: 210, tall: 297, round: 0 },
  id1: { wide: 85.6, tall: 53.98, round: 3.18 },
}

/** A sheet or card that lies on the plane. */
export interface Sheet {
  readonly kind: SheetKind
  readonly middle: Point
  /** How far it is turned, radians. */
  readonly turn: number
  /** How far its sides are bent out, mm, and how much its light changes across it. */
  readonly bow: readonly [number, number, number, number]
  readonly shade: Point
  readonly shadow: number
  readonly light: readonly number[]
  /** What a card carries: fields of another colour in its own frame, mm. */
  readonly fields: readonly {
    readonly x: number
    readonly y: number
    readonly wide: number
    readonly tall: number
    readonly light: readonly number[]
  }[]
}

export function drawSheet(chance: Chance, kind: SheetKind, middle: Point, turn: number): Sheet {
  const card = kind === 'id1'
  const curled = !card && chance.happens(0.4)
  const bent = () => (curled ? chance.real(-0.9, 0.9) : card ? 0 : chance.real(-0.25, 0.25))
  const colour = card
    ? chance.happens(0.3)
      ? hexOfLch(92, 2, 90)
      : hexOfLch(chance.real(20, 85), chance.real(5, 55), chance.real(0, 360))
    : hexOfLch(chance.real(93, 97), chance.real(0, 2.5), chance.happens(0.5) ? 265 : 90)
  const field = (x: number, y: number, wide: number, tall: number) => ({
    x,
    y,
    wide,
    tall,
    light: lightOfHex(hexOfLch(chance.real(15, 92), chance.real(2, 45), chance.real(0, 360))),
  })
  const fields = !card
    ? []
    : chance.some(
        [
          field(-42.8, -18, 85.6, 12),
          field(-34, -8, 12.5, 9.5),
          field(-34, 10, 46, 3.2),
          field(-34, 16, 30, 2.6),
          field(18, -6, 17, 21),
        ],
        chance.whole(0, 4),
      )
  return {
    kind,
    middle,
    turn,
    bow: [bent(), bent(), bent(), bent()],
    shade: curled
      ? [chance.real(-0.1, 0.1), chance.real(-0.1, 0.1)]
      : [chance.real(-0.02, 0.02), chance.real(-0.02, 0.02)],
    shadow: chance.real(0.15, 0.5),
    light: lightOfHex(colour),
    fields,
  }
}

/** Its corners on the plane, mm, clockwise from where its upper left is. */
export function cornersOf(sheet: Sheet): Point[] {
  const { wide, tall } = sheetSizes[sheet.kind]
  return (
    [
      [-1, -1],
      [1, -1],
      [1, 1],
      [-1, 1],
    ] as const
  ).map(([x, y]) => fromSheet(sheet, [(x * wide) / 2, (y * tall) / 2]))
}

/** From the sheet's own frame, mm from its middle, to the plane. */
export const fromSheet = ({ middle, turn }: Sheet, [x, y]: Point): Point => [
  middle[0] + x * Math.cos(turn) - y * Math.sin(turn),
  middle[1] + x * Math.sin(turn) + y * Math.cos(turn),
]

export const toSheet = ({ middle, turn }: Sheet, [x, y]: Point): Point => {
  const dx = x - middle[0]
  const dy = y - middle[1]
  return [dx * Math.cos(turn) + dy * Math.sin(turn), -dx * Math.sin(turn) + dy * Math.cos(turn)]
}

/** How far a point of its own frame lies inside its edge, mm; less than 0 outside. */
export function insideBy({ kind, bow }: Sheet, [x, y]: Point): number {
  const { wide, tall, round } = sheetSizes[kind]
  const arcX = 1 - ((2 * x) / wide) ** 2
  const arcY = 1 - ((2 * y) / tall) ** 2
  const right = wide / 2 + bow[1] * arcY - x
  const left = wide / 2 + bow[3] * arcY + x
  const top = tall / 2 + bow[0] * arcX + y
  const bottom = tall / 2 + bow[2] * arcX - y
  const across = Math.min(left, right)
  const down = Math.min(top, bottom)
  if (round > 0 && across < round && down < round)
    return round - Math.hypot(round - across, round - down)
  return Math.min(across, down)
}

/** No part of any sheet, nor of its shadow, lies further from its middle, mm. */
const furthest = 200

/** Lays a sheet over the light of the ground at a point of the plane; `scale` is pixels for a millimetre. */
export function coverWith(
  sheet: Sheet,
  x: number,
  y: number,
  scale: number,
  out: Float32Array,
): void {
  const dx = x - sheet.middle[0]
  const dy = y - sheet.middle[1]
  if (dx * dx + dy * dy > furthest * furthest) return
  const at = toSheet(sheet, [x, y])
  const inside = insideBy(sheet, at)
  if (inside < -14) return
  if (inside < 0) {
    const dim = 1 - sheet.shadow * Math.exp(inside / (sheet.kind === 'id1' ? 1.2 : 3.5))
    out[0]! *= dim
    out[1]! *= dim
    out[2]! *= dim
  }
  const cover = Math.min(1, Math.max(0, inside * scale + 0.5))
  if (cover === 0) return
  const { wide, tall } = sheetSizes[sheet.kind]
  const gain =
    1 + sheet.shade[0] * ((2 * at[0]) / wide) + sheet.shade[1] * ((2 * at[1]) / tall) ** 2
  const field = sheet.fields.find(
    (one) =>
      at[0] >= one.x && at[0] <= one.x + one.wide && at[1] >= one.y && at[1] <= one.y + one.tall,
  )
  const light = field?.light ?? sheet.light
  for (let c = 0; c < 3; c++) out[c] = out[c]! * (1 - cover) + light[c]! * gain * cover
}
