import type { Review } from '../../desk/review.ts'
import { type Change, mostTries, readTry, tryText, unknownIn } from '../../desk/tries.ts'
import { type Trying, type Way, wayOf } from '../../desk/what-if.ts'
import { type Layout, quiltSizes } from '../../quilt/layout.ts'
import type { Language } from '../../words/words.ts'
import { deskPaths } from './paths.ts'
import { quiltWords } from './present-queue.ts'
import { rolesToPlay } from './present-roles.ts'
import { changeWords, compared, type Names, namesOf, wayRows } from './present-way.ts'
import type { Choice, WayForm, WayHead, WhatIfPage } from './view-what-if.ts'

interface Tries {
  readonly changes: readonly (readonly Change[])[]
  readonly refused: readonly string[]
}

/** Reads the ways of an address; what cannot be tried is said. */
function readTries(
  texts: readonly string[],
  { garments }: Review,
  layouts: readonly Layout[],
  { say }: Language,
): Tries {
  const numbers = garments.map(({ garment }) => garment.n)
  const refused: string[] = []
  const changes: (readonly Change[])[] = []
  for (const text of new Set(texts)) {
    const read = readTry(text)
    const wrong = read ? unknownIn(read, numbers, layouts) : 'unreadable'
    if (wrong) refused.push(say(`desk.what_if.refused.${wrong}`))
    else if (changes.length === mostTries)
      refused.push(say('desk.what_if.most', { count: mostTries }))
    else changes.push(read!)
  }
  return { changes, refused: [...new Set(refused)] }
}

const without = <T>(all: readonly T[], at: number): T[] => all.filter((_, n) => n !== at)

function headOf(way: Way, at: number, ways: readonly Way[], show: Show): WayHead {
  const { number, names, language } = show
  const { say } = language
  if (at === 0) return { name: say('desk.what_if.now'), changes: [], away: null, way: null }
  const others = without(ways, at).slice(1)
  return {
    name: say('desk.what_if.way', { n: at }),
    changes: way.changes.map((change) => changeWords(change, names, language)),
    way: way.changes.some(({ change }) => change === 'more') ? null : tryText(way.changes),
    away: {
      label: say('desk.what_if.away', { n: at }),
      href: deskPaths.whatIf(
        number,
        others.map(({ changes }) => tryText(changes)),
      ),
    },
  }
}

interface Show {
  readonly number: number
  readonly names: Names
  readonly language: Language
}

const choice = (value: string, label: string): Choice => ({ value, label })

function formOf(
  review: Review,
  ways: readonly Way[],
  layouts: readonly Layout[],
  { number, names, language }: Show,
): WayForm {
  const { say } = language
  const now = ways[0]!.asked
  const played = now.pile ? rolesToPlay(now.pile, language) : []
  const asNow = choice('', say('desk.what_if.form.as_now'))
  const garments = review.garments.map(({ garment }) => choice(String(garment.n), names(garment.n)))
  const select = (id: string, choices: readonly Choice[]) => ({
    id,
    label: say(`desk.what_if.form.${id}`),
    choices: [asNow, ...choices],
  })
  return {
    action: deskPaths.whatIf(number),
    tries: ways.slice(1).map(({ changes }) => tryText(changes)),
    from:
      ways.length === 1
        ? []
        : ways.map((way, n) =>
            n === 0
              ? choice('', say('desk.what_if.now'))
              : choice(tryText(way.changes), say('desk.what_if.way', { n })),
          ),
    selects: [
      select(
        'without',
        garments.map(({ value, label }) => choice(`without:${value}`, label)),
      ),
      select(
        'take',
        now.out
          .filter(({ barred }) => barred.why !== 'misfit')
          .map(({ garment: { n } }) => choice(`take:${n}`, names(n))),
      ),
      select(
        'more',
        played.map(({ value, label }) => choice(`more:${value}`, label)),
      ),
      select(
        'layout',
        layouts
          .filter(({ id }) => id !== now.layout.id)
          .map(({ id }) => choice(`layout:${id}`, say(`trade.layouts.${id}.name`))),
      ),
      select(
        'size',
        quiltSizes
          .filter((size) => size !== now.size)
          .map((size) => choice(`size:${size}`, say(`trade.quilts.${size}`))),
      ),
    ].filter(({ choices }) => choices.length > 1),
    roles:
      played.length > 1
        ? {
            garments: [asNow, ...garments],
            roles: played,
          }
        : null,
  }
}

/** A pile as it stands beside other ways; all of them are planned at once. */
export async function whatIfPage(
  review: Review,
  texts: readonly string[],
  trying: Trying,
  language: Language,
  takeUp: WhatIfPage['takeUp'],
): Promise<WhatIfPage> {
  const { say } = language
  const { layouts } = trying
  const { number } = review.row
  const { layout, size } = review.pile.wish
  const { changes, refused } = readTries(texts, review, layouts, language)
  const ways = await Promise.all([[], ...changes].map((one) => wayOf(review, one, trying)))
  const names = namesOf(review.pile.garments, language)
  const show: Show = { number, names, language }
  const mayChange = ways.some(({ state }) =>
    ['working', 'ended', 'waiting', 'failed'].includes(state),
  )
  return {
    page: 'what-if',
    title: say('desk.what_if.title', { number }),
    quilt: quiltWords({ layout: layout.id, size }, language),
    back: [
      { label: say('desk.pile', { number }), href: deskPaths.pile(number) },
      { label: say('desk.plan.link'), href: deskPaths.plan(number) },
    ],
    refused,
    heads: ways.map((way, n) => headOf(way, n, ways, show)),
    rows: wayRows(ways.map(compared), names, language),
    again: mayChange
      ? {
          label: say('desk.plan.again'),
          href: deskPaths.whatIf(number, changes.map(tryText)),
        }
      : null,
    form: changes.length < mostTries ? formOf(review, ways, layouts, show) : null,
    takeUp: review.row.status === 'decided' ? null : takeUp,
  }
}
