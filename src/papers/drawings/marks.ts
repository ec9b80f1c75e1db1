import type { Drawing } from '../drawing.ts'
import { outline, small } from './hand.ts'

/** A sign for each grade, so that none hangs on its colour alone. */
export const grades = {
  'grade-sound': small(outline('M10 34 L25 50 L54 14', undefined, 8)),
  'grade-care': small(outline('M32 8 L54 32 L32 56 L10 32 Z', undefined, 7)),
  'grade-eyes': small(outline('M5 32 Q32 4 59 32 Q32 60 5 32 Z', undefined, 6), {
    mark: 'circle',
    at: [32, 32],
    r: 8,
    fill: 'ink',
  }),
  'grade-home': small(outline('M8 32 L32 9 L56 32 M15 27 L15 55 L49 55 L49 27', undefined, 7)),
} as const satisfies Readonly<Record<string, Drawing>>

/** A parcel, small. */
export const parcel = small(
  outline('M8 26 L56 26 L56 58 L8 58 Z', 'cloth'),
  outline('M8 26 L2 14 L24 14 L32 26 L40 14 L62 14 L56 26', 'paper'),
  outline('M32 26 L32 58', undefined, 1.5),
  outline('M26 30 L38 30 L38 41 L26 41 Z', 'paper', 1.5),
)
