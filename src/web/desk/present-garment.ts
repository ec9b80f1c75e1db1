import { formatMoney } from '../../base/money.ts'
import { leftOutPrice, verdictsOf } from '../../desk/consequences.ts'
import { garmentVerdicts } from '../../desk/decisions.ts'
import { type SourcedFact, sourcedFacts } from '../../desk/provenance.ts'
import type { Review, ReviewedGarment } from '../../desk/review.ts'
import { settled } from '../../desk/what-if.ts'
import type { PressPlan } from '../../garment/press.ts'
import { readingOf } from '../../intake/label.ts'
import type { Garment } from '../../intake/pile.ts'
import type { AsPlanned } from '../../intake/planned.ts'
import { labelWords } from '../../papers/label-words.ts'
import type { Language } from '../../words/words.ts'
import { wishedOf } from '../chat/present-better.ts'
import { kindWords, nameOf, type Reader, saidOf } from '../chat/present-garment.ts'
import { markedPhotos } from '../chat/present-spots.ts'
import { coloursOf, listWords, wordsOfColours } from '../chat/present-swatch.ts'
import type { Photo } from '../chat/view.ts'
import { factName, factValue } from './fact-words.ts'
import { deskPaths } from './paths.ts'
import { deskBetter, deskTogether } from './present-better.ts'
import { type Desk, decisionForm } from './present-decision.ts'
import { flagsOf } from './present-flags.ts'
import { labelOf } from './present-label.ts'
import { threadOf } from './present-messages.ts'
import { sheetTold } from './present-sheet.ts'
import { showsOf } from './present-shows.ts'
import { deskSpotsShown } from './present-spots.ts'
import { reckonedOf } from './present-why.ts'
import type { DeskGarment, DeskPhoto, FactLine, Link } from './view.ts'
import { takingIt, withoutIt } from './what-if-links.ts'

/** The customer's pages write garments out for a reader; the desk is one that changes nothing. */
export const readerAt = (language: Language): Reader => ({
  key: '',
  language,
  seq: 0,
  newIdem: () => '',
  editable: false,
})

const factLine = (fact: SourcedFact, language: Language): FactLine => ({
  name: factName(fact.fact, language),
  value: factValue(fact, language),
  from: language.say(`desk.from.${fact.from}`),
})

/** What the label says stands first: heat follows from it. */
function labelLine({ garment }: ReviewedGarment, { say }: Language): FactLine[] {
  const reading = readingOf(garment.replies)
  if (!reading) return []
  const from = say(reading.sure ? 'desk.from.label' : 'desk.from.unsure')
  return [{ name: say('desk.facts.label.name'), value: labelWords(reading, say), from }]
}

/** What was said of its colours, and those it is placed and drawn in. */
function colourLines({ garment: { told }, cloth }: ReviewedGarment, language: Language) {
  const { say } = language
  const lines: FactLine[] = []
  const said = [...told.colours, ...(told.manyColours ? ['many'] : [])]
  if (said.length > 0) {
    const words = said.map((word) => say(`colours.${word}`))
    lines.push({
      name: say('desk.facts.colours.name'),
      value: listWords(words, language),
      from: say('desk.from.said'),
    })
  }
  if (cloth.colour && cloth.value !== null) {
    const colours = coloursOf(cloth)
    const words = listWords(wordsOfColours(colours, language), language)
    lines.push({
      name: say('desk.facts.drawn.name'),
      value: say('desk.facts.drawn.value', { words, lightness: Math.round(cloth.value) }),
      from: say(cloth.from === 'photo' ? 'desk.from.measured' : 'desk.from.said'),
      swatch: colours,
    })
  }
  return lines
}

function pressLines(press: PressPlan, { say }: Language): FactLine[] {
  const heat =
    press.ceilingC === null
      ? say('trade.press.do-not-press')
      : say('desk.press.ceiling', { celsius: press.ceilingC })
  return [
    {
      name: say('desk.press.method'),
      value: say(`trade.press.${press.method}`),
      from: press.testFirst ? say('desk.press.test') : '',
    },
    {
      name: say('desk.press.heat'),
      value: heat,
      from: say('desk.press.set_by', { what: say(`trade.setBy.${press.setBy}`) }),
    },
    {
      name: say('desk.press.backing'),
      value: say(`trade.backing.${press.backing}`),
      from: press.interfacing ? say(`trade.interfacing.${press.interfacing}`) : '',
    },
  ]
}

