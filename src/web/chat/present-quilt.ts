import type { ClothOfGarment } from '../../intake/cloth-colours.ts'
import type { LaidDesign } from '../../intake/laid.ts'
import type { Garment, Pile } from '../../intake/pile.ts'
import type { Shop } from '../../intake/shop.ts'
import { quiltsDrawn } from '../../papers/quilt-drawn.ts'
import { type DrawnQuilt, type KeptQuilt, keptQuilt } from '../../papers/quilt-kept.ts'
import { type DrawnCloth, quiltPicture, tone, untoldColour } from '../../papers/quilt-picture.ts'
import { quiltTitle } from '../../papers/quilt-words.ts'
import { demand } from '../../quilt/design.ts'
import type { Language } from '../../words/words.ts'
import { paths } from './paths.ts'
import { nameOf, type Reader } from './present-garment.ts'
import type { Link } from './view.ts'
import type { ShownCloth, ShownQuilt, ShownQuilts } from './view-quilt.ts'

/** The laid quilts of a pile in their cloth. */
export function drawnQuilts(
  quilts: readonly LaidDesign[],
  cloths: readonly ClothOfGarment[],
  garments: readonly Garment[],
  { cloth_colours: bought }: Pick<Shop, 'cloth_colours'>,
): DrawnQuilt[] {
  const told = new Map(garments.map((garment) => [garment.n, garment]))
  const drawn = quiltsDrawn({
    quilts: quilts.map(({ grid, cells }) => ({ ...grid, cells })),
    cloths: cloths.map((cloth) => {
      const { facts, told: more } = told.get(cloth.garment)!
      return { ...cloth, print: facts.pattern, graphicIn: more.graphicInches }
    }),
    bought,
  })
  return quilts.map(({ design }, n) => {
    const { columns, rows } = demand(design)
    return { size: design.size, columns, rows, quilt: drawn[n]! }
  })
}

/** For whom a quilt is shown, and where its parts are found. */
export interface QuiltReader {
  readonly language: Language
  readonly nameOf: (garment: number) => string
  /** Of a photo's cloth, by the photo's id. */
  readonly photo: (id: string) => string
  /** Of the nth picture to save, from 1. */
  readonly png: (n: number) => string
  /** Where a garment's colour is told; null: not here, or no longer. */
  readonly tell: (garment: number) => string | null
  /** For the bench. */
  readonly numbers?: boolean
  /** Where the pieces of the nth quilt are moved, from 1; left out: nowhere. */
  readonly arrange?: (n: number) => Link
}

/** A garment's before the bought ones, in the order of their numbers. */
function clothList({ quilt: { cloths, pieces } }: DrawnQuilt, reader: QuiltReader): ShownCloth[] {
  const { say } = reader.language
  const shown = (
    { garment, bought, colour, second, photo }: DrawnCloth,
    n: number,
  ): ShownCloth => ({
    n: garment,
    name:
      garment === null
        ? bought === 'sashing'
          ? say('quilt.bought_strips')
          : say('quilt.bought', { role: say(`trade.roles.${bought}`) })
        : reader.nameOf(garment),
    colour: colour ?? untoldColour,
    mark: tone(colour ?? untoldColour),
    second,
    photo: photo === null ? null : reader.photo(photo),
    untold: garment !== null && colour === null,
    pieces: say('quilt.pieces', {
      count: pieces.filter(({ cloth }) => cloth === n).length,
    }),
  })
  return cloths
    .map(shown)
    .sort((a, b) => (a.n ?? Number.POSITIVE_INFINITY) - (b.n ?? Number.POSITIVE_INFINITY) || 0)
}

function shownQuilt(drawn: DrawnQuilt, n: number, count: number, reader: QuiltReader): ShownQuilt {
  const { say } = reader.language
  return {
    heading: count > 1 ? say('quilt.nth', { n: n + 1, count }) : null,
    picture: quiltPicture(
      drawn.quilt,
      { name: `quilt-${n + 1}`, addressOf: reader.photo, numbers: reader.numbers ?? false },
      { title: quiltTitle(drawn, say) },
    ),
    save: { label: say('quilt.save'), href: reader.png(n + 1) },
    arrange: reader.arrange?.(n + 1) ?? null,
    cloths: clothList(drawn, reader),
  }
}

