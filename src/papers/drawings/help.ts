import type { Drawing, Mark, Point } from '../drawing.ts'
import { arrow, box, curvedArrow, dashed, outline, stitch, wide } from './hand.ts'

// A hand that comes from the right and holds the edge of a cloth, the thumb on top.
const rightHand = (dx: number, dy: number): Mark[] =>
  [
    'M398 52 L366 60 C348 54 332 52 318 58 C308 62 309 71 319 72 C328 73 337 74 342 79 C336 86 336 96 344 101 C352 107 360 108 368 106 L398 112 Z',
    'M366 60 L368 106',
  ].map((d, i) => outline(moved(d, dx, dy), i === 0 ? 'paper' : undefined, i === 0 ? 2 : 1.5))

const leftHand = (dx: number, dy: number): Mark[] =>
  rightHand(0, dy).map((mark) =>
    mark.mark === 'path' ? { ...mark, d: mapped(mark.d, ([x, y]) => [400 - x + dx, y]) } : mark,
  )

function mapped(d: string, to: (point: Point) => Point): string {
  return d.replace(/(-?\d+(?:\.\d+)?) (-?\d+(?:\.\d+)?)/g, (_, x, y) =>
    to([Number(x), Number(y)]).join(' '),
  )
}

const moved = (d: string, dx: number, dy: number): string => mapped(d, ([x, y]) => [x + dx, y + dy])

const shirt = (dx: number, dy: number): Mark[] => [
  outline(
    moved(
      'M74 8 Q100 30 126 8 L180 38 L162 82 L140 70 L140 164 L60 164 L60 70 L38 82 L20 38 Z',
      dx,
      dy,
    ),
    'cloth',
  ),
  stitch(moved('M70 12 Q100 40 130 12', dx, dy)),
  stitch(moved('M60 156 L140 156', dx, dy)),
]

