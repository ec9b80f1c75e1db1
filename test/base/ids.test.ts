import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { newId, newKey, sha256 } from '../../src/base/ids.ts'

test('ids and keys are of their length, and never the same twice', () => {
  // More than are drawn at once.
  const ids = Array.from({ length: 2_000 }, newId)
  expect(ids.filter((id) => !/^[\w-]{16}$/.test(id))).toEqual([])
  expect(new Set(ids).size).toBe(ids.length)
  const keys = Array.from({ length: 200 }, newKey)
  expect(keys.filter((key) => !/^[\w-]{32}$/.test(key))).toEqual([])
  expect(new Set(keys).size).toBe(keys.length)
})

// FIPS 180-4's example of one block, from its "Examples with Intermediate Values" (csrc.nist.gov).
test('a hash is SHA-256 of text as UTF-8, and of bytes', () => {
  expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad')
  const text = 'Größe 38 – flannel'
  expect(sha256(Buffer.from(text))).toBe(sha256(text))
  expect(sha256(text)).toBe(createHash('sha256').update(text).digest('hex'))
})
