import type { LabelValue } from '../../flow/grammar.ts'
import type { RawReply } from '../../flow/reply.ts'
import { longestOf } from '../../flow/sense.ts'
import { judge } from '../../intake/label-photo.ts'
import { fibresRead } from '../../intake/own-words.ts'
import type { Pile } from '../../intake/pile.ts'
import { given } from '../../intake/replies.ts'
import { labelWords } from '../../papers/label-words.ts'
import { isClear, type LabelWords } from '../../photo/label-words.ts'
import type { ProblemCode } from '../../textile/reading.ts'
import type { Say } from '../../words/words.ts'
import { nameOf, photoLinks, type Reader } from './present-garment.ts'
import type { Asking } from './present-question.ts'
import type { Answering } from './view.ts'
import type { LabelPhotoShown, LabelRead } from './view-question.ts'

type LabelAnswering = Extract<Answering, { kind: 'label' }>

/** A label's fields: as sent, else as answered, else as read on its photo. */
export function labelAnswering(
  asking: Asking,
  pile: Pile,
  raw: RawReply | null,
  reader: Reader,
): LabelAnswering {
  const { question, replies, label } = asking
  const longest = longestOf(question)
  const before = given(replies, question.id) as LabelValue | undefined
  const from: Partial<RawReply> = raw ?? { ...before, iron: before?.iron ?? undefined }
  const seen = label?.photo?.seen
  const photographed = raw || before || !seen ? '' : judge(seen, longest).words
  const read = photographed || (raw || before ? '' : fibresRead(replies))
  const found = from.found ?? (read === '' ? null : 'words')
  return {
    kind: 'label',
    words: from.words ?? read,
    found: found as LabelAnswering['found'],
    iron: (from.iron ?? null) as LabelAnswering['iron'],
    longest,
    photo: label ? photoShown(asking, label, pile, reader) : null,
  }
}

function photoShown(
  { item, question }: Asking,
  { photo, typed }: NonNullable<Asking['label']>,
  pile: Pile,
  reader: Reader,
): LabelPhotoShown {
  const garment = pile.garments.find(({ n }) => n === item)
  const { say } = reader.language
  if (!photo || !garment) return { taken: null, read: null, typed }
  const [link] = photoLinks([photo.id], garment, reader)
  const alt = say('label.photo.alt', { name: nameOf(garment, reader) })
  return {
    taken: { ...link!, alt },
    read: photo.seen && readOf(photo.seen, longestOf(question), say),
    typed,
  }
}

/** What a reading says where a share or a name lies under a fold or a finger. */
const hidden: ReadonlySet<ProblemCode> = new Set([
  'shares_missing',
  'total_not_100',
  'fibre_unexplained',
  'number_unexplained',
  'share_worked_out',
])

/** More lines than these are not named: then all of them are to be looked at. */
const mostDoubted = 5

function readOf(seen: LabelWords, longest: number, say: Say): LabelRead {
  const { verdict, reading, doubted } = judge(seen, longest)
  const says = reading.blocks.length > 0 || reading.iron.level !== null
  const summary = says ? labelWords(reading, say) : null
  if (verdict === 'sure') return { verdict, summary, doubted: [], advice: [] }
  const has = (one: (code: ProblemCode) => boolean) =>
    reading.problems.some(({ code }) => one(code))
  const mayBeHidden = isClear(seen) && has((code) => hidden.has(code))
  return {
    verdict,
    summary,
    doubted: doubted.length <= mostDoubted ? doubted : [],
    advice: [
      ...(has((code) => code === 'share_worked_out') ? [say('label.photo.worked_out')] : []),
      ...(mayBeHidden ? [say('label.photo.hidden')] : []),
      ...seen.faults.map((fault) => say(`label.photo.faults.${fault}`)),
    ],
  }
}
