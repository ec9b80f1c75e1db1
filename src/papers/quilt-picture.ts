import { formatHex } from 'culori/fn'
import { labOf } from '../base/colour.ts'
import type { Facts } from '../garment/facts.ts'
import type { Extent, Role } from '../quilt/layout.ts'
import type { Rect } from '../quilt/place/grid.ts'
import { escapeXml, plainColours, type SvgWords, svgOf } from './drawing.ts'
import { cropOf, imageSide } from './quilt-crop.ts'

/** What is printed on the cloth; one that nobody told is drawn plain. */
export type Print = Facts['pattern']

/** What bought cloth does in the quilt. */
export type BoughtFor = Role | 'sashing'

/** A cloth of the quilt: a garment's, or bought. */
export interface DrawnCloth {
  /** The garment's number in its pile; null: bought cloth. */
  readonly garment: number | null
  /** Null: it is a garment's. */
  readonly bought: BoughtFor | null
  /** `#rrggbb`; null: nobody told it, and it is drawn in a neutral with our sign for that. */
  readonly colour: string | null
  /** Of its print, `#rrggbb`; null: a tone of the first. */
  readonly second: string | null
  readonly print: Print
  /** The photo whose cloth is shown; null: its colour alone. */
  readonly photo: string | null
}

/** A piece as it lies in the finished quilt, in one part or several. */
export interface DrawnPiece {
  readonly parts: readonly Rect[]
  /** Where its cloth stands in the quilt's list. */
  readonly cloth: number
  /** The garment's graphic is on it, whole. */
  readonly graphic: boolean
  /** It lies a quarter turn from how its cloth hung. */
  readonly turned: boolean
}

/** A strip of cloth all round, inches. */
export interface Round {
  readonly widthIn: number
  readonly colour: string
}

export interface QuiltToDraw {
  /** Of the set pieces, without border and binding; inches. */
  readonly finished: Extent
  readonly cloths: readonly DrawnCloth[]
  readonly pieces: readonly DrawnPiece[]
  readonly border?: Round
  readonly binding: Round
}

export interface QuiltLook {
  /** Letters, figures and hyphens that no other picture on the page begins its names with. */
  readonly name: string
  /** Where the cloth of a photo is found; without it colours are drawn alone. */
  readonly addressOf?: (photo: string) => string | null
  /** Each part bears its garment's number, for who sews. */
  readonly numbers?: boolean
  /** Shapes of our own that lie over the pieces, in finished inches. */
  readonly over?: string
}

/** Cloth whose colour nobody told: unbleached, a little grey. */
export const untoldColour = '#d6cebd'

/** The same hue, so much lighter on dark cloth or darker on light cloth that it can be seen on it. */
export function tone(colour: string): string {
  const lab = labOf(colour)
  const l = lab.l < 55 ? lab.l + 24 : lab.l - 24
  return formatHex({ ...lab, l, a: lab.a * 0.8, b: lab.b * 0.8 })
}

/** Hundredths of an inch are enough for a picture. */
export const two = (n: number): number => Math.round(n * 100) / 100

const box = ({ x, y, w, h }: Rect): string =>
  `x="${two(x)}" y="${two(y)}" width="${two(w)}" height="${two(h)}"`

const inset = ({ x, y, w, h }: Rect, by: number): Rect => ({
  x: x + by,
  y: y + by,
  w: w - 2 * by,
  h: h - 2 * by,
})

/** A seam is drawn as wide as two of these, half on each side; inches. */
const seamHalf = 0.07

/** The rectangles as one path, each made smaller by `by`. */
export const outlines = (rects: readonly Rect[], by: number): string =>
  rects
    .map((rect) => inset(rect, by))
    .filter(({ w, h }) => w > 0 && h > 0)
    .map(({ x, y, w, h }) => `M${two(x)} ${two(y)}h${two(w)}v${two(h)}h${two(-w)}z`)
    .join('')

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

/** Too small for a picture to be told from the cloth, inches. */
const smallest = 4

