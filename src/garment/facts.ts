/**
 * What may be known of a garment. Each fact has a finite domain; where the order of values means
 * something it runs from best to worst, so that a rule may say "worse". `unknown` counts as not told.
 */
export const domains = {
  kind: [
    'tshirt',
    'long-sleeve',
    'polo',
    'jersey',
    'sweatshirt',
    'hoodie',
    'jumper',
    'thermal',
    'button-shirt',
    'blouse',
    'jeans',
    'trousers',
    'skirt',
    'dress',
    'pyjamas',
    'baby-suit',
    'blanket',
    'tie',
    'scarf',
    'apron',
    'uniform',
    'swimwear',
    'coat',
    'other',
  ],
  heat: ['hot', 'warm', 'cool', 'none', 'unknown'],
  iron: ['hot', 'warm', 'cool', 'none', 'silent', 'missing'],
  /** Whether the label's words were read off a photo with doubt and stand as they were read. */
  labelDoubt: ['no', 'yes'],
  surface: ['woven', 'knit', 'loose-knit', 'pile', 'leather', 'fur', 'film', 'unknown'],
  stretch: ['none', 'little', 'much', 'two-way', 'bias', 'unknown'],
  weight: ['fine', 'medium', 'heavy', 'padded', 'unknown'],
  wear: ['sound', 'thin', 'holes', 'shattered', 'unknown'],
  age: ['modern', 'old', 'historic', 'unknown'],
  pattern: ['solid', 'allover', 'stripe-check', 'single', 'unknown'],
  oneWay: ['no', 'yes', 'unknown'],
  printMake: ['none', 'in-cloth', 'sublimated', 'screen', 'film', 'unknown'],
  graphic: ['none', 'fits', 'too-large', 'unknown'],
  trims: ['none', 'removable', 'meltable', 'glued', 'unknown'],
  soil: ['clean', 'soiled', 'body-fluid', 'pests', 'mould', 'chemical', 'unknown'],
  wash: ['washed', 'softener', 'unwashed', 'never'],
  bleed: ['fast', 'untested', 'bleeds'],
  consent: ['yes', 'part', 'no-cut', 'unknown'],
  test: ['passed', 'none', 'failed'],
  yield: ['enough', 'few', 'none', 'unknown'],
} as const

export type FactName = keyof typeof domains
export type Facts = { readonly [K in FactName]: (typeof domains)[K][number] }

/** What stands for a fact nobody has told: the value that promises least. */
export const untold: Facts = {
  kind: 'other',
  heat: 'unknown',
  iron: 'missing',
  // A label nobody told of is `missing`: no words of it were read.
  labelDoubt: 'no',
  surface: 'unknown',
  stretch: 'unknown',
  weight: 'unknown',
  wear: 'unknown',
  age: 'unknown',
  pattern: 'unknown',
  oneWay: 'unknown',
  printMake: 'unknown',
  graphic: 'unknown',
  trims: 'unknown',
  soil: 'unknown',
  wash: 'unwashed',
  bleed: 'untested',
  consent: 'unknown',
  test: 'none',
  yield: 'unknown',
}

/** How a layout sets its cloth. A shop may own many layouts; each says which of these it is. */
export const settings = ['quartered', 'patchwork', 'framed', 'mixed'] as const

export type Setting = (typeof settings)[number]

export const pileDomains = {
  recipient: ['adult', 'child', 'under3', 'under1', 'unknown'],
} as const

export type Recipient = (typeof pileDomains)['recipient'][number]

/**
 * The scales on which one value is worse than another, best first. `unknown` stands outside them:
 * it is asked about, and what it may lead to is stated on its own.
 */
export const scales = {
  heat: ['hot', 'warm', 'cool', 'none'],
  iron: ['hot', 'warm', 'cool', 'none'],
  printMake: ['none', 'in-cloth', 'sublimated', 'screen', 'film', 'unknown'],
  trims: ['none', 'removable', 'meltable', 'glued', 'unknown'],
  wear: ['sound', 'thin', 'holes', 'shattered'],
  soil: ['clean', 'soiled', 'body-fluid', 'pests', 'mould', 'chemical'],
  age: ['modern', 'old', 'historic'],
} as const satisfies { readonly [K in FactName]?: readonly Facts[K][] }

/** The hottest sole of an iron that any label allows, °C (ISO 3758:2012, three dots). */
export const hottestC = 200

/**
 * Every column a decision table of this room may name, with its domain. `ceiling` is in whole °C,
 * 0 where no iron may touch the cloth; `wish` says whether the garment suits the layout wished for.
 */
export const columns = (): Readonly<
  Record<string, readonly string[] | { readonly from: number; readonly to: number }>
> => ({
  ...domains,
  ...pileDomains,
  setting: settings,
  wish: ['undecided', 'fits', 'misfit'],
  ceiling: { from: 0, to: hottestC },
})

/**
 * A garment's size: a letter or children's size as on its label, or what it measures laid flat.
 * `inches` are the half chest (or half thigh, or cloth width) and the length.
 */
export const sizes = [
  '0-3m',
  '3-6m',
  '6-12m',
  '12-18m',
  '18-24m',
  '2T',
  '3T',
  '4T',
  '5T',
  'youth-XS',
  'youth-S',
  'youth-M',
  'youth-L',
  'youth-XL',
  'XS',
  'S',
  'M',
  'L',
  'XL',
  '2XL',
  '3XL',
  '4XL',
  '5XL',
  'unknown',
] as const

export type Size = (typeof sizes)[number]

export type Source = 'implied' | 'measured' | 'read' | 'said' | 'confirmed' | 'staff' | 'bench'

/** One thing known, and where it came from. `at` is milliseconds UTC. */
export interface Known<T = string> {
  readonly value: T
  readonly source: Source
  readonly at: number
}
