import { colourWords } from '../base/colour-words.ts'
import type { Followed } from '../flow/follow.ts'
import type { Act, Replies, Reply, Value } from '../flow/grammar.ts'
import { implied } from '../garment/derive.ts'
import type { Facts } from '../garment/facts.ts'
import { readWords, type Said, type WordsReading } from '../garment/words/read-words.ts'
import { chosen, ticked } from './replies.ts'

/** Where customers say what a garment is in a line of their own, and where they confirm what was read in it. */
const lineOf = (replies: Replies): string | undefined => chosen(replies, 'name')
export const wordsCheck = 'words_check'

/** Questions that a line may answer; each is an option of the question that confirms it. */
export const wordParts = [
  'kind',
  'size',
  'surface',
  'wear',
  'stretch',
  'weight',
  'pattern',
  'colours',
  'print_make',
] as const
export type WordPart = (typeof wordParts)[number]

/** Parts beside the kind, which is always among those that are confirmed. */
export const furtherParts = wordParts.slice(1)

/** What a line answers: the value of the question's reply, whether that is sure, and the words. */
export interface PartRead {
  readonly given: string | readonly string[]
  readonly sure: boolean
  readonly because: string
}

type Read = ReadonlyMap<WordPart, PartRead>

interface Kept {
  readonly reading: WordsReading
  readonly parts: Read
}

// The same line is read again each time a pile is followed; a reading depends on its words alone.
const kept = new Map<string, Kept>()
const mostKept = 5_000

function keptOf(line: string): Kept {
  const known = kept.get(line)
  if (known) return known
  if (kept.size >= mostKept) kept.clear()
  const reading = readWords(line)
  const one = { reading, parts: partsOf(reading) }
  kept.set(line, one)
  return one
}

const noLetterSize: readonly Facts['kind'][] = ['blanket', 'tie', 'scarf', 'apron']

/** Kinds whose size no letter tells; they are not asked for it. */
export const hasLetterSize = (kind: Facts['kind']): boolean => !noLetterSize.includes(kind)

const answers = (said: Said<string> | undefined): PartRead[] =>
  said ? [{ given: said.value, sure: said.sure, because: said.because }] : []

function partsOf({ facts }: WordsReading): Read {
  const { kind, size, colour, surface, wear, stretch, weight, pattern, printMake } = facts
  const known = kind?.sure ? implied(kind.value) : {}
  const open = <T extends string>(fact: keyof Facts, said: Said<T> | undefined) =>
    known[fact] === undefined ? answers(said) : []
  const isPrinted = pattern?.sure && (pattern.value === 'single' || pattern.value === 'allover')
  const found: readonly (readonly [WordPart, readonly PartRead[]])[] = [
    ['kind', answers(kind)],
    [
      'size',
      size && typeof size.value === 'string' && (!kind || hasLetterSize(kind.value))
        ? [{ ...size, given: size.value }]
        : [],
    ],
    ['surface', open('surface', surface)],
    // "Good condition" is no look at the cloth against the light.
    ['wear', wear && wear.value !== 'sound' ? answers(wear) : []],
    ['stretch', stretch && stretch.value !== 'bias' ? open('stretch', stretch) : []],
    ['weight', open('weight', weight)],
    ['pattern', answers(pattern)],
    ['colours', colour ? [{ ...colour, given: coloursIn(colour) }] : []],
    ['print_make', isPrinted ? answers(printMake) : []],
  ]
  return new Map(
    found.flatMap(([part, [read]]) =>
      read ? [[part, { given: read.given, sure: read.sure, because: read.because }]] : [],
    ),
  )
}

/** As the question offers them, so that equal choices are equal. */
const coloursIn = ({ value, also }: NonNullable<WordsReading['facts']['colour']>): string[] =>
  value === 'many-colours'
    ? [value]
    : colourWords.filter((word) => word === value || also.includes(word))

