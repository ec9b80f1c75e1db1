import { z } from 'zod'
import { Failure } from '../../base/failures.ts'
import type { PanelToCut } from './panel.ts'

/** No panel of a garment is longer, in quarter inches: 128 feet would be a bolt of cloth. */
const longest = 4096

const length = z.int().positive().max(longest)
const place = z.int().min(-longest).max(longest)
const air = z.int().nonnegative().max(longest)

const panelSchema = z.object({
  W: length,
  H: length,
  pieces: z.array(z.object({ w: length, h: length, rot: z.boolean() })).min(1),
  defects: z.array(z.object({ x: place, y: place, w: length, h: length })).default([]),
  feature: z
    .object({
      gx: place,
      gy: place,
      gw: length,
      gh: length,
      bw: length,
      bh: length,
      tol2: air,
      required: z.boolean(),
    })
    .nullish()
    .transform((feature) => feature ?? undefined),
})

/** A panel as a file tells it. Throws `bad_input` with the place and what is wrong there. */
export function panelInput(value: unknown): PanelToCut {
  const parsed = panelSchema.safeParse(value)
  if (parsed.success) return parsed.data
  const [first] = parsed.error.issues
  throw new Failure('bad_input', {
    field: first!.path.join('.') || 'panel',
    why: `${first!.path.join('.') || 'the file'}: ${first!.message}`,
  })
}
