import type { FibreKey } from './fibres.ts'
import type { LanguageCode } from './languages/types.ts'

/** What a care label says, as far as its words could be read. */
export interface LabelReading {
  readonly blocks: readonly Block[]
  readonly iron: IronReading
  /** Plain codes of `careCodes`, in the order of a label: wash, bleach, dry, iron, dry-clean. */
  readonly care: readonly CareCode[]
  readonly languages: readonly LanguageCode[]
  /** 0 to 1. */
  readonly confidence: number
  /** False: show it as a question, never as a fact. */
  readonly sure: boolean
  readonly problems: readonly LabelProblem[]
  /** The lines as read, cleaned of marks that do not print. */
  readonly text: readonly string[]
}

/** The make-up of one part of a garment. */
export interface Block {
  /** The part: `body`, `lining`, `rib` … or null where the label names none. */
  readonly section: string | null
  readonly fibres: readonly FibreShare[]
  /** Sum of the shares, percent. */
  readonly total: number
  /** The shares sum to 100 (97 to 103 with a warning among the problems). */
  readonly complete: boolean
}

export interface FibreShare {
  readonly fibre: FibreKey
  readonly percent: number
  /** Breed, finish or the name as printed, where it says more than the key. */
  readonly detail?: string
}

export interface IronReading {
  /** Null where the label gives no level. */
  readonly level: IronLevel | null
  readonly noSteam: boolean
  readonly notOnPrint: boolean
  readonly wrongSide: boolean
  readonly words: string | null
}

export type IronLevel = 'none' | 'cool' | 'warm' | 'hot'

export interface LabelProblem {
  readonly code: ProblemCode
  readonly message: string
}

/** Why a reading is doubtful, each with a sentence for the command line. */
export const problemWords = {
  no_words: 'There are no words to read.',
  no_fibres: 'No fibre with a share was found.',
  shares_missing: 'Fibres are named, but not how much of each.',
  total_near_100: 'The shares come close to 100 percent, but not to it.',
  total_not_100: 'The shares do not add up to 100 percent.',
  name_unknown: 'A share stands beside a name that is not known.',
  name_unusual: 'A fibre is named that has no ironing figure of its own here.',
  name_ambiguous: 'A name or letter code may mean more than one fibre.',
  spelling: 'A name was read through its spelling mistakes.',
  pairing: 'It is not clear which share belongs to which fibre.',
  number_unexplained: 'A percentage belongs to no fibre.',
  fibre_unexplained: 'A fibre is named without a share.',
  share_worked_out: 'A share could not be read; it is what the others leave of 100 percent.',
  section_unclear: 'It is not clear which part of the garment a share belongs to.',
  words_unread: 'A word or number among the shares could not be read.',
  share_limited: 'A share is told as a limit or as a near one, not as what it is.',
  guessed: 'The words themselves say that they are a guess.',
  alternatives: 'The label names more than one make-up, for example by colour.',
  languages_disagree: 'The languages on the label do not say the same.',
  iron_unclear: 'The words about ironing are not clear; the colder reading stands.',
  letters_unclear: 'Letters or numbers on the photo may be others than were read.',
  too_long: 'The text is longer than any label; only its beginning was read.',
} as const

export type ProblemCode = keyof typeof problemWords

/** The plain codes of `care`. */
export const careCodes = {
  'no-wash': 'do not wash',
  'hand-wash': 'wash by hand',
  'machine-wash': 'wash in the machine',
  'no-bleach': 'do not bleach',
  'no-tumble': 'do not tumble dry',
  'tumble-dry': 'may be tumble dried',
  'flat-dry': 'dry flat',
  'line-dry': 'hang to dry',
  'no-iron': 'do not iron',
  'iron-cool': 'cool iron',
  'iron-warm': 'warm iron',
  'iron-hot': 'hot iron',
  'no-dry-clean': 'do not dry-clean',
  'dry-clean': 'dry-clean',
} as const

export type CareCode = keyof typeof careCodes
