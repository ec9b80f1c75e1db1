import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Asked, admit, offered, undoing } from '../../src/custody/admit.ts'
import { type Entry, follow, standingEntries } from '../../src/custody/follow.ts'
import {
  type CutRecord,
  type LeftoverChoice,
  leftoverChoices,
  type PileFacts,
} from '../../src/custody/guards.ts'
import { answeredOf, areStillCut, type Cuts, cutsOf } from '../../src/custody/laid-out.ts'
import { type MoveName, moveNames } from '../../src/custody/move.ts'
import { moves } from '../../src/custody/moves.ts'
import { type ReleaseAct, releaseOf } from '../../src/custody/release.ts'
import { kinds, type State, statesOf, whereabouts } from '../../src/custody/states.ts'
import { readSubjectKey, subjectKey } from '../../src/custody/subject.ts'

/** What the desk and the customer decided. */
type Said = Pick<PileFacts, 'accepted' | 'notTaken' | 'signedOff'>

/** An act of release of a garment, and whether it was taken back. */
type Act = ReleaseAct & { readonly garment: number; readonly gone: boolean }

/** What else is known of garments: who has a photo, a consent, an open incident. */
interface Known {
  readonly photo: readonly number[]
  readonly consent: readonly number[]
  readonly stopped: readonly number[]
}

const allKnown: Known = { photo: [1, 2], consent: [1, 2], stopped: [] }

/** An act of showing the laid-out quilt: what lay there, by which plan, and after how many entries. */
interface Show {
  readonly seq: number
  readonly kind: 'laid' | 'yes' | 'change'
  readonly of: number
  readonly cuts: Cuts
  readonly plan: number
  readonly after: number
}

/** A ledger in memory: what the store's does, without a store. */
class Ledger {
  acts: Act[] = []
  others: Known = allKnown
  /** The acts that stood, and what else was known, when each entry was made. */
  readonly released: { readonly acts: readonly Act[]; readonly others: Known }[] = []
  shows: readonly Show[] = []
  /** The plan as people have settled it: another number is another plan. */
  plan = 0
  /** What had been shown, and the plan, when each entry was made. */
  readonly shown: { readonly shows: readonly Show[]; readonly plan: number }[] = []
  readonly entries: Entry[] = []
  /** What was known of the pile when each entry was made. */
  readonly known: PileFacts[] = []
  said: Said = { accepted: false, notTaken: [], signedOff: null }

  constructor(garments: number) {
    for (let n = 1; n <= garments; n += 1) {
      this.act({ subject: String(n), move: 'expect', place: '', note: '' }, null)
    }
  }

  get facts(): PileFacts {
    const { photo, consent, stopped } = this.others
    const recordOf = (n: number): CutRecord => {
      const { asked, released } = releaseOf(
        this.acts.filter(({ garment, gone }) => garment === n && !gone),
      )
      return {
        photo: photo.includes(n),
        consent: consent.includes(n),
        askedBy: asked?.who ?? null,
        releasedBy: released?.who ?? null,
      }
    }
    const cutting = new Map([1, 2].map((n) => [n, recordOf(n)]))
    return { ...this.said, stopped, cutting, seen: this.seen }
  }

  get seen(): number[] {
    const { laid, answer } = answeredOf(this.shows)
    const holds =
      laid && answer?.kind === 'yes' && laid.plan === this.plan
        ? areStillCut(laid.cuts, this.entries)
        : false
    return holds ? [...laid!.cuts.keys()] : []
  }

  /** What a workshop and its customer would do next. */
  get nextShow(): Show['kind'] {
    const { laid, answer } = answeredOf(this.shows)
    const isCurrent = laid?.plan === this.plan && areStillCut(laid.cuts, this.entries)
    return isCurrent && answer === null ? 'yes' : 'laid'
  }

  show(kind: Show['kind']): void {
    const cuts = cutsOf(this.entries)
    const seq = this.shows.length + 1
    const of = kind === 'laid' ? seq : answeredOf(this.shows).laid?.seq
    if (of === undefined || (kind === 'laid' && cuts.size === 0)) return
    const { plan, entries } = this
    this.shows = [...this.shows, { seq, kind, of, cuts, plan, after: entries.length }]
  }

  write(garment: number, kind: ReleaseAct['kind'], who: string): void {
    this.acts = [...this.acts, { seq: this.acts.length + 1, garment, kind, who, gone: false }]
  }

