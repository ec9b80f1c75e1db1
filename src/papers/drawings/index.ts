import type { Drawing } from '../drawing.ts'
import { garments } from './garments.ts'
import { help } from './help.ts'
import { grades, parcel } from './marks.ts'
import { signs } from './signs.ts'

/** Every drawing by the name that flows and pages use; a kind of garment or a sign by its own value. */
export const drawings: Readonly<Record<string, Drawing>> = {
  ...help,
  ...signs,
  ...grades,
  ...garments,
  parcel,
}

export const helpNames: readonly string[] = Object.keys(help)
export const signNames: readonly string[] = Object.keys(signs)
export const garmentNames: readonly string[] = Object.keys(garments)
