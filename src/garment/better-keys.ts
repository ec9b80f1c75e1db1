import type { Act } from './better-acts.ts'
import type { FactName } from './facts.ts'

const gainNames = [
  'sound',
  'care',
  'eyes',
  'layout',
  'press',
  'no-backing',
  'fused',
  'firmer',
  'heat',
  'layouts',
] as const

/** What a customer may be told of an act's facts: every value that it may bring. */
const hopeKeys = ({ by, open, may }: Act): string[] =>
  by === 'workshop'
    ? []
    : may.flatMap((line) =>
        (Object.keys(open) as FactName[]).flatMap((fact) =>
          line[fact]!.map((value) => `better.if.${fact}.${value}`),
        ),
      )

/** The key of every sentence that these acts may show. */
export const betterKeys = (acts: readonly Act[]): string[] => [
  ...new Set([
    ...acts.map(({ act }) => `better.acts.${act}`),
    ...acts.flatMap(hopeKeys),
    ...gainNames.map((name) => `better.gain.${name}`),
  ]),
]
