import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import {
  benchSchema,
  keepingSchema,
  missingTerms,
  policiesSchema,
  taxSchema,
} from './shop-terms.ts'

const colour = z.string().regex(/^#[0-9a-f]{6}$/)

/** How customers' pages look where the shop wishes them otherwise than ours. */
const lookSchema = z.strictObject({
  /** The main button and the thread. */
  accent: colour.optional(),
  /** What everything lies on. */
  ground: colour.optional(),
  /** Families as a stylesheet names them, quotation marks in pairs. */
  font: z
    .string()
    .max(120)
    .regex(/^(?:[\w ,-]|"[\w ,-]+"|'[\w ,-]+')+$/)
    .optional(),
  /** How round corners are, px. */
  corner: z.number().min(0).max(24).optional(),
})

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
  /** A question to a customer waits so long for others that go in the same mail, in minutes. */
  question_minutes: z.number().int().min(0).max(120).default(5),
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
  bench: benchSchema,
  /** Null: none. */
  tax: taxSchema.nullable().default(null),
  policies: policiesSchema.default([]),
  keeping: keepingSchema.prefault({}),
  look: lookSchema.default({}),
})

export type Shop = z.infer<typeof shopSchema>
export type Bench = Shop['bench']

const invalid = (why: string) => new Failure('flows_invalid', { file: 'shop.yaml', line: 1, why })

export function readShop(value: unknown): Shop {
  const read = shopSchema.safeParse(value)
  if (!read.success) {
    const issue = read.error.issues[0]!
    throw invalid(`${issue.path.join('.')}: ${issue.message}`)
  }
  const [missing] = missingTerms(read.data)
  if (missing) throw invalid(`no words for ${missing}`)
  return read.data
}
