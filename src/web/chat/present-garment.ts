import { sourcedFacts } from '../../desk/provenance.ts'
import type { Step } from '../../flow/walk.ts'
import type { Flag, Grading } from '../../garment/grade.ts'
import type { ClothOfGarment } from '../../intake/cloth-colours.ts'
import type { Garment, Pile, Wish } from '../../intake/pile.ts'
import { chosen } from '../../intake/replies.ts'
import { flagWords } from '../../papers/flag-words.ts'
import { decidingCode, gradeNext, gradeSentence } from '../../papers/grade-words.ts'
import type { Language } from '../../words/words.ts'
import { paths } from './paths.ts'
import { shownBetter } from './present-better.ts'
import { swatchOf } from './present-swatch.ts'
import { replyWords } from './said.ts'
import type { Action, Photo, Said, Tag } from './view.ts'

/** What presenting needs beside the pile itself. */
export interface Reader {
  readonly key: string
  readonly language: Language
  /** The last act the page knows of, sent back with every form. */
  readonly seq: number
  readonly newIdem: () => string
  readonly editable: boolean
}

export const hidden = (reader: Reader): Record<string, string> => ({
  idem: reader.newIdem(),
  seq: String(reader.seq),
})

/** What was asked and said along a path, each with its way to change it. */
export function saidOf(path: readonly Step[], item: number, reader: Reader): Said[] {
  const { say, locale } = reader.language
  return path.map(({ question, reply }) => ({
    question: question.id,
    asked: say(`intake.${question.id}.short`),
    said: replyWords(question, reply, say, locale),
    href: reader.editable ? paths.question(reader.key, item, question.id) : null,
  }))
}

export function kindWords(garment: Garment, { language }: Reader): string | null {
  const kind = chosen(garment.replies, 'kind')
  return kind ? language.say(`intake.kind.options.${kind}`) : null
}

/** What a garment is called: its own name, else its kind, else its number. */
/** Garments that were not left out. */
export const standing = ({ garments }: Pick<Pile, 'garments'>): readonly Garment[] =>
  garments.filter(({ dropped }) => !dropped)

export const nameOf = (garment: Garment, reader: Reader): string =>
  garment.name ?? kindWords(garment, reader) ?? reader.language.say('tag.unnamed', { n: garment.n })

export function photosOf(garment: Garment, reader: Reader): Photo[] {
  return photoLinks(garment.told.photoIds, garment, reader)
}

export function photoLinks(ids: readonly string[], garment: Garment, reader: Reader): Photo[] {
  return ids.map((id, i) => ({
    id,
    thumb: paths.photo(reader.key, id, 'thumb'),
    view: paths.photo(reader.key, id, 'view'),
    alt: reader.language.say('tag.photo', { name: nameOf(garment, reader), n: i + 1 }),
  }))
}

function actionsOf(garment: Garment, reader: Reader): Action[] {
  if (!reader.editable) return []
  const action = (act: Action['act']): Action => ({
    act,
    postTo: paths.garments(reader.key),
    hidden: { ...hidden(reader), item: String(garment.n) },
  })
  if (garment.dropped) return [action('restore-garment')]
  const copy = garment.open ? [] : [action('copy-garment')]
  return [...copy, action('drop-garment')]
}

/**
 * Of a garment that stays at home only what is grave matters. Its questions end early, and what nobody
 * was asked about asks for nothing.
 */
function mattering(garment: Garment, { flags, grade }: Grading): readonly Flag[] {
  if (grade !== 'home') return flags
  const untold = new Set<string>(
    sourcedFacts(garment).flatMap(({ fact, from }) => (from === 'untold' ? [fact] : [])),
  )
  return flags.filter(
    ({ severity, because }) =>
      severity === 'home' || (severity === 'eyes' && !because.some((name) => untold.has(name))),
  )
}

/** A reason that is told in the sentence above stands in no list; a next step is said once. */
function reasonsOf(garment: Garment, answers: ReadonlySet<string>, { language }: Reader) {
  const { grading } = garment
  if (!grading) return { sentence: null, next: null, flags: [] }
  const { say } = language
  const deciding = decidingCode(grading)
  return {
    sentence: gradeSentence(grading, say),
    next: answers.has(deciding ?? '') ? null : gradeNext(grading, language),
    flags: flagWords(
      {
        flags: mattering(garment, grading).filter(({ code }) => code !== deciding),
        layouts: grading.layouts,
      },
      'customer',
      language,
      answers,
    ),
  }
}

export function tagOf(
  garment: Garment,
  cloth: ClothOfGarment,
  { wish, asked }: { readonly wish: Wish; readonly asked: number },
  reader: Reader,
): Tag {
  const { grading, open, dropped } = garment
  const { better, together, answers } = shownBetter(garment, wish, reader)
  const goesOn = open !== null && !dropped && garment.n !== asked && reader.editable
  return {
    n: garment.n,
    code: garment.code,
    name: nameOf(garment, reader),
    kind: chosen(garment.replies, 'kind') ?? null,
    kindWords: kindWords(garment, reader),
    swatch: swatchOf(garment.told, cloth, reader.language),
    grade: grading?.grade ?? null,
    ...reasonsOf(garment, answers, reader),
    better,
    together,
    answers: saidOf(garment.path, garment.n, reader),
    photos: photosOf(garment, reader),
    open: open !== null,
    goOnHref: goesOn ? paths.question(reader.key, garment.n, open.id) : null,
    dropped,
    actions: actionsOf(garment, reader),
  }
}
