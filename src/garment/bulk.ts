import { practice } from '../base/figure.ts'
import type { Facts } from './facts.ts'

/** How much cloth lies in the seams of a kind, least first. */
export const bulks = ['flat', 'usual', 'thick'] as const
export type Bulk = (typeof bulks)[number]

const thick: readonly Facts['kind'][] = [
  'jeans',
  'sweatshirt',
  'hoodie',
  'jumper',
  'coat',
  'blanket',
]
const flat: readonly Facts['kind'][] = ['button-shirt', 'blouse', 'tie', 'scarf']

/** The bulk in the seams once pieces of this kind are joined; an unnamed kind is taken for thick. */
export function bulkOf(kind: Facts['kind']): { readonly bulk: Bulk; readonly source: string } {
  const isThick = kind === 'other' || thick.includes(kind)
  return { bulk: isThick ? 'thick' : flat.includes(kind) ? 'flat' : 'usual', source: practice }
}
