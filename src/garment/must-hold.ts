import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import { type FactName, scales, settings } from './facts.ts'
import { type Grading, grades } from './grade.ts'
import type { Knowledge } from './knowledge.ts'
import { methods, type PressPlan } from './press.ts'

const oneOrMore = <T extends z.ZodType>(schema: T) =>
  z.union([schema.transform((one) => [one]), z.array(schema).min(1)])

const conditions = z.record(z.string(), oneOrMore(z.string()))
const celsius = z.number().int().nonnegative()
const codes = z.array(z.string()).min(1)

const outcome = z.strictObject({
  method: oneOrMore(z.enum(methods)).optional(),
  backing: oneOrMore(z.enum(['fused', 'sewn-in', 'none'])).optional(),
  grade: oneOrMore(z.enum(grades)).optional(),
  most_c: celsius.optional(),
  spare_c: celsius.optional(),
  tests_first: z.literal(true).optional(),
  caution: codes.optional(),
  flag: codes.optional(),
  no_flag: codes.optional(),
  unfit: z.array(z.enum(settings)).min(1).optional(),
  reasons: z.literal(true).optional(),
})

const claim = z
  .strictObject({
    when: oneOrMore(conditions),
    while: z.strictObject({ method: oneOrMore(z.enum(methods)) }).optional(),
    must: outcome,
  })
  .refine(
    ({ while: premise, must }) =>
      !premise || !(must.grade || must.flag || must.no_flag || must.unfit || must.reasons),
    'while goes with what is pressed, held, tested or warned of',
  )

const scaled = z.enum(Object.keys(scales) as [keyof typeof scales, ...(keyof typeof scales)[]])

const statement = z.union([
  z.strictObject({ id: z.string(), says: z.string(), holds: z.array(claim).min(1) }),
  z.strictObject({
    id: z.string(),
    says: z.string(),
    worse: z.array(scaled).min(1),
    never: z.array(z.enum(['raises-ceiling', 'nearer-fusing', 'betters-grade'])).min(1),
  }),
])

export type Conditions = Readonly<Record<string, readonly string[]>>
export type Claim = z.infer<typeof claim>
export type Outcome = z.infer<typeof outcome>
export type Statement = z.infer<typeof statement>
export type Scaled = keyof typeof scales & FactName

/** What an outcome asks, one by one: a single key each, of several codes a single one. */
export function demandsOf(must: Outcome): Outcome[] {
  const { caution = [], flag = [], no_flag = [], ...others } = must
  return [
    ...Object.entries(others).map(([key, value]): Outcome => ({ [key]: value })),
    ...caution.map((code): Outcome => ({ caution: [code] })),
    ...flag.map((code): Outcome => ({ flag: [code] })),
    ...no_flag.map((code): Outcome => ({ no_flag: [code] })),
  ]
}

/** The statements of must-hold.yaml. Throws `flows_invalid` with what is wrong. */
export function readStatements(value: unknown): Statement[] {
  const parsed = z.array(statement).safeParse(value)
  if (parsed.success) return parsed.data
  throw new Failure('flows_invalid', {
    file: 'must-hold.yaml',
    line: 1,
    why: z.prettifyError(parsed.error),
  })
}

/** What a plan shows of the press; `spareC` is null where nothing is fused. */
export interface Shown extends Omit<PressPlan, 'cautions'> {
  readonly spareC: number | null
}

export function shown(
  plan: Omit<PressPlan, 'cautions'>,
  interfacings: Knowledge['interfacings'],
): Shown {
  const used = interfacings.find((it) => it.class === plan.interfacing)
  return { ...plan, spareC: used ? (plan.ceilingC ?? 0) - used.soleC : null }
}

/** Whether the plan keeps what a claim says of pressing. */
export function keepsPress({ while: premise, must }: Claim, plan: Shown): boolean {
  if (premise && !premise.method.includes(plan.method)) return true
  return (
    (!must.method || must.method.includes(plan.method)) &&
    (!must.backing || must.backing.includes(plan.backing)) &&
    (must.most_c === undefined || (plan.ceilingC ?? 0) <= must.most_c) &&
    (must.spare_c === undefined || (plan.spareC !== null && plan.spareC >= must.spare_c)) &&
    (!must.tests_first || plan.testFirst)
  )
}

const namesReasons = ({ grade, flags }: Grading): boolean =>
  grade === 'sound' ||
  flags.some(
    ({ severity, because, for: readers }) =>
      severity === grade && because.length > 0 && readers.includes('customer'),
  )

/** Whether a grading keeps all that a claim says, its premise over the facts being so. */
export function keeps(claim: Claim, grading: Grading, knowledge: Knowledge): boolean {
  const { must } = claim
  const plan = shown(grading.press, knowledge.interfacings)
  if (claim.while && !claim.while.method.includes(plan.method)) return true
  const flagged = (code: string) => grading.flags.some((flag) => flag.code === code)
  return (
    keepsPress(claim, plan) &&
    (!must.grade || must.grade.includes(grading.grade)) &&
    (must.caution ?? []).every((code) => grading.press.cautions.includes(code)) &&
    (must.flag ?? []).every(flagged) &&
    !(must.no_flag ?? []).some(flagged) &&
    !grading.layouts.some(({ setting, fits }) => fits && must.unfit?.includes(setting)) &&
    (!must.reasons || namesReasons(grading))
  )
}
