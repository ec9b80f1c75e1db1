import { type Figure, practice, memory as recalled } from '../base/figure.ts'
import { domains, type Facts, type Size } from './facts.ts'

/** Inches, laid flat: half chest (half thigh, cloth width) and length. */
export interface Flat {
  readonly widthIn: number
  readonly lengthIn: number
}

export interface FlatRow extends Flat {
  readonly source: string
}

type Named = Exclude<Size, 'unknown'>
type Rows = Readonly<Partial<Record<Named, FlatRow>>>
type Figures = Readonly<Partial<Record<Named, readonly [widthIn: number, lengthIn: number]>>>

const seen = 'unisex heavy cotton T-shirt size chart of the trade, ±1 in (secondary)'
const memory = `usual trade figures, ${recalled}`

function rows(source: string, figures: Figures): Rows {
  return Object.fromEntries(
    Object.entries(figures).map(([size, [widthIn, lengthIn]]) => [
      size,
      { widthIn, lengthIn, source },
    ]),
  )
}

const tee: Rows = {
  ...rows(practice, {
    '0-3m': [8, 9.5],
    '3-6m': [8.75, 10.5],
    '6-12m': [9.5, 11.5],
    '12-18m': [10.25, 12.5],
    '18-24m': [11, 13.5],
  }),
  ...rows(memory, {
    '2T': [12, 15.5],
    '3T': [13, 16.5],
    '4T': [14, 17.5],
    '5T': [15, 18.5],
    'youth-XS': [16, 20.5],
    'youth-S': [17, 22],
    'youth-M': [18, 23.5],
    'youth-L': [19, 25],
    'youth-XL': [20, 26.5],
    XS: [16.5, 27],
  }),
  ...rows(seen, {
    S: [18, 28],
    M: [20, 29],
    L: [22, 30],
    XL: [24, 31],
    '2XL': [26, 32],
    '3XL': [28, 33],
    '4XL': [30, 34],
    '5XL': [32, 35],
  }),
}

const fitted = rows(memory, {
  S: [17.25, 25.5],
  M: [19.25, 26],
  L: [21.25, 27],
  XL: [23.25, 28],
  '2XL': [25.25, 29],
})

const sweat = rows(memory, {
  S: [20, 27],
  M: [22, 28],
  L: [24, 29],
  XL: [26, 30],
  '2XL': [28, 31],
  '3XL': [30, 32],
})

const shirt = rows(memory, {
  S: [20.5, 30],
  M: [21.5, 30.5],
  L: [23, 31],
  XL: [24.5, 32],
  '2XL': [26.5, 32.5],
})

/** Length from shoulder to crotch. A label's upper month names the row: 3-6m is the six-month suit. */
const suit = rows(memory, {
  '0-3m': [7.5, 10],
  '3-6m': [8.75, 11],
  '6-12m': [9.5, 12],
  '12-18m': [10.25, 13],
  '18-24m': [11, 14],
})

/**
 * Night clothes for children may be tight-fitting: half the largest chest girth that the law then
 * allows, so that no more cloth is promised. The lengths are common practice.
 */
const nightwear = rows(
  `16 CFR 1615.1(o) and 1616.2(m), largest chest of tight-fitting sleepwear; ${recalled}`,
  {
    '6-12m': [9.5, 10.5],
    '12-18m': [9.75, 11.5],
    '18-24m': [10.25, 12.5],
    '2T': [10.25, 14.5],
    '3T': [10.5, 15.5],
    '4T': [11, 16.5],
    '5T': [11.5, 17.5],
    'youth-XS': [12, 19.5],
    'youth-S': [13, 21],
    'youth-M': [14, 22.5],
    'youth-L': [15, 24],
    'youth-XL': [16, 25.5],
  },
)

