import { type Arranged, fixedIn } from '../../desk/arranged.ts'
import type { Review } from '../../desk/review.ts'
import { liesThere } from '../../intake/laid.ts'
import type { AsPlanned } from '../../intake/planned.ts'
import type { Language } from '../../words/words.ts'
import { nameOf } from '../chat/present-garment.ts'
import { shownQuilts } from '../chat/present-quilt.ts'
import { type QuiltsLaid, quiltsSoFar } from '../chat/quilts.ts'
import type { ShownQuilts } from '../chat/view-quilt.ts'
import type { DeskContext } from './context.ts'
import { deskPaths } from './paths.ts'
import { readerAt } from './present-garment.ts'

/** For so long a page waits for each quilt to be laid, ms. */
const patience = 1200

/** The quilts that the plan of a reviewed pile makes, as staff would have them lie. */
export const reviewedQuilts = (
  context: Pick<DeskContext, 'knowledge' | 'plans'>,
  { pile, garments, arranged }: Review,
  planned: AsPlanned,
): Promise<QuiltsLaid> => {
  const cloths = garments.map(({ garment: { n }, cloth }) => ({ garment: n, ...cloth }))
  return quiltsSoFar(context, { pile, cloths, fixed: fixedIn(arranged) }, planned, patience)
}

/** How many pieces lie where staff pinned them, and how many cannot any more. */
function pinWords({ laid }: QuiltsLaid, { pins }: Arranged, { say }: Language): string[] {
  const own = pins.filter(({ quilt }) => laid[quilt])
  const used = own.filter((pin) => liesThere(laid[pin.quilt]!, pin)).length
  const lost = own.length - used
  return [
    ...(used > 0 ? [say('desk.arrange.pins_used', { count: used })] : []),
    ...(lost > 0 ? [say('desk.arrange.pins_lost', { count: lost })] : []),
  ]
}

/** The quilts piece by piece, for the bench; null where the page tells already why there are none. */
export function shownAtDesk(
  soFar: QuiltsLaid,
  { row: { number }, garments, arranged }: Review,
  language: Language,
): ShownQuilts | null {
  if (soFar.state === 'none' || soFar.state === 'failed') return null
  const { say } = language
  const byNumber = new Map(garments.map(({ garment }) => [garment.n, garment]))
  const quilts = shownQuilts(
    // How far the plan has come stands at the head of the page.
    { ...soFar, mayChange: false },
    [say('quilt.numbers'), ...pinWords(soFar, arranged, language)],
    deskPaths.plan(number),
    {
      language,
      nameOf: (n) => nameOf(byNumber.get(n)!, readerAt(language)),
      photo: (id) => deskPaths.photo(number, id, 'cloth'),
      png: (n) => deskPaths.quilt(number, n),
      tell: () => null,
      numbers: true,
      arrange: (n) => ({ label: say('desk.arrange.link'), href: deskPaths.arrange(number, n) }),
    },
  )
  return { ...quilts, title: say('quilt.desk_title') }
}
