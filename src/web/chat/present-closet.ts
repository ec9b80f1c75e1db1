import { questionsOf } from '../../flow/kept.ts'
import {
  alike,
  isUnscreened,
  marksOf,
  mostAtOnce,
  type Screening,
  screenings,
  toScreen,
  wearIsRead,
} from '../../intake/closet.ts'
import type { Open } from '../../intake/conversation.ts'
import { hasLetterSize, partsRead, ticksRead } from '../../intake/own-words.ts'
import type { Garment } from '../../intake/pile.ts'
import type { AsPlanned } from '../../intake/planned.ts'
import { chosen } from '../../intake/replies.ts'
import { gradeNext, gradeSentence } from '../../papers/grade-words.ts'
import { paths } from './paths.ts'
import { hidden, nameOf, type Reader, standing } from './present-garment.ts'
import { proposedByWords, readAs } from './present-own-words.ts'
import { tagsOf } from './present-pages.ts'
import { tallyOf } from './present-tally.ts'
import type { Option } from './view.ts'
import type { Alike, ClosetPage, EarlyTold, MarkGroup, ScreeningPage } from './view-closet.ts'

/** What is grave already, worst first, with what to do instead. */
function earlyTold(garment: Garment, reader: Reader): EarlyTold[] {
  const { early, dropped, n } = garment
  if (!early || dropped || !early.flags.some((flag) => flag.for.includes('customer'))) return []
  const grade = early.grade === 'home' ? 'home' : 'eyes'
  return [
    {
      n,
      name: nameOf(garment, reader),
      grade,
      sentence: gradeSentence(early, reader.language.say),
      next: gradeNext(early, reader.language),
      dropHidden: grade === 'home' ? { ...hidden(reader), item: String(n) } : null,
    },
  ]
}

export interface Typed {
  readonly lines: string
  readonly refusal: string | null
  /** The number of a garment that was just added. */
  readonly added: number | null
}

const nothingTyped: Typed = { lines: '', refusal: null, added: null }

const kindOptions = ({ flow }: Open, { language }: Reader): Option[] =>
  (questionsOf(flow).repeated.get('kind')?.options ?? []).map((one) =>
    optionOf('kind', typeof one === 'string' ? one : one.option, language.say),
  )

const optionOf = (question: string, value: string, say: Reader['language']['say']): Option => ({
  value,
  label: say(`intake.${question}.options.${value}`),
  help: null,
  drawing: null,
  chosen: false,
})

export function closetPage(
  open: Open,
  planned: AsPlanned,
  reader: Reader,
  { lines, refusal, added }: Typed = nothingTyped,
): ClosetPage {
  const { pile } = open
  const waiting = pile.followed.items.filter(isUnscreened).length
  const newest = pile.garments.find(({ n }) => n === added)
  const { place } = pile.followed
  return {
    page: 'closet',
    tags: tagsOf(open, 0, reader),
    tally: standing(pile).length > 0 ? tallyOf(pile, planned, reader) : null,
    early: pile.garments
      .flatMap((garment) => earlyTold(garment, reader))
      .toSorted((a, b) => Number(b.grade === 'home') - Number(a.grade === 'home')),
    postTo: paths.closet(reader.key),
    garmentsTo: paths.garments(reader.key),
    hidden: hidden(reader),
    lines,
    refusal,
    most: mostAtOnce,
    kinds: kindOptions(open, reader),
    added: newest ? nameOf(newest, reader) : null,
    waiting: waiting > 0 ? { count: waiting, href: paths.screening(reader.key) } : null,
    goOnHref: place.at === 'question' && waiting === 0 ? paths.pile(reader.key) : null,
    backHref: paths.garments(reader.key),
  }
}

function alikeOf(open: Open, garments: readonly Garment[], reader: Reader): Alike {
  const { say } = reader.language
  const [first] = garments as readonly [Garment]
  const { replies } = first
  const ticked = proposedByWords('words_check', replies)
  const asksWords = first.open?.id === 'words_check'
  const parts = asksWords
    ? optionsRead(replies, reader).map((one) => ({ ...one, chosen: ticked.includes(one.value) }))
    : []
  const knows = (part: string) => parts.some(({ value }) => value === part)
  const kind = chosen(replies, 'kind')
  const kinds = knows('kind') || kind ? [] : kindOptions(open, reader)
  const needsSize = !knows('size') && !chosen(replies, 'size') && kinds.length === 0
  return {
    id: garments.map(({ n }) => n).join('.'),
    name: nameOf(first, reader),
    count: garments.length,
    parts,
    kinds,
    sizes: needsSize && hasLetterSize(first.facts.kind) ? sizeOptions(open, say) : [],
  }
}

const optionsRead = (replies: Garment['replies'], reader: Reader): Option[] =>
  [...partsRead(replies).keys()].flatMap((value) => {
    const read = readAs('words_check', value, replies, reader)
    return read ? [{ value, ...read, drawing: null, chosen: false }] : []
  })

const sizeOptions = ({ flow }: Open, say: Reader['language']['say']): Option[] =>
  (questionsOf(flow).repeated.get('size')?.options ?? []).map((one) =>
    optionOf('size', typeof one === 'string' ? one : one.option, say),
  )

const titles: Readonly<Record<Screening, string>> = {
  wear: 'screening.wear',
  history: 'screening.history',
  details: 'screening.details',
}

function groupOf(
  open: Open,
  question: Screening,
  garments: readonly Garment[],
  reader: Reader,
): MarkGroup {
  const { say } = reader.language
  const asked = questionsOf(open.flow).repeated.get(question)
  const ofThese = question === 'wear' ? garments.filter((one) => !wearIsRead(one)) : garments
  const isTicked = ({ replies }: Garment, mark: string) =>
    question !== 'wear' && ticksRead(replies, question).includes(mark)
  return {
    question,
    title: say(titles[question]),
    drawing: asked?.drawing ?? null,
    cautions: (asked?.cautions ?? []).map((name) => say(`cautions.${name}`)),
    marks:
      ofThese.length === 0
        ? []
        : marksOf(open.flow, question).map((mark) => ({
            id: `${question}:${mark}`,
            words: say(`intake.${question}.options.${mark}`),
            garments: ofThese.map((garment) => ({
              value: `${garment.n}:${question}:${mark}`,
              label: say('screening.garment', { n: garment.n, name: nameOf(garment, reader) }),
              help: null,
              drawing: null,
              chosen: isTicked(garment, mark),
            })),
          })),
  }
}

/** Null: there is none to look over. */
export function screeningPage(open: Open, reader: Reader): ScreeningPage | null {
  const numbers = new Set(toScreen(open.pile.followed.items).map(({ n }) => n))
  const garments = open.pile.garments.filter(({ n }) => numbers.has(n))
  if (garments.length === 0) return null
  return {
    page: 'screening',
    alike: alike(garments).map((ones) => alikeOf(open, ones, reader)),
    groups: screenings
      .map((question) => groupOf(open, question, garments, reader))
      .filter(({ marks }) => marks.length > 0),
    postTo: paths.screening(reader.key),
    hidden: { ...hidden(reader), garments: garments.map(({ n }) => n).join('.') },
    backHref: paths.closet(reader.key),
  }
}
