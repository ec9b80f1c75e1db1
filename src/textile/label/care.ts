import type { CareCode } from '../reading.ts'
import { forbiddenVerbs } from './bans.ts'
import type { Item } from './items.ts'
import { type Verb, verbsIn } from './verbs.ts'
import type { Role } from './vocabulary.ts'

const codeOf: Partial<Record<Verb, readonly [allowed: CareCode | null, forbidden: CareCode]>> = {
  wash: ['machine-wash', 'no-wash'],
  bleach: [null, 'no-bleach'],
  tumble: ['tumble-dry', 'no-tumble'],
  dryClean: ['dry-clean', 'no-dry-clean'],
}

const ofRole: Partial<Record<Role, CareCode>> = {
  handWash: 'hand-wash',
  flatDry: 'flat-dry',
  lineDry: 'line-dry',
}

/** Plain codes for washing, bleaching, drying and dry-cleaning. */
export function careCodesOf(items: readonly Item[]): Set<CareCode> {
  const verbs = verbsIn(items)
  const forbidden = forbiddenVerbs(items, verbs)
  const codes = new Set<CareCode>()
  for (const [i, { verb, role }] of verbs.entries()) {
    const pair = codeOf[verb]
    const code = forbidden[i] ? pair?.[1] : (ofRole[role] ?? pair?.[0])
    if (code) codes.add(code)
  }
  if (codes.has('hand-wash')) codes.delete('machine-wash')
  if (codes.has('no-wash')) codes.delete('machine-wash')
  if (codes.has('no-tumble')) codes.delete('tumble-dry')
  if (codes.has('no-dry-clean')) codes.delete('dry-clean')
  return codes
}