export const help = {
  'pull-test': wide(
    150,
    outline('M66 40 Q200 52 334 40 L334 104 Q200 92 66 104 Z', 'cloth'),
    stitch('M110 43 L110 101 M148 46 L148 98 M200 47 L200 97 M252 46 L252 98 M290 43 L290 101'),
    ...rightHand(0, -8),
    ...leftHand(0, -8),
    ...arrow([184, 128], [96, 128]),
    ...arrow([216, 128], [304, 128]),
  ),
  'hold-to-the-light': wide(
    200,
    box([120, 12], 180, 150, { stroke: 'ink', fill: 'paper' }, 3),
    outline('M210 12 L210 162 M120 87 L300 87', undefined, 1.5),
    { mark: 'circle', at: [256, 50], r: 16, stroke: 'madder', width: 2.5 },
    ...[
      'M256 24 L256 18',
      'M276 36 L281 31',
      'M282 54 L289 54',
      'M236 36 L231 31',
      'M230 54 L223 54',
    ].map((d): Mark => ({ mark: 'path', d, stroke: 'madder', width: 2.5 })),
    outline('M150 70 Q206 82 324 62 Q336 110 330 184 Q240 196 158 184 Q146 130 150 70 Z', 'cloth'),
    stitch('M166 88 Q236 96 318 82'),
    { mark: 'circle', at: [236, 132], r: 24, fill: 'paper' },
    dashed('M212 132 Q212 108 236 108 Q260 108 260 132 Q260 156 236 156 Q212 156 212 132 Z'),
    outline('M226 124 L246 124 M224 132 L248 132 M226 140 L246 140', undefined, 0.8),
    outline('M236 122 L236 142 M230 123 L230 141 M242 123 L242 141', undefined, 0.8),
    ...rightHand(0, 14),
  ),
  'find-the-label': wide(
    190,
    ...shirt(100, 10),
    box([190, 34], 20, 17, { stroke: 'ink', fill: 'paper' }, 1),
    outline('M194 40 L206 40 M194 45 L203 45', undefined, 1.2),
    box([162, 128], 17, 26, { stroke: 'ink', fill: 'paper' }, 1),
    outline('M166 135 L175 135 M166 141 L175 141 M166 147 L172 147', undefined, 1.2),
    ...curvedArrow('M318 20 C284 10 246 18 216 38', [232, 28], [216, 38]),
    ...curvedArrow('M62 124 C92 112 124 116 156 136', [140, 125], [156, 136]),
  ),
  'measure-a-graphic': wide(
    200,
    ...shirt(100, 18),
    dashed('M166 76 L234 76 L234 138 L166 138 Z'),
    outline('M174 130 L192 100 L204 116 L214 104 L227 130 Z', 'paper', 1.5),
    { mark: 'circle', at: [216, 90], r: 7, stroke: 'ink', width: 1.5, fill: 'paper' },
    ...arrow([166, 152], [234, 152], true),
    ...arrow([250, 138], [250, 76], true),
    box([290, 14], 30, 172, { stroke: 'ink', fill: 'paper' }, 2),
    ...Array.from(
      { length: 12 },
      (_, i): Mark => ({
        mark: 'line',
        from: [290, 26 + i * 13],
        to: [i % 4 === 0 ? 306 : 299, 26 + i * 13],
        stroke: 'ink',
        width: 1.5,
      }),
    ),
  ),
  'lay-out-for-a-photo': wide(
    220,
    box([60, 16], 280, 188, { stroke: 'seam', width: 1.5 }, 4),
    ...shirt(74, 28),
    box([272, 132], 44, 57, { stroke: 'ink', fill: 'paper' }, 1),
    stitch('M279 144 L308 144 M279 153 L308 153 M279 162 L300 162'),
    ...['M76 32 L76 24 L84 24', 'M316 24 L324 24 L324 32', 'M76 188 L76 196 L84 196'].map(
      (d): Mark => ({ mark: 'path', d, stroke: 'madder', width: 3 }),
    ),
    { mark: 'path', d: 'M316 196 L324 196 L324 188', stroke: 'madder', width: 3 },
    box([270, 32], 38, 66, { stroke: 'ink', fill: 'paper' }, 6),
    box([275, 41], 28, 44, { stroke: 'ink', width: 1.5, fill: 'cloth' }),
    { mark: 'circle', at: [289, 91.5], r: 2.5, fill: 'ink' },
  ),
  'damp-cloth': wide(
    180,
    outline(
      'M40 126 Q120 112 200 124 Q280 136 360 122 L360 164 Q280 174 200 164 Q120 154 40 166 Z',
      'ink',
    ),
    stitch('M40 156 Q120 144 200 154 Q280 164 360 154'),
    outline('M150 118 Q148 92 170 88 L262 80 Q278 82 276 104 L270 128 Q210 134 150 118 Z', 'paper'),
    dashed('M160 110 Q210 122 268 114', 1.5),
    ...rightHand(-72, 14),
    outline('M96 34 Q114 58 114 70 Q114 86 96 86 Q78 86 78 70 Q78 58 96 34 Z', 'paper'),
    ...arrow([150, 50], [236, 50], true),
  ),
  'stroke-nap': wide(
    150,
    outline('M30 104 L370 104 L370 142 L30 142 Z', 'cloth'),
    ...Array.from(
      { length: 17 },
      (_, i): Mark =>
        outline(`M${40 + i * 10} 104 Q${44 + i * 10} 96 ${53 + i * 10} 92`, undefined, 1.5),
    ),
    ...Array.from(
      { length: 14 },
      (_, i): Mark =>
        outline(
          `M${224 + i * 10} 104 Q${224 + i * 10} 94 ${i % 2 ? 219 + i * 10 : 229 + i * 10} 86`,
          undefined,
          1.5,
        ),
    ),
    ...arrow([62, 66], [168, 66]),
    ...arrow([338, 66], [232, 66]),
    stitch('M200 104 L200 142'),
  ),
  'thick-seam': wide(
    170,
    outline(
      'M24 112 L196 112 Q206 112 206 102 L206 74 Q206 66 214 66 L236 66 Q244 66 244 74 L244 112 L376 112 L376 134 L24 134 Z',
      'cloth',
    ),
    outline('M24 123 L218 123 Q222 123 222 119 L222 80', undefined, 1.5),
    outline('M376 123 L232 123 Q228 123 228 119 L228 80', undefined, 1.5),
    dashed('M214 60 L214 140 M236 60 L236 140', 1.5),
    ...arrow([270, 134], [270, 66], true),
    ...arrow([225, 18], [225, 52]),
    ...arrow([225, 164], [225, 144]),
  ),
  'pack-box': wide(
    210,
    outline('M110 96 L290 96 L290 196 L110 196 Z', 'cloth'),
    outline('M110 96 L66 70 L84 52 L132 80 Z', 'cloth'),
    outline('M290 96 L334 70 L316 52 L268 80 Z', 'cloth'),
    outline('M128 96 Q122 84 134 82 L266 82 Q278 84 272 96 Z', 'paper'),
    outline('M134 82 Q128 70 140 68 L260 68 Q272 70 266 82 Z', 'cloth'),
    outline('M140 68 Q134 56 146 54 L254 54 Q266 56 260 68 Z', 'paper'),
    outline('M186 54 L186 68 M186 68 L186 82', undefined, 1.5),
    outline('M214 60 Q236 36 250 30', undefined, 1.5),
    outline('M248 22 L284 22 L284 40 L248 40 L242 31 Z', 'paper'),
    { mark: 'circle', at: [250, 31], r: 2, stroke: 'ink', width: 1.5 },
    outline('M258 28 L277 28 M258 34 L272 34', undefined, 1.2),
    stitch('M200 96 L200 196'),
    outline('M186 104 L214 104 L214 132 L186 132 Z', 'paper', 1.5),
    ...arrow([166, 10], [166, 44]),
  ),
} as const satisfies Readonly<Record<string, Drawing>>
