import { metresPerInch } from '../../src/base/units.ts'
import { mapped, type Point } from './camera.ts'
import { apart, type Lab, labOfCodes } from './light.ts'
import { cornersOf, fromSheet, type Sheet, sheetSizes } from './reference.ts'
import { mixed, nothing, type Scene, type Shot } from './shoot.ts'
import type { Box, TrueSheet, Truth } from './truth.ts'

const median = (of: readonly number[]): number => [...of].sort((a, b) => a - b)[of.length >> 1]!

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits))

export const inInches = (mm: number): number => rounded(mm / 1000 / metresPerInch, 2)

export function boxIn(
  { width, height }: Pick<Shot, 'width' | 'height'>,
  box: { left: number; top: number; right: number; bottom: number } | null,
): Box | null {
  if (!box) return null
  return {
    x: rounded(box.left / width, 5),
    y: rounded(box.top / height, 5),
    w: rounded((box.right - box.left) / width, 5),
    h: rounded((box.bottom - box.top) / height, 5),
  }
}

/** The box of what is at least half garment, px. */
export function maskBox({
  mask,
  width,
  height,
}: Shot): { left: number; top: number; right: number; bottom: number } | null {
  const box = { left: width, top: height, right: -1, bottom: -1 }
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      if (mask[y * width + x]! >= 128) {
        if (x < box.left) box.left = x
        if (x > box.right) box.right = x
        if (y < box.top) box.top = y
        box.bottom = y
      }
  return box.right < 0 ? null : { ...box, right: box.right + 1, bottom: box.bottom + 1 }
}

const most = 5000
/** Colours of less of the garment are not told. */
const leastShare = 0.04

/** The garment's lightness and its cloth's colours in the codes of a picture. */
export function coloursIn(
  codes: Uint8Array,
  { mask, zones }: Shot,
): Pick<Truth, 'lightness' | 'colours'> {
  const at = (n: number): Lab => labOfCodes(codes[n * 3]!, codes[n * 3 + 1]!, codes[n * 3 + 2]!)
  const counts = new Uint32Array(256)
  let whole = 0
  for (let n = 0; n < mask.length; n++)
    if (mask[n]! >= 128) {
      whole++
      counts[zones[n]!]!++
    }
  if (whole === 0) return { lightness: null, colours: [] }
  const steps = Array.from(counts, (count) => Math.max(1, Math.floor(count / most)))
  const seen = new Uint32Array(256)
  const found = new Map<number, Lab[]>()
  const stride = Math.max(1, Math.floor(whole / 20000))
  let passed = 0
  let sum = 0
  let summed = 0
  for (let n = 0; n < mask.length; n++) {
    if (mask[n]! < 128) continue
    if (passed++ % stride === 0) {
      sum += at(n)[0]
      summed++
    }
    const zone = zones[n]!
    if (zone === nothing || zone === mixed || seen[zone]!++ % steps[zone]! !== 0) continue
    if (!found.has(zone)) found.set(zone, [])
    found.get(zone)!.push(at(n))
  }
  const colours = [...found]
    .map(([zone, labs]) => ({
      lab: [0, 1, 2].map((part) =>
        rounded(median(labs.map((lab) => lab[part]!)), 2),
      ) as unknown as Lab,
      share: rounded(counts[zone]! / whole, 3),
    }))
    .filter(({ share }) => share >= leastShare)
    .sort((a, b) => b.share - a.share)
  return { lightness: rounded(sum / summed, 2), colours }
}

/** How far a side of a sheet must be from what lies beside it, in CIELAB, for both to be told apart. */
const leastContrast = 9

/** What of a sheet is seen in the codes of a picture. */
export function sheetIn(
  codes: Uint8Array,
  { width, height, mask }: Shot,
  { view, piece }: Pick<Scene, 'view' | 'piece'>,
  sheet: Sheet,
): TrueSheet {
  const { wide, tall } = sheetSizes[sheet.kind]
  const [inside, outside] = sheet.kind === 'id1' ? [2.2, 4.5] : [5, 9]
  const pixel = (at: Point): number | null => {
    const [x, y] = mapped(view.forth, fromSheet(sheet, at)).map(Math.floor) as [number, number]
    return x < 0 || y < 0 || x >= width || y >= height ? null : y * width + x
  }
  const lab = (n: number): Lab => labOfCodes(codes[n * 3]!, codes[n * 3 + 1]!, codes[n * 3 + 2]!)
  let whole = true
  const contrasts = (
    [
      [0, -1],
      [1, 0],
      [0, 1],
      [-1, 0],
    ] as const
  ).map(([x, y]) => {
    const far = Array.from({ length: 25 }, (_, n) => {
      const along = (n - 12) / 13
      const edge = (by: number): Point => [
        x === 0 ? (along * wide) / 2 : x * (wide / 2 + by),
        y === 0 ? (along * tall) / 2 : y * (tall / 2 + by),
      ]
      const one = pixel(edge(-inside))
      const two = pixel(edge(outside))
      if (one === null || mask[one]! > 0) whole = false
      return one === null || two === null ? 0 : apart(lab(one), lab(two))
    })
    return median(far)
  })
  const corners = cornersOf(sheet).map((point) => mapped(view.forth, point))
  if (corners.some(([x, y]) => x < 0 || y < 0 || x > width || y > height)) whole = false
  return {
    by: sheet.kind,
    corners: corners.map(([x, y]) => [rounded(x, 2), rounded(y, 2)] as const),
    turn: rounded(((sheet.turn - (piece?.turn ?? 0)) * 180) / Math.PI, 2),
    contrasts: Math.min(...contrasts) >= leastContrast,
    whole,
  }
}