/** Half thigh at the crotch and inseam. S is waist 28, M 32, L 36, XL 40 (in). */
const leg: Rows = {
  ...rows(practice, {
    '0-3m': [5, 5.5],
    '3-6m': [5.25, 6.5],
    '6-12m': [5.5, 7.5],
    '12-18m': [5.75, 9],
    '18-24m': [6, 10],
    '2T': [6.5, 11],
    '3T': [6.75, 13],
    '4T': [7, 15],
    '5T': [7.25, 16.5],
    'youth-XS': [7.5, 17],
    'youth-S': [8, 20],
    'youth-M': [8.5, 23],
    'youth-L': [9.5, 26],
    'youth-XL': [10.5, 28],
    XS: [10.5, 29],
    '2XL': [15, 32],
    '3XL': [16, 32],
    '4XL': [17, 32],
    '5XL': [18, 32],
  }),
  ...rows(memory, { S: [11, 30], M: [12, 32], L: [13, 32], XL: [14, 32] }),
}

/** A kind's own rows; where it has none, the T-shirt of that size with these inches added. */
interface Cut {
  readonly own?: Rows
  readonly plus: readonly [widthIn: number, lengthIn: number]
}

const cuts: Readonly<Partial<Record<Facts['kind'], Cut>>> = {
  tshirt: { own: tee, plus: [0, 0] },
  'long-sleeve': { own: tee, plus: [0, 0] },
  polo: { plus: [0, 0] },
  jersey: { plus: [1, 0] },
  sweatshirt: { own: sweat, plus: [2, -1] },
  hoodie: { own: sweat, plus: [2, -1] },
  jumper: { plus: [0, -2] },
  thermal: { plus: [-1, 0] },
  'button-shirt': { own: shirt, plus: [0.5, 0.5] },
  blouse: { own: fitted, plus: [-1, -2] },
  jeans: { own: leg, plus: [0, 0] },
  trousers: { own: leg, plus: [0, 0] },
  skirt: { plus: [-1, -6] },
  dress: { plus: [-1, 6] },
  pyjamas: { own: nightwear, plus: [0, -1] },
  'baby-suit': { own: suit, plus: [0, 0] },
  uniform: { own: shirt, plus: [0.5, 0.5] },
  swimwear: { plus: [-3, -8] },
  coat: { plus: [2, 2] },
}

/** Kinds that carry no letter size: the small one of those that are usual. Common practice, no source. */
const oneSize: Readonly<Partial<Record<Facts['kind'], FlatRow>>> = {
  blanket: { widthIn: 30, lengthIn: 36, source: practice },
  tie: { widthIn: 6.5, lengthIn: 16, source: practice },
  scarf: { widthIn: 9, lengthIn: 54, source: practice },
  apron: { widthIn: 24, lengthIn: 26, source: practice },
}

/** The flat measures of a kind in a size; null where only measuring tells. */
export function flatOf(kind: Facts['kind'], size: Named): FlatRow | null {
  const cut = cuts[kind]
  if (!cut) return oneSize[kind] ?? null
  const own = cut.own?.[size]
  if (own) return own
  if (kind === 'baby-suit') return null
  const base = tee[size]!
  return {
    widthIn: base.widthIn + cut.plus[0],
    lengthIn: base.lengthIn + cut.plus[1],
    source: `the T-shirt of that size with ${cut.plus[0]} in and ${cut.plus[1]} in added; ${practice}`,
  }
}

/** The sizes a kind comes in, as far as its flat measures are known. */
export function sizesOf(kind: Facts['kind']): readonly Named[] {
  if (!cuts[kind]) return oneSize[kind] ? ['M'] : []
  return (Object.keys(kind === 'baby-suit' ? suit : tee) as Named[]).filter((s) => flatOf(kind, s))
}

export const sizeFigures: readonly Figure[] = domains.kind.flatMap((kind) =>
  sizesOf(kind).flatMap((size) => {
    const { source, ...flat } = flatOf(kind, size)!
    return (['widthIn', 'lengthIn'] as const).map(
      (name): Figure => ({
        figure: `sizes/${kind}/${size}/${name}`,
        value: flat[name],
        unit: 'in',
        source,
      }),
    )
  }),
)

/** What an untold size is taken for: a small grown-up's, so that no cloth is promised. */
export const smallest = (kind: Facts['kind']): Named => (kind === 'baby-suit' ? '3-6m' : 'S')
