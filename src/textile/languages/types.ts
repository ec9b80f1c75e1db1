import type { FibreKey } from '../fibres.ts'

export type LanguageCode =
  | 'en'
  | 'fr'
  | 'es'
  | 'de'
  | 'it'
  | 'pt'
  | 'nl'
  | 'pl'
  | 'sv'
  | 'da'
  | 'ro'
  | 'cs'
  | 'tr'
  | 'zh'
  | 'ja'
  | 'ko'

/**
 * How a name was checked. `seen`: in an official list or a copy of its table; `secondary`: in a list
 * that is not official; `memory`: not checked. At least one of the names carries the status.
 */
export type NameStatus = 'seen' | 'secondary' | 'memory'

export interface Names {
  readonly status: NameStatus
  readonly names: readonly string[]
}

export type FibreNames = Readonly<Partial<Record<FibreKey, Names>>>

/** Everything that labels in one language print and that is read here. */
export interface LabelLanguage {
  readonly code: LanguageCode
  readonly fibres: FibreNames
  /** Inflected, short and older forms of the names above (from memory). */
  readonly alsoNamed: Readonly<Partial<Record<FibreKey, readonly string[]>>>
  readonly sections: SectionNames
  readonly words: LabelWords
  readonly care: CareWords
  /** Words of which numbers are made, as customers type them, from memory. */
  readonly numbers?: Readonly<Record<string, number>>
}

export type SectionNames = Readonly<Partial<Record<Section, readonly string[]>>>

/** Parts of a garment. `body` stands for shell, outer cloth and face. */
export const sections = [
  'body',
  'lining',
  'rib',
  'filling',
  'sleeve',
  'hood',
  'pocket',
  'collar',
  'trim',
  'back',
  'front',
  'coating',
  'pile',
  'ground',
  'insert',
  'embroidery',
  'lace',
  'waistband',
  'top',
  'bottom',
] as const

export type Section = (typeof sections)[number]

/** Words around the shares, from memory throughout. */
export interface LabelWords {
  /** "Pure", "all": one fibre only. */
  readonly pure?: readonly string[]
  /** "Exclusive of decoration": what follows is no share. */
  readonly excluded?: readonly string[]
  /** Breed and finish words that fold into the fibre beside them. */
  readonly details?: readonly string[]
  /** Words that may stand between a share and its fibre. */
  readonly fillers?: readonly string[]
  /** A percentage right after these is no share. */
  readonly decoysBefore?: readonly string[]
  /** A percentage right before these is no share. */
  readonly decoysAfter?: readonly string[]
  readonly percent?: readonly string[]
  /** "I think", "almost": what stands on the label is not known. */
  readonly hedges?: readonly string[]
  /** "Feels like": the share told of is another cloth's. */
  readonly likeness?: readonly string[]
  /** "At least", "max.", "about": what stands behind is no exact share. */
  readonly limits?: readonly string[]
  readonly or?: readonly string[]
  /** "For heather", "solid colours": the make-up hangs on the colour. */
  readonly variants?: readonly string[]
}

/** Care wording, from memory throughout. */
export interface CareWords {
  /** Speaks of ironing or pressing. */
  readonly iron: readonly string[]
  /** Forbids ironing in one word or a fixed phrase. */
  readonly ironNot?: readonly string[]
  /** Says that no ironing is needed: neither leave nor ban. */
  readonly ironFree?: readonly string[]
  /** Forbids the verb that follows. */
  readonly not?: readonly string[]
  /** Forbids the verb before. */
  readonly notAfter?: readonly string[]
  /** Forbids the verb on either side. */
  readonly notEither?: readonly string[]
  readonly or?: readonly string[]
  /** Carries a ban on as "or" does, but not to a verb that has a level: "do not bleach and iron low". */
  readonly and?: readonly string[]
  /** "Except", "avoiding", "but": takes what follows out of what is said. */
  readonly except?: readonly string[]
  /** "Hotter than", "above": behind a ban what follows is a limit. */
  readonly than?: readonly string[]
  readonly cool: readonly string[]
  readonly warm: readonly string[]
  readonly hot: readonly string[]
  /** Prints and decorations that no iron may touch. */
  readonly print: readonly string[]
  /** "On the reverse side", "inside out". */
  readonly reverse: readonly string[]
  /** The outer side: an iron kept off it works from the reverse. */
  readonly face?: readonly string[]
  readonly steam: readonly string[]
  readonly noSteam: readonly string[]
  readonly wash: readonly string[]
  readonly washNot?: readonly string[]
  readonly handWash: readonly string[]
  readonly bleach: readonly string[]
  readonly bleachNot?: readonly string[]
  readonly tumble: readonly string[]
  readonly tumbleNot?: readonly string[]
  readonly flatDry: readonly string[]
  readonly lineDry: readonly string[]
  readonly dryClean: readonly string[]
  readonly dryCleanNot?: readonly string[]
  /** Other verbs of care: they end the reach of a word before them. */
  readonly otherVerbs?: readonly string[]
  /** Small words that may stand inside an ironing phrase. */
  readonly fillers?: readonly string[]
}