  /** Takes the newest act of a garment back, whatever rests on it. */
  takeBack(garment: number): void {
    const newest = this.acts.findLast((one) => one.garment === garment && !one.gone)
    this.acts = this.acts.map((one) => (one === newest ? { ...one, gone: true } : one))
  }

  push(entry: Omit<Entry, 'seq'>): void {
    this.released.push({ acts: this.acts, others: this.others })
    this.shown.push({ shows: this.shows, plan: this.plan })
    this.entries.push({ ...entry, seq: this.entries.length + 1 })
    this.known.push(this.facts)
  }

  act(asked: Asked, via: string | null): boolean {
    const subjects = follow(this.entries)
    const result = admit(asked, { pile: this.facts, subjects, via })
    if ('why' in result) return false
    const { subject, move } = asked
    this.push({ subject, move, ...result, via, undoes: null })
    return true
  }

  undo(subject: string): void {
    const entry = undoing(subject, this.entries)
    if (!entry || entry.move === 'expect') return
    const after = follow(this.entries.filter(({ seq }) => seq !== entry.seq)).get(subject)
    this.push({
      subject,
      move: 'undo',
      from: entry.to,
      to: after?.state ?? null,
      place: after?.place ?? null,
      via: null,
      undoes: entry.seq,
    })
  }
}

const garments = 2
const subjects = ['1', '2', '1-L1', '1-L2', '2-L1', 'F1', 'X1', 'P1', 'P2', 'Q1']

type Step =
  | {
      readonly what: 'onward' | 'open'
      readonly subject: string
      readonly at: number
      readonly via: string
    }
  | { readonly what: 'any'; readonly subject: string; readonly move: string; readonly via: string }
  | { readonly what: 'put'; readonly subject: string }
  | { readonly what: 'undo'; readonly subject: string }
  | { readonly what: 'facts'; readonly facts: Said }
  | { readonly what: 'others'; readonly others: Known }
  | { readonly what: 'show'; readonly how: Show['kind'] | 'on' | 'replan' }
  | {
      readonly what: 'write'
      readonly garment: number
      readonly kind: ReleaseAct['kind'] | 'back'
      readonly who: string
    }

const subject = fc.constantFrom('1', '1', '1', '2', ...subjects)
const via = fc.constantFrom('P1', 'P1', 'P1', 'P2', '1', '2')
const facts = fc.record({
  accepted: fc.constantFrom(true, true, true, false),
  notTaken: fc.constantFrom([], [], [1], [2]),
  signedOff: fc.option(fc.record({ leftovers: fc.constantFrom(...leftoverChoices) })),
})
const some = fc.constantFrom([1, 2], [1, 2], [1, 2], [1], [])
const others = fc.record({
  photo: some,
  consent: some,
  stopped: fc.constantFrom([], [], [], [1], [1, 2]),
})
const write = {
  garment: fc.constantFrom(1, 1, 2),
  kind: fc.constantFrom('ask' as const, 'release' as const, 'release' as const, 'back' as const),
  who: fc.constantFrom('ana', 'bo', 'cleo'),
}
const how = fc.constantFrom(
  ...(['on', 'on', 'on', 'on', 'on', 'on', 'on', 'laid', 'yes', 'change', 'replan'] as const),
)
const to = <T extends string>(what: T) => fc.constant(what)
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 14, arbitrary: fc.record({ what: to('onward'), subject, at: fc.nat(9), via }) },
  { weight: 2, arbitrary: fc.record({ what: to('open'), subject, at: fc.nat(9), via }) },
  {
    weight: 2,
    arbitrary: fc.record({ what: to('any'), subject, move: fc.constantFrom(...moveNames), via }),
  },
  { weight: 1, arbitrary: fc.record({ what: to('put'), subject }) },
  { weight: 1, arbitrary: fc.record({ what: to('undo'), subject }) },
  { weight: 1, arbitrary: fc.record({ what: to('facts'), facts }) },
  { weight: 1, arbitrary: fc.record({ what: to('others'), others }) },
  { weight: 6, arbitrary: fc.record({ what: to('write'), ...write }) },
  { weight: 6, arbitrary: fc.record({ what: to('show'), how }) },
)

