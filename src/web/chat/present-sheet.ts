import type { Failure } from '../../base/failures.ts'
import { inchWords } from '../../base/units.ts'
import type { SeenPhoto } from '../../intake/garment-look.ts'
import { garmentSizeSeen, type SeenSize } from '../../intake/garment-size.ts'
import type { SpotPhoto } from '../../intake/spot-photos.ts'
import { type SheetKind, sheetKinds } from '../../photo/look/looked.ts'
import type { Language, Say } from '../../words/words.ts'
import { failureSentence } from '../errors.ts'
import { outlineOf, placeOf, type SheetFilled, wides } from './sheet-form.ts'
import type { Photo } from './view.ts'
import type { OutlineShown, SheetShown } from './view-sheet.ts'

export const sheetWords = (sheet: SheetKind, say: Say): string => say(`sheet.sheets.${sheet}`)

/** The sheet that a photo is measured by, in shares of it; null: none. */
export function outlineSeen({ look: { scale, width, height } }: SeenPhoto): OutlineShown | null {
  return scale && scale.corners.length === 4
    ? scale.corners.map(([x, y]) => [x / width, y / height])
    : null
}

/** The form as it is found: with what is marked, else with what was found by itself. */
export function filledAtFirst(seen: SeenPhoto | null): SheetFilled {
  const corners = seen?.sheet?.corners ?? (seen && outlineSeen(seen)) ?? []
  const empty = { x: '', y: '' }
  return {
    sheet: seen?.look.scale?.by ?? '',
    corners: [...corners.map(placeOf), empty, empty, empty, empty].slice(0, 4),
    coarse: false,
    wide: wides.small,
  }
}

const centimetresPerInch = 2.54

/** "about 22 by 28 inches (56 by 71 cm). That may be off by 1/2 inch." */
export function sizeGaps(
  { across, along, errorPct }: SeenSize,
  inches: (inches: number) => string,
): Readonly<Record<string, string>> {
  const cm = (inches: number) => String(Math.round(inches * centimetresPerInch))
  const off = (Math.max(across, along) * errorPct) / 100
  return {
    w: inches(across),
    h: inches(along),
    wcm: cm(across),
    hcm: cm(along),
    off: quartersUp(off),
  }
}

/** How large the garment is by its sheet, in a sentence. */
export const garmentSizeWords = (size: SeenSize, say: Say): string =>
  say(
    'sheet.garment',
    sizeGaps(size, (inches) => String(Math.round(inches))),
  )

const quartersUp = (inches: number): string => inchWords(Math.ceil(inches * 4) / 4)

/** What a photo is measured by, in a sentence; null: by nothing. */
function standingOf(
  seen: SeenPhoto | null,
  by: (mark: NonNullable<SeenPhoto['sheet']>) => string,
  say: Say,
): string | null {
  if (!seen?.look.scale) return null
  const sheet = sheetWords(seen.look.scale.by, say)
  const size = garmentSizeSeen(seen)
  return [
    seen.sheet ? by(seen.sheet) : say('sheet.found', { sheet }),
    size ? garmentSizeWords(size, say) : '',
  ]
    .filter(Boolean)
    .join(' ')
}

export interface SheetAsked {
  readonly picture: Pick<SpotPhoto, 'width' | 'height'>
  readonly photo: Photo
  readonly seen: SeenPhoto | null
  readonly filled: SheetFilled
  readonly refused: Failure | null
  /** Says who marked what stands. */
  readonly by: (mark: NonNullable<SeenPhoto['sheet']>) => string
  readonly canTakeBack: boolean
  readonly postTo: string
  readonly hidden: Readonly<Record<string, string>>
}

/** Why a sheet is not measured by, the other sheet in words. */
function refusalWords(refused: Failure, language: Language): string {
  const { other } = refused.details
  const kind = sheetKinds.find((one) => one === other)
  if (!kind) return failureSentence(refused, language)
  const { say } = language
  return say(`failures.${refused.code}`, { other: sheetWords(kind, say) })
}

export function sheetShown(asked: SheetAsked, language: Language): SheetShown {
  const { say } = language
  const { picture, photo, seen, filled, refused } = asked
  const left = filled.corners.filter(({ x, y }) => x === '' || y === '').length
  return {
    photo: { ...photo, alt: say('sheet.alt') },
    width: picture.width,
    height: picture.height,
    sheets: sheetKinds.map((value) => ({
      value,
      label: sheetWords(value, say),
      help: value === 'id1' ? say('sheet.id1_help') : null,
      drawing: null,
      chosen: value === filled.sheet,
    })),
    corners: filled.corners,
    outline: outlineOf(filled),
    wide: filled.wide,
    isLarge: filled.wide === wides.large,
    coarse: filled.coarse,
    told: say('sheet.marked', { left }),
    refused: refused && refusalWords(refused, language),
    standing: standingOf(seen, asked.by, say),
    canTakeBack: asked.canTakeBack,
    postTo: asked.postTo,
    hidden: asked.hidden,
  }
}
