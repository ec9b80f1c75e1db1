import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import { domains, type FactName, type Facts } from './facts.ts'

const oneOrMore = z.union([z.string().transform((one) => [one]), z.array(z.string()).min(1)])
const conditions = z.record(z.string(), oneOrMore)

const act = z.strictObject({
  act: z.string().regex(/^[a-z][a-z0-9-]*$/, 'a name in small letters'),
  by: z.enum(['customer', 'workshop']),
  question: z.string().optional(),
  effort: z.number().int().min(1),
  wets: z.literal(true).optional(),
  where: conditions.optional(),
  unless: conditions.optional(),
  answers: z.array(z.string()),
  source: z.string().min(1),
  layout: z.literal(true).optional(),
  open: conditions.default({}),
  may: z.array(conditions).default([]),
})

const schema = z.strictObject({ acts: z.array(act).min(1) })

/** Facts, each with some of its values. */
export type Values = { readonly [K in FactName]?: readonly Facts[K][] }

/** Something that might be found out or done. What the fields mean stands in better.yaml. */
export interface Act {
  readonly act: string
  readonly by: 'customer' | 'workshop'
  readonly question: string | null
  readonly effort: number
  readonly wets: boolean
  readonly layout: boolean
  readonly open: Values
  readonly may: readonly Values[]
  readonly where: Values | null
  readonly unless: Values
  /** Codes of reasons whose own next step it says already. */
  readonly answers: readonly string[]
  readonly source: string
}

type Parsed = z.infer<typeof act>

const unknownIn = (values: z.infer<typeof conditions> | undefined): string[] =>
  Object.entries(values ?? {}).flatMap(([fact, all]) => {
    if (!Object.hasOwn(domains, fact)) return [`${fact} is no fact`]
    const domain: readonly string[] = domains[fact as FactName]
    return all.filter((value) => !domain.includes(value)).map((one) => `${fact} is never "${one}"`)
  })

/** What is wrong with an act, in plain words. */
function faultsOf(one: Parsed): string[] {
  const changes = Object.keys(one.open).length > 0
  if (changes === (one.layout === true) || changes !== one.may.length > 0)
    return ['it needs "open" and "may", or "layout" alone']
  const left = one.may.flatMap((line) =>
    Object.keys(one.open)
      .filter((fact) => !(fact in line))
      .map((fact) => `a line of "may" leaves out ${fact}`),
  )
  // Nobody is asked to give up a scent they want to keep, or a garment they want whole.
  const kept = [
    ...(one.open.wash?.includes('never') ? ['what is never to be washed stays so'] : []),
    ...(one.open.consent?.some((value) => value !== 'unknown') ? ['a word on cutting stands'] : []),
  ]
  const named = [one.open, ...one.may, one.where, one.unless].flatMap(unknownIn)
  return [...named, ...left, ...kept]
}

const actOf = (one: Parsed): Act => ({
  act: one.act,
  by: one.by,
  question: one.question ?? null,
  effort: one.effort,
  wets: one.wets === true,
  layout: one.layout === true,
  open: one.open as Values,
  may: one.may as readonly Values[],
  where: (one.where ?? null) as Values | null,
  unless: (one.unless ?? {}) as Values,
  answers: one.answers,
  source: one.source,
})

function refuse(why: string): never {
  throw new Failure('flows_invalid', { file: 'better.yaml', line: 1, why })
}

/** The acts of better.yaml. Throws `flows_invalid` with what is wrong, a fact or value that is not there too. */
export function readActs(value: unknown): Act[] {
  const parsed = schema.safeParse(value)
  if (!parsed.success) refuse(z.prettifyError(parsed.error))
  const seen = new Set<string>()
  for (const one of parsed.data.acts) {
    const [fault] = seen.has(one.act) ? ['it stands here twice'] : faultsOf(one)
    if (fault) refuse(`${one.act}: ${fault}`)
    seen.add(one.act)
  }
  return parsed.data.acts.map(actOf)
}
