import { Failure, type FailureCode } from '../base/failures.ts'
import { focalIn } from './look/focal.ts'
import { lookAt, measureByMarks } from './look/look.ts'
import type { Look } from './look/looked.ts'
import type { MarkedSheet } from './look/marked-sheet.ts'
import type { Sizes } from './look/measured.ts'
import { makeSafe, type SafePhoto } from './safe.ts'

/** A file to make safe. */
export interface PhotoJob {
  readonly bytes: Uint8Array
  /** Whether to look at the garment that it shows. */
  readonly looks: boolean
}

/** A safe picture to measure by a sheet whose corners a person marked. */
export interface MeasureJob {
  readonly bytes: Uint8Array
  readonly marked: MarkedSheet
  /** As the photo's own file told it, mm; null: it told none. */
  readonly focal35: number | null
}

export type Job = PhotoJob | MeasureJob

/** What a photo is and shows. */
export interface Looked {
  readonly photo: SafePhoto
  /** Null: the photo was made safe alone, or looking at it failed. */
  readonly look: Look | null
  /** The focal length in terms of 35 mm film that the file told, mm; null: none. The safe picture tells none. */
  readonly focal35: number | null
}

export type Done =
  | Looked
  | { readonly sizes: Sizes }
  | { readonly code: FailureCode; readonly details: Failure['details'] }

/** A look that fails costs no photo. The safe picture tells nothing of its camera any more, the file does. */
async function lookOrNot(
  photo: SafePhoto,
  file: Uint8Array,
  look: typeof lookAt,
): Promise<Pick<Looked, 'look' | 'focal35'>> {
  let focal35: number | null = null
  try {
    focal35 = await focalIn(file)
    return { look: await look(photo.full, { focal35 }), focal35 }
  } catch (error) {
    const line = {
      level: 50,
      time: Date.now(),
      msg: 'a photo was not looked at',
      err: String(error),
    }
    process.stderr.write(`${JSON.stringify(line)}\n`)
    return { look: null, focal35 }
  }
}

async function madeSafe({ bytes, looks }: PhotoJob, look: typeof lookAt): Promise<Looked> {
  const photo = await makeSafe(bytes)
  return { photo, ...(looks ? await lookOrNot(photo, bytes, look) : { look: null, focal35: null }) }
}

async function measured({ bytes, marked, focal35 }: MeasureJob): Promise<Done> {
  const found = await measureByMarks(bytes, marked, { focal35 })
  if (!('code' in found)) return { sizes: found }
  const { code, other } = found
  return { code, details: other ? { other } : {} }
}

/** Does one job; `look` is what looks at the photo. */
export async function work(job: Job, look = lookAt): Promise<Done> {
  try {
    return 'marked' in job ? await measured(job) : await madeSafe(job, look)
  } catch (error) {
    if (!(error instanceof Failure)) throw error
    return { code: error.code, details: error.details }
  }
}
