import { afterEach, expect, test, vi } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { openPlanningLane } from '../../src/planning/lane.ts'
import { openPlans, type Plans, type PlansOptions } from '../../src/planning/plans.ts'
import { type LayJob, layQuilt } from '../../src/quilt/place/lay-quilt.ts'
import { checkPlan } from '../../src/quilt/plan/check.ts'
import { readPile } from '../../src/quilt/plan/instance.ts'
import { smallPile } from '../help/piles.ts'

const lines: Record<string, unknown>[] = []
const log = openLog('info', { write: (line: string) => void lines.push(JSON.parse(line)) })
const stand = (name: string) => new URL(`../help/planning/${name}.mjs`, import.meta.url)
const pileOf = (seed: number) => readPile(smallPile(seed))

let plans: Plans
const open = (options: Omit<PlansOptions, 'log'> = {}) => {
  lines.length = 0
  plans = openPlans({ log, firstMs: 10_000, ...options })
}
afterEach(() => plans.close())

test('a plan is made once, and asked again the proven one is there', async () => {
  open()
  const first = await plans.of(pileOf(3))
  expect(first.best?.proven).toBe(true)
  const { pile, plan, worth } = first.best!
  expect(checkPlan(pile, plan)).toEqual({ problems: [], worth })
  const again = await plans.of(pileOf(3))
  expect(again).toEqual({ best: first.best, working: false })
  expect(again.best).toBe(first.best)
})

test('what was planned is told to the log, and of whose pile nothing', async () => {
  open()
  const { best } = await plans.of(pileOf(3))
  const { V, Q, P, M } = best!.worth
  const line = lines.find(({ msg }) => msg === 'planned')!
  expect(line.planned).toMatchObject({ proven: true, V, Q, P, M, ms: expect.any(Number) })
  expect(JSON.stringify(lines)).not.toContain('"id"')
})

test('a pile that is otherwise in anything is planned for itself', async () => {
  open()
  const pile = pileOf(3)
  const one = await plans.of(pile)
  const wider = await plans.of({ ...pile, cloth: { ...pile.cloth, width: pile.cloth.width + 4 } })
  expect(wider.best).not.toBe(one.best)
})

test('plans that were asked for longest ago are let go', async () => {
  open({ most: 2 })
  const first = await plans.of(pileOf(1))
  const second = await plans.of(pileOf(2))
  expect((await plans.of(pileOf(1))).best).toBe(first.best)
  await plans.of(pileOf(3))
  expect((await plans.of(pileOf(1))).best).toBe(first.best)
  expect((await plans.of(pileOf(2))).best).not.toBe(second.best)
})

test('who asks does not wait for a plan that takes long', async () => {
  open({ lane: openPlanningLane({ file: stand('hangs'), graceMs: 60_000 }), firstMs: 20 })
  expect(await plans.of(pileOf(3))).toEqual({ best: null, working: true })
})

test('who is patient waits for as long as that, and no longer', async () => {
  open({ lane: openPlanningLane({ file: stand('hangs'), graceMs: 60_000 }) })
  expect(await plans.of(pileOf(3), 1)).toEqual({ best: null, working: true })
})

test('a plan that was given too little time to prove is made anew for who gives it more', async () => {
  open()
  const hasty = await plans.of(pileOf(3), 10_000, 0)
  expect(hasty.best?.proven).toBe(false)
  expect((await plans.of(pileOf(3), 10_000, 0)).best).toBe(hasty.best)
  expect((await plans.of(pileOf(3), 0)).working).toBe(true)
  await vi.waitFor(() => expect(plans.known(pileOf(3))?.best?.proven).toBe(true), 10_000)
  const { best } = plans.known(pileOf(3))!
  expect((await plans.of(pileOf(3), 10_000, 0)).best).toBe(best)
})

test('what is known is told at once, and nothing is begun', async () => {
  open()
  expect(plans.known(pileOf(3))).toBeNull()
  expect(plans.known(pileOf(3))).toBeNull()
  const asked = plans.of(pileOf(3))
  expect(plans.known(pileOf(3))).toEqual({ best: null, working: true })
  const { best } = await asked
  expect(plans.known(pileOf(3))).toEqual({ best, working: false })
  expect(lines.filter(({ msg }) => msg === 'planned')).toHaveLength(1)
})

/** A pile whose panels bring no patterns. */
const unlookedAt = readPile({
  sizes: [{ w: 20, h: 20, rot: false }],
  roles: [{ name: 'focal' }],
  demand: [{ size: 0, role: 0, count: 12 }],
  garments: [42, 61].map((W) => ({ L: 50, roles: [0], panels: [{ W, H: 60 }] })),
  cloth: { width: 160, step: 36 },
})

test('panels that are warm are known when the plan is asked for', async () => {
  const lane = openPlanningLane({ log })
  open({ lane })
  plans.warm(unlookedAt)
  await lane.panels.look(unlookedAt, 60_000)
  const { best } = await plans.of(unlookedAt)
  // By hand: two by three squares of one panel, three by three of the other.
  expect(best).toMatchObject({ hurried: 0, proven: true, worth: { P: 0 } })
  expect(lines.filter(({ msg }) => msg === 'panels looked at')).toHaveLength(1)
})

