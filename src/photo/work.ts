import { Failure, type FailureCode } from '../base/failures.ts'
import { focalIn } from './look/focal.ts'
import { lookAt } from './look/look.ts'
import type { Look } from './look/looked.ts'
import { makeSafe, type SafePhoto } from './safe.ts'

export interface Job {
  readonly bytes: Uint8Array
  /** Whether to look at the garment that it shows. */
  readonly looks: boolean
}

export type Done =
  | { readonly photo: SafePhoto; readonly look: Look | null }
  | { readonly code: FailureCode; readonly details: Failure['details'] }

/** A look that fails costs no photo. The safe picture tells nothing of its camera any more, the file does. */
async function lookOrNot(
  { full }: SafePhoto,
  file: Uint8Array,
  look: typeof lookAt,
): Promise<Look | null> {
  try {
    return await look(full, { focal35: await focalIn(file) })
  } catch (error) {
    const line = {
      level: 50,
      time: Date.now(),
      msg: 'a photo was not looked at',
      err: String(error),
    }
    process.stderr.write(`${JSON.stringify(line)}\n`)
    return null
  }
}

/** Does one job; `look` is what looks at the photo. */
export async function work({ bytes, looks }: Job, look = lookAt): Promise<Done> {
  try {
    const photo = await makeSafe(bytes)
    return { photo, look: looks ? await lookOrNot(photo, bytes, look) : null }
  } catch (error) {
    if (!(error instanceof Failure)) throw error
    return { code: error.code, details: error.details }
  }
}
