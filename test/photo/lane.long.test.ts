import { afterEach, beforeEach, expect, test } from 'vitest'
import { type Lane, type LaneOptions, openLane } from '../../src/photo/lane.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import type { Done, Job } from '../../src/photo/work.ts'
import { startWorker, type Worker, wasStarved } from '../../src/photo/worker-process.ts'
import { garments } from '../demo/pile.ts'
import { photoOf } from '../demo/reply.ts'
import { startChild } from '../help/child.ts'
import { grain, plain } from '../help/pictures.ts'

let lane: Lane
/** The processes this test's lane has started, in order. */
let workers: Worker<Job, Done>[]

beforeEach(() => {
  workers = []
})
afterEach(() => lane.close())

function open(options: LaneOptions = {}): void {
  const start = () => {
    const worker = startWorker<Job, Done>('worker')
    workers.push(worker)
    return worker
  }
  lane = openLane({ start, ...options })
}

const small = () => plain(400, 300).jpeg().toBuffer()
const outcome = (work: Promise<unknown>) =>
  work.then(
    () => 'safe',
    (error: { code?: string }) => error.code,
  )

test('the lane gives what making it safe here would give', async () => {
  open()
  const photo = await grain(1000, 800)
  const there = await lane.makeSafe(photo)
  const here = await makeSafe(photo)
  expect(there.seen).toEqual(here.seen)
  expect([there.width, there.height]).toEqual([here.width, here.height])
  for (const size of ['full', 'view', 'thumb', 'cloth'] as const) {
    expect(Buffer.compare(there[size], here[size])).toBe(0)
  }
})

test('one process serves all photos, in the order they came', async () => {
  open()
  const order: number[] = []
  const photos = [await grain(1500, 1200), await small(), await small()]
  await Promise.all(photos.map((photo, n) => lane.makeSafe(photo).then(() => order.push(n))))
  expect(order).toEqual([0, 1, 2])
  expect(workers).toHaveLength(1)
})

test('a refusal keeps its name and its figures', async () => {
  open()
  await expect(lane.makeSafe(await plain(200, 300).png().toBuffer())).rejects.toMatchObject({
    name: 'Failure',
    code: 'too_small',
    details: { width: 200, height: 300, least: 256 },
  })
  expect(await outcome(lane.makeSafe((await grain(600, 500)).subarray(0, 9000)))).toBe(
    'corrupt_image',
  )
  expect(await outcome(lane.makeSafe(await small()))).toBe('safe')
  expect(workers).toHaveLength(1)
})

test('what is no photo at all never starts the process', async () => {
  open()
  expect(await outcome(lane.makeSafe(Buffer.from('%PDF-1.7')))).toBe('unsupported_type')
  expect(workers).toHaveLength(0)
})

test('a killed process fails the photo it was at, and those that wait are served by another', async () => {
  open()
  const photos = [await grain(3000, 2500), await small(), await small()]
  const outcomes = photos.map((photo) => outcome(lane.makeSafe(photo)))
  await workers[0]!.end()
  expect(await Promise.all(outcomes)).toEqual(['photo_failed', 'safe', 'safe'])
  expect(workers).toHaveLength(2)
})

test('a process that died while idle is replaced', async () => {
  open()
  await lane.makeSafe(await small())
  await workers[0]!.end()
  expect(await outcome(lane.makeSafe(await small()))).toBe('safe')
  expect(workers).toHaveLength(2)
})

test('a photo that takes too long is given up, process and all', async () => {
  open({ limitMs: 1 })
  expect(['photo_failed', 'busy']).toContain(await outcome(lane.makeSafe(await small())))
  expect(workers[0]!.alive()).toBe(false)
})

// proc(5) tells the processor's time that a process had.
test.runIf(process.platform === 'linux')(
  'a photo that the machine had no time for may come again',
  async () => {
    open({ limitMs: 300 })
    const asked = outcome(lane.makeSafe(await small()))
    process.kill(workers[0]!.pid!, 'SIGSTOP')
    expect(await asked).toBe('busy')
    expect(workers[0]!.alive()).toBe(false)
  },
)

test('time runs out for want of it below half of it, or else by the work itself', () => {
  expect([0, 14_990, 15_000].map((now) => wasStarved(0, now, 30_000))).toEqual([true, true, false])
  expect(wasStarved(20_000, 30_000, 30_000)).toBe(true)
  expect([wasStarved(null, 0, 30_000), wasStarved(0, null, 30_000)]).toEqual([false, false])
})

test('photos beyond the queue are turned away at once', async () => {
  open({ most: 2 })
  const photo = await small()
  const outcomes = [1, 2, 3].map(() => outcome(lane.makeSafe(photo)))
  expect(await Promise.all(outcomes)).toEqual(['safe', 'safe', 'busy'])
  expect(await outcome(lane.makeSafe(photo))).toBe('safe')
})

test('a closed lane sends what waits elsewhere and has no process', async () => {
  open()
  const photo = await small()
  const outcomes = [1, 2].map(() => outcome(lane.makeSafe(photo)))
  await lane.close()
  expect(await Promise.all(outcomes)).toEqual(['busy', 'busy'])
  expect(await outcome(lane.makeSafe(photo))).toBe('busy')
  expect(workers.map((worker) => worker.alive())).toEqual([false])
})

test('an idle lane lets its process end, and ends with it', async () => {
  open()
  const child = startChild('test/help/photographing.ts')
  // Its output closes only when the worker, which shares its stderr, has ended too.
  expect(await child.ended()).toMatchObject({ code: 0, stdout: '640x480\n', stderr: '' })
})

test('closing the lane is waited for, though nothing else keeps the process going', async () => {
  open()
  const child = startChild('test/help/photographing.ts', ['close'])
  expect(await child.ended()).toMatchObject({ code: 0, stdout: '640x480\nclosed\n', stderr: '' })
})

test('a garment is looked at where that is asked for, and then alone', async () => {
  open()
  const photo = await plain(600, 500).jpeg().toBuffer()
  const { look, photo: safe } = await lane.look(photo)
  expect(look).toMatchObject({ width: 600, height: 500 })
  expect(Buffer.compare(safe.full, (await lane.makeSafe(photo)).full)).toBe(0)
})

test('a laid-out shirt with a picture on it is seen as one, and fit to be asked by', async () => {
  open()
  const shirt = garments.find(({ answers }) => answers.pattern?.value === 'single')!
  const { look } = await lane.look(await photoOf(shirt))
  expect(look?.fitness.problems).toEqual([])
  expect(look?.print.class).toBe('single')
  expect(look?.graphic).not.toBeNull()
})
