import { z } from 'zod'
import { Failure } from '../base/failures.ts'
import { type FibreKey, isFibreKey } from '../textile/fibres.ts'
import { heatOf } from '../textile/heat.ts'
import { wholeWithin } from '../textile/label/blocks.ts'
import type { Block } from '../textile/reading.ts'
import {
  domains,
  type FactName,
  type Facts,
  pileDomains,
  settings,
  sizes,
  untold,
} from './facts.ts'
import type { PileFacts } from './grade.ts'
import type { Knowledge } from './knowledge.ts'
import type { GarmentSize } from './panels.ts'

const fibre = z.custom<FibreKey>((key) => typeof key === 'string' && isFibreKey(key))

/** `percent` null: the fibre is named, and nobody told how much of it there is. */
const share = z.object({ fibre, percent: z.number().min(0).max(100).nullable() })

const block = z.object({
  section: z.string().nullable().default(null),
  fibres: z.array(share),
  complete: z.boolean().optional(),
})

/** Blocks as a label reading gives them, or the shares of one block alone. */
const fibresSchema = z.union([
  z.array(block),
  z.array(share).transform((shares) => [{ section: null, fibres: shares, complete: undefined }]),
])

function asBlocks(given: z.infer<typeof fibresSchema>): Block[] {
  return given.map(({ section, fibres: named, complete }) => {
    const fibres = named.flatMap(({ percent, ...one }) =>
      percent === null ? [] : [{ ...one, percent }],
    )
    const total = fibres.reduce((sum, { percent }) => sum + percent, 0)
    const whole = Math.abs(total - 100) <= wholeWithin
    return {
      section,
      fibres,
      total,
      complete: whole && complete !== false && fibres.length === named.length,
    }
  })
}

const object = z.record(z.string(), z.unknown())
const inputSchema = z.object({ garment: object, pile: object.default({}) })

function refuse(fact: string, allowed: string): never {
  throw new Failure('bad_input', { fact, allowed })
}

function oneOf<T extends string>(fact: string, value: unknown, allowed: readonly T[]): T {
  return allowed.includes(value as T) ? (value as T) : refuse(fact, allowed.join(', '))
}

const isTold = (value: unknown): boolean => value !== undefined && value !== null

/** A JSON true or false is as good as yes or no. */
const plain = (value: unknown): unknown =>
  typeof value === 'boolean' ? (value ? 'yes' : 'no') : value

function factsOf(garment: Record<string, unknown>): Facts {
  const names = Object.keys(domains) as FactName[]
  const told = names.filter((name) => isTold(garment[name]))
  return {
    ...untold,
    ...Object.fromEntries(
      told.map((name) => [name, oneOf<string>(name, plain(garment[name]), domains[name])]),
    ),
  } as Facts
}

function blocksFrom(given: unknown): Block[] | null {
  if (!isTold(given)) return null
  const parsed = fibresSchema.safeParse(given)
  if (!parsed.success) refuse('fibres', 'blocks of { fibre, percent }')
  return asBlocks(parsed.data)
}

function layoutOf(wish: unknown, layouts: Knowledge['layouts']): string | undefined {
  if (!isTold(wish) || wish === 'unsure') return undefined
  return oneOf('layout', wish, [...layouts.map(({ id }) => id), ...settings])
}

const inches = z.number().positive().max(200)
const sizeSchema = z.union([z.enum(sizes), z.object({ widthIn: inches, lengthIn: inches })])

/** A size that is not one of ours tells nothing, and asks for measuring. */
const sizeOf = (given: unknown): GarmentSize => sizeSchema.safeParse(given).data ?? 'unknown'

export interface GradeInput {
  readonly facts: Facts
  readonly pile: PileFacts
  readonly size: GarmentSize
  /** The shares that the heat follows from; null where none are given, or the heat itself is. */
  readonly blocks: readonly Block[] | null
  readonly heatGiven: boolean
}

/**
 * The input of the `grade` verb as facts. What is missing counts as not told; unknown keys are
 * ignored. `heat` is derived from `fibres` unless it is given. Throws `bad_input` with the fact's
 * name and what it may be.
 */
export function gradeInput(json: unknown, { layouts }: Pick<Knowledge, 'layouts'>): GradeInput {
  const parsed = inputSchema.safeParse(json)
  if (!parsed.success) refuse('garment', 'an object of facts')
  const { garment, pile } = parsed.data
  const facts = factsOf(garment)
  const recipient = isTold(pile.recipient)
    ? oneOf('recipient', pile.recipient, pileDomains.recipient)
    : 'unknown'
  const heatGiven = isTold(garment.heat)
  const blocks = heatGiven ? null : blocksFrom(garment.fibres)
  const heat = blocks ? heatOf(blocks, facts.iron).heat : facts.heat
  return {
    facts: { ...facts, heat },
    pile: { recipient, layout: layoutOf(pile.layout, layouts) },
    size: sizeOf(garment.size),
    blocks,
    heatGiven,
  }
}
