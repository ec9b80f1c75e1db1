import type { domains } from '../../garment/facts.ts'
import type { Drawing } from '../drawing.ts'
import { box, dot, outline, small, stitch } from './hand.ts'

type Kind = (typeof domains)['kind'][number]

const shortBody = 'M22 10 Q32 18 42 10 L58 20 L52 33 L45 29 L45 57 L19 57 L19 29 L12 33 L6 20 Z'
const longBody =
  'M22 8 Q32 16 42 8 L52 14 L61 47 L52 50 L45 28 L45 57 L19 57 L19 28 L12 50 L3 47 L12 14 Z'
const legs = 'M19 6 L45 6 L51 58 L37 58 L32 27 L27 58 L13 58 Z'

const collar = outline('M22 10 L32 21 L42 10 L45 16 L37 24 L32 21 L27 24 L19 16 Z', 'paper', 1.5)
const cuffs = stitch('M5 42 L14 45 M59 42 L50 45')

/** A small, plain silhouette of each kind of garment. */
export const garments: Readonly<Record<Kind, Drawing>> = {
  tshirt: small(outline(shortBody, 'cloth'), stitch('M21 14 Q32 23 43 14')),
  'long-sleeve': small(outline(longBody, 'cloth'), stitch('M21 12 Q32 21 43 12'), cuffs),
  polo: small(
    outline(shortBody, 'cloth'),
    collar,
    stitch('M32 21 L32 34'),
    dot([32, 26]),
    dot([32, 31]),
  ),
  jersey: small(
    outline(
      'M22 10 L32 22 L42 10 L58 20 L52 33 L45 29 L45 57 L19 57 L19 29 L12 33 L6 20 Z',
      'cloth',
    ),
    stitch('M9 18 L15 31 M55 18 L49 31', 2.5),
    outline('M26 32 L38 32 L30 49', undefined, 3),
  ),
  sweatshirt: small(
    outline(longBody, 'cloth'),
    stitch('M21 12 Q32 21 43 12 M19 52 L45 52 M23 53 L23 56 M28 53 L28 56 M32 53 L32 56'),
    stitch('M36 53 L36 56 M41 53 L41 56'),
    cuffs,
  ),
  hoodie: small(
    outline(longBody, 'cloth'),
    outline('M20 11 Q18 2 32 2 Q46 2 44 11 Q38 20 32 20 Q26 20 20 11 Z', 'cloth'),
    outline('M25 11 Q25 6 32 6 Q39 6 39 11 Q36 16 32 16 Q28 16 25 11 Z', 'paper', 1.5),
    outline('M29 18 L28 29 M35 18 L36 27', undefined, 1.5),
    stitch('M24 51 L26 39 L38 39 L40 51 Z'),
  ),
  jumper: small(
    outline(longBody, 'cloth'),
    stitch('M20 26 L23 30 L26 26 L29 30 L32 26 L35 30 L38 26 L41 30 L44 26'),
    stitch('M20 35 L23 39 L26 35 L29 39 L32 35 L35 39 L38 35 L41 39 L44 35'),
    stitch('M20 44 L23 48 L26 44 L29 48 L32 44 L35 48 L38 44 L41 48 L44 44'),
    cuffs,
  ),
  thermal: small(
    outline(longBody, 'cloth'),
    stitch('M28 17 L28 29 L36 29 L36 17'),
    dot([32, 20]),
    dot([32, 25]),
    stitch('M22 34 L42 34 M22 40 L42 40 M22 46 L42 46 M22 52 L42 52', 1),
    stitch('M25 32 L25 55 M32 32 L32 55 M39 32 L39 55', 1),
    cuffs,
  ),
  'button-shirt': small(
    outline(longBody, 'cloth'),
    outline('M22 8 L32 19 L42 8 L45 14 L37 23 L32 19 L27 23 L19 14 Z', 'paper', 1.5),
    stitch('M32 19 L32 57'),
    dot([32, 26]),
    dot([32, 34]),
    dot([32, 42]),
    dot([32, 50]),
    box([36, 29], 7, 8, { stroke: 'seam', width: 1.5 }),
    cuffs,
  ),
  blouse: small(
    outline(
      'M24 9 Q32 16 40 9 Q55 8 59 24 Q54 31 46 28 L43 36 L49 57 L15 57 L21 36 L18 28 Q10 31 5 24 Q9 8 24 9 Z',
      'cloth',
    ),
    stitch('M21 36 L43 36 M32 14 L32 34'),
    outline('M32 15 L24 20 L25 12 Z M32 15 L40 20 L39 12 Z', 'paper', 1.5),
  ),
  jeans: small(
    outline(legs, 'cloth'),
    stitch('M19 11 L45 11 M32 11 L32 24 M14 53 L27 53 M37 53 L50 53'),
    stitch('M19 20 Q26 20 26 12 M45 20 Q38 20 38 12'),
    outline('M24 6 L24 11 M40 6 L40 11', undefined, 1.5),
    dot([32, 8.5]),
  ),
  trousers: small(
    outline('M20 6 L44 6 L48 58 L37 58 L32 25 L27 58 L16 58 Z', 'cloth'),
    stitch('M20 11 L44 11 M24 14 L21 57 M40 14 L43 57'),
  ),
  skirt: small(
    outline('M22 15 L42 15 L55 53 Q32 61 9 53 Z', 'cloth'),
    outline('M22 9 L42 9 L42 15 L22 15 Z', 'paper'),
    stitch('M28 16 L22 55 M36 16 L42 55'),
  ),
  dress: small(
    outline('M21 6 L26 6 Q32 17 38 6 L43 6 L43 27 L55 55 Q32 62 9 55 L21 27 Z', 'cloth'),
    stitch('M21 27 Q32 31 43 27 M28 30 L23 57 M36 30 L41 57'),
  ),
  pyjamas: small(
    outline('M24 4 L40 4 L52 10 L49 20 L43 17 L43 32 L21 32 L21 17 L15 20 L12 10 Z', 'cloth'),
    outline('M21 37 L43 37 L46 61 L35 61 L32 46 L29 61 L18 61 Z', 'cloth'),
    stitch('M32 10 L32 32 M26 6 L26 31 M38 6 L38 31 M25 38 L23 60 M39 38 L41 60'),
    outline('M26 4 L32 11 L38 4', undefined, 1.5),
  ),
  'baby-suit': small(
    outline(
      'M25 8 Q32 14 39 8 L52 16 L48 27 L43 24 L43 38 L49 55 Q43 60 38 57 L32 45 L26 57 Q21 60 15 55 L21 38 L21 24 L16 27 L12 16 Z',
      'cloth',
    ),
    stitch('M32 12 L32 42'),
    dot([32, 18]),
    dot([32, 25]),
    dot([32, 32]),
    dot([32, 39]),
  ),
  blanket: small(
    outline('M10 7 L54 7 L54 42 L42 54 L10 54 Z', 'cloth'),
    outline('M54 42 L42 42 L42 54 Z', 'paper', 1.5),
    stitch('M21 7 L21 54 M33 7 L33 54 M10 19 L54 19 M10 31 L54 31 M10 43 L42 43'),
    outline(
      'M13 54 L13 60 M19 54 L19 60 M25 54 L25 60 M31 54 L31 60 M37 54 L37 60',
      undefined,
      1.5,
    ),
  ),
  tie: small(
    outline('M27 4 L37 4 L39 12 L35 16 L43 48 L32 60 L21 48 L29 16 L25 12 Z', 'cloth'),
    outline('M29 16 L35 16', undefined, 1.5),
    stitch('M28 24 L36 21 M26 34 L39 29 M24 43 L41 37 M26 52 L41 46'),
  ),
  scarf: small(
    outline('M27 28 L20 55 L9 52 L19 24 Z', 'cloth'),
    outline('M31 29 L38 58 L50 55 L42 24 Z', 'cloth'),
    outline('M14 10 Q32 24 50 10 Q56 20 46 28 Q32 36 18 28 Q8 20 14 10 Z', 'cloth'),
    outline('M12 53 L11 58 M17 54 L16 59 M41 57 L42 62 M46 56 L47 61', undefined, 1.5),
    stitch('M12 45 L22 48 M36 50 L48 47'),
  ),
  apron: small(
    outline('M24 18 Q22 4 32 4 Q42 4 40 18', undefined),
    outline('M18 32 L6 35 M46 32 L58 35', undefined),
    outline('M22 16 L42 16 Q42 28 50 32 L50 59 L14 59 L14 32 Q22 28 22 16 Z', 'cloth'),
    stitch('M22 40 L42 40 L42 51 L22 51 Z M32 40 L32 51'),
  ),
  uniform: small(
    outline(shortBody, 'cloth'),
    collar,
    outline('M10 18 L18 14 M54 18 L46 14', undefined, 3),
    stitch('M32 21 L32 57'),
    box([22, 29], 7, 8, { stroke: 'ink', width: 1.5 }),
    box([35, 29], 7, 8, { stroke: 'ink', width: 1.5 }),
    outline('M19 45 L45 45 M19 49 L45 49', undefined, 1.5),
    box([29, 43.5], 6, 7, { stroke: 'ink', width: 1.5, fill: 'paper' }),
  ),
  swimwear: small(
    outline(
      'M21 5 L25 5 Q26 17 32 18 Q38 17 39 5 L43 5 Q43 18 46 24 Q41 32 46 44 Q36 48 35 59 L29 59 Q28 48 18 44 Q23 32 18 24 Q21 18 21 5 Z',
      'cloth',
    ),
    stitch('M21 29 Q32 33 43 29 M21 34 Q32 38 43 34'),
  ),
  coat: small(
    outline(
      'M22 5 L42 5 L52 11 L59 44 L50 47 L46 28 L49 60 L15 60 L18 28 L14 47 L5 44 L12 11 Z',
      'cloth',
    ),
    outline('M22 5 L32 25 L42 5 L46 14 L40 17 L32 27 L24 17 L18 14 Z', 'paper', 1.5),
    stitch('M33 27 L33 60 M18 38 L46 38'),
    dot([29, 33], 1.6),
    dot([29, 44], 1.6),
    dot([29, 52], 1.6),
  ),
  other: small(
    outline('M10 44 Q8 51 15 51 L54 51 Q57 51 56 44 Z', 'cloth'),
    outline('M9 33 Q6 44 13 44 L54 44 Q58 44 56 33 Z', 'cloth'),
    outline('M12 20 Q6 33 13 33 L53 33 Q58 33 55 20 Q34 14 12 20 Z', 'cloth'),
    stitch('M14 26 Q34 21 53 26'),
  ),
}
