import type { Asked } from '../../desk/asked.ts'
import type { Queue, QueuedPile, QueueState } from '../../desk/queue.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import type { QueueEntry, QueuePage } from './view.ts'
import { dayWords } from './when.ts'

export const quiltWords = (
  { layout, size }: { layout: string; size: string },
  { say, has }: Language,
): string => {
  // A layout may have left the shop since the pile was confirmed.
  const key = `trade.layouts.${layout}.name`
  return [say(`trade.quilts.${size}`), has(key) ? say(key) : layout].join(' · ')
}

function marksOf(pile: QueuedPile, { say }: Language): QueueEntry['marks'] {
  return [
    ...(pile.needsEyes > 0
      ? [{ kind: 'eyes' as const, text: say('desk.queue.eyes', { count: pile.needsEyes }) }]
      : []),
    ...(pile.openNotes > 0
      ? [{ kind: 'note' as const, text: say('desk.queue.notes', { count: pile.openNotes }) }]
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
        ? say('desk.queue.since', { day: dayWords(pile.confirmedAt, locale) })
        : say('desk.queue.by', { day: dayWords(pile.needBy, locale) }),
    ].join(' · '),
    marks: marksOf(pile, language),
    current: pile.id === current,
  }
}

function pagerOf({ page, pages }: Queue, state: QueueState, { say }: Language): QueuePage['pager'] {
  if (pages === 1) return null
  return {
    at: say('desk.queue.page', { page, pages }),
    before: page > 1 ? deskPaths.list(state, page - 1) : null,
    after: page < pages ? deskPaths.list(state, page + 1) : null,
  }
}

function askedEntry(asked: Asked, { say, has, locale }: Language): QueuePage['asked'][number] {
  const key = `intake.${asked.question}.short`
  const garment = asked.item > 0 ? asked.name || say('tag.unnamed', { n: asked.item }) : null
  return {
    about: [say('desk.pile', { number: asked.pile }), garment, has(key) ? say(key) : asked.question]
      .filter(Boolean)
      .join(' · '),
    text: asked.text || say('desk.queue.asked_nothing'),
    day: dayWords(asked.at, locale),
  }
}

export function queuePage(
  queue: Queue,
  asked: readonly Asked[],
  state: QueueState,
  language: Language,
): QueuePage {
  const { say } = language
  return {
    page: 'queue',
    title: say(`desk.queue.title.${state}`),
    entries: queue.piles.map((pile) => queueEntry(pile, null, language)),
    empty: say(`desk.queue.empty.${state}`),
    openIntakes: say('desk.queue.open', { count: queue.counts.open }),
    pager: pagerOf(queue, state, language),
    asked: asked.map((one) => askedEntry(one, language)),
  }
}
