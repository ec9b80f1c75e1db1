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

const lyingHair = (x: number): Mark => outline(`M${x} 60 Q${x + 4} 52 ${x + 13} 48`, undefined, 1.5)

const standingHair = (x: number, lean: number): Mark =>
  outline(`M${x} 60 Q${x} 50 ${x + lean} 42`, undefined, 1.5)

/** Pictures beside a question, where hands are needed. Named as the flow's `drawing`. */
export const help = {
  'pull-test': wide(
    122,
    outline('M66 14 Q200 26 334 14 L334 78 Q200 66 66 78 Z', 'cloth'),
    stitch('M110 17 L110 75 M148 20 L148 72 M200 21 L200 71 M252 20 L252 72 M290 17 L290 75'),
    ...rightHand(0, -34),
    ...leftHand(0, -34),
    ...arrow([184, 104], [96, 104]),
    ...arrow([216, 104], [304, 104]),
  ),
  'hold-to-the-light': wide(
    200,
    box([62, 12], 180, 150, { stroke: 'ink', fill: 'paper' }, 3),
    outline('M152 12 L152 162 M62 87 L242 87', undefined, 1.5),
    { mark: 'circle', at: [198, 50], r: 16, stroke: 'madder', width: 2.5 },
    ...[
      'M198 24 L198 18',
      'M218 36 L223 31',
      'M224 54 L231 54',
      'M178 36 L173 31',
      'M172 54 L165 54',
    ].map((d): Mark => ({ mark: 'path', d, stroke: 'madder', width: 2.5 })),
    outline('M92 70 Q148 82 266 62 Q278 110 272 184 Q182 196 100 184 Q88 130 92 70 Z', 'cloth'),
    stitch('M108 88 Q178 96 260 82'),
    { mark: 'circle', at: [178, 132], r: 24, fill: 'paper' },
    dashed('M154 132 Q154 108 178 108 Q202 108 202 132 Q202 156 178 156 Q154 156 154 132 Z'),
    outline('M168 124 L188 124 M166 132 L190 132 M168 140 L188 140', undefined, 0.8),
    outline('M178 122 L178 142 M172 123 L172 141 M184 123 L184 141', undefined, 0.8),
    ...rightHand(-58, 14),
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
  'photograph-the-label': wide(
    200,
    outline(
      'M20 30 Q110 16 200 26 Q292 34 380 22 L380 180 Q292 190 200 182 Q110 174 20 186 Z',
      'cloth',
    ),
    stitch('M20 44 Q110 30 200 40 Q292 48 380 36'),
    box([84, 8], 232, 184, { stroke: 'ink', fill: 'paper' }, 14),
    box([104, 20], 192, 160, { stroke: 'ink', width: 1.5, fill: 'cloth' }),
    { mark: 'circle', at: [94, 100], r: 3, fill: 'ink' },
    box([128, 36], 144, 128, { stroke: 'ink', fill: 'paper' }, 2),
    stitch('M134 42 L266 42'),
    outline('M144 62 L208 62 M216 62 L252 62', undefined, 3.5),
    outline('M144 82 L232 82', undefined, 3.5),
    outline('M144 102 L190 102 M198 102 L244 102', undefined, 3.5),
    outline(
      'M144 126 L160 126 L160 142 L144 142 Z M176 142 L180 128 L200 128 L200 142 Z',
      undefined,
      2,
    ),
    outline(
      'M214 134 Q214 126 222 126 Q230 126 230 134 Q230 142 222 142 Q214 142 214 134 Z',
      undefined,
      2,
    ),
    ...[
      'M112 40 L112 28 L124 28',
      'M276 28 L288 28 L288 40',
      'M112 160 L112 172 L124 172',
      'M276 172 L288 172 L288 160',
    ].map((d): Mark => ({ mark: 'path', d, stroke: 'madder', width: 3 })),
  ),
  'measure-a-graphic': wide(
    200,
    ...shirt(100, 18),
    dashed('M166 94 L234 94 L234 156 L166 156 Z'),
    outline('M174 148 L192 118 L204 134 L214 122 L227 148 Z', 'paper', 1.5),
    { mark: 'circle', at: [216, 108], r: 7, stroke: 'ink', width: 1.5, fill: 'paper' },
    ...arrow([166, 166], [234, 166], true),
    ...arrow([250, 156], [250, 97], true),
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
    106,
    outline('M30 60 L370 60 L370 98 L30 98 Z', 'cloth'),
    ...Array.from({ length: 15 }, (_, i) => lyingHair(40 + i * 10)),
    ...Array.from({ length: 14 }, (_, i) => standingHair(224 + i * 10, i % 2 ? -5 : 5)),
    ...arrow([62, 22], [168, 22]),
    ...arrow([338, 22], [232, 22]),
    stitch('M200 60 L200 98'),
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
