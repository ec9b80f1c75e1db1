import { photoLimits } from '../photo/accept-bytes.ts'

/** What one request may carry. */
export const limits = {
  /** A form without files, bytes. */
  formBytes: 256 * 1024,
  photoBytes: photoLimits.bytes,
  photosAtOnce: 6,
  /** Until a whole request has come, ms: six photos over a line of 5 Mbit/s. */
  requestMs: 5 * 60 * 1000,
} as const

/** What a field for photos offers to choose; some systems know a HEIC by the end of its name alone. */
export const photoFiles = 'image/jpeg,image/png,image/webp,image/avif,image/heic,image/heif,.heic'
