import { Failure } from '../../base/failures.ts'
import { figuresOf } from '../../intake/agreed-figures.ts'
import type { Kept } from '../../intake/agreement.ts'
import type { Open } from '../../intake/conversation.ts'
import { asLaid, type FixedPiece, type LaidDesign } from '../../intake/laid.ts'
import { type AsPlanned, asKnown } from '../../intake/planned.ts'
import { toPlan } from '../../intake/to-plan.ts'
import { type DrawnQuilt, type KeptQuilt, keepQuilt } from '../../papers/quilt-kept.ts'
import type { ChatContext } from './context.ts'
import { confirmedPapers, priceOf } from './present-pages.ts'
import { drawnQuilts, type QuiltsSoFar } from './present-quilt.ts'

export type QuiltContext = Pick<ChatContext, 'knowledge' | 'plans'>

/** What a quilt is made of, and what a person has put where. */
export interface ToLay extends Pick<Open, 'pile' | 'cloths'> {
  readonly fixed?: readonly FixedPiece[]
}

/** The pictures of a pile's quilts, with how each of them lies. */
export interface QuiltsLaid extends QuiltsSoFar {
  readonly laid: readonly LaidDesign[]
}

/** The quilts that a plan makes, each waited for so long, ms. */
export async function quiltsSoFar(
  { knowledge: { shop }, plans }: QuiltContext,
  { pile, cloths, fixed = [] }: ToLay,
  planned: AsPlanned,
  patienceMs: number,
): Promise<QuiltsLaid> {
  const mayChange = planned.state === 'working' || planned.state === 'waiting'
  const of = { cloths, bought: shop.cloth_colours, fixed, patienceMs }
  const { state, quilts } = await asLaid(planned, plans, of)
  const drawn = drawnQuilts(quilts, cloths, pile.garments, shop)
  return { state: state === 'laid' ? 'drawn' : state, drawn, mayChange, laid: quilts }
}

/** Throws `picture_waiting` while they are laid, `picture_failed` where they are not to be had now. */
export function drawnOrFail({ state, drawn }: QuiltsSoFar): readonly DrawnQuilt[] {
  if (state === 'laying') throw new Failure('picture_waiting')
  if (state === 'failed') throw new Failure('picture_failed')
  return drawn
}

/** As they are at this moment, to be kept; null: they are not drawn yet. None where nothing can be drawn. */
async function quiltsToKeep(context: QuiltContext, open: Open): Promise<KeptQuilt[] | null> {
  const planned = asKnown(toPlan(open), context.plans)
  const { state, drawn } = await quiltsSoFar(context, open, planned, 0)
  return state === 'drawn' || state === 'none' ? drawn.map(keepQuilt) : null
}

/** Makes the papers of a pile that is being confirmed, with its quilts where they are drawn. */
export const papersFor =
  (context: QuiltContext & Pick<ChatContext, 'clock'>) =>
  async (open: Open): Promise<Kept> => ({
    words: confirmedPapers(open, context, await quiltsToKeep(context, open)),
    figures: figuresOf(open.pile, priceOf(open.pile, asKnown(toPlan(open), context.plans))),
  })
