import { apart, garmentMoves } from './garment-moves.ts'
import { type Move, type MoveOfKind, sources } from './move.ts'
import type { Kind, State } from './states.ts'

const { entry, condition, exit, loss, trade } = sources

const leftover: readonly MoveOfKind[] = [
  { move: 'bag', from: [], to: 'bagged', guards: ['parent-apart'], source: entry },
  {
    move: 'return',
    from: ['bagged', 'kept-for-repair'],
    to: 'returned',
    guards: ['signed-off', 'choice-return'],
    caution: 'release',
    source: exit,
  },
  {
    move: 'keep-for-repair',
    from: ['bagged'],
    to: 'kept-for-repair',
    guards: ['signed-off', 'choice-repair'],
    source: trade,
  },
  {
    move: 'give-away',
    from: ['bagged'],
    to: 'given-away',
    guards: ['signed-off', 'choice-give'],
    caution: 'release',
    source: exit,
  },
  {
    move: 'discard',
    from: ['bagged'],
    to: 'discarded',
    guards: ['signed-off', 'choice-discard'],
    reason: true,
    caution: 'release',
    source: exit,
  },
]

/** A thing that is the customer's as it is may go back to them at any time, once they are asked how. */
const backAsItIs = (from: State): MoveOfKind => ({
  move: 'return',
  from: [from],
  to: 'returned',
  guards: [],
  reason: true,
  caution: 'release',
  source: exit,
})

const found: readonly MoveOfKind[] = [
  { move: 'find', from: [], to: 'kept', guards: ['parent-here'], caution: 'found', source: entry },
  backAsItIs('kept'),
]

const extra: readonly MoveOfKind[] = [
  { move: 'set-apart', from: [], to: 'set-apart', guards: ['parcel-open'], source: entry },
  backAsItIs('set-apart'),
]

const parcel: readonly MoveOfKind[] = [
  { move: 'announce', from: [], to: 'announced', guards: [], source: entry },
  {
    move: 'arrive',
    from: ['announced', 'missing'],
    to: 'arrived',
    guards: [],
    caution: 'opened',
    source: entry,
  },
  { move: 'unpack', from: ['arrived'], to: 'unpacked', guards: [], source: condition },
  {
    move: 'not-posted',
    from: ['announced'],
    to: 'not-posted',
    guards: [],
    reason: true,
    source: trade,
  },
  {
    move: 'send-back',
    from: ['arrived', 'isolated'],
    to: 'sent-back',
    guards: [],
    reason: true,
    caution: 'release',
    source: exit,
  },
  {
    move: 'miss',
    from: ['announced'],
    to: 'missing',
    guards: [],
    reason: true,
    source: loss,
  },
]

const outgoing: readonly MoveOfKind[] = [
  { move: 'pack', from: [], to: 'packed', guards: [], source: exit },
  { move: 'post', from: ['packed'], to: 'posted', guards: [], source: exit },
  { move: 'deliver', from: ['posted', 'missing'], to: 'delivered', guards: [], source: exit },
  { move: 'miss', from: ['posted'], to: 'missing', guards: [], reason: true, source: loss },
]

/** Apart from the others, closed, until a person says why it may go on. */
const isolation = (from: readonly State[]): readonly MoveOfKind[] => [
  {
    move: 'isolate',
    from,
    to: 'isolated',
    guards: [],
    reason: true,
    caution: 'soiled',
    source: condition,
  },
  {
    move: 'lift',
    from: ['isolated'],
    to: 'before',
    guards: [],
    reason: true,
    caution: 'lift',
    source: condition,
  },
]

/** Nobody knows where it is; it comes back into the state that it was missed in. */
const loseAndFind = (from: readonly State[]): readonly MoveOfKind[] => [
  { move: 'miss', from, to: 'missing', guards: [], reason: true, source: loss },
  { move: 'turn-up', from: ['missing'], to: 'before', guards: ['was-here'], source: loss },
]

const of = (kind: Kind, ...lists: readonly (readonly MoveOfKind[])[]): Move[] =>
  lists.flat().map((move) => ({ kind, ...move }))

/** Every move that there is. What is not here cannot happen. */
export const moves: readonly Move[] = [
  ...of(
    'garment',
    garmentMoves,
    isolation(['received', 'held', ...apart]),
    loseAndFind(['expected', 'received', 'isolated', 'held', ...apart, 'cut', 'sewn', 'withdrawn']),
  ),
  ...of(
    'leftover',
    leftover,
    isolation(['bagged', 'kept-for-repair']),
    loseAndFind(['bagged', 'isolated', 'kept-for-repair']),
  ),
  ...of('found', found, isolation(['kept']), loseAndFind(['kept', 'isolated'])),
  ...of('extra', extra, isolation(['set-apart']), loseAndFind(['set-apart', 'isolated'])),
  ...of('parcel', parcel, isolation(['arrived'])),
  ...of('outgoing', outgoing),
]
