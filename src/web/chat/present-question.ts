import { Failure } from '../../base/failures.ts'
import { inchWords } from '../../base/units.ts'
import type { Followed } from '../../flow/follow.ts'
import type { ContactValue, Question, Replies, Reply } from '../../flow/grammar.ts'
import { offered, type RawReply } from '../../flow/reply.ts'
import { faultsSeen, type SeenPhoto, tellingLook } from '../../intake/garment-look.ts'
import { readingOf } from '../../intake/label.ts'
import type { LabelPhoto } from '../../intake/label-photo.ts'
import type { Sides } from '../../intake/photos.ts'
import type { Garment, Pile } from '../../intake/pile.ts'
import { chosen } from '../../intake/replies.ts'
import { rules } from '../../intake/rules.ts'
import type { SpotPhoto } from '../../intake/spot-photos.ts'
import { spotValues } from '../../intake/spots.ts'
import { labelWords } from '../../papers/label-words.ts'
import { photoSides } from '../../store/schema.ts'
import type { Say } from '../../words/words.ts'
import { listOf } from './form.ts'
import { paths } from './paths.ts'
import { hidden, kindWords, photoLinks, type Reader } from './present-garment.ts'
import { labelAnswering } from './present-label.ts'
import { isProposed, lookShown, measureOffer, proposedValues } from './present-look.ts'
import { ownWordsIn, proposedByWords, readAs } from './present-own-words.ts'
import { againstShown, likelySpot, markedPhotos, spotsShown } from './present-spots.ts'
import { coloursOfOption } from './present-swatch.ts'
import { justOf, tapOf } from './present-tap.ts'
import { inOrder, type SentPhotos } from './received-photos.ts'
import type { Answering, FieldError, Option, Question as Shown } from './view.ts'
import type { LookShown, MeasureOffer } from './view-question.ts'

/** A question that is open or on the path, with the replies its options hang on. */
export interface Asking {
  readonly item: number
  readonly question: Question
  readonly replies: Replies
  readonly before: Question | null
  /** Photos received for it that no answer holds yet. */
  readonly drafts?: readonly string[]
  /** Of a label: its photo, and words that were typed before it was read. Without it none can be read. */
  readonly label?: { readonly photo: LabelPhoto | null; readonly typed: string }
  /** What the photos of its garment show. */
  readonly seen?: readonly SeenPhoto[]
  /** Of spots: the photos to mark them on. */
  readonly toMark?: readonly SpotPhoto[]
  /** Of photos: what each shows. */
  readonly sides?: Sides
}

/** Finds a question by its address; null where the path does not (or no longer) lead to it. */
export function findAsking(followed: Followed, item: number, id: string): Asking | null {
  const walk =
    item === 0
      ? followed.parts.find(
          ({ path, open }) => open?.id === id || path.some(({ question }) => question.id === id),
        )
      : followed.items.find(({ n, dropped }) => n === item && !dropped)
  if (!walk) return null
  const at = walk.path.findIndex(({ question }) => question.id === id)
  const question = at >= 0 ? walk.path[at]!.question : walk.open
  if (question?.id !== id) return null
  const before = walk.path[(at >= 0 ? at : walk.path.length) - 1]?.question ?? null
  return { item, question, replies: walk.replies, before }
}

/** What was typed or chosen, where the page comes back with it: an answer was refused, or a label read. */
export interface Sent {
  readonly raw: RawReply
  /** Of photos: as the form has them. */
  readonly photos?: SentPhotos | undefined
  /** Of spots: what the next mark is. */
  readonly what?: string | undefined
  readonly error: FieldError | null
}

/** What the garment's photos propose while the question has no answer. */
function proposedOf({ question, replies, seen }: Asking): readonly string[] {
  const telling = replies[question.id] ? null : tellingLook(seen ?? [])
  const shown = telling && isProposed(question.id) ? proposedValues(question.id, telling) : []
  return [...shown, ...proposedByWords(question.id, replies)]
}

function optionsOf(asking: Asking, raw: RawReply | null, reader: Reader): Option[] {
  const { question, replies } = asking
  const reply = replies[question.id]
  const before = reply && 'given' in reply ? listOf(reply.given as string | string[]) : []
  const picked = raw ? listOf(raw.value) : [...before, ...proposedOf(asking)]
  const { say, has } = reader.language
  return offered(question, replies, rules).map((value) => {
    const key = `intake.${question.id}.option_help.${value}`
    return {
      value,
      ...(readAs(question.id, value, replies, reader) ?? {
        label: say(`intake.${question.id}.options.${value}`),
        help: has(key) ? say(key) : null,
      }),
      drawing: null,
      ...(question.id === 'colours' && { swatch: coloursOfOption(value) }),
      chosen: picked.includes(value),
    }
  })
}

const givenIn = <T>(reply: Reply | undefined): T | null =>
  reply && 'given' in reply ? (reply.given as T) : null

