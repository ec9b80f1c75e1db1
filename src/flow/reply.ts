import { Failure, type FailureCode } from '../base/failures.ts'
import type {
  ContactValue,
  LabelSeen,
  LabelValue,
  NumberValue,
  Question,
  Reply,
  SpotValue,
  Value,
} from './grammar.ts'
import {
  isWithin,
  labelFinds,
  labelIrons,
  lengthOf,
  longestEmail,
  longestName,
  longestOf,
  longestPhone,
  longestText,
  mayBeEmpty,
  signGroup,
} from './sense.ts'
import { cleanLine, cleanText, isBlank, isEmail, readAmount } from './text.ts'

export { offered } from './rules.ts'

/** An answer as a form sends it: loose, anything may be missing or empty. */
export interface RawReply {
  readonly act?: 'answer' | 'skip' | 'ask' | undefined
  readonly value?: string | readonly string[] | undefined
  readonly unit?: string | undefined
  readonly words?: string | undefined
  readonly found?: string | undefined
  readonly iron?: string | undefined
  /** label: the photo received for it, and what was read there. Never a form's own say. */
  readonly labelPhoto?: { readonly id: string; readonly read: string | null } | undefined
  /** label: words that were read on photos with doubt. Never a form's own say. */
  readonly doubtedWords?: readonly string[] | undefined
  /** spots: those that were marked, each read and held against its photo. Never a form's own say. */
  readonly spots?: readonly SpotValue[] | undefined
  readonly name?: string | undefined
  readonly email?: string | undefined
  readonly phone?: string | undefined
  /** What to tell the person to whom the question is left. */
  readonly note?: string | undefined
}

/**
 * A loose answer made strict once. `offered` are the options open now. An optional question left empty
 * counts as passed over. Throws a Failure with details {question, …} that fill its sentence:
 * empty_answer, answer_not_offered, none_with_others, signs_conflict {group}, answer_too_long {longest},
 * not_a_number, number_out_of_range {min, max, unit}, number_too_fine {step, unit}, email_not_valid,
 * form_incomplete {field}, nothing_ticked, too_many_spots {most}.
 */
export function readReply(question: Question, offered: readonly string[], raw: RawReply): Reply {
  const form = new Form(question, offered, raw)
  if (raw.act === 'ask') {
    return { asked: form.short(cleanText(raw.note ?? ''), longestText), ...seenOf(raw) }
  }
  if (raw.act === 'skip') return form.nothing()

  const given = readers[question.kind](form)
  return given === null ? form.nothing() : { given }
}

type Reader = (form: Form) => Value | null

const readers: Readonly<Record<Question['kind'], Reader>> = {
  choice: readOne,
  confirm: readOne,
  many: readMany,
  symbols: readSigns,
  photo: readPhotos,
  spots: readSpots,
  number: readNumber,
  text: readText,
  label: readLabel,
  contact: readContact,
}

class Form {
  readonly question: Question
  readonly offered: readonly string[]
  readonly raw: RawReply

  constructor(question: Question, offered: readonly string[], raw: RawReply) {
    this.question = question
    this.offered = offered
    this.raw = raw
  }

  refuse(code: FailureCode, details: Record<string, string | number> = {}): never {
    throw new Failure(code, { question: this.question.id, ...details })
  }

  nothing(): Reply {
    return this.question.optional ? { skipped: true } : this.refuse('empty_answer')
  }

  /** The values sent, each once, without empty ones. */
  values(): string[] {
    const { value } = this.raw
    const sent = value === undefined ? [] : typeof value === 'string' ? [value] : value
    return [...new Set(sent.map((one) => cleanLine(one)))].filter((one) => one !== '')
  }

  /** The values sent in the order in which they are offered, so that equal choices are equal. */
  chosen(): string[] {
    const sent = this.values()
    if (!sent.every((one) => this.offered.includes(one))) this.refuse('answer_not_offered')
    return this.offered.filter((one) => sent.includes(one))
  }

  short(text: string, longest: number): string {
    return lengthOf(text) <= longest ? text : this.refuse('answer_too_long', { longest })
  }