test('a plan in a hurry stands until its panels are known, and is then made anew', async () => {
  const lane = openPlanningLane({ log })
  open({ lane, budgetMs: 1 })
  const first = await plans.of(unlookedAt)
  expect(first.best).toMatchObject({ hurried: 2, proven: false })
  expect(first.working).toBe(true)
  await lane.panels.look(unlookedAt, 60_000)
  const begun = await plans.of(unlookedAt)
  expect(begun).toEqual({ best: first.best, working: true })
  await vi.waitFor(() => expect(plans.known(unlookedAt)?.best?.hurried).toBe(0), 30_000)
  await vi.waitFor(() => expect(plans.known(unlookedAt)?.working).toBe(false), 30_000)
  const last = await plans.of(unlookedAt)
  expect(last.working).toBe(false)
  expect((await plans.of(unlookedAt)).best).toBe(last.best)
})

test('a plan whose panels are given up is not made again and again', async () => {
  open({ lane: openPlanningLane({ log, panelFile: stand('dies') }) })
  const { best } = await plans.of(unlookedAt)
  expect(best).toMatchObject({ hurried: 2, proven: false, wrong: null })
  await vi.waitFor(() => expect(plans.known(unlookedAt)?.working).toBe(false), 30_000)
  const again = await plans.of(unlookedAt)
  expect(again.working).toBe(false)
  expect((await plans.of(unlookedAt)).best).toBe(again.best)
})

const quilt = (seed: number): LayJob => ({
  pieces: [0, 1, 2, 3].map((n) => ({
    role: 'focal',
    cut: { w: 5, h: 5 },
    parts: [{ x: (n % 2) * 4.5, y: Math.floor(n / 2) * 4.5, w: 4.5, h: 4.5 }],
    sash: false,
  })),
  given: [1, 2].map((garment) => ({ garment, role: 'focal', size: { w: 5, h: 5 }, count: 2 })),
  colours: [],
  cloth: {},
  seed,
  pins: [],
})

test('a quilt is laid once, and asked for again it is there', async () => {
  open()
  const { laid, working } = await plans.laid(quilt(1), 60_000)
  expect([laid, working]).toEqual([layQuilt(quilt(1)), false])
  expect((await plans.laid(quilt(1), 0)).laid).toBe(laid)
  expect((await plans.laid(quilt(2), 60_000)).laid).not.toBe(laid)
  const [line] = lines.filter(({ msg }) => msg === 'laid')
  expect(line!.laid).toEqual({ pieces: 4, ms: expect.any(Number), touching: 0, proven: true })
})

test('a quilt that cannot be laid is told to the log, and the next one is laid', async () => {
  open()
  const wrong = { ...quilt(1), given: [{ ...quilt(1).given[0]!, count: 5 }] }
  expect(await plans.laid(wrong, 60_000)).toEqual({ laid: null, working: false })
  expect(JSON.stringify(lines)).toContain('garment 1 gives 5')
  expect((await plans.laid(quilt(1), 60_000)).laid).not.toBeNull()
})

test.each(['dies', 'throws', 'hangs'])('a laying thread that %s costs one quilt', async (name) => {
  open({ lane: openPlanningLane({ layFile: stand(name), layMs: 50 }) })
  expect(await plans.laid(quilt(1), 60_000)).toEqual({ laid: null, working: false })
  expect(lines.find(({ msg }) => msg === 'not laid')).toMatchObject({ level: 40 })
})

test('closed at work, everybody has an answer', async () => {
  const hangs = stand('hangs')
  const files = { file: hangs, panelFile: hangs, layFile: hangs }
  open({ lane: openPlanningLane({ ...files, graceMs: 60_000 }), budgetMs: 60_000 })
  const asked = [
    plans.of(pileOf(3), 60_000),
    plans.of(unlookedAt, 60_000),
    plans.laid(quilt(1), 60_000),
    plans.cutLists(unlookedAt, [{ garment: 0, panel: 0, pattern: [6], times: 1 }], 60_000),
  ]
  await plans.close()
  const [one, two, laid, cuts] = await Promise.all(asked)
  for (const progress of [one, two]) expect(progress).toMatchObject({ best: { proven: false } })
  expect(laid).toEqual({ laid: null, working: false })
  expect(cuts).toEqual({ lists: [null], working: false })
})

test('a thread that died is told to the log, and the next who asks has the pile planned anew', async () => {
  open({ lane: openPlanningLane({ file: stand('dies') }) })
  const one = await plans.of(pileOf(3))
  expect(one.best?.wrong).toMatch(/thread ended/)
  expect(lines.find(({ msg }) => msg === 'planning ended early')).toMatchObject({ level: 40 })
  const two = await plans.of(pileOf(3))
  expect(two.best).not.toBe(one.best)
})

test('a lane with too many piles is busy, and none the worse for it', async () => {
  const lane = openPlanningLane({ most: 1 })
  open({ lane })
  const first = plans.of(pileOf(1))
  await expect(plans.of(pileOf(2))).rejects.toMatchObject({ code: 'busy' })
  await first
  expect((await plans.of(pileOf(2))).best?.proven).toBe(true)
})