/** What the garment's own line answers, by question; empty where there is none. */
export function partsRead(replies: Replies): Read {
  const line = lineOf(replies)
  return line === undefined ? new Map() : keptOf(line).parts
}

/** From so many sure parts on a page that confirms them costs less than their questions. */
const worthAsking = 2

export function tellsEnough(replies: Replies): boolean {
  const parts = partsRead(replies)
  return parts.has('kind') && [...parts.values()].filter(({ sure }) => sure).length >= worthAsking
}

/** As long as a tag holds it. */
const longestOnTag = 60

/** What to call a garment by the line that was written: the line itself where it is a name and no story. */
export function calledIn(line: string | undefined): string | null {
  if (line === undefined) return null
  if (line.length <= longestOnTag && !/[\n,.;!?]/.test(line)) return line
  const { name } = keptOf(line).reading
  if (name !== '') return name
  const [first = ''] = line.split('\n')
  if (first.length <= longestOnTag) return first
  return `${first.slice(0, longestOnTag - 1).replace(/\s+\S*$/, '')}…`
}

/** What a line proposes as ticks of questions that ask for more than it tells. */
export function ticksRead(replies: Replies, question: 'history' | 'details'): readonly string[] {
  const line = lineOf(replies)
  if (line === undefined) return []
  const { facts, mustUse } = keptOf(line).reading
  const told = (fact: keyof typeof marks): string[] => {
    const said = facts[fact]
    const mark = said?.sure
      ? (marks[fact] as Readonly<Record<string, string>>)[said.value]
      : undefined
    return mark === undefined ? [] : [mark]
  }
  if (question === 'history')
    return [...told('soil'), ...told('wash'), ...told('age'), ...told('bleed')]
  return [
    ...(mustUse?.sure ? ['must-use'] : []),
    ...told('trims'),
    ...told('oneWay'),
    ...told('consent'),
  ]
}

const marks = {
  soil: {
    soiled: 'stained',
    'body-fluid': 'body-fluid',
    mould: 'damp',
    pests: 'pests',
    chemical: 'chemical',
  },
  wash: { softener: 'softener', unwashed: 'unwashed', never: 'scent' },
  age: { old: 'old', historic: 'historic' },
  bleed: { bleeds: 'bleeds' },
  trims: { removable: 'hard-trims', meltable: 'melting-trims', glued: 'glued-trims' },
  oneWay: { yes: 'one-way' },
  consent: { part: 'keep-a-spot', 'no-cut': 'no-cut' },
} as const

/** The make-up that a line tells whole, in its words; empty: none. The label is still asked for: it tells of ironing. */
export function fibresRead(replies: Replies): string {
  const line = lineOf(replies)
  const fibres = line === undefined ? undefined : keptOf(line).reading.facts.fibres
  return fibres?.sure ? fibres.because : ''
}

const isGiven = (reply: Reply | undefined, given: Value): boolean =>
  reply !== undefined && 'given' in reply && JSON.stringify(reply.given) === JSON.stringify(given)

/**
 * The answers that follow from confirming what a line says, each with the words behind it: what was ticked and
 * has no answer of its own yet is answered, what was unticked and had been taken from the line is asked again.
 */
export function answersByWords({ items }: Followed, act: Act): Act[] {
  if (act.act !== 'answer' || act.question !== wordsCheck) return []
  const item = items.find(({ n }) => n === act.item)
  if (!item) return []
  const said = ticked({ [wordsCheck]: act.reply }, wordsCheck)
  return [...partsRead(item.replies)].flatMap(([question, { given, because }]): Act[] => {
    const before = item.replies[question] ?? item.aside[question]
    const answer = (reply: Reply): Act[] => [
      { act: 'answer', item: act.item, question, reply, because },
    ]
    if (said.includes(question)) return before && 'given' in before ? [] : answer({ given })
    return isGiven(before, given) ? answer({ skipped: true }) : []
  })
}
