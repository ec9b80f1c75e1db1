/** What a receiver may say of a parcel, or of a thing that came out of it, in words that are on the page. */
export const conditions = ['fine', 'wet', 'mouldy', 'soiled', 'infested', 'torn'] as const

export type Condition = (typeof conditions)[number]

/**
 * Cautions for a condition, by their words under `custody.handling`. Each sentence stands beside its source.
 * Whatever comes in by post is looked at as if something might live in it.
 */
export interface Handling {
  readonly words: string
  readonly source: string
}

const always: Handling = {
  words: 'apart',
  source:
    'common practice, no source: mailed textiles are opened in a closed bag area, the seams looked at, and kept apart',
}

const handlings: Readonly<Record<Condition, readonly Handling[]>> = {
  fine: [always],
  wet: [
    {
      words: 'wet',
      source: 'US EPA mould advice, from memory, unverified: dry within a day or two',
    },
    { words: 'spread', source: 'common practice, no source' },
  ],
  mouldy: [
    { words: 'mould', source: 'US EPA mould advice, from memory, unverified' },
    {
      words: 'mould-not-frozen',
      source:
        'US National Park Service, Conserve O Gram 3/6, 1994, is of insects: freezing is no cure for mould (common practice, no source)',
    },
  ],
  soiled: [
    {
      words: 'body-fluid',
      source: '29 CFR 1910.1030 and CDC laundry advice, from memory, unverified',
    },
  ],
  infested: [
    {
      words: 'bagged',
      source: 'common practice, no source: two weeks or more apart are usual',
    },
    {
      words: 'freeze',
      source:
        'US National Park Service, Conserve O Gram 3/6, 1994: 6 to 10 days at -20 °C for most museum pests',
    },
    {
      words: 'not-frozen',
      source: 'V&A handout as summarised by an attendee (secondary)',
    },
    {
      words: 'bed-bugs',
      source:
        'Naylor and Boase, J. Econ. Entomol. 2010, via an extension IPM page (secondary); University of Minnesota, via the same (secondary)',
    },
  ],
  torn: [{ words: 'torn', source: 'Collections Trust, Spectrum 5.1, Condition checking' }],
}

export const handlingOf = (found: readonly Condition[]): readonly Handling[] => [
  ...new Set(found.flatMap((one) => handlings[one])),
]

/** What is so is closed up and kept apart until a person says why it may go on. */
const isolating: readonly Condition[] = ['wet', 'mouldy', 'soiled', 'infested']

export const isolates = (found: readonly Condition[]): boolean =>
  found.some((one) => isolating.includes(one))

export const readConditions = (text: string): Condition[] =>
  conditions.filter((one) => text.split(',').includes(one))
