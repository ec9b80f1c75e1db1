import type { Rect } from '../quilt/place/grid.ts'
import { escapeXml, plainColours } from './drawing.ts'
import { type DrawnPiece, outlines, two } from './quilt-picture.ts'

/** A drawn quilt as somebody moves its pieces; pieces go by their place in the quilt's list. */
export interface QuiltTouched {
  /** Where a piece leads to and what it is called; null: it leads nowhere. */
  readonly linkOf: (piece: number) => { readonly href: string; readonly label: string } | null
  readonly pinned: ReadonlySet<number>
  /** The first, then the second. */
  readonly chosen: readonly number[]
  /** Drawn pale: what cannot change places with the first. */
  readonly pale: ReadonlySet<number>
}

type Pieces = readonly Pick<DrawnPiece, 'parts'>[]

const partsOf = (pieces: Pieces, of: Iterable<number>): Rect[] =>
  [...of].flatMap((piece) => pieces[piece]!.parts)

/** A dressmaker's pin in the upper left corner of a part: our sign for what stays where it is. */
function pinSign({ x, y, w, h }: Rect): string {
  const r = Math.min(0.5, Math.min(w, h) * 0.1)
  const [cx, cy] = [two(x + 2 * r), two(y + 2 * r)]
  const needle = `M${cx} ${cy}l${two(2.4 * r)} ${two(2.4 * r)}`
  const { paper, ink, madder } = plainColours
  return [
    `<path d="${needle}" stroke="${paper}" stroke-width="${two(1.1 * r)}"/>`,
    `<path d="${needle}" stroke="${ink}" stroke-width="${two(0.5 * r)}"/>`,
    `<circle cx="${cx}" cy="${cy}" r="${two(r)}" fill="${madder}" stroke="${paper}" stroke-width="${two(0.4 * r)}"/>`,
  ].join('')
}

/** How far within its piece the line around a chosen one lies, inches. */
const within = 0.35

/** Around the first a whole line, around the second a broken one. */
function chosenSign(pieces: Pieces, piece: number, nth: number): string {
  const d = outlines(pieces[piece]!.parts, within)
  const dash = nth === 0 ? '' : ' stroke-dasharray="1 0.6"'
  const { paper, madder } = plainColours
  return `<path d="${d}" stroke="${paper}" stroke-width="0.7"/><path d="${d}" stroke="${madder}" stroke-width="0.45"${dash}/>`
}

function link(pieces: Pieces, piece: number, { linkOf }: QuiltTouched): string {
  const to = linkOf(piece)
  if (!to) return ''
  const d = outlines(pieces[piece]!.parts, 0)
  // Not on the way of the Tab key: the same links stand in the list of the pieces.
  return `<a href="${escapeXml(to.href)}" tabindex="-1"><title>${escapeXml(to.label)}</title><path d="${d}"/></a>`
}

/** What lies over the pieces of a quilt's picture: signs of what is pinned and chosen, and each piece a link. */
export function quiltTouched(pieces: Pieces, touched: QuiltTouched): string {
  const { pinned, chosen, pale } = touched
  const pinSigns = [...pinned].map((piece) => pinSign(pieces[piece]!.parts[0]!))
  return [
    pale.size > 0
      ? `<path d="${outlines(partsOf(pieces, pale), 0)}" fill="${plainColours.paper}" opacity="0.65"/>`
      : '',
    `<g fill="none" stroke-linecap="round">${pinSigns.join('')}</g>`,
    `<g fill="none">${chosen.map((piece, n) => chosenSign(pieces, piece, n)).join('')}</g>`,
    `<g class="quilt-links" fill="transparent">${pieces.map((_, piece) => link(pieces, piece, touched)).join('')}</g>`,
  ].join('')
}
