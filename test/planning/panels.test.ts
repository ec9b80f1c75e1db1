import { afterEach, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { openPanels, type Panels, type PanelsOptions } from '../../src/planning/panels.ts'
import { type Pile, readPile } from '../../src/quilt/plan/instance.ts'
import { panelAsked, patternsOf } from '../../src/quilt/plan/panels.ts'
import { replayed } from '../help/replay-cuts.ts'

const lines: Record<string, unknown>[] = []
const log = openLog('info', { write: (line: string) => void lines.push(JSON.parse(line)) })
const stand = (name: string) => new URL(`../help/planning/${name}.mjs`, import.meta.url)

let panels: Panels
const open = (options: PanelsOptions = {}) => {
  lines.length = 0
  panels = openPanels({ log, ...options })
}
afterEach(() => panels.close())

/** A pile of one garment with panels of these widths, all 60 quarter inches long. */
const pileOf = (...widths: number[]): Pile =>
  readPile({
    sizes: [
      { w: 20, h: 20, rot: false },
      { w: 10, h: 30, rot: true },
    ],
    roles: [{ name: 'focal' }],
    demand: [
      { size: 0, role: 0, count: 8 },
      { size: 1, role: 0, count: 8 },
    ],
    garments: [{ L: 50, roles: [0], panels: widths.map((W) => ({ W, H: 60 })) }],
    cloth: { width: 160, step: 36 },
  })

const found = (pile: Pile) => panels.withKnown(pile).garments[0]!.panels.map((one) => one.patterns)
const told = (msg: string) => lines.filter((line) => line.msg === msg)
const long = 60_000

test('panels are looked at when nobody waits, each once, and found as the cutting finds them', async () => {
  open()
  const pile = pileOf(40, 50, 40)
  expect(panels.missing(pile)).toBe(3)
  panels.warm(pile)
  expect(panels.waits(pile)).toBe(true)
  await panels.look(pile, long)
  expect([panels.missing(pile), panels.waits(pile)]).toEqual([0, false])
  const garment = pile.garments[0]!
  expect(found(pile)).toEqual([0, 1, 2].map((at) => patternsOf(panelAsked(pile, garment, at))))
  panels.warm(pile)
  await panels.look(pile, long)
  expect(told('panels looked at')).toMatchObject([
    { panels: { looked: 2, givenUp: 0, left: 0, ms: expect.any(Number) } },
  ])
})

test('a pile that wants more than the panel reaches for asks the same of it', async () => {
  open()
  const pile = pileOf(40)
  await panels.look(pile, long)
  expect(panels.missing({ ...pile, demand: [[9], [300]] })).toBe(0)
  // Of 10 by 30 eight lie in 40 by 60; two are fewer than it reaches for.
  expect(panels.missing({ ...pile, demand: [[8], [2]] })).toBe(1)
})

test('a panel that somebody waits for comes before those that nobody waits for', async () => {
  open({ file: stand('counts') })
  const many = pileOf(30, 31, 32, 33)
  panels.warm(many)
  const urgent = pileOf(60)
  await panels.look(urgent, long)
  // The first was at work already.
  expect(found(urgent)).toEqual([[[2]]])
  await panels.look(many, long)
  expect(found(many)).toEqual([[[1]], [[3]], [[4]], [[5]]])
})

test('while a pile is planned only what somebody waits for is looked at', async () => {
  open({ file: stand('counts') })
  const goOn = panels.hold()
  const spare = pileOf(30)
  panels.warm(spare)
  await panels.look(pileOf(31), long)
  expect([panels.missing(spare), panels.waits(spare)]).toEqual([1, true])
  goOn()
  await panels.look(spare, long)
  expect(panels.missing(spare)).toBe(0)
})

test('a panel that takes too long is given up for good, and those after it are found', async () => {
  open({ file: stand('counts'), limitMs: 500 })
  const pile = pileOf(40, 120, 50)
  await panels.look(pile, long)
  expect([panels.missing(pile), panels.waits(pile)]).toEqual([1, false])
  expect(found(pile)[1]).toBeUndefined()
  expect(told('panel given up')).toMatchObject([
    { level: 40, panel: { W: 120, H: 60, sizes: 2 }, planning: 'it took too long' },
  ])
  panels.warm(pile)
  expect(panels.waits(pile)).toBe(false)
})

test.each(['dies', 'throws'])('a thread that %s costs the panel it was at', async (name) => {
  open({ file: stand(name) })
  const pile = pileOf(40, 50)
  await panels.look(pile, long)
  expect([panels.missing(pile), panels.waits(pile)]).toEqual([2, false])
  expect(told('panel given up')).toHaveLength(2)
})

test('a panel that wants too much memory costs that panel, and nobody else', async () => {
  open({ file: stand('hoards'), memoryMb: 16 })
  const pile = pileOf(40)
  await panels.look(pile, long)
  expect([panels.missing(pile), panels.waits(pile)]).toEqual([1, false])
  expect(JSON.stringify(told('panel given up'))).toContain('memory')
})

test('who waits waits no longer than asked, and the panel is looked at all the same', async () => {
  open({ file: stand('hangs'), limitMs: long })
  const pile = pileOf(40)
  await panels.look(pile, 1)
  expect(panels.waits(pile)).toBe(true)
})

test('closed while a panel hangs, nobody waits any more and nothing begins', async () => {
  open({ file: stand('hangs'), limitMs: long })
  const pile = pileOf(40, 50)
  const looking = panels.look(pile, long)
  await panels.close()
  await looking
  panels.warm(pile)
  await panels.look(pile, long)
  expect(panels.waits(pile)).toBe(false)
  expect(told('panel given up')).toEqual([])
})

test('of too many that nobody waits for the oldest are let go', async () => {
  open({ file: stand('counts'), mostWaiting: 2 })
  const goOn = panels.hold()
  const pile = pileOf(30, 31, 32, 33)
  panels.warm(pile)
  goOn()
  await panels.look(pileOf(33), long)
  expect(found(pile)).toEqual([undefined, undefined, [[1]], [[2]]])
})

test('lists of cuts come from the thread, are kept, and can be followed', async () => {
  open()
  const pile = pileOf(40, 50)
  const [narrow, wide] = [0, 1].map((at) => patternsOf(panelAsked(pile, pile.garments[0]!, at)))
  const cuts = [
    ...narrow!.map((pattern) => ({ garment: 0, panel: 0, pattern, times: 1 })),
    { garment: 0, panel: 1, pattern: wide![0]!, times: 1 },
  ]
  const early = await panels.cutLists(pile, cuts, 0)
  expect(early).toEqual({ lists: cuts.map(() => null), working: true })
  const { lists, working } = await panels.cutLists(pile, cuts, long)
  expect(working).toBe(false)
  expect(lists.length).toBeGreaterThan(2)
  for (const [n, list] of lists.entries()) {
    const { pattern } = cuts[n]!
    expect(replayed(list!.panel, list!.pattern)).toEqual([])
    expect(list!.sizes.map((size) => pattern[size])).toEqual(list!.pattern.counts)
    expect(list!.pattern.items).toHaveLength(pattern[0]! + pattern[1]!)
  }
  const again = await panels.cutLists(pile, cuts, 0)
  expect(again).toEqual({ lists, working: false })
})

test('a list of cuts that nothing gives is not looked for again and again', async () => {
  open()
  const pile = pileOf(40)
  const cuts = [{ garment: 0, panel: 0, pattern: [9, 9], times: 1 }]
  expect(await panels.cutLists(pile, cuts, long)).toEqual({ lists: [null], working: false })
  expect(await panels.cutLists(pile, cuts, 0)).toEqual({ lists: [null], working: false })
  expect(told('panels looked at')).toHaveLength(1)
})