/** Moves that lead away from the way of most things. */
const aside: readonly string[] = [
  'isolate',
  'miss',
  'withdraw',
  'not-sent',
  'return-uncut',
  'not-posted',
  'send-back',
]

/** The names of moves that a page would offer; `onward`: those alone that lead on, where there are any. */
function openTo(ledger: Ledger, subject: string, via: string, onward: boolean): string[] {
  const { kind } = readSubjectKey(subject)!
  const situation = { pile: ledger.facts, subjects: follow(ledger.entries), via }
  const names = situation.subjects.has(subject)
    ? offered(subject, situation)
        .filter(({ shut }) => shut.length === 0)
        .map(({ move }) => move.move)
    : moves.filter((one) => one.kind === kind && one.from.length === 0).map(({ move }) => move)
  const on = names.filter((name) => !aside.includes(name))
  return onward && on.length > 0 ? on : names
}

function play(steps: readonly Step[]): Ledger {
  const ledger = new Ledger(garments)
  ledger.act({ subject: 'P1', move: 'announce', place: '', note: '' }, null)
  ledger.act({ subject: 'P1', move: 'arrive', place: 'desk', note: '' }, null)
  ledger.said = { accepted: true, notTaken: [], signedOff: null }
  for (const one of steps) {
    if (one.what === 'facts') ledger.said = one.facts
    else if (one.what === 'others') ledger.others = one.others
    else if (one.what === 'show') {
      if (one.how === 'replan') ledger.plan += 1
      else ledger.show(one.how === 'on' ? ledger.nextShow : one.how)
    } else if (one.what === 'write') {
      if (one.kind === 'back') ledger.takeBack(one.garment)
      else ledger.write(one.garment, one.kind, one.who)
    } else if (one.what === 'undo') ledger.undo(one.subject)
    else if (one.what === 'put') {
      ledger.act({ subject: one.subject, move: 'put', place: 'shelf', note: '' }, null)
    } else {
      const { subject, via } = one
      const open = one.what === 'any' ? [] : openTo(ledger, subject, via, one.what === 'onward')
      const move = one.what === 'any' ? one.move : open[one.at % Math.max(1, open.length)]
      const asked = { subject, move: move as MoveName, place: 'bin', note: 'because' }
      if (move) ledger.act(asked, via)
    }
  }
  return ledger
}

/** States of a subject in order, as the standing entries tell them. */
const walked = (ledger: Ledger, key: string): State[] =>
  standingEntries(ledger.entries.filter(({ subject }) => subject === key)).flatMap(
    ({ to }) => to ?? [],
  )

/** The same walks each time: how often they come to the end of the way is held to a figure. */
const runs = { seed: 20_261_130, numRuns: 300 }
const every = (holds: (ledger: Ledger) => void) =>
  fc.assert(
    fc.property(fc.array(step, { minLength: 40, maxLength: 120 }), (steps) => holds(play(steps))),
    runs,
  )
/** What stands at the end of the way takes longer to come to. */
const long = fc.array(step, { minLength: 200, maxLength: 260 })

test('random steps come everywhere', () => {
  const reached = new Set<string>()
  for (const steps of fc.sample(long, { numRuns: 120, seed: 7 })) {
    for (const { subject, to } of play(steps).entries) {
      if (to) reached.add(`${readSubjectKey(subject)!.kind} ${to}`)
    }
  }
  const all = kinds.flatMap((kind) =>
    Object.keys(statesOf[kind]).map((state) => `${kind} ${state}`),
  )
  expect(all.filter((one) => !reached.has(one))).toEqual([])
})

test('nothing is lost: a garment is always in exactly one state, and in the house it has a place', () => {
  every((ledger) => {
    const now = follow(ledger.entries)
    for (let n = 1; n <= garments; n += 1) expect(now.has(String(n))).toBe(true)
    for (const { subject, state, place } of now.values()) {
      const here = whereabouts(readSubjectKey(subject)!.kind, state) === 'here'
      expect(place !== null && place !== '', `${subject} ${state} ${place}`).toBe(here)
    }
  })
})

test('nothing is doubled: each standing entry begins where the one before it ended', () => {
  every((ledger) => {
    for (const key of subjects) {
      const ones = standingEntries(ledger.entries.filter(({ subject }) => subject === key))
      ones.forEach(({ from }, at) => {
        expect(from).toBe(at === 0 ? null : ones[at - 1]!.to)
      })
      expect(ones.filter(({ from }) => from === null).length).toBeLessThanOrEqual(1)
    }
  })
})

