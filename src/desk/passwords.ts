import { hash, verify } from '@node-rs/argon2'
import { Failure } from '../base/failures.ts'
import { lengthOf } from '../flow/sense.ts'

/**
 * Argon2id with 19 MiB, two passes, one lane: the OWASP Password Storage Cheat Sheet's
 * recommendation (m=19456 KiB, t=2, p=1). The package's own default is the same; it is said here so
 * that a new release of it cannot weaken what we store. 2 is its number for Argon2id.
 */
const cost = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 }

/** Lengths count characters, not bytes. */
export const passwordLimits = { shortest: 10, longest: 200 } as const

// A keyboard may send an accented letter as one character or as two (NIST SP 800-63B, 5.1.1.2: NFKC).
const asTyped = (password: string): string => password.normalize('NFKC')

/** Throws `password_too_short` {shortest} or `password_too_long` {longest}. */
export function checkPassword(password: string): void {
  const { shortest, longest } = passwordLimits
  const length = lengthOf(asTyped(password))
  if (length < shortest) throw new Failure('password_too_short', { shortest })
  if (length > longest) throw new Failure('password_too_long', { longest })
}

export async function hashPassword(password: string): Promise<string> {
  checkPassword(password)
  return hash(asTyped(password), cost)
}

/** Stands in for the hash of an account that is not there, so that looking costs the same. */
let nobody: Promise<string> | null = null

/** Whether the password is the one behind the hash. Without a hash: the same work, and never. */
export async function passwordHolds(stored: string | null, password: string): Promise<boolean> {
  nobody ??= hash('no account has this password', cost)
  const instead = await nobody
  const same = await verify(stored ?? instead, asTyped(password))
  return same && stored !== null
}
