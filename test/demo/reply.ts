import { plain } from '../help/pictures.ts'
import type { Fields } from '../help/walker.ts'
import { type DemoGarment, pileAnswers } from './pile.ts'

interface Asked {
  readonly id: string
  readonly kind: string
  readonly optional: boolean
}

/** What the invented customer sends for a question of the pile (`garment` null) or of a garment. */
export function replyOf(
  { id, kind, optional }: Asked,
  garment: DemoGarment | null,
  ofPile: Readonly<Record<string, Fields>> = pileAnswers,
): Fields {
  if (garment && id === 'name') return { value: garment.name }
  const answer = (garment?.answers ?? ofPile)[id]
  if (answer) return answer
  if (optional) return { act: 'skip' }
  if (kind === 'confirm') return { value: 'yes' }
  return { act: 'ask', note: 'We are not sure. Could you look at it?' }
}

export const photoOf = ([r, g, b]: readonly [number, number, number]): Promise<Buffer> =>
  plain(900, 700, `rgb(${r}, ${g}, ${b})`).jpeg().toBuffer()
