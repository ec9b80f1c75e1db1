import { quiltsDrawn } from '../../src/papers/quilt-drawn.ts'
import type { DrawnQuilt } from '../../src/papers/quilt-kept.ts'
import { demand, designOf } from '../../src/quilt/design.ts'
import { gridOf } from '../../src/quilt/place/grid.ts'
import {
  type QuiltReader,
  type QuiltsSoFar,
  shownQuilts,
} from '../../src/web/chat/present-quilt.ts'
import type { ShownQuilts } from '../../src/web/chat/view-quilt.ts'
import { shopKnowledge } from '../help/bench-garments.ts'
import { bought, cloths, nine } from '../help/sample-quilt.ts'

const { languages, layouts } = shopKnowledge()
const english = languages.get('en')!

/** A quilt of the nine garments as they come, some cloth bought, two garments' colour not told. */
function drawnAs(id: string): DrawnQuilt {
  const design = designOf(layouts.find((layout) => layout.id === id)!, 'crib', [])
  const { finished, pieces } = gridOf(design)
  const [quilt] = quiltsDrawn({
    quilts: [{ finished, pieces, cells: pieces.map((_, n) => (n % 10 < 9 ? 1 + (n % 10) : null)) }],
    cloths: cloths.map((cloth) => (cloth.garment % 5 === 0 ? { ...cloth, colour: null } : cloth)),
    bought,
  })
  const { columns, rows } = demand(design)
  return { size: 'crib', columns, rows, quilt: quilt! }
}

const reader: QuiltReader = {
  language: english,
  nameOf: (n) => nine[n - 1]!.name,
  photo: (id) => `${id}.svg`,
  png: (n) => `/i/sample/quilt/${n}.png`,
  tell: (n) => `/i/sample/${n}/colours`,
}

const shown = (soFar: Partial<QuiltsSoFar>, words: readonly string[] = []): ShownQuilts =>
  shownQuilts(
    { state: 'drawn', drawn: [], mayChange: false, ...soFar },
    words,
    '/i/sample/review',
    reader,
  )

/** A pile's quilts in every state that a page may show. */
export const quiltSamples = {
  one: shown({ drawn: [drawnAs('quartered-nine-patch')], mayChange: true }, [
    english.say('quilt.sketch'),
  ]),
  several: shown({ drawn: ['plain-squares', 'framed-panels'].map(drawnAs) }, [
    english.say('quilt.agreed', { count: 2 }),
    english.say('quilt.sketch'),
  ]),
  laying: shown({ state: 'laying' }),
  failed: shown({ state: 'failed' }),
  none: shown({ state: 'none' }),
}