/** Which choice of the customer lets cloth that is left over end so. */
const lets: Readonly<Partial<Record<State, readonly LeftoverChoice[]>>> = {
  returned: ['return', 'keep-for-repair'],
  'kept-for-repair': ['keep-for-repair'],
  'given-away': ['give-away'],
  discarded: ['discard'],
}

test('nothing is released too early', () => {
  every((ledger) => {
    ledger.entries.forEach(({ subject, to, from, move }, at) => {
      // These lead to where it was by right.
      if (['undo', 'put', 'turn-up', 'lift', 'resume'].includes(move)) return
      const { accepted, notTaken, signedOff } = ledger.known[at]!
      const { kind, n } = readSubjectKey(subject)!
      if (to === 'home-with-quilt') expect(signedOff).not.toBeNull()
      if (to === 'returned-uncut' && from !== 'withdrawn') {
        expect(!accepted || notTaken.includes(n) || signedOff !== null).toBe(true)
      }
      const choices = kind === 'leftover' && to ? lets[to] : undefined
      if (choices) expect(choices).toContain(signedOff?.leftovers)
    })
  })
})

test('nothing is cut that was not received, checked, accepted, taken and taken apart', () => {
  every((ledger) => {
    ledger.entries.forEach(({ subject, to, move }, at) => {
      if (to !== 'cut' || move !== 'cut') return
      const { accepted, notTaken } = ledger.known[at]!
      expect(accepted && !notTaken.includes(Number(subject))).toBe(true)
    })
    for (const key of ['1', '2']) {
      const path = walked(ledger, key)
      for (const [state, first] of [
        ['sewn', 'cut'],
        ['cut', 'torn-down'],
        ['torn-down', 'held'],
        ['held', 'received'],
      ] as const) {
        if (path.includes(state)) expect(path.indexOf(first)).toBeLessThan(path.indexOf(state))
        if (path.includes(state)) expect(path.indexOf(first)).toBeGreaterThanOrEqual(0)
      }
    }
  })
})

test('nothing is cut without a photo, a consent, and the standing words of two different people', () => {
  let cuts = 0
  every((ledger) => {
    ledger.entries.forEach(({ subject, to, move }, at) => {
      if (to !== 'cut' || move !== 'cut') return
      cuts += 1
      const n = Number(subject)
      const { acts, others } = ledger.released[at]!
      expect(others.photo.includes(n) && others.consent.includes(n)).toBe(true)
      expect(others.stopped).not.toContain(n)
      const stand = acts.filter(({ garment, gone }) => garment === n && !gone)
      const pairs = stand.flatMap((asked) =>
        stand.filter(
          (released) =>
            asked.kind === 'ask' &&
            released.kind === 'release' &&
            released.seq > asked.seq &&
            released.who !== asked.who,
        ),
      )
      expect(pairs.length, `${subject} was cut on the word of one`).toBeGreaterThan(0)
    })
  })
  expect(cuts).toBeGreaterThan(20)
})

/** Numbers of the garments in one of these states after so many entries. */
const standIn = (ledger: Ledger, after: number, states: readonly State[]): number[] =>
  [...follow(ledger.entries.slice(0, after)).values()].flatMap(({ subject, state }) => {
    const { kind, n } = readSubjectKey(subject)!
    return kind === 'garment' && states.includes(state) ? [n] : []
  })

test('nothing is sewn but pieces that were laid out as they lie now, and that the customer said yes to', () => {
  let sewn = 0
  const holds = (ledger: Ledger): void =>
    ledger.entries.forEach(({ subject, move }, at) => {
      if (move !== 'sew') return
      sewn += 1
      const { shows, plan } = ledger.shown[at]!
      const laid = shows.findLast(({ kind }) => kind === 'laid')
      expect(laid, 'nothing was laid out').toBeDefined()
      const answers = shows.filter(({ seq }) => seq > laid!.seq)
      expect(answers.at(-1)?.kind, 'the last word was no yes').toBe('yes')
      expect(laid!.plan, 'the plan is another').toBe(plan)
      const table = standIn(ledger, laid!.after, ['cut'])
      expect(table).toContain(Number(subject))
      expect(table).toEqual(expect.arrayContaining(standIn(ledger, at, ['cut'])))
      expect(standIn(ledger, at, ['cut', 'sewn'])).toEqual(expect.arrayContaining(table))
      const since = ledger.entries.slice(laid!.after, at)
      const cutAnew = since.filter((one) => one.move === 'cut').map((one) => Number(one.subject))
      expect(
        table.filter((n) => cutAnew.includes(n)),
        'cut anew since',
      ).toEqual([])
    })
  fc.assert(
    fc.property(long, (steps) => holds(play(steps))),
    { ...runs, numRuns: 200 },
  )
  expect(sewn).toBeGreaterThan(20)
})

