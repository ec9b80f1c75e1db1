import { z } from 'zod'

/**
 * The grammar of a decision table. Columns are facts with a finite domain that the caller declares:
 * a list of values, or whole numbers from … to. A row matches when each of its cells does.
 */
const scalar = z.union([z.string(), z.number(), z.boolean(), z.null()])

/** One value, several, all but some, or a closed range of whole numbers (either end may be open). */
export const cellSchema = z.union([
  z.string(),
  z.array(z.string()).min(1),
  z.strictObject({ not: z.union([z.string(), z.array(z.string()).min(1)]) }),
  z
    .strictObject({ from: z.number().int().optional(), to: z.number().int().optional() })
    .refine((r) => r.from !== undefined || r.to !== undefined, 'a range has at least one end'),
])

export const tableSchema = z.strictObject({
  table: z.string(),
  /** first: the topmost matching row alone. collect: all matching rows, in order. */
  hit: z.enum(['first', 'collect']),
  /** The columns a row may name in `when`. */
  reads: z.array(z.string()).min(1),
  /** The outputs each row gives. */
  gives: z.array(z.string()).min(1),
  rows: z
    .array(
      z.strictObject({
        id: z.string(),
        when: z.record(z.string(), cellSchema),
        give: z.record(z.string(), z.union([scalar, z.array(z.string())])),
        /** Where the rule comes from: a published source, or "common practice, no source". */
        source: z.string(),
      }),
    )
    .min(1),
})

export type Cell = z.infer<typeof cellSchema>
export type Table = z.infer<typeof tableSchema>
export type TableRow = Table['rows'][number]

export type Domain = readonly string[] | { readonly from: number; readonly to: number }
export type Domains = Readonly<Record<string, Domain>>
