/**
 * One list of marks for every drawing, whatever it is written as. Lengths are in the drawing's own
 * unit, x across, y down. Colours are roles, so that a page, a dark page and a black-on-white paper
 * each give their own.
 */
export type Ink = 'ink' | 'soft' | 'madder' | 'seam'
export type Fill = 'cloth' | 'paper' | 'ink' | 'madder' | 'seam'

export interface Pen {
  readonly stroke?: Ink
  readonly width?: number
  readonly dash?: readonly number[]
  readonly fill?: Fill
}

export type Point = readonly [x: number, y: number]

export type Mark =
  | (Pen & { readonly mark: 'line'; readonly from: Point; readonly to: Point })
  | (Pen & {
      readonly mark: 'polyline'
      readonly points: readonly Point[]
      readonly closed?: boolean
    })
  | (Pen & {
      readonly mark: 'rect'
      readonly at: Point
      readonly w: number
      readonly h: number
      readonly r?: number
    })
  | (Pen & { readonly mark: 'circle'; readonly at: Point; readonly r: number })
  /** Absolute M, L, Q, C and Z only, so that every writer can follow it. */
  | (Pen & { readonly mark: 'path'; readonly d: string })
  | {
      readonly mark: 'text'
      readonly at: Point
      readonly size: number
      readonly anchor: 'start' | 'middle' | 'end'
      readonly words: string
      readonly bold?: boolean
    }

export interface Drawing {
  readonly width: number
  readonly height: number
  /** What one unit is on paper. On a page the drawing takes the room it is given. */
  readonly unit: 'mm' | 'in' | 'pt'
  readonly marks: readonly Mark[]
}

/** What the roles are where no stylesheet speaks: the look's light colours. */
export const plainColours: Readonly<Record<Ink | Fill, string>> = {
  ink: '#23304a',
  soft: '#5d6880',
  madder: '#a63d2f',
  seam: '#b9a77c',
  cloth: '#e9dfcb',
  paper: '#fffdf8',
}

export interface SvgWords {
  /** What is seen, for who cannot see it; null: the words stand beside it and it is left out. */
  readonly title: string | null
  readonly description?: string
}

/** The drawing as one SVG element. Safe to put into a page: every text is escaped. */
export const toSvg = (drawing: Drawing, words: SvgWords): string =>
  svgOf(drawing, drawing.marks.map(markSvg).join(''), words)

/** An SVG element of that size around elements that are safe; the words are escaped here. */
export function svgOf(
  { width, height }: Pick<Drawing, 'width' | 'height'>,
  body: string,
  { title, description }: SvgWords,
): string {
  const box = `viewBox="0 0 ${width} ${height}"`
  if (title === null) {
    return `<svg xmlns="http://www.w3.org/2000/svg" ${box} aria-hidden="true" focusable="false">${body}</svg>`
  }
  const told = description ? `<desc>${escapeXml(description)}</desc>` : ''
  return `<svg xmlns="http://www.w3.org/2000/svg" ${box} role="img" aria-label="${escapeXml(title)}"><title>${escapeXml(title)}</title>${told}${body}</svg>`
}

function markSvg(mark: Mark): string {
  switch (mark.mark) {
    case 'line':
      return `<line x1="${mark.from[0]}" y1="${mark.from[1]}" x2="${mark.to[0]}" y2="${mark.to[1]}"${pen(mark)}/>`
    case 'polyline':
      return `<${mark.closed ? 'polygon' : 'polyline'} points="${mark.points.map((p) => p.join(',')).join(' ')}"${pen(mark)}/>`
    case 'rect':
      return `<rect x="${mark.at[0]}" y="${mark.at[1]}" width="${mark.w}" height="${mark.h}"${mark.r ? ` rx="${mark.r}"` : ''}${pen(mark)}/>`
    case 'circle':
      return `<circle cx="${mark.at[0]}" cy="${mark.at[1]}" r="${mark.r}"${pen(mark)}/>`
    case 'path':
      return `<path d="${mark.d}"${pen(mark)}/>`
    case 'text':
      return `<text x="${mark.at[0]}" y="${mark.at[1]}" font-size="${mark.size}" text-anchor="${mark.anchor}"${mark.bold ? ' font-weight="700"' : ''} class="fill-ink" fill="${plainColours.ink}">${escapeXml(mark.words)}</text>`
  }
}

// The class lets a stylesheet recolour a role; the attribute serves where there is none.
function pen({ stroke, width = 2, dash, fill }: Pen): string {
  const classes = [stroke && `line-${stroke}`, fill && `fill-${fill}`].filter(Boolean).join(' ')
  const outline = stroke
    ? ` stroke="${plainColours[stroke]}" stroke-width="${width}" stroke-linecap="round" stroke-linejoin="round"`
    : ''
  const dashes = dash ? ` stroke-dasharray="${dash.join(' ')}"` : ''
  return ` class="${classes}" fill="${fill ? plainColours[fill] : 'none'}"${outline}${dashes}`
}

export const escapeXml = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')

/** Every point a mark may reach, curves by their control points, half the pen's width included. */
export function reach(mark: Mark): readonly Point[] {
  if (mark.mark === 'text') return textReach(mark)
  const half = mark.stroke ? (mark.width ?? 2) / 2 : 0
  return corners(mark).flatMap(([x, y]): Point[] => [
    [x - half, y - half],
    [x + half, y + half],
  ])
}

function corners(mark: Exclude<Mark, { mark: 'text' }>): readonly Point[] {
  switch (mark.mark) {
    case 'line':
      return [mark.from, mark.to]
    case 'polyline':
      return mark.points
    case 'rect':
      return [mark.at, [mark.at[0] + mark.w, mark.at[1] + mark.h]]
    case 'circle':
      return [
        [mark.at[0] - mark.r, mark.at[1] - mark.r],
        [mark.at[0] + mark.r, mark.at[1] + mark.r],
      ]
    case 'path':
      return pathPoints(mark.d)
  }
}

/** The points of a path. Throws on any command but absolute M, L, Q, C and Z. */
export function pathPoints(d: string): readonly Point[] {
  if (/[^MLQCZ\d\s.,-]/.test(d)) throw new Error(`A path keeps to absolute M, L, Q, C, Z: ${d}`)
  const numbers = (d.match(/-?\d+(\.\d+)?/g) ?? []).map(Number)
  if (numbers.length % 2) throw new Error(`A path has whole points: ${d}`)
  return Array.from(
    { length: numbers.length / 2 },
    (_, i): Point => [numbers[2 * i]!, numbers[2 * i + 1]!],
  )
}

// 0.6 em a letter is wider than the words' face runs on average; bold digits are its widest common case.
function textReach(mark: Extract<Mark, { mark: 'text' }>): readonly Point[] {
  const long = mark.words.length * mark.size * 0.6
  const left = { start: 0, middle: long / 2, end: long }[mark.anchor]
  const [x, y] = mark.at
  return [
    [x - left, y - mark.size],
    [x - left + long, y + mark.size * 0.25],
  ]
}
