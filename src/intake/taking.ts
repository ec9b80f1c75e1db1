import type { Clock } from '../base/clock.ts'
import { Failure } from '../base/failures.ts'
import { canonical } from '../base/ids.ts'
import { admit } from '../flow/admit.ts'
import { type Followed, followOn } from '../flow/follow.ts'
import type { Act } from '../flow/grammar.ts'
import { answersByWords } from './own-words.ts'
import type { Entry, KeptAct } from './rows.ts'
import { rules } from './rules.ts'
import { nothing, rests, type Since } from './since.ts'
import { knows, type Stood, standOn } from './stood.ts'

export interface Sent {
  /** An act, or acts that hang on where the conversation stands when their turn has come: all are taken, or none. */
  readonly act: Act | ((followed: Followed) => Act | readonly Act[])
  /** Sent once by the page: the same key again changes nothing. */
  readonly idem: string
  /** The last act the page knew of. */
  readonly seen: number
}

/** What became of an act. */
export interface Outcome {
  /** True where the key was known: a retry or a double tap. */
  readonly again: boolean
  /** The act by which somebody else had answered here since the page was made; null: nobody had. */
  readonly overtaken: number | null
  /** The act's place in the order; null where nothing was appended. */
  readonly seq: number | null
}

/** Acts that were taken on a pile and are not written yet, and how it stands after them. */
export interface Taken {
  readonly acts: readonly KeptAct[]
  readonly stood: Stood
  /** What the queue's rows have to tell of now. */
  readonly due: Since
}

/**
 * Takes acts, after each the answers that follow from confirming the visitor's own words. Writes nothing. Throws what
 * `admit` refuses.
 */
export function take(stood: Stood, sent: Pick<Sent, 'act' | 'idem'>, clock: Clock): Taken {
  const { row, flow } = stood
  let { following } = stood
  const asked = typeof sent.act === 'function' ? sent.act(following.followed) : sent.act
  const waiting = 'act' in asked ? [asked] : [...asked]
  const acts: KeptAct[] = []
  for (let act = waiting.shift(); act; act = waiting.shift()) {
    admit(flow, following.followed, act)
    const idem = acts.length === 0 ? sent.idem : `${sent.idem}.${acts.length}`
    acts.push({ seq: row.seq + acts.length + 1, at: clock(), who: 'customer', act, idem })
    following = followOn(flow, following, act, rules)
    waiting.unshift(...answersByWords(following.followed, act))
  }
  const last = acts.at(-1)
  if (!last) throw new Failure('bad_input')
  const after = { ...row, seq: last.seq, changed_at: last.at }
  const now = standOn(stood, { row: after, acts, following })
  if (!rests(following.followed, acts)) return { acts, stood: now, due: nothing }
  return { acts, stood: { ...now, unwritten: nothing }, due: now.unwritten }
}

/** The same, once: nothing where its key is known. Throws `pile_confirmed` too. */
export function takeOnce(
  stood: Stood,
  sent: Sent,
  clock: Clock,
): Taken & { readonly outcome: Outcome } {
  if (knows(stood, sent.idem)) {
    return { acts: [], stood, due: nothing, outcome: { again: true, overtaken: null, seq: null } }
  }
  if (stood.row.status !== 'open') throw new Failure('pile_confirmed')
  const taken = take(stood, sent, clock)
  const [first] = taken.acts
  const overtaken = overtakenBy(stood.entries, first!.act, sent.seen)
  return { ...taken, outcome: { again: false, overtaken, seq: first!.seq } }
}

const same = (a: unknown, b: unknown): boolean => canonical(a) === canonical(b)

/** The newest act after `seen` that answered the same question, where it differs from ours. */
function overtakenBy(entries: readonly Entry[], act: Act, seen: number): number | null {
  if (act.act !== 'answer') return null
  // Acts are numbered from 1, without a gap.
  const newer = entries
    .slice(seen)
    .findLast(
      ({ act: theirs }) =>
        theirs.act === 'answer' && theirs.item === act.item && theirs.question === act.question,
    )
  if (newer?.act.act !== 'answer' || same(newer.act.reply, act.reply)) return null
  return newer.seq
}
