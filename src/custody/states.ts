/** What is looked after. A found thing came out of a pocket or a seam; an extra one was not on the list. */
export const kinds = ['garment', 'leftover', 'found', 'extra', 'parcel', 'outgoing'] as const

export type Kind = (typeof kinds)[number]

/** Where a subject is, so to speak: not here yet, in the house, gone for good, or nobody knows. */
export type Whereabouts = 'coming' | 'here' | 'gone' | 'unknown'

/** The states of each kind in the order in which a subject passes them, the exits behind. */
export const statesOf = {
  garment: {
    expected: 'coming',
    received: 'here',
    isolated: 'here',
    held: 'here',
    'torn-down': 'here',
    stabilised: 'here',
    cut: 'here',
    sewn: 'here',
    'home-with-quilt': 'gone',
    missing: 'unknown',
    'not-sent': 'coming',
    withdrawn: 'here',
    'returned-uncut': 'gone',
  },
  leftover: {
    bagged: 'here',
    isolated: 'here',
    'kept-for-repair': 'here',
    missing: 'unknown',
    returned: 'gone',
    'given-away': 'gone',
    discarded: 'gone',
  },
  found: { kept: 'here', isolated: 'here', missing: 'unknown', returned: 'gone' },
  extra: { 'set-apart': 'here', isolated: 'here', missing: 'unknown', returned: 'gone' },
  parcel: {
    announced: 'coming',
    arrived: 'here',
    isolated: 'here',
    unpacked: 'gone',
    'not-posted': 'gone',
    'sent-back': 'gone',
    missing: 'unknown',
  },
  outgoing: { packed: 'here', posted: 'gone', delivered: 'gone', missing: 'unknown' },
} as const satisfies Readonly<Record<Kind, Readonly<Record<string, Whereabouts>>>>

export type State = { [K in Kind]: keyof (typeof statesOf)[K] }[Kind]

/** What the subject's kind says of a state. Throws where the kind has no such state. */
export function whereabouts(kind: Kind, state: State): Whereabouts {
  const of: Readonly<Partial<Record<State, Whereabouts>>> = statesOf[kind]
  const found = of[state]
  if (!found) throw new Error(`a ${kind} is never ${state}`)
  return found
}
