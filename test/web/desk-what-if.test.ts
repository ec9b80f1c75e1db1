import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { openLog } from '../../src/base/log.ts'
import { planReviewed } from '../../src/desk/planned.ts'
import { review } from '../../src/desk/review.ts'
import { openSession } from '../../src/desk/sessions.ts'
import { readTry } from '../../src/desk/tries.ts'
import { figuresOf, type Way, wayOf } from '../../src/desk/what-if.ts'
import { openPlans, type Plans } from '../../src/planning/plans.ts'
import { withMore } from '../../src/planning/what-if.ts'
import { checkPlan } from '../../src/quilt/plan/check.ts'
import { settledOf } from '../../src/quilt/plan/settled.ts'
import { sessionCookie } from '../../src/web/desk/cookies.ts'
import { addStaff } from '../help/desk.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const address = '/desk/piles/1/what-if'

const shirt: Script = { kind: said('button-shirt'), size: said('L') }
const garments: readonly Script[] = [
  { ...shirt, name: said('Blue <b>flannel</b>'), details: said(['must-use']) },
  { ...shirt, name: said('Sunday shirt') },
  { ...shirt, name: said('Garden shirt'), size: said('S') },
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

/** The cells of a row of the page, as words. */
const cellsOf = (html: string, label: string): string[] => {
  const row = new RegExp(`<th scope="row">${label}</th>([\\s\\S]*?)</tr>`).exec(html)![1]!
  return [...row.matchAll(/<td[^>]*>([\s\S]*?)<\/td>/g)].map(([, cell]) => plain(cell!).trim())
}

let opened: TestStore
let workshop: Workshop
let plans: Plans
let visitor: Visitor
/** What is asked of the plans, where a test takes their place. */
let stead: Partial<Plans> = {}

beforeAll(async () => {
  opened = await openSqlite()
  const { store } = opened
  // A first plan is waited for as long as it takes: these tests want the proven one.
  plans = openPlans({ log: openLog('silent'), firstMs: 30_000, budgetMs: 30_000 })
  const steady: Plans = { ...plans, of: (pile) => (stead.of ?? plans.of)(pile, 30_000) }
  workshop = await openWorkshop(store, clock, { plans: steady })
  await confirmPile(workshop.conversation, garments, wish)
  visitor = new Visitor(workshop.app)
  const { token } = await openSession(store.db, clock, await addStaff(store.db))
  visitor.cookies.set(sessionCookie, token)
})
afterAll(async () => {
  await workshop?.close()
  await opened?.end()
})
beforeEach(() => {
  stead = {}
})

const look = (pile = '1') => review(opened.store.db, workshop.knowledge, pile)
const way = async (text: string, pile = '1'): Promise<Way> =>
  wayOf(await look(pile), text === '' ? [] : readTry(text)!, {
    plans,
    layouts: workshop.knowledge.layouts,
    patienceMs: 30_000,
  })
const totals = ({ best, estimate }: Way) => [best!.proven, best!.worth, estimate!.total]

test('without a garment, in another layout and size, it comes to what a pile told so comes to', async () => {
  await confirmPile(workshop.conversation, [garments[0]!, garments[2]!], {
    ...wish,
    quilt_size: said('throw'),
    layout_wish: said('quartered-nine-patch'),
  })
  const tried = await way('without:2,layout:quartered-nine-patch,size:throw')
  expect(totals(tried)).toEqual(totals(await way('', '2')))
  expect(tried.best!.proven).toBe(true)
})

test('one more garment is like an ordinary one, and is paid for', async () => {
  const now = await way('')
  const grown = await way('more:background')
  const by = withMore(now.best!.pile, 'background', 4)!
  expect(by.more).toMatchObject({ garment: 4, like: 2 })
  const { best } = await plans.of(by.pile)
  expect(grown.best!.worth).toEqual(best!.worth)
  const { pile, plan } = grown.best!
  expect(checkPlan(pile, plan).problems).toEqual([])
  expect(figuresOf(grown.best!).given).toBeGreaterThan(figuresOf(now.best!).given)
  expect(settledOf(pile, plan, true).pieces.some(({ garment }) => garment === 4)).toBe(true)
  const likely = (one: Way, code: string) =>
    one.estimate!.lines.find((line) => line.code === code)!.likely
  expect(likely(grown, 'teardown')).toBe(likely(now, 'teardown') + likely(now, 'teardown') / 3)
})

test('a garment in other parts gives to them alone', async () => {
  const { best } = await way('roles:2:focal')
  const given = settledOf(best!.pile, best!.plan, true).pieces.filter((one) => one.garment === 2)
  expect(new Set(given.map(({ role }) => role))).toEqual(new Set(['focal']))
  const none = await way('roles:2:accent')
  expect(none.best!.plan.supply.some(({ garment }) => garment === 1)).toBe(false)
})

test('the page tells each way beside the pile as it stands, better and worse in words', async () => {
  const { status, body } = await visitor.get(`${address}?try=without:2&try=more:background`)
  expect(status).toBe(200)
  const [now, fewer, more] = await Promise.all(
    ['', 'without:2', 'more:background'].map((t) => way(t)),
  )
  const of = ({ best }: Way) => figuresOf(best!)
  const short = (one: Way) => of(one).wanted - of(one).given
  const [here, without, grown] = cellsOf(body, 'Pieces from garments')
  expect(here).toBe(`${of(now!).given} of ${of(now!).wanted} ${short(now!)} short`)
  expect(without).toContain(`– worse, ${short(fewer!) - short(now!)} more short`)
  expect(grown).toContain(`+ better, ${short(now!) - short(more!)} fewer short`)
  expect(cellsOf(body, 'Plan')).toEqual(['Proven best', 'Proven best', 'Proven best'])
  expect(cellsOf(body, 'What changes the price')[1]).toContain('less for taking garments apart')
  expect(plain(body)).toContain('without B2-2 · Sunday shirt')
  expect(plain(body)).not.toContain('Look again')
})

test('each way can be taken away, and a fourth finds no room', async () => {
  const tries = ['without:2', 'layout:framed-panels', 'size:throw']
  const { body } = await visitor.get(`${address}?${tries.map((one) => `try=${one}`).join('&')}`)
  const away = [...body.matchAll(/class="way-away" href="([^"]*)"/g)].map(([, href]) => href)
  expect(away[1]).toBe(`${address}?try=without:2&amp;try=size:throw`)
  expect(body).not.toContain('<select')
  const four = await visitor.get(
    `${address}?${[...tries, 'without:1'].map((one) => `try=${one}`).join('&')}`,
  )
  expect(cellsOf(four.body, 'Plan')).toHaveLength(4)
  expect(plain(four.body)).toContain('No more than 3 ways stand beside the pile.')
})

test('the form adds a way of several changes, beginning with another, without any script', async () => {
  const { body } = await visitor.get(`${address}?try=without:2`)
  expect(body).toContain('<input type="hidden" name="try" value="without:2"/>')
  expect(body).toContain('<option value="layout:framed-panels">')
  const chosen = new URLSearchParams([
    ['try', 'without:2'],
    ['from', 'without:2'],
    ['and', ''],
    ['and', 'more:background'],
    ['and', 'size:throw'],
    ['of', '1'],
    ['plays', 'focal'],
    ['add', '1'],
  ])
  const { status, to } = await visitor.get(`${address}?${chosen}`)
  expect(status).toBe(303)
  expect(to).toBe(`${address}?try=without:2&try=without:2,more:background,size:throw,roles:1:focal`)
  expect((await visitor.get(to!)).status).toBe(200)
  const nothing = await visitor.get(`${address}?try=without:2&from=&and=&of=&add=1`)
  expect(nothing.to).toBe(`${address}?try=without:2`)
})

test('what cannot be tried is said in a sentence', async () => {
  const hostile = [
    ['try=without:99', 'One way names a garment that is not in this pile'],
    ['try=layout:moon-and-stars', 'One way names a layout that the shop does not have'],
    ['try=', 'could not be read'],
    ['try=without', 'could not be read'],
    ['try=without:1:2', 'could not be read'],
    ['try=without:-1', 'could not be read'],
    ['try=without:1e1', 'could not be read'],
    ['try=more:sashing', 'could not be read'],
    ['try=roles:1:__proto__', 'could not be read'],
    ['try=size:__proto__', 'could not be read'],
    ['try=constructor:1', 'could not be read'],
    [`try=${'without:1,'.repeat(60)}`, 'could not be read'],
    ['try=%00%ff<script>alert(1)</script>', 'could not be read'],
    ['try[a]=1&try=without:1,', 'could not be read'],
    [Array.from({ length: 90 }, () => 'try=x').join('&'), 'could not be read'],
  ] as const
  for (const [query, sentence] of hostile) {
    const { status, body } = await visitor.get(`${address}?${query}`)
    expect([query, status]).toEqual([query, 200])
    expect(plain(body)).toContain(sentence)
    expect(cellsOf(body, 'Plan')).toHaveLength(1)
    expect(body).not.toMatch(/<script(?! src="\/assets\/)/)
  }
})

test('leaving out all garments is a way too, and there is nothing to plan', async () => {
  const { body } = await visitor.get(`${address}?try=without:1,without:2,without:3,more:focal`)
  expect(cellsOf(body, 'Plan')[1]).toBe('No garment may be cut for this.')
  expect(cellsOf(body, 'Most likely price')[1]).toBe('–')
})

test('a role that no garment of the pile plays has no ordinary one', async () => {
  const { body } = await visitor.get(`${address}?try=more:accent`)
  expect(cellsOf(body, 'Plan')[1]).toContain('nobody can tell what one more would give')
})

test('what is not planned yet is said in its column, and so is a planning that is too busy', async () => {
  const { pile } = planReviewed(await look())
  await plans.of(pile!)
  let asked = 0
  stead = {
    of: (one, ms) => {
      asked += 1
      if (one.garments.length === 3 && one.sizes.length === pile!.sizes.length) {
        return one.garments.every(
          ({ roles }, g) => roles.length === pile!.garments[g]!.roles.length,
        )
          ? plans.of(one, ms)
          : Promise.reject(new Failure('busy'))
      }
      return Promise.resolve({ best: null, working: true })
    },
  }
  const { status, body } = await visitor.get(`${address}?try=without:2&try=roles:2:focal`)
  expect([status, asked]).toEqual([200, 3])
  expect(cellsOf(body, 'Plan')).toEqual([
    'Proven best',
    'Still being worked out',
    'Planning is very busy. Try again in a few seconds.',
  ])
  expect(body).toContain(`<a href="${address}?try=without:2&amp;try=roles:2:focal">Look again</a>`)
})

test('the ways speak the language of the desk, and a name of the customer brings no mark-up', async () => {
  const { body } = await visitor.get(`${address}?try=without:1,size:throw&try=roles:2&lang=es`)
  expect(plain(body)).toContain('sin B2-1 · Blue <b>flannel</b>')
  expect(plain(body)).toContain('B2-2 · Sunday shirt: cualquier parte')
  expect(plain(body)).toContain('Qué cambia el precio')
  expect(body).not.toContain('<b>flannel')
  expect(body).not.toMatch(/<script(?! src="\/assets\/[\w.-]+" defer>)|\sstyle=|\son\w+="/)
})

test('nobody looks without signing in, and there is none of a pile that is not there', async () => {
  const stranger = await new Visitor(workshop.app).get(`${address}?try=without:1`)
  expect(stranger.status).toBe(303)
  expect((await visitor.get('/desk/piles/7/what-if')).status).toBe(404)
  expect((await visitor.get('/desk/piles/7/what-if?add=1&and=without:1')).status).toBe(404)
})
