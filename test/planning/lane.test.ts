import { afterEach, expect, test } from 'vitest'
import { openPlanningLane, type PlanningLane } from '../../src/planning/lane.ts'
import { bestPlan } from '../../src/planning/plan-pile.ts'
import { checkPlan } from '../../src/quilt/plan/check.ts'
import { readPile } from '../../src/quilt/plan/instance.ts'
import { smallPile } from '../help/piles.ts'

let lane: PlanningLane
afterEach(() => lane.close())

const pile = readPile(smallPile(3))
const stand = (name: string) => new URL(`../help/planning/${name}.mjs`, import.meta.url)

test('a thread that dies leaves a plan, and the next pile gets another thread', async () => {
  lane = openPlanningLane({ file: stand('dies') })
  const first = await bestPlan(pile, lane)
  expect(first.wrong).toMatch(/thread ended/)
  expect(first.proven).toBe(false)
  expect(checkPlan(first.pile, first.plan).problems).toEqual([])
  const second = await bestPlan(pile, lane)
  expect(second.wrong).toMatch(/thread ended/)
})

test('a thread that throws says what it threw', async () => {
  lane = openPlanningLane({ file: stand('throws') })
  expect((await bestPlan(pile, lane)).wrong).toMatch(/out of cloth/)
})

test('a thread that hangs is ended when its time is up', async () => {
  lane = openPlanningLane({ file: stand('hangs'), graceMs: 50 })
  const { wrong, plan, pile: whole } = await bestPlan(pile, lane, { budgetMs: 50 })
  expect(wrong).toMatch(/too long/)
  expect(checkPlan(whole, plan).problems).toEqual([])
})

test('piles queue up for one thread, and those beyond the queue are turned away', async () => {
  lane = openPlanningLane({ most: 2 })
  const done: number[] = []
  const one = bestPlan(pile, lane).then(() => done.push(1))
  const two = bestPlan(readPile(smallPile(1)), lane).then(() => done.push(2))
  await expect(bestPlan(pile, lane)).rejects.toMatchObject({ code: 'busy' })
  await Promise.all([one, two])
  expect(done).toEqual([1, 2])
  expect((await bestPlan(pile, lane)).proven).toBe(true)
})

test('a closed lane leaves a plan', async () => {
  lane = openPlanningLane()
  await lane.close()
  expect((await bestPlan(pile, lane)).wrong).toMatch(/closed/)
})
