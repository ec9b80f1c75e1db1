import type { Fields, Walker } from './walker.ts'

export type Answers = Readonly<Record<string, Fields>>

const none: Fields = { value: 'none' }

/** What the pile's first questions are met with; optional ones that are not here are passed over. */
export const pileAnswers: Answers = {
  recipient: { value: 'adult' },
  quilts: { value: 'one' },
  quilt_size: { value: 'throw' },
  layout_wish: { value: 'plain-squares' },
  at_hand: { value: '9' },
}

export const closingAnswers: Answers = {
  leftovers: { value: 'return' },
  contact: { name: 'Odo Tinderly', email: 'odo@tinderly.example', phone: '' },
}

/** A woven shirt in good order. */
export const shirt: Answers = {
  kind: { value: 'button-shirt' },
  size: { value: 'L' },
  label: { found: 'words', words: '100% cotton, warm iron' },
  label_check: { value: 'yes' },
  wear: { value: 'sound' },
  history: none,
  pattern: { value: 'stripe-check' },
  details: none,
}

/** Answers what is asked until `until` is, or nothing is asked any more. */
export async function answerAll(walker: Walker, answers: Answers, until?: string): Promise<Walker> {
  for (let { question } = walker; question && question.id !== until; { question } = walker) {
    const fields = answers[question.id] ?? (question.optional ? { act: 'skip' } : null)
    if (!fields) throw new Error(`this test is lost: it has no answer for "${question.id}"`)
    await walker.send(fields)
    if (walker.status !== 200) throw new Error(`${question.id}: ${walker.text('.errors')}`)
  }
  return walker
}

export async function addGarment(walker: Walker, answers: Answers, until?: string) {
  await walker.press('add-garment')
  return answerAll(walker, answers, until)
}

/** A file in the multipart form of the question that is shown. */
export async function sendFiles(
  walker: Walker,
  files: readonly { readonly bytes: Uint8Array; readonly name: string; readonly type: string }[],
  fields: Readonly<Record<string, string>> = {},
): Promise<Walker> {
  const form = walker.root.querySelector('form[data-question]')!
  const body = new FormData()
  for (const input of form.querySelectorAll('input[type=hidden]')) {
    const name = input.getAttribute('name')!
    body.append(name, fields[name] ?? input.getAttribute('value') ?? '')
  }
  const { act = 'answer', ...others } = fields
  body.append('act', act)
  for (const [name, value] of Object.entries(others)) {
    if (!body.has(name)) body.append(name, value)
  }
  for (const { bytes, name, type } of files) {
    body.append('photo', new Blob([new Uint8Array(bytes)], { type }), name)
  }
  return walker.open(form.getAttribute('action')!, { method: 'POST', body })
}
