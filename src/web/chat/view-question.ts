import type { Photo } from './view.ts'
import type { OutlineShown } from './view-sheet.ts'

export interface Option {
  readonly value: string
  readonly label: string
  readonly help: string | null
  /** Name of a drawing; null: none. For symbols and kinds a drawing named as the value is found by itself. */
  readonly drawing: string | null
  /** Colours that are shown beside the word, `#rrggbb`. */
  readonly swatch?: readonly string[]
  readonly chosen: boolean
}

/** The colours of a cloth, `#rrggbb`, and in words for who does not see them. */
export interface Swatch {
  readonly colours: readonly string[]
  readonly words: string
}

export interface UnitOption {
  readonly value: string
  readonly label: string
}

export type IronSign = 'hot' | 'warm' | 'cool' | 'none' | 'absent'

/** What was read on the photo of a label. */
export interface LabelRead {
  /** `none`: no words were found on it. */
  readonly verdict: 'sure' | 'unsure' | 'none'
  /** "We read: Cotton 60 %, polyester 40 %. Warm iron."; null: it makes no sense to us. */
  readonly summary: string | null
  /** Lines whose letters were hard to see. */
  readonly doubted: readonly string[]
  /** What to compare with the label, and what to do better with another photo. */
  readonly advice: readonly string[]
}

/** What a photo of the garment shows, as a proposal of an answer. */
export interface LookShown {
  readonly photo: Photo
  /** Where the one picture is, in shares of the photo's width and height; null: there is none to frame. */
  readonly box: {
    readonly x: number
    readonly y: number
    readonly w: number
    readonly h: number
  } | null
  /** The sheet that its size is told by; null: no size is told. */
  readonly sheet: OutlineShown | null
  readonly sentence: string
  /** An answer was filled in, and none of several chosen. */
  readonly filled: boolean
}

/** The way to have a size told by a sheet of paper on the photo. */
export interface MeasureOffer {
  readonly sentence: string
  readonly label: string
  readonly href: string
}

/** A photo with what is marked on it. */
export interface MarkedPhoto {
  readonly photo: Photo
  /** Pixels of the upright picture: how tall it is. */
  readonly width: number
  readonly height: number
  /** With their numbers; places in shares of the picture. */
  readonly marks: readonly { readonly n: number; readonly x: number; readonly y: number }[]
}

/** A mark, its part still to be chosen or changed. */
export interface SpotShown {
  readonly n: number
  /** As a form holds it. */
  readonly value: string
  /** "2: Hole, photo 1". */
  readonly words: string
  readonly parts: readonly { readonly value: string; readonly label: string }[]
  /** Empty: not known. */
  readonly part: string
}

/** A photo that is there already: what it shows may be said, and it may be moved or taken away. */
export interface AttachedPhoto extends Photo {
  /** Empty: nobody told. */
  readonly shows: string
  readonly sides: readonly { readonly value: string; readonly label: string }[]
  /** It is ticked to go. */
  readonly goes: boolean
}

export interface LabelPhotoShown {
  readonly taken: Photo | null
  /** Null: it was not read. */
  readonly read: LabelRead | null
  /** Words that were typed before the photo was read; empty: none. */
  readonly typed: string
}

/** What is filled in is what was last sent, right or wrong; a refused text is never lost. */
export type Answering =
  | {
      readonly kind: 'choice' | 'confirm' | 'many' | 'symbols'
      readonly options: readonly Option[]
    }
  | {
      readonly kind: 'number'
      readonly value: string
      readonly min: number | null
      readonly max: number | null
      /** Below 1 where parts of a whole are answers too. */
      readonly step: number
      /** Sent as the hidden field `unit`. */
      readonly unit: UnitOption
    }
  | {
      readonly kind: 'text'
      readonly value: string
      readonly longest: number
      readonly lines: boolean
    }
  | {
      readonly kind: 'label'
      readonly words: string
      readonly found: 'words' | 'signs' | 'none' | null
      readonly iron: IronSign | null
      readonly longest: number
      /** Null where labels are typed alone. */
      readonly photo: LabelPhotoShown | null
    }
  | {
      readonly kind: 'photo'
      readonly attached: readonly AttachedPhoto[]
      readonly most: number
      /** What to do better with another photo; what is there may be kept all the same. */
      readonly advice: readonly string[]
    }
  | {
      readonly kind: 'spots'
      readonly photos: readonly MarkedPhoto[]
      /** What the next mark may be. */
      readonly options: readonly Option[]
      readonly spots: readonly SpotShown[]
      /** Kinds of marks that say otherwise than an answer, each with a sentence. */
      readonly against: readonly { readonly kind: string; readonly sentence: string }[]
    }
  | {
      readonly kind: 'contact'
      readonly name: string
      readonly email: string
      readonly phone: string
    }

/** A refusal, beside the field (the input's name) that it speaks of. */
export interface FieldError {
  readonly field:
    | 'value'
    | 'words'
    | 'found'
    | 'iron'
    | 'photo'
    | 'spots'
    | 'name'
    | 'email'
    | 'phone'
    | 'note'
  readonly sentence: string
}

/** The answer before this one, to be taken back in place. */
export interface JustSaid {
  /** "Wear: Sound all over" */
  readonly words: string
  readonly href: string
}

export interface Question {
  readonly id: string
  /** The garment's number; 0 for the pile's own questions. */
  readonly item: number
  /** "grey work trousers"; null: the pile's own, or no name yet. */
  readonly itemName: string | null
  /** Which question of this part it is, and how many there are at most; null: not told. */
  readonly position: { readonly at: number; readonly atMost: number } | null
  readonly title: string
  readonly help: string | null
  readonly why: string | null
  readonly drawing: string | null
  readonly cautions: readonly string[]
  /** What a photo proposes; null: none does. */
  readonly look: LookShown | null
  /** Null: no photo could tell a size that is asked for. */
  readonly measure: MeasureOffer | null
  /** Answers that a script may send at a tap: each of a choice, or that nothing of a list is so. */
  readonly tap?: 'each' | 'none' | null
  readonly just?: JustSaid | null
  readonly optional: boolean
  /** What passing over means here: "There is no hurry". Without it: "Skip this". */
  readonly skipLabel?: string | null
  readonly answering: Answering
  readonly errors: readonly FieldError[]
  /** A note to a person that was begun. */
  readonly note: string
  readonly postTo: string
  /** idem, seq. */
  readonly hidden: Readonly<Record<string, string>>
  /** Back to the question before; null: this is the first. */
  readonly backHref: string | null
}
