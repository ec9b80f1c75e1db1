import { Failure } from '../base/failures.ts'
import { type PhotoType, sniff } from './sniff.ts'

/** The most and the least a photo may have. `ratio` is longer side to shorter side. */
export const photoLimits = {
  bytes: 25 * 1024 * 1024,
  pixels: 60_000_000,
  shorterSide: 256,
  ratio: 4,
} as const

const mostMb = photoLimits.bytes / 1024 / 1024

/**
 * The checks that need no picture library, so that the server itself loads none. Throws `empty_file`, `too_large` or
 * `unsupported_type`.
 */
export function acceptBytes(bytes: Uint8Array): PhotoType {
  if (bytes.length === 0) throw new Failure('empty_file')
  if (bytes.length > photoLimits.bytes) throw new Failure('too_large', { mostMb })
  const type = sniff(bytes)
  if (!type) throw new Failure('unsupported_type')
  return type
}