function untoldOf(drawn: readonly DrawnQuilt[], reader: QuiltReader): ShownQuilts['untold'] {
  const { say } = reader.language
  const numbers = new Set(
    drawn.flatMap(({ quilt }) =>
      quilt.cloths.flatMap(({ garment, colour }) => (colour === null ? garment! : [])),
    ),
  )
  if (numbers.size === 0) return null
  const links = [...numbers]
    .toSorted((a, b) => a - b)
    .flatMap((n): Link[] => {
      const href = reader.tell(n)
      return href === null ? [] : [{ label: say('quilt.tell', { name: reader.nameOf(n) }), href }]
    })
  const words = reader.numbers ? 'quilt.untold_numbered' : 'quilt.untold'
  return { words: say(words, { count: numbers.size }), links }
}

/** How far the pictures of a pile's quilts have come. */
export interface QuiltsSoFar {
  readonly state: ShownQuilts['state']
  readonly drawn: readonly DrawnQuilt[]
  /** A better plan may still be found. */
  readonly mayChange: boolean
}

/** The pictures of a pile's quilts with their lists. `again` leads to where they stand. */
export function shownQuilts(
  { state, drawn, mayChange }: QuiltsSoFar,
  words: readonly string[],
  again: string,
  reader: QuiltReader,
): ShownQuilts {
  const { say } = reader.language
  const waits = state === 'laying' || state === 'failed'
  const changes = mayChange ? [say('quilt.may_change')] : []
  const isBought = drawn.some(({ quilt }) => quilt.cloths.some(({ bought }) => bought !== null))
  const cloth = isBought ? [say('quilt.new_cloth')] : []
  return {
    state,
    title: say(drawn.length > 1 ? 'quilt.title_many' : 'quilt.title'),
    words: state === 'drawn' ? [...changes, ...cloth, ...words] : [say(`quilt.${state}`)],
    again: waits ? { label: say('quilt.again'), href: again } : null,
    unsettled: state === 'laying' || mayChange,
    quilts: drawn.map((one, n) => shownQuilt(one, n, drawn.length, reader)),
    untold: untoldOf(drawn, reader),
  }
}

function customer(pile: Pile, reader: Reader): QuiltReader {
  const { key, language, editable } = reader
  const told = new Map(pile.garments.map((garment) => [garment.n, garment]))
  return {
    language,
    nameOf: (n) => nameOf(told.get(n)!, reader),
    photo: (id) => paths.photo(key, id, 'cloth'),
    png: (n) => paths.quilt(key, n),
    tell: (n) => {
      const asked = told.get(n)!.path.some(({ question }) => question.id === 'colours')
      return asked && editable ? paths.question(key, n, 'colours') : null
    },
  }
}

/** The quilts of a pile that may still change, as the customer sees them. */
export function quiltsForNow(
  soFar: QuiltsSoFar,
  pile: Pile,
  again: string,
  reader: Reader,
): ShownQuilts {
  const { say } = reader.language
  return shownQuilts(soFar, [say('quilt.sketch')], again, customer(pile, reader))
}

/** The quilts as they stood when the pile was confirmed; null where there were none. */
export function quiltsAgreed(
  kept: readonly KeptQuilt[] | null,
  pile: Pile,
  reader: Reader,
): ShownQuilts | null {
  const { say } = reader.language
  if (kept?.length === 0) return null
  if (kept === null) {
    const none = { state: 'none', drawn: [], mayChange: false } as const
    const shown = shownQuilts(none, [], paths.pile(reader.key), customer(pile, reader))
    return { ...shown, words: [say('quilt.not_agreed')] }
  }
  const soFar = { state: 'drawn', drawn: kept.map(keptQuilt), mayChange: false } as const
  const words = [say('quilt.agreed', { count: kept.length }), say('quilt.sketch')]
  return shownQuilts(soFar, words, paths.pile(reader.key), customer(pile, reader))
}
