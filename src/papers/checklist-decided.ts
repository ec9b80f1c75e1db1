import type { Say } from '../words/words.ts'
import type { Checklist, KeptHome, Listed } from './checklist.ts'

/** What a person decided of a garment: it comes, it stays, or an answer is waited for. */
export type Decided = 'comes' | 'stays' | 'open'

/** What the workshop decided of single garments, by their numbers, once it has taken the pile. */
export interface DecidedGarments {
  readonly verdicts: ReadonlyMap<number, Decided>
  readonly codeOf: (n: number) => string
}

const byNumber = <One extends { readonly n: number }>(list: readonly One[]): One[] =>
  [...list].sort((a, b) => a.n - b.n)

/**
 * The packing checklist as it stands once people have decided: what they take goes into the box, what they do not
 * take stays at home, whatever the list said on the day it was confirmed.
 */
export function asDecided(
  list: Checklist,
  { verdicts, codeOf }: DecidedGarments,
  say: Say,
): Checklist {
  const is = (verdict: Decided) => (one: { readonly n: number }) => verdicts.get(one.n) === verdict
  const not = (verdict: Decided) => (one: { readonly n: number }) => verdicts.get(one.n) !== verdict
  const listed = [...list.packed, ...list.waiting]
  const unasked = list.waiting.filter(({ n }) => !verdicts.has(n))
  const sentForHome: Listed[] = list.keptHome.filter(is('comes')).map(({ n, name }) => ({
    n,
    code: codeOf(n),
    name,
    kind: '',
    grade: 'care',
    steps: [],
  }))
  const leftOut: KeptHome[] = listed.filter(is('stays')).map(({ n, name }) => ({
    n,
    name,
    reason: say('confirmed.left_out'),
    next: null,
  }))
  const taken = list.waiting
    .filter(is('comes'))
    .map((one): Listed => ({ ...one, grade: 'care', steps: [say('confirmed.taken')] }))
  return {
    ...list,
    packed: byNumber([
      ...list.packed.filter(not('stays')).filter(not('open')),
      ...taken,
      ...sentForHome,
    ]),
    waiting: byNumber([...unasked, ...listed.filter(is('open'))]),
    keptHome: byNumber([...list.keptHome.filter(not('comes')), ...leftOut]),
    // That a person looks comes first of what is ahead, and is past.
    ahead: list.ahead.slice(1),
  }
}
