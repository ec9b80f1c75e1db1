import { z } from 'zod'
import { hottestC } from './facts.ts'
import { severities } from './grade.ts'
import { setters } from './press.ts'
import type { Rules } from './space.ts'

const code = z.string().regex(/^[a-z][a-z0-9-]*$/, 'a name in small letters')

/** What each table that grading asks must give. */
const outputs = {
  limits: z.object({
    limitC: z.number().int().min(1).max(hottestC).nullable(),
    setBy: z.enum(setters),
  }),
  permit: z.object({ most: z.enum(['press', 'fuse-cool', 'fuse']) }),
  testing: z.object({ testFirst: z.boolean() }),
  backing: z.object({ holds: z.boolean() }),
  cautions: z.object({ code }),
  flags: z.object({
    severity: z.enum(severities),
    for: z.array(z.enum(['customer', 'staff', 'maker'])).min(1),
    because: z.array(z.string()).min(1),
  }),
  'layout-fit': z.object({ fits: z.boolean(), why: code }),
} as const

export const gradingTables = Object.keys(outputs) as (keyof typeof outputs)[]

/** A row that gives what grading cannot use, or a table that is missing (row null). */
export interface WrongOutput {
  readonly table: string
  readonly row: string | null
  readonly message: string
}

const messageOf = (error: z.ZodError): string =>
  error.issues.map(({ path, message }) => `${path.join('.')}: ${message}`).join('; ')

/** Everything grading could trip over in the tables' answers. The tables' own grammar is checked before. */
export function wrongOutputs(tables: readonly Rules[]): WrongOutput[] {
  return gradingTables.flatMap((name): WrongOutput[] => {
    const found = tables.find(({ table }) => table === name)
    if (!found) return [{ table: name, row: null, message: 'the table is missing' }]
    return found.rows.flatMap(({ id, give }) => {
      const parsed = outputs[name].safeParse(give)
      return parsed.success ? [] : [{ table: name, row: id, message: messageOf(parsed.error) }]
    })
  })
}
