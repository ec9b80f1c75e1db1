import { z } from 'zod'
import { type CornersSent, cornersIn } from '../../intake/sheet-marks.ts'
import { listOf } from './form.ts'

/** How wide a photo is shown without a script, px of a page: as narrow as phones are, and to be scrolled. */
export const wides = { small: 264, large: 1056 } as const

const several = z.union([z.string().max(40), z.array(z.string().max(40)).max(8)]).optional()

/**
 * The form on which a sheet's corners are marked. A tap on the photo is its image button, "at"; without a script
 * each one brings the page back with one corner more.
 */
export const sheetForm = z.object({
  act: z
    .enum(['show', 'measure', 'last', 'clear', 'frame', 'larger', 'smaller', 'take-back'])
    .default('show'),
  sheet: z.string().max(20).default(''),
  from: z.string().max(60).default(''),
  x: several,
  y: several,
  'at.x': z.string().max(20).optional(),
  'at.y': z.string().max(20).optional(),
  wide: z.coerce.number().int().min(100).max(4000).catch(wides.small),
  coarse: z.string().max(3).default(''),
})

export type SheetForm = z.infer<typeof sheetForm>

type Place = CornersSent['corners'][number]

const none: Place = { x: '', y: '' }

/** Percent, to the thousandth. */
const percent = (share: number): string => String(Math.round(share * 100_000) / 1000)

export const placeOf = ([x, y]: readonly [number, number]): Place => ({
  x: percent(x),
  y: percent(y),
})

/** A rectangle to begin with, for who marks by keys. */
const frame: readonly Place[] = [
  [0.35, 0.35],
  [0.65, 0.35],
  [0.65, 0.65],
  [0.35, 0.65],
].map(([x, y]) => placeOf([x!, y!]))

/** A form as it stands once its button has done what it does, all but measuring. */
export interface SheetFilled extends CornersSent {
  readonly wide: number
}

/** Four places, those that are empty last. */
const four = (places: readonly Place[]): Place[] => {
  const set = places.filter(({ x, y }) => x.trim() !== '' || y.trim() !== '')
  return [...set, none, none, none, none].slice(0, 4)
}

/** Where on the picture it was tapped, in shares; null: nowhere, or by a key, which tells no place. */
function tapped(form: SheetForm, tall: number): readonly [number, number] | null {
  const [x, y] = [Number(form['at.x']), Number(form['at.y'])]
  if (form['at.x'] === undefined || !Number.isFinite(x) || !Number.isFinite(y)) return null
  if (x === 0 && y === 0) return null
  const share = (one: number) => Math.min(1, Math.max(0, one))
  return [share(x / form.wide), share(y / (form.wide * tall))]
}

/** `tall`: the picture's height in parts of its width. Where four are set a tap moves the nearest. */
export function filledBy(form: SheetForm, tall: number): SheetFilled {
  const [xs, ys] = [listOf(form.x), listOf(form.y)]
  const places = four(xs.map((x, n) => ({ x, y: ys[n] ?? '' })))
  const { sheet, wide } = form
  const same = { sheet, corners: places, wide, coarse: form.coarse !== '' }
  const at = tapped(form, tall)
  if (at) {
    const coarse = same.coarse || wide < (wides.small + wides.large) / 2
    return { ...same, corners: withTap(places, at, tall), coarse }
  }
  const set = places.filter(({ x }) => x !== '')
  switch (form.act) {
    case 'last':
      return { ...same, corners: four(set.slice(0, -1)) }
    case 'clear':
      return { ...same, corners: four([]), coarse: false }
    case 'frame':
      return { ...same, corners: frame, coarse: false }
    case 'larger':
      return { ...same, wide: wides.large }
    case 'smaller':
      return { ...same, wide: wides.small }
    default:
      return same
  }
}

function withTap(places: readonly Place[], at: readonly [number, number], tall: number): Place[] {
  const free = places.findIndex(({ x }) => x === '')
  const away = places.map(({ x, y }) =>
    Math.hypot(Number(x) / 100 - at[0], (Number(y) / 100 - at[1]) * tall),
  )
  const nearest = free >= 0 ? free : away.indexOf(Math.min(...away))
  return places.map((place, n) => (n === nearest ? placeOf(at) : place))
}

/** Those of a form that lie on the photo; none where any does not. */
export function outlineOf(filled: CornersSent): readonly (readonly [number, number])[] {
  try {
    return cornersIn(filled)
  } catch {
    return []
  }
}