/** A framed picture of sun and hills: our sign for one graphic kept whole. */
function graphicSign(part: Rect, colour: string): string {
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

/** A small diamond in the middle of each part: the colour is not told. */
function untoldSigns(parts: readonly Rect[], mark: string): string {
  const diamonds = parts.map(({ x, y, w, h }) => {
    const r = two(Math.min(0.8, Math.min(w, h) / 5))
    return `M${two(x + w / 2 - r)} ${two(y + h / 2)}l${r} ${-r} ${r} ${r} ${-r} ${r}z`
  })
  return `<path d="${diamonds.join('')}" fill="none" stroke="${mark}" stroke-width="0.18"/>`
}

/** A line of stitches within each part: the cloth is bought. */
const boughtSigns = (parts: readonly Rect[], mark: string): string =>
  `<path d="${outlines(parts, 0.45)}" fill="none" stroke="${mark}" stroke-width="0.12" stroke-dasharray="0.5 0.4"/>`

interface Lying {
  readonly part: Rect
  readonly piece: DrawnPiece
}

/** Everything of one cloth: its pieces, what lies on them, and what both of them refer to. */
class ClothDrawn {
  readonly colour: string
  readonly mark: string
  readonly #cloth: DrawnCloth
  readonly #lying: readonly Lying[]
  readonly #address: string | null
  readonly #numbered: boolean
  readonly #name: string

  constructor(cloth: DrawnCloth, lying: readonly Lying[], look: QuiltLook, n: number) {
    this.colour = formatHex(labOf(cloth.colour ?? untoldColour))
    this.mark = tone(this.colour)
    this.#cloth = cloth
    this.#lying = lying
    this.#address = (cloth.photo !== null && look.addressOf?.(cloth.photo)) || null
    this.#numbered = look.numbers ?? false
    this.#name = `${look.name}-${n + 1}`
  }

  /** Of a garment with one graphic, only the piece that has it is like the photo: the rest is plain. */
  get #photographed(): readonly Lying[] {
    if (this.#address === null) return []
    const { print } = this.#cloth
    return print === 'single' ? this.#lying.filter(({ piece }) => piece.graphic) : this.#lying
  }

  get #print() {
    const make =
      this.#address === null && this.#cloth.colour ? prints[this.#cloth.print] : undefined
    return make?.(this.#cloth.second ? formatHex(labOf(this.#cloth.second)) : this.mark)
  }

  get defs(): string {
    const print = this.#print
    if (print) {
      const { side, marks } = print
      return `<pattern id="${this.#name}" width="${side}" height="${side}" patternUnits="userSpaceOnUse"><rect width="${side}" height="${side}" fill="${this.colour}"/>${marks}</pattern>`
    }
    if (this.#photographed.length === 0) return ''
    return `<image id="${this.#name}" width="${imageSide}" height="${imageSide}" href="${escapeXml(this.#address!)}"/>`
  }

  get pieces(): string {
    const parts = this.#lying.map(({ part }) => part)
    const fill = this.#print ? `url(#${this.#name})` : this.colour
    const { colour, garment } = this.#cloth
    return [
      `<path d="${outlines(parts, seamHalf)}" fill="${fill}" stroke="${this.mark}" stroke-width="${2 * seamHalf}"/>`,
      garment === null ? boughtSigns(parts, this.mark) : '',
      garment !== null && colour === null && this.#photographed.length === 0 && !this.#numbered
        ? untoldSigns(parts, this.mark)
        : '',
      ...this.#photographed.map((lying, n) => this.#photo(lying, n)),
      ...(this.#address === null ? this.#signs : []),
    ].join('')
  }

  #photo({ part, piece }: Lying, n: number): string {
    const crop = cropOf(part, n, piece)
    const turn = piece.turned ? ` transform="rotate(90 ${imageSide / 2} ${imageSide / 2})"` : ''
    return `<svg ${box(inset(part, 2 * seamHalf))} viewBox="${crop}"><use href="#${this.#name}"${turn}/></svg>`
  }

  get #signs(): string[] {
    return this.#lying
      .filter(({ piece }) => piece.graphic)
      .map(({ part }) => graphicSign(part, this.colour))
  }

  /** The number in the middle of every part, above a graphic, with a rim of the cloth's colour. */
  get numbers(): string {
    const { garment } = this.#cloth
    if (garment === null) return ''
    const ink = labOf(this.colour).l < 55 ? plainColours.paper : plainColours.ink
    const texts = this.#lying.map(({ part: { x, y, w, h }, piece }) => {
      const high = piece.graphic ? h * 0.2 : h
      const size = two(Math.min(2.2, high * 0.7, (w * 0.9) / (0.62 * String(garment).length)))
      return `<text x="${two(x + w / 2)}" y="${two(y + high / 2 + size * 0.35)}" font-size="${size}">${garment}</text>`
    })
    return `<g fill="${ink}" stroke="${this.colour}" stroke-width="0.6" stroke-linejoin="round" paint-order="stroke" text-anchor="middle">${texts.join('')}</g>`
  }
}

function clothsOf({ cloths, pieces }: QuiltToDraw, look: QuiltLook): ClothDrawn[] {
  return cloths.flatMap((cloth, n) => {
    const own = pieces.filter((piece) => piece.cloth === n)
    const lying = own.flatMap((piece) => piece.parts.map((part) => ({ part, piece })))
    return lying.length === 0 ? [] : [new ClothDrawn(cloth, lying, look, n)]
  })
}

/**
 * The quilt as one SVG element: every piece in its colour with our sign of its print, or as its photo shows
 * the cloth, the seams between them, border and binding all round. The cloth keeps its colours on a dark page
 * and on paper; the outline takes the page's ink. Throws on a colour that is not `#rrggbb`.
 */
export function quiltPicture(quilt: QuiltToDraw, look: QuiltLook, words: SvgWords): string {
  const { finished, border, binding } = quilt
  const edge = binding.widthIn + (border?.widthIn ?? 0)
  const air = 0.5
  const whole: Rect = { x: air, y: air, w: finished.w + 2 * edge, h: finished.h + 2 * edge }
  const round = ({ colour }: Round, rect: Rect): string =>
    `<rect ${box(rect)} fill="${formatHex(labOf(colour))}" stroke="${tone(colour)}" stroke-width="0.14"/>`
  const cloths = clothsOf(quilt, look)
  const defs = cloths.map((cloth) => cloth.defs).join('')
  const body = [
    defs && `<defs>${defs}</defs>`,
    round(binding, whole),
    border ? round(border, inset(whole, binding.widthIn)) : '',
    `<g transform="translate(${two(air + edge)} ${two(air + edge)})">`,
    ...cloths.map((cloth) => cloth.pieces),
    ...(look.numbers ? cloths.map((cloth) => cloth.numbers) : []),
    look.over ?? '',
    '</g>',
    `<rect ${box(whole)} class="line-ink" fill="none" stroke="${plainColours.ink}" stroke-width="0.3"/>`,
  ].join('')
  return svgOf({ width: two(whole.w + 2 * air), height: two(whole.h + 2 * air) }, body, words)
}
