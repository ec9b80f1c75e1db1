import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { see } from '../../src/photo/look/look.ts'
import { drawSet } from './draw-set.ts'
import { openSet } from './open-set.ts'
import { type Read, type Score, score } from './score.ts'
import { standInArt } from './stand-in-art.ts'

/** A set of its own, which nothing is trained on; its pictures are plain stars. */
const seed = 7719
const photos = 48
const long = 1200

const folder = mkdtempSync(join(tmpdir(), 'drawn-looks-'))
let found: Score
beforeAll(async () => {
  await drawSet(folder, seed, photos, standInArt, { told: () => ({ long }) })
  const reads: Read[] = []
  for (const kept of openSet(folder)) {
    const { look, mask } = await see(readFileSync(kept.path))
    const read = { ...mask, data: mask.data.map((one) => 255 * one) }
    reads.push({
      truth: kept.truth,
      reading: { ...look, scale: null, size: null, mask: read },
      mask: await kept.mask(),
    })
  }
  found = score(reads)
}, 240_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('a garment is told from what it lies on', () => {
  expect(found.sound).toBeGreaterThanOrEqual(30)
  expect(found.maskIou).toBeGreaterThan(0.93)
})
