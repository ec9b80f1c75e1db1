import type { Drawing, Mark } from '../drawing.ts'
import { box, crossed, dashed, outline, small, stitch } from './hand.ts'

/**
 * Signs for what a care label says. They are our own and always stand with words: the pictograms on
 * the labels themselves are protected marks in many countries.
 */

// A warm plate over a piece of cloth: the more strokes between them, the hotter.
const plate = (y: number): Mark[] => [
  outline(`M25 ${y} Q25 ${y - 9} 32 ${y - 9} Q39 ${y - 9} 39 ${y}`, undefined, 3),
  box([12, y], 40, 9, { stroke: 'ink', fill: 'ink' }, 3),
]
const clothUnder: Mark = outline(
  'M7 50 Q20 46 32 50 Q44 54 57 50 L57 57 Q44 61 32 57 Q20 53 7 57 Z',
  'cloth',
)

const heatStroke = (x: number): Mark => ({
  mark: 'path',
  d: `M${x} 29 Q${x + 4} 32 ${x} 35 Q${x - 4} 38 ${x} 42`,
  stroke: 'madder',
  width: 3,
})

const pressing = (...strokesAt: number[]): Drawing =>
  small(...plate(16), ...strokesAt.map(heatStroke), clothUnder)

// A drop of water, and how warm it is.
const drop = outline('M32 4 Q52 30 52 42 Q52 60 32 60 Q12 60 12 42 Q12 30 32 4 Z', 'cloth')

const drops = (degrees: string): Drawing =>
  small(drop, {
    mark: 'text',
    at: [32, 49],
    size: 19,
    anchor: 'middle',
    words: degrees,
    bold: true,
  })

const line = outline('M3 14 L61 14', undefined, 2)
const hung = 'M23 18 Q32 24 41 18 L54 25 L50 35 L44 32 L44 56 L20 56 L20 32 L14 35 L10 25 Z'

const turning = (strokes: Mark[]): Mark[] => [
  outline('M51 22 C41 4 15 8 11 28', undefined, 2.5),
  outline('M5 23 L11 29 L18 24', undefined, 2.5),
  outline('M13 42 C23 60 49 56 53 36', undefined, 2.5),
  outline('M59 41 L53 35 L46 40', undefined, 2.5),
  ...strokes,
]

const breath = (y: number): Mark => ({
  mark: 'path',
  d: `M22 ${y} Q27 ${y - 4} 32 ${y} Q37 ${y + 4} 42 ${y}`,
  stroke: 'madder',
  width: 3,
})

const puff = (x: number): Mark =>
  outline(`M${x} 52 Q${x + 6} 44 ${x} 36 Q${x - 6} 28 ${x} 20 Q${x + 3} 15 ${x} 11`, undefined, 2.5)

const hanger: Mark[] = [
  outline('M32 22 L32 17 Q40 15 38 9 Q33 3 27 9', undefined, 2.5),
  outline('M32 22 L58 42 Q60 47 54 47 L10 47 Q4 47 6 42 Z', 'cloth', 2.5),
]

const bottle: Mark[] = [
  outline('M26 6 L38 6 L38 16 Q50 20 50 30 L50 58 L14 58 L14 30 Q14 20 26 16 Z', 'cloth'),
  stitch('M14 34 L50 34 M14 50 L50 50'),
]

const noWay = crossed(10, 10, 54, 54)

export const signs = {
  'iron-hot': pressing(20, 32, 44),
  'iron-warm': pressing(26, 38),
  'iron-cool': pressing(32),
  'iron-none': small(...plate(18), clothUnder, ...noWay),
  'iron-absent': small(
    box([12, 8], 40, 48, { stroke: 'ink', width: 2, fill: 'paper', dash: [5, 4] }, 3),
    dashed('M20 22 L44 22 M20 32 L44 32 M20 42 L34 42', 2, [2, 4]),
  ),
  'steam-yes': small(puff(20), puff(32), puff(44)),
  'steam-no': small(puff(20), puff(32), puff(44), ...noWay),
  'wash-30': drops('30°'),
  'wash-40': drops('40°'),
  'wash-50': drops('50°'),
  'wash-60': drops('60°'),
  'wash-70': drops('70°'),
  'wash-95': drops('95°'),
  'wash-hand': small(
    drop,
    outline(
      'M25 54 Q19 46 19 40 Q21 36 24 40 L26 43 L26 29 Q28 26 30 29 L30 26 Q32 23 34 26 L34 28 Q36 25 38 28 L38 32 Q40 29 42 32 L42 46 Q41 51 39 54 Z',
      'paper',
    ),
  ),
  'wash-none': small(drop, ...noWay),
  'dry-normal': small(...turning([breath(26), breath(38)])),
  'dry-low': small(...turning([breath(32)])),
  'dry-none': small(...turning([breath(32)]), ...noWay),
  'dry-line': small(
    outline(hung, 'cloth'),
    line,
    outline('M18 9 L18 27 M46 9 L46 27', undefined, 3),
  ),
  'dry-flat': small(
    outline('M8 40 L20 26 L44 26 L56 40 Z', 'cloth'),
    stitch('M20 40 L26 27 M44 40 L38 27'),
    outline('M3 46 L61 46 M9 46 L9 58 M55 46 L55 58', undefined, 2.5),
  ),
  'dry-shade': small(
    outline('M4 26 L32 6 L60 26', undefined, 2.5),
    outline(
      'M22 32 Q32 38 42 32 L54 38 L50 47 L44 45 L44 60 L20 60 L20 45 L14 47 L10 38 Z',
      'cloth',
    ),
    stitch('M22 35 Q32 42 42 35'),
  ),
  'clean-yes': small(...hanger, stitch('M18 41 L46 41')),
  'clean-none': small(...hanger, ...noWay),
  'bleach-yes': small(...bottle),
  'bleach-none': small(...bottle, ...noWay),
} as const satisfies Readonly<Record<string, Drawing>>
