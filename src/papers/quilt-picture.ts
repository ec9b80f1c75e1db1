import { formatHex } from 'culori/fn'
import { labOf } from '../base/colour.ts'
import type { Facts } from '../garment/facts.ts'
import type { Extent } from '../quilt/layout.ts'
import type { Rect } from '../quilt/place/grid.ts'
import { plainColours, type SvgWords, svgOf } from './drawing.ts'

/** What is printed on the cloth; one that nobody told is drawn plain. */
export type Print = Facts['pattern']

/** A piece as it lies in the finished quilt, in one part or several. */
export interface DrawnPiece {
  readonly parts: readonly Rect[]
  /** Of the cloth, `#rrggbb`. */
  readonly colour: string
  /** What this piece shows: `single` only where the graphic itself is on it. */
  readonly print: Print
}

/** A strip of cloth all round, inches. */
export interface Round {
  readonly widthIn: number
  readonly colour: string
}

export interface QuiltToDraw {
  /** Of the set pieces, without border and binding; inches. */
  readonly finished: Extent
  readonly pieces: readonly DrawnPiece[]
  readonly border?: Round
  readonly binding: Round
  /** Letters, figures and hyphens that no other picture on the page begins its names with. */
  readonly name: string
}

/** The same hue, so much lighter on dark cloth or darker on light cloth that it can be seen on it. */
function tone(colour: string): string {
  const lab = labOf(colour)
  const l = lab.l < 55 ? lab.l + 24 : lab.l - 24
  return formatHex({ ...lab, l, a: lab.a * 0.8, b: lab.b * 0.8 })
}

const two = (n: number): number => Math.round(n * 100) / 100

const box = ({ x, y, w, h }: Rect): string =>
  `x="${two(x)}" y="${two(y)}" width="${two(w)}" height="${two(h)}"`

const inset = ({ x, y, w, h }: Rect, by: number): Rect => ({
  x: x + by,
  y: y + by,
  w: w - 2 * by,
  h: h - 2 * by,
})

/** Our own simple prints, on a square that repeats; inches. */
const prints: Partial<Record<Print, (mark: string) => { side: number; marks: string }>> = {
  allover: (mark) => ({
    side: 1.5,
    marks: `<circle cx="0.38" cy="0.38" r="0.26" fill="${mark}"/><circle cx="1.12" cy="1.12" r="0.26" fill="${mark}"/>`,
  }),
  'stripe-check': (mark) => ({
    side: 2,
    marks: `<path d="M0 0.35H2M0.35 0V2" fill="none" stroke="${mark}" stroke-width="0.6" opacity="0.4"/><path d="M0 1.35H2M1.35 0V2" fill="none" stroke="${mark}" stroke-width="0.12"/>`,
  }),
}

/** One pattern for each colour and print, and the name by which a piece is filled with it. */
class Cloths {
  readonly #names = new Map<string, string>()
  readonly #patterns: string[] = []
  readonly #prefix: string

  constructor(prefix: string) {
    this.#prefix = prefix
  }

  fill({ colour, print }: Pick<DrawnPiece, 'colour' | 'print'>): string {
    const make = prints[print]
    if (!make) return colour
    const key = `${colour} ${print}`
    const name = this.#names.get(key) ?? `${this.#prefix}-${this.#names.size + 1}`
    if (!this.#names.has(key)) {
      const { side, marks } = make(tone(colour))
      this.#names.set(key, name)
      this.#patterns.push(
        `<pattern id="${name}" width="${side}" height="${side}" patternUnits="userSpaceOnUse"><rect width="${side}" height="${side}" fill="${colour}"/>${marks}</pattern>`,
      )
    }
    return `url(#${name})`
  }

  get defs(): string {
    return this.#patterns.length > 0 ? `<defs>${this.#patterns.join('')}</defs>` : ''
  }
}

/** Too small for a picture to be told from the cloth, inches. */
const smallest = 4

/** A framed picture of sun and hills: our sign for one graphic kept whole. */
function graphic(part: Rect, colour: string): string {
  const side = Math.min(part.w, part.h)
  if (side < smallest) return ''
  const mark = tone(colour)
  const frame = inset(part, side * 0.2)
  const { x, y, w, h } = frame
  const at = (across: number, down: number): string => `${two(x + w * across)} ${two(y + h * down)}`
  return [
    `<rect ${box(frame)} fill="${plainColours.paper}" stroke="${mark}" stroke-width="${two(side * 0.04)}"/>`,
    `<circle cx="${two(x + w * 0.68)}" cy="${two(y + h * 0.32)}" r="${two(side * 0.07)}" fill="${mark}"/>`,
    `<path d="M${at(0.08, 0.92)} L${at(0.38, 0.45)} L${at(0.56, 0.7)} L${at(0.7, 0.55)} L${at(0.92, 0.92)} Z" fill="${colour}" stroke="${mark}" stroke-width="${two(side * 0.015)}"/>`,
  ].join('')
}

function pieceSvg({ parts, colour, print }: DrawnPiece, cloths: Cloths): string {
  const fill = cloths.fill({ colour, print })
  const seam = `stroke="${tone(colour)}" stroke-width="0.14"`
  return parts
    .map((part) => {
      const picture = print === 'single' ? graphic(part, colour) : ''
      return `<rect ${box(inset(part, 0.07))} fill="${fill}" ${seam}/>${picture}`
    })
    .join('')
}

/**
 * The quilt as one SVG element: every piece in its colour with our sign of its print, the seams between
 * them, border and binding all round. The cloth keeps its colours on a dark page and on paper; the outline
 * takes the page's ink. Throws on a colour that is not `#rrggbb`.
 */
export function quiltPicture(quilt: QuiltToDraw, words: SvgWords): string {
  const { finished, pieces, border, binding } = quilt
  const edge = binding.widthIn + (border?.widthIn ?? 0)
  const air = 0.5
  const whole: Rect = { x: air, y: air, w: finished.w + 2 * edge, h: finished.h + 2 * edge }
  const cloths = new Cloths(quilt.name)
  const round = ({ colour }: Round, rect: Rect): string =>
    `<rect ${box(rect)} fill="${formatHex(labOf(colour))}" stroke="${tone(colour)}" stroke-width="0.14"/>`
  const drawn = pieces.map((piece) => pieceSvg(piece, cloths)).join('')
  const body = [
    cloths.defs,
    round(binding, whole),
    border ? round(border, inset(whole, binding.widthIn)) : '',
    `<g transform="translate(${two(air + edge)} ${two(air + edge)})">${drawn}</g>`,
    `<rect ${box(whole)} class="line-ink" fill="none" stroke="${plainColours.ink}" stroke-width="0.3"/>`,
  ].join('')
  return svgOf({ width: two(whole.w + 2 * air), height: two(whole.h + 2 * air) }, body, words)
}
