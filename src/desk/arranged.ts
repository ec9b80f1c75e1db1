import { z } from 'zod'
import type { FixedPiece } from '../intake/laid.ts'
import { type QuiltSize, quiltSizes } from '../quilt/layout.ts'
import type { MarkKind } from '../store/schema.ts'
import { type PlanMark, standingMarks } from './plan-marks.ts'

/** What a mark of how a quilt lies belongs to: a layout in a size, and which of the pile's quilts, from 0. */
export interface QuiltOf {
  readonly layout: string
  readonly size: QuiltSize
  readonly quilt: number
}

/** A piece that staff keep where it is. */
export interface PiecePin extends FixedPiece {
  /** The mark's. */
  readonly id: string
  readonly by: string
  readonly at: number
}

/** A quilt that stays as it lay when somebody last touched it. */
export interface KeptLay {
  /** The mark's id. */
  readonly id: string
  /** All of the quilt. */
  readonly pieces: readonly FixedPiece[]
  readonly by: string
  readonly at: number
}

/** What staff fixed of how the quilts of a pile lie, in the layout and size that it is planned for. */
export interface Arranged {
  /** Oldest first. */
  readonly pins: readonly PiecePin[]
  /** By quilt, from 0. */
  readonly kept: ReadonlyMap<number, KeptLay>
  /** How many pieces are pinned in other layouts and sizes. */
  readonly elsewhere: number
  /** When each quilt was last touched, by its number from 0; a quilt that nobody touched is left out. */
  readonly seen: ReadonlyMap<number, number>
}

const quiltOf = z.object({
  layout: z.string(),
  size: z.enum(quiltSizes),
  quilt: z.number().int().nonnegative(),
})
const pinBody = quiltOf.extend({ x: z.number(), y: z.number() })
const keptBody = quiltOf.extend({
  /** x, y and the garment's number, or null for bought cloth. */
  pieces: z.array(z.tuple([z.number(), z.number(), z.number().nullable()])),
})

/** What a new mark says. */
type NewMark = Pick<PlanMark, 'kind' | 'garment' | 'body'>

export const pinMark = (
  { layout, size, quilt }: QuiltOf,
  { x, y, garment }: Omit<FixedPiece, 'quilt'>,
): NewMark => ({
  kind: 'pin',
  garment,
  body: { layout, size, quilt, x, y } satisfies z.infer<typeof pinBody>,
})

export const keptMark = (
  { layout, size, quilt }: QuiltOf,
  pieces: readonly Omit<FixedPiece, 'quilt'>[],
): NewMark => ({
  kind: 'lay',
  garment: null,
  body: {
    layout,
    size,
    quilt,
    pieces: pieces.map(({ x, y, garment }) => [x, y, garment]),
  } satisfies z.infer<typeof keptBody>,
})

type Wished = Pick<QuiltOf, 'layout' | 'size'>

const kinds: readonly MarkKind[] = ['pin', 'lay']

function seenOf(marks: readonly PlanMark[], wished: Wished): Map<number, number> {
  const seen = new Map<number, number>()
  for (const { kind, body, at, undone } of marks) {
    if (!kinds.includes(kind)) continue
    const { quilt, ...of } = quiltOf.parse(body)
    if (!isOf(of, wished)) continue
    seen.set(quilt, Math.max(seen.get(quilt) ?? 0, at, undone?.at ?? 0))
  }
  return seen
}

const isOf = (one: Wished, other: Wished): boolean =>
  one.layout === other.layout && one.size === other.size

export function arrangedOf(marks: readonly PlanMark[], wished: Wished): Arranged {
  const all = standingMarks(marks, 'pin').map(({ id, garment, who, at, body }) => {
    const { layout, size, ...place } = pinBody.parse(body)
    return { of: { layout, size }, pin: { id, ...place, garment, by: who.name, at } }
  })
  const pins = all.filter(({ of }) => isOf(of, wished)).map(({ pin }) => pin)
  const kept = standingMarks(marks, 'lay').flatMap(({ id, who, at, body }) => {
    const { quilt, pieces, ...of } = keptBody.parse(body)
    if (!isOf(of, wished)) return []
    const fixed = pieces.map(([x, y, garment]) => ({ quilt, x, y, garment }))
    return [[quilt, { id, pieces: fixed, by: who.name, at }] as const]
  })
  return {
    pins,
    kept: new Map(kept),
    elsewhere: all.length - pins.length,
    seen: seenOf(marks, wished),
  }
}

/** Pins before what lies around them: where both want one piece of a garment, the pin has it. */
export function fixedIn({ pins, kept }: Pick<Arranged, 'pins' | 'kept'>): FixedPiece[] {
  const placeOf = ({ quilt, x, y }: FixedPiece): string => `${quilt} ${x} ${y}`
  const pinned = new Set(pins.map(placeOf))
  const around = [...kept.values()].flatMap(({ pieces }) => pieces)
  return [
    ...pins.map(({ quilt, x, y, garment }) => ({ quilt, x, y, garment })),
    ...around.filter((one) => !pinned.has(placeOf(one))),
  ]
}
