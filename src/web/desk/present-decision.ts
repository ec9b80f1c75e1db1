import type { Failure } from '../../base/failures.ts'
import {
  type Decision,
  type GarmentVerdict,
  type PileVerdict,
  reasonLimits,
  wantsReason,
} from '../../desk/decisions.ts'
import type { Language } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import type { Decided, DecisionForm } from './view.ts'
import { momentWords } from './when.ts'

/** A decision that was refused, and what had been typed. */
export interface Refused {
  /** The garment; null: the pile. */
  readonly item: number | null
  readonly reason: string
  readonly failure: Failure
}

/** Who reads the page, and with what they came. */
export interface Desk {
  readonly language: Language
  readonly csrf: string
  /** The newest decision that the page shows. */
  readonly seen: number
  readonly refused: Refused | null
}

const scopeOf = ({ item }: Pick<Decision, 'item'>): 'pile' | 'garment' =>
  item === null ? 'pile' : 'garment'

export function decidedOf(decision: Decision, { say, locale }: Language): Decided {
  const { verdict, reason, who, at } = decision
  return {
    verdict,
    words: say(`desk.stands.${scopeOf(decision)}.${verdict}`),
    reason,
    by: say('desk.by', { name: who.name, at: momentWords(at, locale) }),
  }
}

export interface Deciding {
  readonly desk: Desk
  readonly item: number | null
  readonly postTo: string
  readonly verdicts: readonly (GarmentVerdict | PileVerdict)[]
  /** Of this garment or of the pile itself, oldest first. */
  readonly decisions: readonly Decision[]
}

export function decisionForm({ desk, item, postTo, verdicts, decisions }: Deciding): DecisionForm {
  const { language, csrf, seen } = desk
  const { say } = language
  const refused = desk.refused?.item === item ? desk.refused : null
  const [standing = null, ...history] = decisions
    .map((decision) => decidedOf(decision, language))
    .reverse()
  return {
    postTo,
    csrf,
    seen,
    reason: refused?.reason ?? '',
    error: refused && failureSentence(refused.failure, language),
    buttons: verdicts.map((value) => ({
      value,
      label: say(`desk.verdicts.${scopeOf({ item })}.${value}`),
      standing: value === standing?.verdict,
      reasoned: wantsReason(value),
    })),
    send: item === null ? null : say('desk.messages.send_reason'),
    hint: say(`desk.reason.${scopeOf({ item })}`, { longest: reasonLimits.longest }),
    standing,
    history,
  }
}
