import { createHash, randomBytes } from 'node:crypto'

/** An unguessable key for a link: 24 random bytes, base64url, 32 characters. */
export const newKey = (): string => randomBytes(24).toString('base64url')

/** A short identifier for a row: 12 random bytes, base64url, 16 characters. */
export const newId = (): string => randomBytes(12).toString('base64url')

/** SHA-256, hexadecimal. Keys are stored only in this form. */
export const sha256 = (data: string | Uint8Array): string =>
  createHash('sha256').update(data).digest('hex')

/** JSON with object keys in order, so that equal values give equal text (and equal hashes). */
export function canonical(value: unknown): string {
  return JSON.stringify(value, (_, v) =>
    v && typeof v === 'object' && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1)))
      : v,
  )
}
