import { formatMoney } from '../../base/money.ts'
import { inchWords } from '../../base/units.ts'
import { pileVerdicts } from '../../desk/decisions.ts'
import type { Queue } from '../../desk/queue.ts'
import type { Review } from '../../desk/review.ts'
import { grades } from '../../garment/grade.ts'
import { chosen } from '../../intake/replies.ts'
import { estimatePaper } from '../../papers/estimate-paper.ts'
import { tallyWords } from '../../papers/tally-words.ts'
import type { Estimate as Amount } from '../../quilt/estimate.ts'
import type { Language } from '../../words/words.ts'
import { saidOf } from '../chat/present-garment.ts'
import { failureSentence } from '../errors.ts'
import { deskPaths } from './paths.ts'
import { type Desk, decisionForm } from './present-decision.ts'
import { garmentOf, noteOf, readerAt } from './present-garment.ts'
import { queueEntry, quiltWords } from './present-queue.ts'
import type { DeskGarment, Effect, PilePage } from './view.ts'
import { dayWords } from './when.ts'

function estimateWords(review: Review, { say, locale }: Language): Effect['estimate'] {
  const { after, pile } = review
  const now = after ? after.estimate : pile.estimate
  if (!now) return null
  const money = ({ currency }: Amount, minor: number) => formatMoney({ minor, currency }, locale)
  const range = (one: Amount) =>
    say('estimate.range', { low: money(one, one.total.low), high: money(one, one.total.high) })
  const before = after && pile.estimate
  const changed = before && before.total.likely !== now.total.likely
  return {
    likely: money(now, now.total.likely),
    range: range(now),
    was: changed ? say('desk.effect.was', { likely: money(before, before.total.likely) }) : null,
  }
}

/** What the pile does to the quilt, with what has been decided so far. */
function effectOf(review: Review, language: Language): Effect {
  const { pile, after, garments } = review
  const { say } = language
  const tally = after?.tally ?? pile.tally
  const estimate = after ? after.estimate : pile.estimate
  return {
    title: say(after ? 'desk.effect.decided' : 'desk.effect.title'),
    sentence: tallyWords(tally, pile.wish, say),
    pieces: tally.pieces.map(({ size, want, have }) => ({
      size: `${inchWords(size.w)} × ${inchWords(size.h)}`,
      have,
      want,
    })),
    grades: grades
      .map((grade) => ({
        grade,
        count: garments.filter(({ garment }) => garment.grading?.grade === grade).length,
      }))
      .filter(({ count }) => count > 0),
    estimate: estimateWords(review, language),
    lines: estimate && estimatePaper(estimate, pile.wish, language),
  }
}

/** Garments in the order they are looked at: those that hold up the pile first. */
function garmentsOf(review: Review, desk: Desk): Pick<PilePage, 'looking' | 'others'> {
  const isDoubtful = ({ garment }: Review['garments'][number]) =>
    garment.grading?.grade === 'eyes' || garment.grading?.grade === 'home'
  const doubtful = review.garments.filter(isDoubtful)
  const others = review.garments.filter((one) => !isDoubtful(one))
  const nextAfter = (n: number): number | undefined =>
    review.undecided.find((one) => one > n) ?? review.undecided.find((one) => one !== n)
  const shown = (reviewed: Review['garments'][number]): DeskGarment =>
    garmentOf(reviewed, review, desk, nextAfter(reviewed.garment.n))
  return { looking: doubtful.map(shown), others: others.map(shown) }
}

function refusedOf({ refused, language }: Desk): PilePage['refused'] {
  if (!refused) return null
  const href = refused.item === null ? '#decide' : `#decide-${refused.item}`
  return { sentence: failureSentence(refused.failure, language), href }
}

export function pilePage(review: Review, waiting: Queue, desk: Desk): PilePage {
  const { row, pile } = review
  const { language } = desk
  const { say, locale } = language
  const reader = readerAt(language)
  return {
    page: 'pile',
    title: say('desk.pile', { number: row.number }),
    quilt: quiltWords({ layout: pile.wish.layout.id, size: pile.wish.size }, language),
    lines: [
      say('desk.confirmed', { day: dayWords(row.confirmed_at ?? row.changed_at, locale) }),
      ...(pile.needBy === null ? [] : [say('desk.needed', { day: dayWords(pile.needBy, locale) })]),
      ...(pile.wish.quilts > 1 ? [say('desk.quilts', { count: pile.wish.quilts })] : []),
      say('desk.speaks', { language: languageName(row.language, locale) }),
    ],
    plan: { label: say('desk.plan.link'), href: deskPaths.plan(row.number) },
    contact: pile.contact,
    notToCut: chosen(pile.replies, 'not_to_cut') ?? null,
    answers: pile.followed.parts
      .flatMap(({ path }) => saidOf(path, 0, reader))
      .filter(({ question }) => question !== 'contact'),
    notes: review.notes.map((note) => noteOf(note, row.number, language)),
    refused: refusedOf(desk),
    ...garmentsOf(review, desk),
    form: decisionForm({
      desk,
      item: null,
      postTo: deskPaths.decidePile(row.number),
      verdicts: pileVerdicts,
      decisions: review.decisions,
    }),
    effect: effectOf(review, language),
    waiting: waiting.piles.map((one) => queueEntry(one, row.id, language)),
  }
}

const languageName = (code: string, reader: string): string =>
  new Intl.DisplayNames([reader], { type: 'language' }).of(code) ?? code
