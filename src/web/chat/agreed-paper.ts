import { Failure } from '../../base/failures.ts'
import { tagCode } from '../../base/tag.ts'
import { decidedOf } from '../../desk/decisions.ts'
import { frozen } from '../../intake/agreement.ts'
import { asDecided } from '../../papers/checklist-decided.ts'
import type { Store } from '../../store/open.ts'
import type { PileRow } from '../../store/schema.ts'
import type { Language } from '../../words/words.ts'
import type { ConfirmedPaper } from './present-pages.ts'

/**
 * What the customer confirmed, with the list as people have decided it since; the kept words stay as they are.
 * Throws `not_found` while the pile is open.
 */
export async function agreedPaper(
  { db }: Pick<Store, 'db'>,
  row: PileRow,
  language: Language,
): Promise<ConfirmedPaper> {
  const papers = await frozen<ConfirmedPaper>(db, row.id)
  const paper = papers?.[language.code]
  if (!paper) throw new Failure('not_found')
  const verdicts = await decidedOf(db, row)
  if (verdicts.size === 0) return paper
  const codeOf = (n: number) => tagCode(row.number, n)
  return { ...paper, checklist: asDecided(paper.checklist, { verdicts, codeOf }, language.say) }
}
