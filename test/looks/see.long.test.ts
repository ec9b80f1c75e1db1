import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { drawSet } from './draw-set.ts'
import { faults } from './look.ts'
import { openSet } from './open-set.ts'
import { readOf } from './read-kept.ts'
import { type Read, type Score, score } from './score.ts'
import { standInArt } from './stand-in-art.ts'

/** A set of its own, which nothing is trained on; its pictures are plain stars. */
const seed = 7719
const photos = 32
const long = 1200

const folder = mkdtempSync(join(tmpdir(), 'drawn-looks-'))
let found: Score
beforeAll(async () => {
  await drawSet(folder, seed, photos, standInArt, { told: () => ({ long }) })
  const reads: Read[] = []
  for (const kept of openSet(folder)) reads.push(await readOf(kept))
  found = score(reads)
}, 240_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('garments are told from what they lie on, and their colour is that of their cloth', () => {
  expect(found.sound).toBe(24)
  expect(found.maskIou).toBeGreaterThan(0.93)
  expect(found.colour?.median).toBeLessThan(1.5)
})

test('of the prints nine in ten are told, and of the faults that are there each in every second photo', () => {
  expect(found.print.right, JSON.stringify(found.misread)).toBeGreaterThanOrEqual(0.9)
  const caught = faults.flatMap((fault) => found.fitness[fault].caught ?? [])
  expect(caught).toHaveLength(4)
  expect(Math.min(...caught)).toBeGreaterThanOrEqual(0.5)
})

test('nothing is measured by what is no sheet', () => {
  expect(found.sheet.asked).toBeGreaterThan(0)
  expect(found.sheet.wrong).toEqual([])
})
