import type { Asked } from '../../desk/asked.ts'
import type { LeftPile } from '../../desk/left.ts'
import {
  orderOf,
  type Queue,
  type QueuedPile,
  queueFilters,
  queueOrders,
  type Wanted,
} from '../../desk/queue.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { QueueEntry, QueuePage, QueueSearch } from './view-queue.ts'
import { dayWords } from './when.ts'

export const quiltWords = (
  { layout, size }: { layout: string; size: string },
  { say, has }: Language,
): string => {
  // A layout may have left the shop since the pile was confirmed.
  const key = `trade.layouts.${layout}.name`
  return [say(`trade.quilts.${size}`), has(key) ? say(key) : layout].join(' · ')
}

/** A laid-out quilt that is to be laid out once more. */
const isOurTurn = (laid: QueuedPile['laid']): boolean => laid === 'change' || laid === 'anew'

function marksOf(pile: QueuedPile, { say }: Language): QueueEntry['marks'] {
  return [
    ...(pile.needsEyes > 0
      ? [{ kind: 'eyes' as const, text: say('desk.queue.eyes', { count: pile.needsEyes }) }]
      : []),
    ...(pile.openNotes > 0
      ? [{ kind: 'note' as const, text: say('desk.queue.notes', { count: pile.openNotes }) }]
      : []),
    ...(pile.laid
      ? [
          {
            kind: isOurTurn(pile.laid) ? ('laid-ours' as const) : ('laid' as const),
            text: say(`laid_out.desk.queue.${pile.laid}`),
          },
        ]
      : []),
    ...(pile.verdict
      ? [{ kind: 'verdict' as const, text: say(`desk.stands.pile.${pile.verdict}`) }]
      : []),
  ]
}

export function queueEntry(
  pile: QueuedPile,
  current: string | null,
  language: Language,
): QueueEntry {
  const { say, locale } = language
  return {
    href: deskPaths.pile(pile.number),
    title: say('desk.pile', { number: pile.number }),
    quilt: quiltWords(pile, language),
    who: pile.contactName,
    facts: [
      say('desk.garments', { count: pile.garments }),
      pile.needBy === null
        ? say('desk.queue.since', { day: dayWords(pile.since, locale) })
        : say('desk.queue.by', { day: dayWords(pile.needBy, locale) }),
    ].join(' · '),
    marks: marksOf(pile, language),
    current: pile.id === current,
  }
}

/** The list as it is asked for, without the page. */
const query = ({ order, only, text }: Wanted) => ({
  ...(order && { order }),
  ...(only && { only }),
  ...(text && { text }),
})

function searchOf({ found, counts }: Queue, wanted: Wanted, { say }: Language): QueueSearch {
  const { list, text = '', only } = wanted
  const narrowed = Boolean(only) || text !== ''
  const choice =
    <T extends string>(part: string, chosen: T | null | undefined) =>
    (value: T | '') => ({
      value,
      label: say(`desk.queue.${part}.${value || 'any'}`),
      chosen: value === (chosen ?? ''),
    })
  return {
    list,
    text,
    only: ['' as const, ...queueFilters].map(choice('only', only)),
    order: queueOrders.map(choice('order', orderOf(wanted))),
    found: narrowed ? say('desk.queue.found', { found, all: counts[list] }) : null,
    whole: narrowed ? { label: say('desk.queue.whole'), href: deskPaths.list(list) } : null,
  }
}

function pagerOf({ page, pages }: Queue, wanted: Wanted, { say }: Language): QueuePage['pager'] {
  const { list } = wanted
  if (pages === 1) return null
  return {
    at: say('desk.queue.page', { page, pages }),
    before: page > 1 ? deskPaths.list(list, { ...query(wanted), page: page - 1 }) : null,
    after: page < pages ? deskPaths.list(list, { ...query(wanted), page: page + 1 }) : null,
  }
}

function askedEntry(asked: Asked, { say, has, locale }: Language): QueuePage['asked'][number] {
  const key = `intake.${asked.question}.short`
  const garment = asked.item > 0 ? asked.name || say('tag.unnamed', { n: asked.item }) : null
  return {
    about: [say('desk.pile', { number: asked.pile }), garment, has(key) ? say(key) : asked.question]
      .filter(Boolean)
      .join(' · '),
    href: deskPaths.messages(asked.pile),
    text: asked.text || say('desk.queue.asked_nothing'),
    day: dayWords(asked.at, locale),
  }
}

const leftEntry = (
  { number, contactName, status, at }: LeftPile,
  { say, locale }: Language,
): QueuePage['left'][number] => ({
  label: say(status === 'withdrawn' ? 'desk.queue.left_withdrawn' : 'desk.queue.left_open', {
    number,
    name: contactName ?? say('desk.queue.left_nobody'),
    day: dayWords(at, locale),
  }),
  href: deskPaths.agreement(number),
})

export function queuePage(
  queue: Queue,
  { asked, left }: { asked: readonly Asked[]; left: readonly LeftPile[] },
  wanted: Wanted,
  language: Language,
): QueuePage {
  const { say } = language
  return {
    page: 'queue',
    title: say(`desk.queue.title.${wanted.list}`),
    entries: queue.piles.map((pile) => queueEntry(pile, null, language)),
    search: searchOf(queue, wanted, language),
    empty: say(
      queue.found < queue.counts[wanted.list]
        ? 'desk.queue.none_found'
        : `desk.queue.empty.${wanted.list}`,
    ),
    openIntakes: say('desk.queue.open', { count: queue.counts.open }),
    pager: pagerOf(queue, wanted, language),
    asked: asked.map((one) => askedEntry(one, language)),
    left: left.map((one) => leftEntry(one, language)),
  }
}
