import { type MoveOfKind, sources } from './move.ts'
import type { State } from './states.ts'

const { entry, condition, exit, trade } = sources

/** Its cloth is in parts, and whole. */
export const apart: readonly State[] = ['torn-down', 'stabilised']

/** What a garment goes through. Isolation and loss stand with those of the other kinds. */
export const garmentMoves: readonly MoveOfKind[] = [
  { move: 'expect', from: [], to: 'expected', guards: [], source: entry },
  {
    move: 'receive',
    from: ['expected', 'not-sent'],
    to: 'received',
    guards: ['parcel-open'],
    caution: 'opened',
    source: entry,
  },
  {
    move: 'receive',
    from: ['missing'],
    to: 'received',
    guards: ['parcel-open', 'never-here'],
    caution: 'opened',
    source: entry,
  },
  { move: 'hold', from: ['received'], to: 'held', guards: [], source: condition },
  {
    move: 'tear-down',
    from: ['held'],
    to: 'torn-down',
    guards: ['accepted', 'taken', 'not-stopped'],
    caution: 'blade',
    source: trade,
  },
  {
    move: 'stabilise',
    from: ['torn-down'],
    to: 'stabilised',
    guards: ['accepted', 'taken', 'not-stopped'],
    caution: 'iron',
    source: trade,
  },
  {
    move: 'cut',
    from: apart,
    to: 'cut',
    guards: ['not-stopped', 'may-cut'],
    caution: 'blade',
    source: trade,
  },
  {
    move: 'sew',
    from: ['cut'],
    to: 'sewn',
    guards: ['not-stopped', 'quilt-seen'],
    source: trade,
  },
  {
    move: 'go-home',
    from: ['sewn'],
    to: 'home-with-quilt',
    guards: ['signed-off', 'found-gone'],
    caution: 'release',
    source: exit,
  },
  {
    move: 'not-sent',
    from: ['expected'],
    to: 'not-sent',
    guards: [],
    reason: true,
    source: entry,
  },
  {
    move: 'not-sent',
    from: ['missing'],
    to: 'not-sent',
    guards: ['never-here'],
    reason: true,
    source: entry,
  },
  {
    move: 'withdraw',
    from: ['received', 'held', ...apart],
    to: 'withdrawn',
    guards: [],
    reason: true,
    source: trade,
  },
  {
    move: 'resume',
    from: ['withdrawn'],
    to: 'before',
    guards: ['accepted', 'taken'],
    reason: true,
    source: trade,
  },
  {
    move: 'return-uncut',
    from: ['received', 'isolated', 'held', ...apart],
    to: 'returned-uncut',
    guards: ['not-needed', 'found-gone'],
    reason: true,
    caution: 'release',
    source: exit,
  },
  {
    move: 'return-uncut',
    from: ['withdrawn'],
    to: 'returned-uncut',
    guards: ['found-gone'],
    reason: true,
    caution: 'release',
    source: exit,
  },
]
