import { z } from 'zod'

/**
 * The grammar of a flow file. It stays this small: where a flow asks for more, a rule gets a name.
 * Words are not in it; they stand in the flow's words files under the question's id.
 */
export const kinds = [
  'choice',
  'many',
  'number',
  'text',
  'label',
  'symbols',
  'photo',
  'spots',
  'contact',
  'confirm',
] as const

export const name = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]*$/, 'a name of letters, digits, - and _')

/** Holds when the named rule does. */
const ruleGuard = z.strictObject({ rule: name })

/** Holds when the answer just given is (one of) these options, or when the named rule holds. */
const edgeGuard = z.union([
  z.strictObject({ answer: z.union([name, z.array(name).min(1)]) }),
  ruleGuard,
])

/** Where to go on: the id of a later question of the same part, or `end` of the part. */
const edge = z.strictObject({ when: edgeGuard.optional(), to: name })

/** An option that is always offered, or one that is offered while a rule holds. */
const option = z.union([name, z.strictObject({ option: name, when: ruleGuard })])

export const questionSchema = z.strictObject({
  id: name,
  kind: z.enum(kinds),
  /** choice, many, confirm: the values. symbols: the codes of the drawn signs. spots: what may be there. */
  options: z.array(option).min(1).optional(),
  /** number: whole bounds, both included, and the name of the unit. photo, spots: `max` at most. */
  min: z.number().int().optional(),
  max: z.number().int().optional(),
  unit: name.optional(),
  /** number: the finest part taken; whole numbers alone where it is not said. */
  step: z.union([z.literal(0.5), z.literal(0.25)]).optional(),
  /** text, label: the most characters taken. */
  longest: z.number().int().positive().optional(),
  /** May be skipped; an optional question is not counted as effort. */
  optional: z.literal(true).optional(),
  /** Asked only while this rule holds. */
  when: ruleGuard.optional(),
  /** The first edge whose guard holds is taken; without edges the next question in order follows. */
  next: z.array(edge).min(1).optional(),
  /** Who needs the answer: names registered as a rule, a paper or a person. */
  read_by: z.array(name).min(1),
  /** A drawing and cautions shown with the question, by name. */
  drawing: name.optional(),
  cautions: z.array(name).optional(),
})

export const flowSchema = z.strictObject({
  flow: name,
  parts: z
    .array(
      z.strictObject({
        id: name,
        /** Asked again for each item the visitor adds; at most `most` items. */
        repeat: z.literal(true).optional(),
        most: z.number().int().positive().optional(),
        questions: z.array(questionSchema).min(1),
      }),
    )
    .min(1),
})

export type Kind = (typeof kinds)[number]
export type Question = z.infer<typeof questionSchema>
export type Flow = z.infer<typeof flowSchema>
export type Part = Flow['parts'][number]

export interface NumberValue {
  readonly amount: number
  readonly unit: string
}

/** A photo of a label that came with a reply. */
export interface LabelSeen {
  /** Its id. */
  readonly photo?: string
  /** The words as they were read on it, before anybody changed them; empty: none were read. */
  readonly read?: string
}

/** What a care label says: typed words, a picked ironing sign, or why there is neither. */
export interface LabelValue extends LabelSeen {
  readonly found: 'words' | 'signs' | 'none'
  readonly words: string
  /** Picked beside the words; null when none was picked. */
  readonly iron: 'none' | 'cool' | 'warm' | 'hot' | 'absent' | null
  /** The words stand as they were read on a photo, and were read with doubt. */
  readonly doubted?: true
}

export interface ContactValue {
  readonly name: string
  readonly email: string
  readonly phone: string
}

/** A place marked on a picture. */
export interface SpotValue {
  /** The photo's id. */
  readonly photo: string
  /** In shares of the upright picture's width and height, 0 to 1. */
  readonly x: number
  readonly y: number
  /** One of the question's options. */
  readonly what: string
  /** The part of the thing that it lies in; null: not known. */
  readonly part: string | null
}

/** choice, text, confirm: a string. many, symbols, photo: strings. */
export type Value =
  | string
  | readonly string[]
  | readonly SpotValue[]
  | NumberValue
  | LabelValue
  | ContactValue

/** How a question was met: answered, passed over, or left to a person with a note, a label with its photo. */
export type Reply =
  | { readonly given: Value }
  | { readonly skipped: true }
  | ({ readonly asked: string } & LabelSeen)

/** Replies by question id. Inside a repeated part: the item's own and those of earlier parts. */
export type Replies = Readonly<Record<string, Reply>>

/** A named pure guard. `reads` lists every question whose reply it looks at. */
export interface Rule {
  readonly reads: readonly string[]
  readonly holds: (replies: Replies) => boolean
}

export type Rules = Readonly<Record<string, Rule>>

/** What a conversation is made of. Items of a repeated part are numbered from 1; others are item 0. */
export type Act =
  | {
      readonly act: 'answer'
      readonly item: number
      readonly question: string
      readonly reply: Reply
      /** The visitor's own words that it was taken from, once they had confirmed it; it may come before its turn. */
      readonly because?: string
      /** Said of several items at once, before its turn. */
      readonly ahead?: true
    }
  | { readonly act: 'add'; readonly item: number }
  | { readonly act: 'copy'; readonly item: number; readonly from: number }
  | { readonly act: 'drop'; readonly item: number }
  | { readonly act: 'restore'; readonly item: number }
  | { readonly act: 'close' }
