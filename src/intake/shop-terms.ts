import { z } from 'zod'

const count = z.number().int().nonnegative()
/** Minutes of one thing: a garment, a piece, a square foot, a yard. */
const minutes = z.number().nonnegative()

/** How much the benches can do. Whole days; weeks begin on Mondays, work is from Monday to Friday. */
export const benchSchema = z.strictObject({
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

const daysKept = z.number().int().min(1).max(36_500)

/** For how many days what customers gave is kept, from when it was last touched. */
export const keepingSchema = z.strictObject({
  open_days: daysKept.default(365),
  withdrawn_days: daysKept.default(90),
  unsent_days: daysKept.default(730),
  finished_days: daysKept.default(3650),
  removed_photo_days: daysKept.default(7),
  mail_file_days: daysKept.default(30),
  /** Told to customers alone: whoever runs the server throws these away. */
  log_days: daysKept.default(30),
  backup_days: daysKept.default(35),
})

/** A tax on all that is paid to the workshop; at most three decimals, as the sums are exact to them. */
export const taxSchema = z.strictObject({
  name: z.record(z.string(), z.string().min(1)),
  percent: z
    .number()
    .min(0)
    .max(100)
    .refine((percent) => Number(percent.toFixed(3)) === percent, 'three decimals at most'),
})

/** What stands under every offer, in each language. */
export const policiesSchema = z.array(z.record(z.string(), z.string().min(1)))

/** What lacks words in a language of the shop, as `where: language`. */
export const missingTerms = ({
  languages,
  tax,
  policies,
}: {
  readonly languages: readonly string[]
  readonly tax: z.infer<typeof taxSchema> | null
  readonly policies: z.infer<typeof policiesSchema>
}): string[] =>
  [
    ...(tax ? [['tax', tax.name] as const] : []),
    ...policies.map((one) => ['policies', one] as const),
  ].flatMap(([where, text]) =>
    languages.filter((code) => !text[code]).map((code) => `${where}: ${code}`),
  )
