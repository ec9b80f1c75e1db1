import { formatMoney } from '../../base/money.ts'
import { inchWords } from '../../base/units.ts'
import { priceWith, verdictsOf } from '../../desk/consequences.ts'
import type { Review } from '../../desk/review.ts'
import { figuresOf, settled } from '../../desk/what-if.ts'
import { grades } from '../../garment/grade.ts'
import type { AsPlanned } from '../../intake/planned.ts'
import { estimatePaper } from '../../papers/estimate-paper.ts'
import { tallyWords } from '../../papers/tally-words.ts'
import type { Planned } from '../../planning/plan-pile.ts'
import type { Estimate as Amount } from '../../quilt/estimate.ts'
import { roleDemand } from '../../quilt/plan/limits.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import { roleName } from './present-plan-cuts.ts'
import { shortWords } from './present-short.ts'
import type { Effect } from './view.ts'

/** `before`: the estimate before anything was decided, counted alike. */
function estimateWords(
  now: Amount,
  before: Amount | null,
  { say, locale }: Language,
): Effect['estimate'] {
  const money = (minor: number) => formatMoney({ minor, currency: now.currency }, locale)
  const { low, likely, high } = now.total
  const was = before && before.total.likely !== likely ? before.total.likely : null
  return {
    likely: money(likely),
    range: low === high ? null : say('estimate.range', { low: money(low), high: money(high) }),
    was: was === null ? null : say('desk.effect.was', { likely: money(was) }),
  }
}

/** Pieces that garments give to each part of the quilt, and what it wants. */
function partsOf({ pile, plan }: Planned, { say }: Language): Effect['pieces'] {
  const given = (role: number) =>
    plan.supply.reduce((sum, one) => sum + (one.role === role ? one.count : 0), 0)
  return {
    by: 'part',
    rows: pile.roles.flatMap(({ garments }, role) =>
      garments
        ? [{ name: roleName(pile, role, say), have: given(role), want: roleDemand(pile, role) }]
        : [],
    ),
  }
}

function sizesOf({ pile, after }: Review): Effect['pieces'] {
  const { pieces } = after?.tally ?? pile.tally
  return {
    by: 'size',
    rows: pieces.map(({ size, want, have }) => ({
      name: `${inchWords(size.w)} × ${inchWords(size.h)}`,
      have,
      want,
    })),
  }
}

const countedBy = {
  proven: 'plan',
  open: 'plan',
  ended: 'so_far',
  working: 'so_far',
  waiting: 'roughly',
  failed: 'roughly',
  empty: 'nothing',
} as const satisfies Record<AsPlanned['state'], string>

/** What the quilt comes to, from its plan; else counted roughly. */
function sumsOf(review: Review, { best }: AsPlanned, language: Language) {
  const { pile, after } = review
  const { say } = language
  if (best) {
    const { given, wanted } = figuresOf(best)
    return {
      sentences: [say('desk.effect.gives', { given, wanted }), ...shortWords(best, language)],
      pieces: partsOf(best, language),
      now: priceWith(pile, verdictsOf(review.garments), settled(best)),
      before: null,
    }
  }
  return {
    sentences: [tallyWords(after?.tally ?? pile.tally, pile.wish, say)],
    pieces: sizesOf(review),
    now: after ? after.estimate : pile.estimate,
    before: after && pile.estimate,
  }
}

/** What the pile does to the quilt, with what has been decided so far. */
export function effectOf(review: Review, planned: AsPlanned, language: Language): Effect {
  const { pile, after, garments } = review
  const { say } = language
  const { sentences, pieces, now, before } = sumsOf(review, planned, language)
  const counted = countedBy[planned.state]
  return {
    title: say(after ? 'desk.effect.decided' : 'desk.effect.title'),
    sentences,
    counted: say(`desk.effect.counted.${counted}`),
    again:
      counted === 'roughly' || counted === 'so_far'
        ? { label: say('desk.plan.again'), href: deskPaths.pile(review.row.number) }
        : null,
    pieces,
    grades: grades
      .map((grade) => ({
        grade,
        count: garments.filter(({ garment }) => garment.grading?.grade === grade).length,
      }))
      .filter(({ count }) => count > 0),
    estimate: now && estimateWords(now, before, language),
    lines: now && estimatePaper(now, pile.wish, language),
  }
}