function answeringOf(asking: Asking, pile: Pile, sent: Sent | null, reader: Reader): Answering {
  const raw = sent?.raw ?? null
  const { question, replies } = asking
  const reply = replies[question.id]
  const { say } = reader.language
  const typed = raw ? listOf(raw.value).join('\n') : null
  switch (question.kind) {
    case 'choice':
    case 'confirm':
    case 'many':
    case 'symbols':
      return { kind: question.kind, options: optionsOf(asking, raw, reader) }
    case 'number': {
      const before = givenIn<{ amount: number }>(reply)
      const unit = question.unit ?? ''
      return {
        kind: 'number',
        value: typed ?? (before ? inchWords(before.amount) : (proposedOf(asking)[0] ?? '')),
        min: question.min ?? null,
        max: question.max ?? null,
        step: question.step ?? 1,
        unit: { value: unit, label: unit && say(`intake.units.${unit}`) },
      }
    }
    case 'text':
      return {
        kind: 'text',
        value: typed ?? givenIn<string>(reply) ?? '',
        longest: question.longest ?? 300,
        lines: (question.longest ?? 300) > 100,
      }
    case 'label':
      return labelAnswering(asking, pile, raw, reader)
    case 'photo':
      return photosAnswering(asking, pile, sent, reader)
    case 'spots':
      return spotsAnswering(asking, pile, sent, reader)
    case 'contact': {
      const before = givenIn<ContactValue>(reply)
      return {
        kind: 'contact',
        name: raw ? (raw.name ?? '') : (before?.name ?? ''),
        email: raw ? (raw.email ?? '') : (before?.email ?? ''),
        phone: raw ? (raw.phone ?? '') : (before?.phone ?? ''),
      }
    }
  }
}

function photosAnswering(asking: Asking, pile: Pile, sent: Sent | null, reader: Reader): Answering {
  const { question, replies, drafts = [], seen = [], sides } = asking
  const { say } = reader.language
  const garment = pile.garments.find(({ n }) => n === asking.item)
  const held = garment
    ? inOrder([...garment.told.photoIds, ...drafts], sent?.photos?.order ?? [])
    : []
  const shows = (id: string) => (sent?.photos?.sides.has(id) ? sent.photos.sides : sides)?.get(id)
  const told = seen.map((one) => ({ ...one, shows: shows(one.photo) ?? null }))
  return {
    kind: 'photo',
    attached: garment
      ? photoLinks(held, garment, reader).map((photo) => ({
          ...photo,
          goes: sent?.photos?.gone.includes(photo.id) ?? false,
          shows: shows(photo.id) ?? '',
          sides: ['', ...photoSides].map((value) => ({
            value,
            label: say(`photo.sides.${value || 'untold'}`),
          })),
        }))
      : [],
    most: question.max ?? 1,
    advice: faultsSeen(told, chosen(replies, 'kind')).map((fault) => say(`look.faults.${fault}`)),
  }
}

function spotsAnswering(asking: Asking, pile: Pile, sent: Sent | null, reader: Reader): Answering {
  const { question, replies, toMark = [] } = asking
  const { say } = reader.language
  const garment = pile.garments.find(({ n }) => n === asking.item)
  if (!garment) throw new Failure('not_found')
  const spots = (sent?.raw.spots ?? spotValues(replies, question.id)).filter(({ photo }) =>
    toMark.some(({ id }) => id === photo),
  )
  const next = sent?.what ?? likelySpot(replies)
  const links = photoLinks(
    toMark.map(({ id }) => id),
    garment,
    reader,
  )
  return {
    kind: 'spots',
    photos: markedPhotos(toMark, links, spots),
    options: optionsOf(asking, { value: next }, reader),
    spots: spotsShown(spots, toMark, garment.facts.kind, say),
    against: sent ? againstShown(spots, replies, say) : [],
  }
}

/** The line of help under a question: another one where a label's photo can be read; a check of the label says what was read. */
function helpOf({ question, replies, label }: Asking, say: Say, has: (key: string) => boolean) {
  const key = `intake.${question.id}.help`
  const ofPhotos = `${key}_photo`
  const first = label && has(ofPhotos) ? ofPhotos : key
  const help = has(first) ? say(first) : null
  const said = ownWordsIn(question.id, replies, say)
  if (said) return [said, help].filter(Boolean).join(' ')
  if (question.kind !== 'confirm') return help
  const reading = readingOf(replies)
  return reading ? [labelWords(reading, say), help].filter(Boolean).join(' ') : help
}

/** A proposal stands beside its question until that is answered. */
function lookOf(asking: Asking, garment: Garment | null, reader: Reader): LookShown | null {
  const { question, replies, seen = [] } = asking
  const telling = tellingLook(seen)
  if (!garment || !telling || !isProposed(question.id) || replies[question.id]) return null
  return lookShown(question.id, telling, garment, reader)
}

/** Offered beside it, while the question has no answer. */
function measureOf(asking: Asking, garment: Garment | null, reader: Reader): MeasureOffer | null {
  const { question, replies, seen = [] } = asking
  const telling = tellingLook(seen)
  if (!garment || !telling || replies[question.id]) return null
  return measureOffer(question.id, telling, garment, reader)
}

export function questionOf(asking: Asking, pile: Pile, sent: Sent | null, reader: Reader): Shown {
  const { question, item, before } = asking
  const { say, has } = reader.language
  const garment = pile.garments.find(({ n }) => n === item)
  const key = `intake.${question.id}`
  const answering = answeringOf(asking, pile, sent, reader)
  return {
    id: question.id,
    item,
    itemName: garment ? (garment.name ?? kindWords(garment, reader)) : null,
    position: null,
    title: say(`${key}.ask`),
    help: helpOf(asking, say, has),
    why: say(`${key}.why`),
    drawing: question.drawing ?? null,
    cautions: (question.cautions ?? []).map((name) => say(`cautions.${name}`)),
    look: lookOf(asking, garment ?? null, reader),
    measure: measureOf(asking, garment ?? null, reader),
    optional: question.optional === true,
    skipLabel: has(`${key}.skip`) ? say(`${key}.skip`) : null,
    tap: 'options' in answering ? tapOf(asking, answering.options) : null,
    just: justOf(asking, reader),
    answering,
    errors: sent?.error ? [sent.error] : [],
    note: sent?.raw.note ?? '',
    postTo: paths.question(reader.key, item, question.id),
    hidden: hidden(reader),
    backHref: before ? paths.question(reader.key, item, before.id) : null,
  }
}
