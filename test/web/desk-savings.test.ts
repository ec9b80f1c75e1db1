import { afterAll, beforeAll, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { giveRoles } from '../../src/desk/garment-roles.ts'
import { planReviewed } from '../../src/desk/planned.ts'
import { review } from '../../src/desk/review.ts'
import { pricedSavings } from '../../src/desk/savings.ts'
import { openSession } from '../../src/desk/sessions.ts'
import type { Planned } from '../../src/planning/plan-pile.ts'
import { openPlans, type Plans } from '../../src/planning/plans.ts'
import { withoutGarment, withoutRule } from '../../src/quilt/plan/changes.ts'
import { settledOf } from '../../src/quilt/plan/settled.ts'
import { sessionCookie } from '../../src/web/desk/cookies.ts'
import { addStaff } from '../help/desk.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const address = '/desk/piles/1/plan'

const shirt: Script = { kind: said('button-shirt'), size: said('L') }
const garments: readonly Script[] = [
  { ...shirt, name: said('Blue <b>flannel</b>'), details: said(['must-use']) },
  { ...shirt, name: said('Sunday shirt') },
  { kind: said('blouse'), size: said('2T'), name: said('First blouse') },
]
const wish: Script = {
  recipient: said('adult'),
  quilts: said('one'),
  quilt_size: said('crib'),
  layout_wish: said('plain-squares'),
}

const plain = (html: string): string =>
  html
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll(/\s+/g, ' ')

let opened: TestStore
let workshop: Workshop
let plans: Plans
/** Those that are waited for, and given time. */
let steady: Plans
let visitor: Visitor
let ivo: string
/** Asked in the stead of the plans, where a test takes their place. */
let stead: Partial<Plans> = {}

beforeAll(async () => {
  opened = await openSqlite()
  const { store } = opened
  // A first plan is waited for as long as it takes: these tests want the proven one.
  plans = openPlans({ log: openLog('silent'), firstMs: 30_000, budgetMs: 30_000 })
  steady = {
    ...plans,
    of: (pile) => (stead.of ?? plans.of)(pile, 30_000),
    known: (pile) => (stead.known ?? plans.known)(pile),
  }
  workshop = await openWorkshop(store, clock, { plans: steady })
  await confirmPile(workshop.conversation, garments, wish)
  ivo = await addStaff(store.db, 'Ivo')
  visitor = new Visitor(workshop.app)
  const { token } = await openSession(store.db, clock, await addStaff(store.db))
  visitor.cookies.set(sessionCookie, token)
})
afterAll(async () => {
  await workshop?.close()
  await opened?.end()
})

const look = () => review(opened.store.db, workshop.knowledge, '1')
const planned = async (): Promise<Planned> => {
  const { best } = await plans.of(planReviewed(await look()).pile!)
  return best!
}

test('what is saved is the difference to the plan of the changed pile, proven, and so is its price', async () => {
  const before = await planned()
  const reviewed = await look()
  const { found, left } = await pricedSavings(reviewed, before, steady, 30_000)
  expect(left).toBe(0)
  const by = (one: (typeof found)[number]) => Object.values(one.change).slice(0, 2).join(' ')
  expect(found.map(by)).toEqual(
    expect.arrayContaining(['rule share', 'more focal', 'more background']),
  )

  const share = found.find((one) => by(one) === 'rule share')!
  const free = (await plans.of(withoutRule(before.pile, 'share'))).best!
  expect(share.saves).toEqual({
    steps: before.worth.Q - free.worth.Q,
    pieces: before.worth.P - free.worth.P,
    garments: before.worth.V - free.worth.V,
    proven: true,
  })
  expect(share.saves.pieces).toBeGreaterThan(0)
  const priced = ({ pile, plan, proven }: Planned) =>
    reviewed.pile.priced(settledOf(pile, plan, proven))!.total.likely
  expect(share.price!.totalMinor).toBe(priced(free) - priced(before))

  const totals = found.map(({ price }) => price!.totalMinor)
  expect(totals).toEqual(totals.toSorted((a, b) => a - b))
  for (const { saves, price } of found) {
    expect(saves.steps > 0 || saves.pieces > 0 || price!.totalMinor < 0).toBe(true)
  }
})

test('a garment that gives little is tried without, and told where that is cheaper', async () => {
  const before = await planned()
  const { found } = await pricedSavings(await look(), before, steady, 30_000)
  const without = found.find(({ change }) => change.change === 'without')!
  expect(without.change).toEqual({ change: 'without', garment: 3 })
  expect(without.after.worth).toEqual((await plans.of(withoutGarment(before.pile, 2))).best!.worth)
  expect(without.price!.totalMinor).toBeLessThan(0)
})

test('what would save cloth is closed until it is asked for', async () => {
  const closed = await visitor.get(address)
  expect(plain(closed.body)).toContain('What would save cloth')
  expect(closed.body).toContain(`<a href="${address}?costs=1#plan-savings">Work it out</a>`)
  const { body } = await visitor.get(`${address}?costs=1`)
  expect(plain(body)).toMatch(
    /Were one garment free to give as much as it can: .*pieces fewer to buy.*\. Proven\./,
  )
  expect(plain(body)).toMatch(/One more ordinary garment for the quiet pieces: .* less to buy/)
  expect(body).not.toMatch(/<script(?! src="\/assets\/[\w.-]+" defer>)|\sstyle=|\son\w+="/)
  const spanish = await visitor.get(`${address}?costs=1&lang=es`)
  expect(plain(spanish.body)).toMatch(/Si una prenda pudiera dar tanto como puede: .*Demostrado\./)
  await visitor.get(`${address}?lang=en`)
})

test('tries that are not planned yet are counted, and a link looks again', async () => {
  const own = planReviewed(await look()).pile!
  await plans.of(own)
  stead = {
    of: (pile) =>
      pile.garments[0]!.panels[0]!.patterns === undefined
        ? plans.of(pile)
        : Promise.resolve({ best: null, working: true }),
    known: () => ({ best: null, working: false }),
  }
  const { body } = await visitor.get(`${address}?costs=1`)
  stead = {}
  expect(plain(body)).toMatch(/\d more tries are still being worked out\. Look again/)
})

test('staff say which parts a garment may go to, who said so is told, and the plan keeps to it', async () => {
  await visitor.get(address)
  const to = '/desk/piles/1/garments/2/roles'
  const answer = await visitor.postRaw(to, {
    csrf: visitor.field('csrf'),
    seen: '0',
    plays: 'focal',
  })
  expect(answer).toMatchObject({ status: 303, to: `${address}#given-2` })
  const { body } = await visitor.get(address)
  expect(plain(body)).toContain('Where it may go: only main pieces. Marta, ')
  const { pile, plan } = await planned()
  const given = settledOf(pile, plan, true).pieces.filter(({ garment }) => garment === 2)
  expect(given.length).toBeGreaterThan(0)
  expect(given.every(({ role }) => role === 'focal')).toBe(true)

  await visitor.postRaw(to, { csrf: visitor.field('csrf'), seen: String(clock()) })
  expect((await planned()).pile.garments[1]!.roles.length).toBeGreaterThan(1)
})

test('roles that a colleague gave meanwhile are shown, and not overruled', async () => {
  await visitor.get(address)
  await giveRoles({ store: opened.store, clock }, (await look()).row.id, 2, {
    roles: ['background'],
    who: ivo,
    seen: 0,
  })
  const to = '/desk/piles/1/garments/2/roles'
  const fields = { csrf: visitor.field('csrf'), seen: '0', plays: 'focal' }
  const { status, body } = await visitor.postRaw(to, fields)
  expect(status).toBe(409)
  expect(plain(body)).toContain('Somebody decided here while you were looking.')
  expect(plain(body)).toContain('only quiet pieces. Ivo, ')
})

test.each([
  ['a role that is not there', '2', { plays: '__proto__' }, 400],
  ['a garment that is not there', '9', { plays: 'focal' }, 404],
  ['no secret', '2', { plays: 'focal', csrf: 'x' }, 403],
] as const)('%s is refused', async (_, n, fields, status) => {
  await visitor.get(address)
  const csrf = visitor.field('csrf')
  const answer = await visitor.postRaw(`/desk/piles/1/garments/${n}/roles`, { csrf, ...fields })
  expect(answer.status).toBe(status)
})