test('nothing that an incident stopped is taken apart, stabilised, cut or sewn', () => {
  every((ledger) => {
    ledger.entries.forEach(({ subject, move }, at) => {
      if (!['tear-down', 'stabilise', 'cut', 'sew'].includes(move)) return
      expect(ledger.released[at]!.others.stopped).not.toContain(Number(subject))
    })
  })
})

test('nothing goes home while something that was found in it is still here', () => {
  every((ledger) => {
    ledger.entries.forEach(({ subject, move }, at) => {
      if (move !== 'go-home' && move !== 'return-uncut') return
      for (const one of follow(ledger.entries.slice(0, at)).values()) {
        if (readSubjectKey(one.subject)!.kind !== 'found' || one.via !== subject) continue
        expect(['kept', 'isolated']).not.toContain(one.state)
      }
    })
  })
})

test('nothing comes out of a parcel that is not here or is isolated', () => {
  every((ledger) => {
    ledger.entries.forEach(({ move, via }, at) => {
      if (move !== 'receive') return
      const parcel = follow(ledger.entries.slice(0, at)).get(via!)!
      expect(['arrived', 'unpacked']).toContain(parcel.state)
    })
  })
})

test('no bag of leftovers is there whose garment was never taken apart', () => {
  every((ledger) => {
    for (const { subject } of follow(ledger.entries).values()) {
      const { kind, of } = readSubjectKey(subject)!
      if (kind === 'leftover') expect(walked(ledger, String(of))).toContain('torn-down')
    }
  })
})

test('what was isolated, missed or withdrawn comes back into the state that it was in', () => {
  every((ledger) => {
    for (const key of subjects) {
      const ones = standingEntries(
        ledger.entries.filter(({ subject, move }) => subject === key && move !== 'put'),
      )
      const behind: (State | null)[] = []
      for (const { move, from, to } of ones) {
        if (['isolate', 'withdraw', 'miss'].includes(move)) behind.push(from)
        else if (['lift', 'resume', 'turn-up'].includes(move)) expect(to).toBe(behind.pop())
        else behind.length = 0
      }
    }
  })
})

test('an entry is taken back once, the newest alone, and leaves things as they were before it', () => {
  every((ledger) => {
    const gone = ledger.entries.flatMap(({ undoes }) => undoes ?? [])
    expect(new Set(gone).size).toBe(gone.length)
    ledger.entries.forEach(({ subject, undoes, to }, at) => {
      if (undoes === null) return
      const mine = standingEntries(
        ledger.entries.slice(0, at).filter((one) => one.subject === subject),
      )
      expect(mine.at(-1)!.seq).toBe(undoes)
      expect(to).toBe(mine.at(-2)?.to ?? null)
    })
  })
})

test('keys are read as they are written, and nothing else is a key', () => {
  for (const key of subjects) expect(subjectKey(readSubjectKey(key)!)).toBe(key)
  for (const bad of ['', '0', '01', '1-L0', 'Z1', '1-l1', 'P', '1-L1-L1', ' 1', '-1', '1e3']) {
    expect(readSubjectKey(bad), bad).toBeNull()
  }
})

/** What the museum standard asks of any record of a move; each is a field that no entry goes without. */
test('an entry tells what, from, to, and where: the least that the standard asks', () => {
  // Collections Trust, Spectrum 5.1, Location and movement control: where each object is, now and before, can
  // be told at any time, by its number and by the place.
  every((ledger) => {
    for (const { subject, from, to, move } of ledger.entries) {
      expect(readSubjectKey(subject)).not.toBeNull()
      expect(move === 'undo' || to !== null).toBe(true)
      expect(from !== null || to !== null).toBe(true)
    }
  })
})
