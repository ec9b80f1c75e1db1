import { pileVerdicts } from '../../desk/decisions.ts'
import { isAccepted } from '../../desk/make-offer.ts'
import type { Queue } from '../../desk/queue.ts'
import type { Review } from '../../desk/review.ts'
import type { AsPlanned } from '../../intake/planned.ts'
import { chosen } from '../../intake/replies.ts'
import { saidOf } from '../chat/present-garment.ts'
import { failureSentence } from '../errors.ts'
import { custodyPaths } from './custody-paths.ts'
import { deskPaths } from './paths.ts'
import { type Desk, decisionForm } from './present-decision.ts'
import { effectOf } from './present-effect.ts'
import { garmentOf, readerAt } from './present-garment.ts'
import { threadOf } from './present-messages.ts'
import { queueEntry, quiltWords } from './present-queue.ts'
import { sheetLinks } from './sheet-links.ts'
import type { DeskGarment, PilePage } from './view.ts'
import type { AgreeCard } from './view-agree.ts'
import { dayWords } from './when.ts'

/** Garments in the order they are looked at: those that hold up the pile first. */
function garmentsOf(
  review: Review,
  planned: AsPlanned,
  desk: Desk,
): Pick<PilePage, 'looking' | 'others'> {
  const isDoubtful = ({ garment }: Review['garments'][number]) =>
    garment.grading?.grade === 'eyes' || garment.grading?.grade === 'home'
  const doubtful = review.garments.filter(isDoubtful)
  const others = review.garments.filter((one) => !isDoubtful(one))
  const nextAfter = (n: number): number | undefined =>
    review.undecided.find((one) => one > n) ?? review.undecided.find((one) => one !== n)
  const shown = (reviewed: Review['garments'][number]): DeskGarment =>
    garmentOf(reviewed, review, planned, desk, nextAfter(reviewed.garment.n))
  return { looking: doubtful.map(shown), others: others.map(shown) }
}

function refusedOf({ refused, language }: Desk): PilePage['refused'] {
  if (!refused) return null
  const href = refused.item === null ? '#decide' : `#decide-${refused.item}`
  return { sentence: failureSentence(refused.failure, language), href }
}

/** `planned`: the plan of the pile, as far as it is known. */
export function pilePage(
  review: Review,
  planned: AsPlanned,
  waiting: Queue,
  desk: Desk,
  agree: AgreeCard,
): PilePage {
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
    whatIf: { label: say('desk.what_if.link'), href: deskPaths.whatIf(row.number) },
    custody: isAccepted(row, review.decisions)
      ? [
          { label: say('custody.pile.link'), href: custodyPaths.pile(row.number) },
          { label: say('laid_out.desk.open'), href: custodyPaths.laidOut(row.number) },
        ]
      : [],
    papers: [
      ...(['packing', 'estimate'] as const).map((name) => ({
        label: say(`printed.sheets.${name}`),
        href: deskPaths.pdf(row.number, name),
      })),
      ...sheetLinks(row.number, language),
    ],
    contact: pile.contact,
    notToCut: chosen(pile.replies, 'not_to_cut') ?? null,
    answers: pile.followed.parts
      .flatMap(({ path }) => saidOf(path, 0, reader))
      .filter(({ question }) => question !== 'contact'),
    thread: threadOf(review, null, null, desk),
    kept: { label: say('desk.kept.link'), href: deskPaths.kept(row.number) },
    messages: { label: say('desk.messages.link'), href: deskPaths.messages(row.number) },
    refused: refusedOf(desk),
    ...garmentsOf(review, planned, desk),
    form: decisionForm({
      desk,
      item: null,
      postTo: deskPaths.decidePile(row.number),
      verdicts: pileVerdicts,
      decisions: review.decisions,
    }),
    effect: effectOf(review, planned, language),
    agree,
    waiting: waiting.piles.map((one) => queueEntry(one, row.id, language)),
  }
}

const languageName = (code: string, reader: string): string =>
  new Intl.DisplayNames([reader], { type: 'language' }).of(code) ?? code