  oneOf<T extends string>(sent: string, allowed: readonly T[]): T {
    return allowed.find((one) => one === sent) ?? this.refuse('answer_not_offered')
  }
}

function readOne(form: Form): Value | null {
  const chosen = form.chosen()
  if (chosen.length > 1) form.refuse('answer_not_offered')
  return chosen[0] ?? null
}

function readMany(form: Form): Value | null {
  const chosen = form.chosen()
  if (chosen.length > 1 && chosen.includes('none')) form.refuse('none_with_others')
  if (chosen.length > 0 || mayBeEmpty(form.question)) return chosen
  return form.offered.includes('none') ? form.refuse('nothing_ticked') : null
}

function readSigns(form: Form): Value | null {
  const chosen = form.chosen()
  const groups = chosen.map(signGroup)
  const twice = groups.find((group, at) => groups.indexOf(group) !== at)
  if (twice) form.refuse('signs_conflict', { group: twice })
  return chosen.length > 0 ? chosen : null
}

function readPhotos(form: Form): Value | null {
  const photos = form.values()
  const most = form.question.max ?? 1
  if (photos.length > most)
    form.refuse('number_out_of_range', { min: 1, max: most, unit: 'photos' })
  return photos.length > 0 ? photos : null
}

function readSpots(form: Form): Value | null {
  const { spots = [] } = form.raw
  const most = form.question.max ?? 1
  if (spots.length > most) form.refuse('too_many_spots', { most })
  if (!spots.every(({ what }) => form.offered.includes(what))) form.refuse('answer_not_offered')
  return spots.length > 0 ? spots : null
}

function readNumber(form: Form): NumberValue | null {
  const { question, raw } = form
  const { min, max, unit = '', step = 1 } = question
  if (raw.unit && cleanLine(raw.unit) !== unit) form.refuse('answer_not_offered', { unit })
  const sent = form.values().join(' ')
  if (sent === '') return null

  const text = unit !== '' && sent.endsWith(unit) ? sent.slice(0, -unit.length) : sent
  const amount = readAmount(text)
  if (amount === null) return form.refuse('not_a_number', { unit })
  if (amount < (min ?? -Infinity) || amount > (max ?? Infinity)) {
    form.refuse('number_out_of_range', { min: min ?? '', max: max ?? '', unit })
  }
  const value = { amount, unit }
  return isWithin(question, value) ? value : form.refuse('number_too_fine', { step, unit })
}

function readText(form: Form): string | null {
  const { value = '' } = form.raw
  const text = cleanText(typeof value === 'string' ? value : value.join('\n'))
  return isBlank(text) ? null : form.short(text, longestOf(form.question))
}

function seenOf({ labelPhoto }: RawReply): LabelSeen {
  if (!labelPhoto) return {}
  const { id, read } = labelPhoto
  return { photo: id, ...(read !== null && { read }) }
}

function readLabel(form: Form): LabelValue | null {
  const { raw } = form
  const typed = cleanText(raw.words ?? '')
  const words = isBlank(typed) ? '' : form.short(typed, longestOf(form.question))
  const found = raw.found ? form.oneOf(raw.found, labelFinds) : 'words'
  if (found === 'words' && words === '') return null
  const doubted = found === 'words' && raw.doubtedWords?.includes(words)
  return {
    found,
    words,
    iron: raw.iron ? form.oneOf(raw.iron, labelIrons) : null,
    ...seenOf(raw),
    ...(doubted && { doubted }),
  }
}

function readContact(form: Form): ContactValue | null {
  const line = (sent: string | undefined, longest: number) => {
    const text = cleanLine(sent ?? '')
    return isBlank(text) ? '' : form.short(text, longest)
  }
  const name = line(form.raw.name, longestName)
  const email = line(form.raw.email, longestEmail)
  const phone = line(form.raw.phone, longestPhone)
  if (name === '' && email === '' && phone === '') return null
  if (name === '') form.refuse('form_incomplete', { field: 'name' })
  if (email === '') form.refuse('form_incomplete', { field: 'email' })
  if (!isEmail(email)) form.refuse('email_not_valid')
  return { name, email, phone }
}
