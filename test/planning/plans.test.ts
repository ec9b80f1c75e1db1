import { afterEach, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { openPlanningLane } from '../../src/planning/lane.ts'
import { openPlans, type Plans, type PlansOptions } from '../../src/planning/plans.ts'
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
