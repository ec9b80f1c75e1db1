import { readFileSync } from 'node:fs'
import { afterEach, expect, test } from 'vitest'
import { type LabelLaneOptions, openLabelReader } from '../../src/photo/label-lane.ts'
import type { LabelReader } from '../../src/photo/label-words.ts'
import type { LabelDone, LabelJob } from '../../src/photo/label-worker.ts'
import { startWorker, type Worker } from '../../src/photo/worker-process.ts'
import { readLines } from '../../src/textile/label-lines.ts'
import { plain } from '../help/pictures.ts'

/** Drawn by test/labels; it lies on its side. */
const label = readFileSync(new URL('label.jpg', import.meta.url))

let reader: LabelReader
/** The processes this test's reader has started, in order. */
let workers: Worker<LabelJob, LabelDone>[] = []
afterEach(async () => {
  await reader.close()
  workers = []
})

function open(options: LabelLaneOptions = {}): void {
  const start = () => {
    const worker = startWorker<LabelJob, LabelDone>('label-worker')
    workers.push(worker)
    return worker
  }
  reader = openLabelReader({ start, ...options })
}

const outcome = (work: Promise<unknown>) =>
  work.then(
    () => 'read',
    (error: { code?: string }) => error.code,
  )

test('a label is read as its words stand, and the reader is ready from then on', async () => {
  open()
  expect(reader.state()).toBe('starting')
  const { lines, faults } = await reader.read(label)
  expect(reader.state()).toBe('ready')
  expect(faults).toEqual([])
  expect(readLines(lines)).toMatchObject({
    sure: true,
    blocks: [
      {
        fibres: [
          { fibre: 'cotton', percent: 92 },
          { fibre: 'elastane', percent: 8 },
        ],
      },
    ],
    iron: { level: 'warm' },
  })
})

test('a picture without words has none, and that is its fault', async () => {
  open()
  const grey = await plain(400, 300).jpeg().toBuffer()
  expect(await reader.read(grey)).toMatchObject({ lines: [], faults: ['no-words'] })
})

test('bytes that are no picture fail their own reading, and the next is read', async () => {
  open()
  expect(await outcome(reader.read(Buffer.from('no picture')))).toBe('label_unread')
  expect(await outcome(reader.read(label.subarray(0, 3000)))).toBe('label_unread')
  expect(await outcome(reader.read(label))).toBe('read')
  expect(workers).toHaveLength(1)
})

test('a killed process fails the photo it was at, and those that wait are read by another', async () => {
  open()
  const outcomes = [label, label].map((jpeg) => outcome(reader.read(jpeg)))
  await workers[0]!.end()
  expect(await Promise.all(outcomes)).toEqual(['label_unread', 'read'])
  expect(workers).toHaveLength(2)
})

test('a process that holds too much is replaced, and photos that wait are read by the next', async () => {
  open({ isSpent: () => true })
  const grey = await plain(400, 300).jpeg().toBuffer()
  const outcomes = [grey, grey].map((jpeg) => outcome(reader.read(jpeg)))
  expect(await Promise.all(outcomes)).toEqual(['read', 'read'])
  while (workers.length < 3) await new Promise((done) => setTimeout(done, 20))
  expect(workers.map((worker) => worker.alive())).toEqual([false, false, true])
})

test.each([
  { held: 120e6, processes: 1 },
  { held: 900e6, processes: 3 },
])('where each reading leaves $held bytes, two readings take $processes processes', async (at) => {
  const words = { lines: [], faults: [] }
  let started = 0
  const start = (): Worker<LabelJob, LabelDone> => {
    started += 1
    return {
      ask: async () => ({ words, held: at.held }),
      alive: () => true,
      pid: undefined,
      end: async () => {},
    }
  }
  reader = openLabelReader({ start })
  expect(await reader.read(label)).toEqual(words)
  expect(await reader.read(label)).toEqual(words)
  await new Promise((done) => setImmediate(done))
  expect(started).toBe(at.processes)
})

test('photos beyond the queue are turned away at once', async () => {
  open({ most: 1 })
  const outcomes = [label, label].map((jpeg) => outcome(reader.read(jpeg)))
  expect(await Promise.all(outcomes)).toEqual(['read', 'busy'])
})

test('where words cannot be read, that is told once with the reason, and nobody waits', async () => {
  const told: string[] = []
  const answers: Worker<LabelJob, LabelDone> = {
    ask: async () => ({ absent: 'no such package', held: 0 }),
    alive: () => true,
    pid: undefined,
    end: async () => {},
  }
  reader = openLabelReader({ start: () => answers, onAbsent: (why) => told.push(why) })
  expect(await outcome(reader.read(label))).toBe('label_unread')
  expect(reader.state()).toBe('absent')
  expect(await outcome(reader.read(label))).toBe('label_unread')
  expect(told).toEqual(['no such package'])
})

test('it loads by itself after a while', async () => {
  open({ loadAfterMs: 1 })
  while (reader.state() === 'starting') await new Promise((done) => setTimeout(done, 50))
  expect(reader.state()).toBe('ready')
})
