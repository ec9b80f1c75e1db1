import type { z } from 'zod'
import { type Finding, nowhere, type Path, Unreadable, type Where } from './finding.ts'
import { type Flow, flowSchema } from './grammar.ts'
import { type PathLimit, pathLimitsSchema } from './path-limits.ts'
import type { Source } from './source.ts'
import { type Table, tableSchema } from './table-grammar.ts'

/** A flow out of plain data. Throws Unreadable with every finding; `where` gives file and lines. */
export const readFlow = (value: unknown, where: Where = nowhere): Flow =>
  read(flowSchema, value, where)

/** A decision table out of plain data. Throws Unreadable, as readFlow does. */
export const readTable = (value: unknown, where: Where = nowhere): Table =>
  read(tableSchema, value, where)

/** The limits of paths out of plain data. Throws Unreadable, as readFlow does. */
export const readPathLimits = (value: unknown, where: Where = nowhere): readonly PathLimit[] =>
  read(pathLimitsSchema, value, where)

function read<T>(schema: z.ZodType<T>, value: unknown, where: Where): T {
  const found = (where as Partial<Source>).findings ?? []
  if (found.length > 0) throw new Unreadable(found)

  const result = schema.safeParse(value)
  if (result.success) return result.data
  throw new Unreadable(result.error.issues.map((issue) => findingOf(issue, where)))
}

function findingOf(issue: z.core.$ZodIssue, where: Where): Finding {
  const { path, message } = nearest(issue)
  return {
    file: where.file,
    line: where.lineOf(path),
    rule: 'grammar',
    message: path.length > 0 ? `${path.join('.')}: ${message}` : message,
  }
}

/** Of a choice between shapes, the complaint of the shape that came nearest: the deepest one. */
function nearest(issue: z.core.$ZodIssue, above: Path = []): { path: Path; message: string } {
  const path = [...above, ...(issue.path as Path)]
  if (issue.code === 'unrecognized_keys') {
    return { path: [...path, issue.keys[0]!], message: issue.message }
  }
  if (issue.code !== 'invalid_union') return { path, message: issue.message }
  const inner = issue.errors.flat().map((one) => nearest(one, path))
  const deepest = Math.max(path.length, ...inner.map((one) => one.path.length))
  if (deepest > path.length) return inner.find((one) => one.path.length === deepest)!
  const messages = [...new Set(inner.map((one) => one.message))]
  return { path, message: messages.join(', or ') || issue.message }
}
