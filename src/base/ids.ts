import { hash, randomBytes } from 'node:crypto'

/** An unguessable key for a link: 24 random bytes, base64url, 32 characters. */
export const newKey = (): string => randomBytes(24).toString('base64url')

const idBytes = 12
/** Asking the system for random bytes costs the same for few and for many. */
let drawn = Buffer.alloc(0)

/** A short identifier for a row: 12 random bytes, base64url, 16 characters. No secret: those drawn next are in memory. */
export function newId(): string {
  if (drawn.length === 0) drawn = randomBytes(idBytes * 256)
  const id = drawn.toString('base64url', 0, idBytes)
  drawn = drawn.subarray(idBytes)
  return id
}

/** SHA-256, hexadecimal. Keys are stored only in this form. */
export const sha256 = (data: string | Uint8Array): string => hash('sha256', data, 'hex')

/** JSON with object keys in order, so that equal values give equal text (and equal hashes). */
export function canonical(value: unknown): string {
  return JSON.stringify(value, (_, v) =>
    v && typeof v === 'object' && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).sort(([a], [b]) => (a < b ? -1 : 1)))
      : v,
  )
}
