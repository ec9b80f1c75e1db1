import { z } from 'zod'
import { Failure } from '../base/failures.ts'

const count = z.number().int().nonnegative()
/** Minutes of one thing: a garment, a piece, a square foot, a yard. */
const minutes = z.number().nonnegative()

/** How much the benches can do. Whole days; weeks begin on Mondays, work is from Monday to Friday. */
const benchSchema = z.strictObject({
  benches: z.number().int().positive(),
  /** Of one bench. */
  hours_a_week: z.number().int().positive().max(168),
  /** For what nobody foresees. */
  kept_free_percent: z.number().int().min(0).max(90),
  /** From yes to the promised day at least. */
  lead_days: count,
  /** From the workshop to the customer's door. */
  travel_days: count,
  /** Less room than this before the day a quilt is needed is told as tight. */
  tight_days: count,
  /** Days on which nobody works, the first and the last. */
  closed: z.array(
    z
      .strictObject({ from: z.iso.date(), to: z.iso.date() })
      .refine(({ from, to }) => from <= to, 'from comes before to'),
  ),
  /** By the lines of work of an estimate. */
  minutes: z.strictObject({
    teardown: minutes,
    stabilising: minutes,
    cutting: minutes,
    piecing: minutes,
    quilting: minutes,
    finishing: minutes,
  }),
})

/** A tax on all that is paid to the workshop; at most three decimals, as the sums are exact to them. */
const taxSchema = z.strictObject({
  name: z.record(z.string(), z.string().min(1)),
  percent: z
    .number()
    .min(0)
    .max(100)
    .refine((percent) => Number(percent.toFixed(3)) === percent, 'three decimals at most'),
})

const colour = z.string().regex(/^#[0-9a-f]{6}$/)

/** `shop.yaml`: who the workshop is. */
const shopSchema = z.strictObject({
  name: z.string().min(1),
  tagline: z.record(z.string(), z.string()),
  email: z.email(),
  phone: z.string(),
  address: z.array(z.string()),
  currency: z.string().length(3),
  /** Where the shop is: how numbers, money and days are written. */
  region: z.string().regex(/^[A-Z]{2}$/),
  languages: z.array(z.string()).min(1),
  units: z.enum(['inches', 'centimetres']),
  /** What papers are laid out for where nobody asks for another. */
  paper: z.enum(['letter', 'a4']).default('letter'),
  /** How long a customer's link works after it was last made, in days. */
  link_days: z.number().int().positive(),
  /** After how many days customers are reminded, and how often of one thing at most. */
  reminders: z.strictObject({
    open_after_days: z.number().int().min(1),
    question_after_days: z.number().int().min(1),
    most: z.number().int().min(0).max(10),
  }),
  /** How long a parcel usually takes to the workshop where nobody says the day, in days. */
  parcel_days: z.number().int().min(1).max(90).default(7),
  /** So many days after that it is overdue. */
  parcel_overdue_days: z.number().int().min(0).max(90).default(3),
  /** Bought cloth is drawn so until it is chosen, `#rrggbb`, by what it does in the quilt. */
  cloth_colours: z.strictObject({
    focal: colour,
    background: colour,
    accent: colour,
    sashing: colour,
    binding: colour,
  }),
})
const shopSchema = z
  .strictObject({
    name: z.string().min(1),
    tagline: z.record(z.string(), z.string()),
    email: z.email(),
    phone: z.string(),
    address: z.array(z.string()),
    currency: z.string().length(3),
    /** Where the shop is: how numbers, money and days are written. */
    region: z.string().regex(/^[A-Z]{2}$/),
    languages: z.array(z.string()).min(1),
    units: z.enum(['inches', 'centimetres']),
    /** How long a customer's link works after it was last made, in days. */
    link_days: z.number().int().positive(),
    /** Bought cloth is drawn so until it is chosen, `#rrggbb`, by what it does in the quilt. */
    cloth_colours: z.strictObject({
      focal: colour,
      background: colour,
      accent: colour,
      sashing: colour,
      binding: colour,
    }),
    bench: benchSchema,
    /** Null: none. */
    tax: taxSchema.nullable().default(null),
    /** What stands under every offer, in each language. */
    policies: z.array(z.record(z.string(), z.string().min(1))).default([]),
  })
  .superRefine(({ languages, tax, policies }, context) => {
    const told = [
      ...(tax ? [['tax', tax.name] as const] : []),
      ...policies.map((one) => ['policies', one] as const),
    ]
    for (const [where, text] of told) {
      for (const code of languages.filter((one) => !text[one])) {
        context.addIssue({ code: 'custom', path: [where], message: `has no words in ${code}` })
      }
    }
  })

export type Shop = z.infer<typeof shopSchema>
export type Bench = Shop['bench']
export type Tax = NonNullable<Shop['tax']>

export function readShop(value: unknown): Shop {
  const read = shopSchema.safeParse(value)
  if (read.success) return read.data
  const issue = read.error.issues[0]!
  throw new Failure('flows_invalid', {
    file: 'shop.yaml',
    line: 1,
    why: `${issue.path.join('.')}: ${issue.message}`,
  })
}
