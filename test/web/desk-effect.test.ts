import { afterAll, beforeAll, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { formatMoney } from '../../src/base/money.ts'
import { decideGarment } from '../../src/desk/decisions.ts'
import { planReviewed } from '../../src/desk/planned.ts'
import { review } from '../../src/desk/review.ts'
import { openSession } from '../../src/desk/sessions.ts'
import { readTry } from '../../src/desk/tries.ts'
import { figuresOf, type Way, wayOf } from '../../src/desk/what-if.ts'
import { openPlans, type Plans } from '../../src/planning/plans.ts'
import { sessionCookie } from '../../src/web/desk/cookies.ts'
import { addStaff } from '../help/desk.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const address = '/desk/piles/1'

const shirt: Script = { kind: said('button-shirt'), size: said('L') }
const garments: readonly Script[] = [
  { ...shirt, name: said('Blue <b>flannel</b>'), details: said(['must-use']) },
  { ...shirt, name: said('Sunday shirt') },
  { ...shirt, name: said('Doubtful shirt'), details: { asked: '' } },
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

const columnOf = (html: string): string =>
  plain(/<aside class="column what-it-does[\s\S]*?<\/aside>/.exec(html)![0])

let opened: TestStore
let workshop: Workshop
let plans: Plans
let visitor: Visitor
let staff: string
/** Asked in the stead of the plans, where a test takes their place. */
let stead: Partial<Plans> = {}

beforeAll(async () => {
  opened = await openSqlite()
  const { store } = opened
  // A first plan is waited for as long as it takes: these tests want the proven one.
  plans = openPlans({ log: openLog('silent'), firstMs: 30_000, budgetMs: 30_000 })
  const steady: Plans = {
    ...plans,
    of: (pile, patience) => (stead.of ? stead.of(pile, patience) : plans.of(pile, 30_000)),
  }
  workshop = await openWorkshop(store, clock, { plans: steady })
  await confirmPile(workshop.conversation, garments, wish)
  staff = await addStaff(store.db)
  visitor = new Visitor(workshop.app)
  const { token } = await openSession(store.db, clock, staff)
  visitor.cookies.set(sessionCookie, token)
})
afterAll(async () => {
  await workshop?.close()
  await opened?.end()
})

const look = () => review(opened.store.db, workshop.knowledge, '1')
const way = async (text: string): Promise<Way> =>
  wayOf(await look(), text === '' ? [] : readTry(text)!, {
    plans,
    layouts: workshop.knowledge.layouts,
    patienceMs: 30_000,
  })
const money = ({ estimate }: Way) =>
  formatMoney({ minor: estimate!.total.likely, currency: estimate!.currency }, 'en-US')

test('what a pile does to the quilt is told from its plan: pieces, what is short, the price', async () => {
  const now = await way('')
  const { body } = await visitor.get(address)
  const column = columnOf(body)
  const { given, wanted } = figuresOf(now.best!)
  expect(column).toContain(`The garments give ${given} of ${wanted} pieces.`)
  expect(column).toMatch(/\d+ more main pieces, or .* yd of cloth\./)
  expect(column).toContain('Counted from the plan of the quilt.')
  expect(column).toContain(`Most likely ${money(now)}`)
  expect(column).toContain('Part At hand Wanted')
  expect(column).not.toContain('Look again')
})

test('a garment that waits is foretold: roughly what it gives, by the plan what it costs to do without', async () => {
  const { body } = await visitor.get(address)
  const card = plain(/<article[^>]*data-garment="3"[\s\S]*?<\/article>/.exec(body)![0])
  expect(card).toContain('counted roughly. Left out, the quilt is most likely $')
  expect(card).toContain('by its plan.')
  expect(card).toContain('What if we take Doubtful shirt?')
  expect(body).toContain(`href="${address}/what-if?try=take:3"`)
  expect(body).toContain(`href="${address}/what-if?try=without:2"`)
  expect(body).toContain(`<a href="${address}/what-if">What if …</a>`)
})

test('a plan that is not there yet is not waited for: it is counted roughly, and said so', async () => {
  const waited: (number | undefined)[] = []
  stead = {
    of: (_, patience) => {
      waited.push(patience)
      return Promise.resolve({ best: null, working: true })
    },
  }
  const { status, body } = await visitor.get(address)
  stead = {}
  expect([status, waited]).toEqual([200, [300]])
  expect(columnOf(body)).toContain(
    'Counted roughly, until the plan of the quilt is there. Look again',
  )
  expect(columnOf(body)).toContain('Piece, inches At hand Wanted')
})

test('a plan that may change says so, in the reader’s language', async () => {
  const { best } = await plans.of(planReviewed(await look()).pile!)
  stead = { of: () => Promise.resolve({ best: { ...best!, proven: false }, working: true }) }
  const { body } = await visitor.get(`${address}?lang=es`)
  stead = {}
  expect(columnOf(body)).toContain(
    'Contado según el mejor plan hasta ahora. Puede cambiar. Mirar de nuevo',
  )
  expect(plain(body)).toContain('¿Y sin Sunday shirt?')
  await visitor.get(`${address}?lang=en`)
})

test('taking a garment that waits comes to what was tried', async () => {
  const tried = await way('take:3')
  expect(tried.best!.worth).not.toEqual((await way('')).best!.worth)
  await decideGarment(opened.store, clock, (await look()).row.id, 3, {
    verdict: 'take',
    reason: 'It is as good as the others',
    who: staff,
    seen: 0,
  })
  const taken = await way('')
  expect([tried.best!.worth, tried.estimate]).toEqual([taken.best!.worth, taken.estimate])
  expect(columnOf((await visitor.get(address)).body)).toContain(`Most likely ${money(taken)}`)
})
