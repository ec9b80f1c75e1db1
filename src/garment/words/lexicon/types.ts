import type { ColourWord } from '../../../base/colour-words.ts'
import type { Facts, Size } from '../../facts.ts'

/** Words and phrases parted by bars, over as many lines as they need. A `?` behind one: to be asked about. */
export const list = (words: string): readonly string[] =>
  words.replaceAll(/\s+/g, ' ').trim().split(' | ')

type Listed<T extends string> = { readonly [V in T]?: readonly string[] }

/** Facts that a single word or phrase may tell. */
export interface TellingWords {
  readonly kind: Listed<Facts['kind']>
  readonly size: Listed<Size>
  readonly colour: Listed<ColourWord | 'many-colours'>
  readonly wear: Listed<Facts['wear']>
  readonly soil: Listed<Facts['soil']>
  readonly wash: Listed<Facts['wash']>
  readonly age: Listed<Facts['age']>
  readonly pattern: Listed<Facts['pattern']>
  readonly printMake: Listed<Facts['printMake']>
  readonly stretch: Listed<Facts['stretch']>
  readonly weight: Listed<Facts['weight']>
  readonly surface: Listed<Facts['surface']>
  readonly trims: Listed<Facts['trims']>
  readonly consent: Listed<Facts['consent']>
  readonly oneWay: Listed<Facts['oneWay']>
  readonly bleed: Listed<Facts['bleed']>
  readonly iron: Listed<Facts['iron']>
  readonly mustUse: Listed<'yes'>
}

/** What words do that tell no fact by themselves. */
export interface HelpingWords {
  /** What a thing is not: "no", "without". */
  readonly negates: readonly string[]
  /** Behind what is not there: "hole free". */
  readonly negatesBefore: readonly string[]
  /** A guess: "maybe", "I think". */
  readonly hedges: readonly string[]
  /** Begins a question, at the front of it. */
  readonly asks: readonly string[]
  /** A sentence that holds it asks something, with or without its mark. */
  readonly asksAnywhere: readonly string[]
  /** What follows is not said to be so. */
  readonly supposes: readonly string[]
  readonly people: readonly string[]
  /** Parts of a garment, and what is on it: a colour or fibre beside it is that part's. */
  readonly parts: readonly string[]
  /** Parts with a make-up of their own. */
  readonly linings: readonly string[]
  /** Of a colour: "light", "dark". */
  readonly shades: readonly string[]
  /** Between a colour or size and the garment, saying something else: "sports", "work". */
  readonly modifies: readonly string[]
  readonly ands: readonly string[]
  /** Choices: of what stands on both sides, one may be so. */
  readonly ors: readonly string[]
  readonly sizeMarks: readonly string[]
  /** A garment behind it is another one than this: "like", "over". */
  readonly besides: readonly string[]
  /** Ends a garment's name on its left. */
  readonly fillers: readonly string[]
  /** Child-sized. */
  readonly childish: readonly string[]
  /** Says nothing of the garment, whatever its words say elsewhere: "hole in one". */
  readonly blocks: readonly string[]
  /** Slips that are made often, with the word that is meant. */
  readonly spellings: Readonly<Record<string, string>>
  /** Ordinary in the other language, so heard only in a line in this one. */
  readonly ownAlone: readonly string[]
}

export interface Lexicon {
  readonly code: 'en' | 'es'
  readonly tells: TellingWords
  readonly helps: HelpingWords
}
