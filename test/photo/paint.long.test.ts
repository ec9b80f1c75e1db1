import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import sharp from 'sharp'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { openPaints, type PaintOptions, type Paints } from '../../src/photo/paint.ts'
import type { Painted, PaintJob } from '../../src/photo/painter.ts'
import { startWorker, type Worker } from '../../src/photo/worker-process.ts'
import { plain } from '../help/pictures.ts'

let paints: Paints
let workers: Worker<PaintJob, Painted>[]

beforeEach(() => {
  workers = []
})
afterEach(() => paints.close())

function open(options: PaintOptions = {}): void {
  const start = () => {
    const worker = startWorker<PaintJob, Painted>('painter')
    workers.push(worker)
    return worker
  }
  paints = openPaints({ start, ...options })
}

const svg = (body: string, box = '0 0 60 73') =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}">${body}</svg>`
const red = svg('<rect width="60" height="73" fill="#a63d2f"/>')
const paint = (name: string, drawing: string) => paints.paint(name, () => Promise.resolve(drawing))
const outcome = (work: Promise<unknown>) =>
  work.then(
    () => 'painted',
    (error: { code?: string }) => error.code,
  )

/** The colour of a pixel, by its share of the width and the height. */
async function pixel(png: Uint8Array, across = 0.5, down = 0.5): Promise<number[]> {
  const { data, info } = await sharp(png).raw().toBuffer({ resolveWithObject: true })
  const at = Math.floor(info.height * down) * info.width + Math.floor(info.width * across)
  return [...data.subarray(at * info.channels, at * info.channels + 3)]
}

test('a drawing is a PNG of 1200 pixels across, in its colours, on white', async () => {
  open()
  const png = await paint('one', svg('<rect width="30" height="73" fill="#a63d2f"/>'))
  const { format, width, height, hasAlpha } = await sharp(png).metadata()
  expect({ format, width, height, hasAlpha }).toEqual({
    format: 'png',
    width: 1200,
    height: 1460,
    hasAlpha: false,
  })
  expect(await pixel(png, 0.25)).toEqual([0xa6, 0x3d, 0x2f])
  expect(await pixel(png, 0.75)).toEqual([255, 255, 255])
})

test('cloth that is embedded is shown; files and addresses are reached by none', async () => {
  open()
  const file = `data:image/png;base64,${(await plain(40, 40).png().toBuffer()).toString('base64')}`
  const cloth = (href: string) =>
    svg(
      `<defs><image id="c" width="60" height="73" preserveAspectRatio="none" href="${href}"/></defs><use href="#c"/>`,
    )
  const seen = await pixel(await paint('embedded', cloth(file)))
  expect(seen).not.toEqual([255, 255, 255])
  const beside = join(mkdtempSync(join(tmpdir(), 'pieceworth-paint-')), 'cloth.png')
  await plain(40, 40).png().toFile(beside)
  for (const href of [beside, `file://${beside}`, 'http://127.0.0.1:9/cloth.png']) {
    expect(await pixel(await paint(href, cloth(href)))).toEqual([255, 255, 255])
  }
  rmSync(dirname(beside), { recursive: true })
})

test('what is no drawing, too large or would grow without end is refused, and the process goes on', async () => {
  open()
  const entities = Array.from(
    { length: 9 },
    (_, n) => `<!ENTITY e${n + 1} "${`&e${n};`.repeat(10)}">`,
  )
  const hostile = [
    'not a drawing',
    (await plain(300, 300).jpeg().toBuffer()).toString('latin1'),
    svg('<rect width="1" height="1"/>', '0 0 1 100000'),
    red.replace('<svg', '<svg width="900000" height="900000"'),
    `<!DOCTYPE svg [<!ENTITY e0 "eeeeeeeeee">${entities.join('')}]>${svg('<text>&e9;</text>')}`,
    svg(`<desc>${'x'.repeat(24 * 1024 * 1024)}</desc>`),
  ]
  const outcomes: unknown[] = []
  for (const [n, one] of hostile.entries()) outcomes.push(await outcome(paint(`hostile ${n}`, one)))
  expect(outcomes).toEqual(hostile.map(() => 'picture_failed'))
  expect(await outcome(paint('red', red))).toBe('painted')
  expect(workers).toHaveLength(1)
})

test('a drawing is made once: later it is there, and two who ask at the same time share it', async () => {
  open()
  let drawn = 0
  const draw = async () => {
    drawn += 1
    return red
  }
  const [one, two] = await Promise.all([paints.paint('red', draw), paints.paint('red', draw)])
  expect(one).toBe(two)
  await workers[0]!.end()
  expect(await paints.paint('red', draw)).toBe(one)
  expect(drawn).toBe(1)
})

test('what was asked for longest ago goes when there is no room', async () => {
  open()
  const { byteLength } = await paint('red', red)
  await paints.close()
  open({ keptBytes: 2.5 * byteLength })
  const drawn: string[] = []
  const ask = (name: string) =>
    paints.paint(name, async () => {
      drawn.push(name)
      return red
    })
  for (const name of ['a', 'b', 'a', 'c', 'a', 'b']) await ask(name)
  expect(drawn).toEqual(['a', 'b', 'c', 'b'])
})

test('a killed process fails the drawing it was at, and those that wait are made by another', async () => {
  open()
  const outcomes = ['a', 'b'].map((name) => outcome(paint(name, red)))
  await new Promise((resolve) => setImmediate(resolve))
  await workers[0]!.end()
  expect(await Promise.all(outcomes)).toEqual(['picture_failed', 'painted'])
  expect(await outcome(paint('a', red))).toBe('painted')
})

test('a drawing that takes too long is given up; more than may wait are turned away', async () => {
  open({ limitMs: 1, most: 1 })
  const outcomes = ['a', 'b'].map((name) => outcome(paint(name, red)))
  const [first, second] = await Promise.all(outcomes)
  // On a machine with much to do the process may have had no time at all.
  expect(['picture_failed', 'busy']).toContain(first)
  expect(second).toBe('busy')
  expect(workers[0]!.alive()).toBe(false)
})
