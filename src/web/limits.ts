import { photoLimits } from '../photo/accept.ts'

/** What one request may carry. */
export const limits = {
  /** A form without files, bytes. */
  formBytes: 256 * 1024,
  photoBytes: photoLimits.bytes,
  photosAtOnce: 6,
} as const