/** Cloth and price before anything is decided: the cloth roughly, the price by the plan where there is one. */
function prospectWords(
  { pile, garments, prospects }: Review,
  n: number,
  { best }: AsPlanned,
  { say, locale }: Language,
): string[] {
  const prospect = prospects.get(n)
  if (!prospect) return []
  const { pieces } = prospect.taken
  const sum = (part: 'have' | 'want') => pieces.reduce((all, one) => all + one[part], 0)
  const left = best ? leftOutPrice(pile, verdictsOf(garments), n, settled(best)) : prospect.left
  const price = left && formatMoney({ minor: left.total.likely, currency: left.currency }, locale)
  return [
    say('desk.if.taken', { have: sum('have'), want: sum('want') }),
    ...(price ? [say(`desk.if.${best ? 'left' : 'left_roughly'}`, { likely: price })] : []),
  ]
}

/** What if it were left out, where the plan may cut it; what if it were taken, where it may not yet. */
function whatIfOf(
  garment: Garment,
  { asked }: AsPlanned,
  number: number,
  language: Language,
): Link | null {
  const named = { n: garment.n, name: nameOf(garment, readerAt(language)) }
  if (asked.used.includes(garment)) return withoutIt(number, named, language)
  const barred = asked.out.find((one) => one.garment === garment)?.barred
  return !barred || barred.why === 'misfit' ? null : takingIt(number, named, language)
}

/** The photos of a garment as the desk links to them. */
export const deskPhotos = (
  { garment, photos }: ReviewedGarment,
  number: number,
  language: Language,
): Photo[] =>
  photos.map(({ id }, i) => ({
    id,
    thumb: deskPaths.photo(number, id, 'thumb'),
    view: deskPaths.photo(number, id, 'view'),
    alt: language.say('tag.photo', { name: nameOf(garment, readerAt(language)), n: i + 1 }),
  }))

export function garmentOf(
  reviewed: ReviewedGarment,
  review: Review,
  planned: AsPlanned,
  desk: Desk,
  next: number | undefined,
): DeskGarment {
  const { garment, photos, seen, decisions } = reviewed
  const told = (id: string): Pick<DeskPhoto, 'shows' | 'sheet'> => {
    const look = seen.find(({ photo }) => photo === id)
    if (!look) return { shows: null, sheet: null }
    return {
      shows: showsOf(look, garment, language),
      sheet: sheetTold(look, number, garment.n, language),
    }
  }
  const { language } = desk
  const { say } = language
  const { number } = review.row
  const reader = readerAt(language)
  const facts = sourcedFacts(garment)
  const grade = garment.grading?.grade ?? null
  const chain = review.whyOf(garment)
  const chained = { chain, facts, language }
  const { grave, minor } = flagsOf(reviewed, chained, {
    number,
    desk,
    isDecided: review.row.status === 'decided',
  })
  const name = nameOf(garment, reader)

  return {
    n: garment.n,
    code: garment.code,
    name,
    kind: garment.facts.kind,
    kindWords: kindWords(garment, reader) ?? '',
    grade,
    waits: review.undecided.includes(garment.n),
    flags: grave,
    noted: minor,
    better: garment.better ? deskBetter(garment.better.staff, language) : [],
    together:
      garment.better && deskTogether(garment.better.staff, wishedOf(review.pile.wish), language),
    press: garment.grading ? pressLines(garment.grading.press, language) : [],
    facts: [
      ...labelLine(reviewed, language),
      ...facts.map((fact) => factLine(fact, language)),
      ...colourLines(reviewed, language),
    ],
    reckoned: reckonedOf(chained),
    answers: saidOf(garment.path, garment.n, reader),
    prospects: prospectWords(review, garment.n, planned, language),
    thread: threadOf(review, garment.n, name, desk),
    photos: markedPhotos(photos, deskPhotos(reviewed, number, language), garment.told.spots).map(
      (marked, i) => ({
        ...marked,
        ...told(marked.photo.id),
        side: photos[i]!.shows && say(`photo.sides.${photos[i]!.shows}`),
      }),
    ),
    spots: deskSpotsShown(reviewed, number, language),
    label: labelOf(reviewed, number, language),
    form: decisionForm({
      desk,
      item: garment.n,
      postTo: deskPaths.decideGarment(number, garment.n),
      verdicts: garmentVerdicts,
      decisions,
    }),
    set: { label: say('desk.set.open'), href: deskPaths.facts(number, garment.n) },
    teardown: garment.grading && {
      label: say('bench.open'),
      href: deskPaths.teardown(number, garment.n),
    },
    whatIf: whatIfOf(garment, planned, number, language),
    next:
      next === undefined
        ? null
        : { label: say('desk.next', { n: next }), href: `#garment-${next}` },
  }
}
