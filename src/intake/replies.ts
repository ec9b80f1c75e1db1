import type { LabelSeen, LabelValue, Replies, Value } from '../flow/grammar.ts'

/** The given value of a reply; undefined where it was passed over, left to a person or not asked. */
export function given(replies: Replies, question: string): Value | undefined {
  const reply = replies[question]
  return reply && 'given' in reply ? reply.given : undefined
}

export function chosen(replies: Replies, question: string): string | undefined {
  const value = given(replies, question)
  return typeof value === 'string' ? value : undefined
}

/** What was ticked; empty where nothing was, or the question was not answered. */
export function ticked(replies: Replies, question: string): readonly string[] {
  const value = given(replies, question)
  return Array.isArray(value) ? (value as readonly string[]) : []
}

export function amount(replies: Replies, question: string): number | undefined {
  const value = given(replies, question)
  return value && typeof value === 'object' && 'amount' in value ? value.amount : undefined
}

export function labelValue(replies: Replies): LabelValue | undefined {
  const value = given(replies, 'label')
  return value && typeof value === 'object' && 'found' in value ? value : undefined
}

/** The label's photo, whether its question was answered or left to a person; without `photo`: there is none. */
export function labelSeen(replies: Replies): LabelSeen {
  const { label } = replies
  return label && 'asked' in label ? label : (labelValue(replies) ?? {})
}
