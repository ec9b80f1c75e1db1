import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import { type Figure, memory } from '../base/figure.ts'
import { domains, type Facts } from '../garment/facts.ts'
import type { Interfacing } from '../garment/knowledge.ts'

/** The sole is hotter than the glue line behind the cloth by this much at least, °C. */
const soleOverGlueC = 15

export const soleFigures: readonly Figure[] = [
  { figure: 'rates/sole over glue line, least', value: soleOverGlueC, unit: '°C', source: memory },
]

const minor = z.number().int().nonnegative()
const inches = z.number().positive()
const celsius = z.number().int().positive()
const grams = z.number().int().positive()
const metres = z.number().positive()
const days = z.number().int().positive()

const perKind = <T extends z.ZodType>(schema: T) => z.record(z.enum(domains.kind), schema)
/** Each step reaches further than the one before, for no less. */
const isRising = (steps: readonly { to_g: number; price: number }[]): boolean =>
  steps.every(({ to_g, price }, n) => {
    const before = steps[n - 1]
    return !before || (to_g > before.to_g && price >= before.price)
  })

const roll = { price_per_yard: minor, width_in: inches }

/** One dated file of rates, whole. Money in minor units of `currency`, lengths in inches, weights in grams. */
const ratesSchema = z.strictObject({
  from: z.iso.date(),
  currency: z.string().regex(/^[A-Z]{3}$/),
  labour: z.strictObject({
    cut_per_piece: minor,
    sew_per_piece: minor,
    quilt_per_square_foot: minor,
    /** Of the quilt's edge: binding and finishing. */
    bind_per_yard: minor,
  }),
  /**
   * How often a piece's sewing is paid for, by layout: once in plain squares. A layout that is left out
   * cannot be estimated.
   */
  piecing: z.record(z.string(), z.number().positive()),
  teardown: perKind(minor),
  stabilising: z.strictObject({ fused: minor, 'sewn-in': minor }),
  interfacing: z.record(
    z.string(),
    z
      .strictObject({
        method: z.enum(['fuse', 'fuse-cool']),
        glue_line_c: celsius,
        sole_c: celsius,
        weights: z.array(z.enum(domains.weight)),
        ...roll,
        source: z.string(),
      })
      .refine(
        (it) => it.sole_c >= it.glue_line_c + soleOverGlueC,
        'the sole is 15 to 30 °C over the glue line',
      ),
  ),
  sew_in: z.strictObject(roll),
  cloth: z.strictObject({
    usable_width_in: inches,
    backing_per_yard: minor,
    binding_per_yard: minor,
    top_up_per_yard: minor,
  }),
  batting: z.array(z.strictObject({ w: inches, h: inches, price: minor })).min(1),
  batting_over_in: inches,
  thread: z.strictObject({ price_per_spool: minor, spool_m: metres }),
  weights_g: perKind(grams),
  weights_g_per_m2: z.strictObject({ cloth: grams, batting: grams, interfacing: grams }),
  boxes: z
    .array(
      z.strictObject({
        box: z.string(),
        w: inches,
        h: inches,
        d: inches,
        holds_g: grams,
        weighs_g: grams,
      }),
    )
    .min(1),
  /** What a parcel costs, up to a weight. */
  postage: z
    .array(z.strictObject({ to_g: grams, price: minor }))
    .min(1)
    .refine(isRising, 'heavier steps come later, and cost no less'),
  /** Of the total, where `deposit_amount` is null. */
  deposit_percent: z.number().int().min(0).max(100),
  /** An amount in place of the percentage, never more than the total; null: none. */
  deposit_amount: minor.nullable().default(null),
  valid_days: days,
  turnaround_weeks: z
    .strictObject({ low: days, high: days })
    .refine(({ low, high }) => low <= high, 'low comes before high'),
  /** Where the figures come from. Prices and terms are the shop's own and need none. */
  sources: z
    .strictObject({
      widths: z.string(),
      batting: z.string(),
      batting_over_in: z.string(),
      thread: z.string(),
      weights_g: z.string(),
      weights_g_per_m2: z.string(),
      boxes: z.string(),
    })
    .partial()
    .default({}),
})

export type Rates = z.infer<typeof ratesSchema>

type Tree = { readonly [key: string]: unknown }

const isTree = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** What a later file says over what stood before: it holds only what changes. Lists change whole. */
const over = (before: Tree, later: Tree): Tree => ({
  ...before,
  ...Object.fromEntries(
    Object.entries(later).map(([key, value]) => {
      const old = before[key]
      return [key, isTree(old) && isTree(value) ? over(old, value) : value]
    }),
  ),
})

const dated = z.looseObject({ from: z.iso.date() })

function refuse(from: unknown, why: string): never {
  throw new Failure('flows_invalid', { file: `rates from ${from}`, line: 1, why })
}

function datedOf(value: unknown): z.infer<typeof dated> {
  const parsed = dated.safeParse(value)
  return parsed.success ? parsed.data : refuse('?', z.prettifyError(parsed.error))
}

/**
 * Rates files' values as the rates that hold from each day on, oldest first. The first file is whole; a
 * later one says only what changes. Throws `flows_invalid` where one is wrong or two start on a day.
 */
export function readRates(values: readonly unknown[]): Rates[] {
  const files = values.map(datedOf).toSorted((a, b) => (a.from < b.from ? -1 : 1))
  const twice = files.find(({ from }, n) => files[n + 1]?.from === from)
  if (twice) refuse(twice.from, 'two files start here')
  let whole: Tree = {}
  return files.map((file) => {
    whole = over(whole, file)
    const parsed = ratesSchema.safeParse(whole)
    return parsed.success ? parsed.data : refuse(file.from, z.prettifyError(parsed.error))
  })
}

/** The rates of a day (YYYY-MM-DD). A day before the first rates has no price: `no_rate_for_date`. */
export function ratesAt(rates: readonly Rates[], date: string): Rates {
  const found = rates.findLast(({ from }) => from <= date)
  if (!found) throw new Failure('no_rate_for_date', { date })
  return found
}

/** The classes of interfacing that grading chooses from. */
export const interfacingsOf = ({ interfacing }: Rates): Interfacing[] =>
  Object.entries(interfacing).map(([name, { method, sole_c, weights }]) => ({
    class: name,
    method,
    soleC: sole_c,
    weights: weights as Facts['weight'][],
  }))
