import type { Kind, State } from './states.ts'

/** What must be so before a move is made; each is looked at by `guards.ts`. */
export type Guard =
  /** The workshop accepted the pile. */
  | 'accepted'
  /** The garment was not declined at the desk, and nobody waits for an answer about it. */
  | 'taken'
  /** Its photo is there, consent is recorded, and a second person released it. */
  | 'may-cut'
  /** No incident with it waits for a word of staff. */
  | 'not-stopped'
  /** The customer has seen all that lies cut laid out as the quilt, as it is now, and said yes. */
  | 'quilt-seen'
  /** Nothing that was found in it is still here. */
  | 'found-gone'
  /** The finished quilt was signed off. */
  | 'signed-off'
  /** The customer chose this for what is left over. */
  | 'choice-return'
  | 'choice-repair'
  | 'choice-give'
  | 'choice-discard'
  /** It comes out of a parcel that is here and not isolated. */
  | 'parcel-open'
  /** It was never in the house, or it was. */
  | 'never-here'
  | 'was-here'
  /** The garment it comes from has been taken apart and is in the house. */
  | 'parent-apart'
  /** The garment that it was found in has passed the box check and is in the house. */
  | 'parent-here'
  /** The quilt does not need it: it was declined, the pile is not accepted, or the quilt is signed off. */
  | 'not-needed'

/** `before`: the state it stood in when it was isolated, withdrawn or missed. */
export type Target = State | 'before'

export interface Move {
  readonly kind: Kind
  readonly move: MoveName
  /** Empty: the subject is born by it. */
  readonly from: readonly State[]
  readonly to: Target
  readonly guards: readonly Guard[]
  /** Why it is made has to be told. */
  readonly reason?: true
  /** A caution that is shown where the hand is, under `custody.cautions`. */
  readonly caution?: Caution
  /** Where the rule comes from. */
  readonly source: string
}

export type Caution = 'opened' | 'soiled' | 'blade' | 'iron' | 'release' | 'lift' | 'found'

export const moveNames = [
  'expect',
  'receive',
  'hold',
  'isolate',
  'lift',
  'tear-down',
  'stabilise',
  'cut',
  'sew',
  'go-home',
  'miss',
  'turn-up',
  'not-sent',
  'withdraw',
  'resume',
  'return-uncut',
  'bag',
  'return',
  'keep-for-repair',
  'give-away',
  'discard',
  'find',
  'set-apart',
  'announce',
  'arrive',
  'unpack',
  'not-posted',
  'send-back',
  'pack',
  'post',
  'deliver',
] as const

export type MoveName = (typeof moveNames)[number]

/** A move of a table that is of one kind. */
export type MoveOfKind = Omit<Move, 'kind'>

/** Where the rules come from. */
export const sources = {
  entry: 'Collections Trust, Spectrum 5.1, Object entry',
  location: 'Collections Trust, Spectrum 5.1, Location and movement control',
  condition: 'Collections Trust, Spectrum 5.1, Condition checking and technical assessment',
  exit: 'Collections Trust, Spectrum 5.1, Object exit',
  loss: 'Collections Trust, Spectrum 5.1, Damage and loss',
  trade: 'common practice, no source',
} as const

/** Beside the moves of the tables: the same state at another place, and an entry that takes another back. */
export const besideMoves = [
  { move: 'put', source: sources.location },
  { move: 'undo', source: sources.location },
] as const
