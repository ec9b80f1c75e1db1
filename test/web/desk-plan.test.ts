import { afterAll, afterEach, beforeEach, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { openLog } from '../../src/base/log.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import { planReviewed } from '../../src/desk/planned.ts'
import { review } from '../../src/desk/review.ts'
import { openPlanningLane } from '../../src/planning/lane.ts'
import { bestPlan, type Planned } from '../../src/planning/plan-pile.ts'
import { openPlans, type Plans } from '../../src/planning/plans.ts'
import { checkPlan } from '../../src/quilt/plan/check.ts'
import { planCuts } from '../../src/web/desk/present-plan-cuts.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const password = 'needle and thimble'
const address = '/desk/piles/1/plan'

const shirt: Script = { kind: said('button-shirt'), size: said('L') }
const wish: Script = {
  recipient: said('adult'),
  quilts: said('one'),
  quilt_size: said('crib'),
  layout_wish: said('plain-squares'),
}
const pictured: Script = {
  ...shirt,
  pattern: said('single'),
  print_make: said('screen'),
  graphic_size: { given: { amount: 10, unit: 'inches' } },
}
const mixed: readonly Script[] = [
  { ...shirt, name: said('Blue <b>flannel</b>'), details: said(['must-use']) },
  { ...shirt, name: said('Sunday shirt') },
  { kind: said('scarf'), name: said('Shattered scarf'), wear: said('shattered') },
]

/** The words of a page without its marks, as a reader finds them one after another. */
const plain = (html: string): string =>
  html
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll(/\s+/g, ' ')

const cells = (html: string): number[] =>
  [...html.matchAll(/<td class="amount"[^>]*>(\d+)/g)].map(([, figure]) => Number(figure))

const footOf = (html: string): string => /<tfoot>([\s\S]*?)<\/tfoot>/.exec(html)![1]!

const rowOf = (html: string, n: number): string =>
  new RegExp(`<tr data-garment="${n}">([\\s\\S]*?)</tr>`).exec(html)![1]!

/** What stands for quarter yards: "1 1/4 yd" is 5. */
function quarterYards(html: string): number {
  const [, whole = '0', part] = /(?:>|^)(\d+)?\s?(\d\/\d)? yd/.exec(html) ?? []
  const parts: Readonly<Record<string, number>> = { '1/4': 1, '1/2': 2, '3/4': 3 }
  return Number(whole) * 4 + (parts[part ?? ''] ?? 0)
}

const nothingElse = () => Promise.reject(new Error('nothing else is asked of these plans'))
const plansThat = (of: Plans['of']): Plans => ({
  of,
  known: () => null,
  warm: () => {},
  cutLists: nothingElse,
  laid: () => Promise.resolve({ laid: null, working: true }),
  waiting: () => 0,
  close: () => Promise.resolve(),
})

oneStore('the plan of a pile at the desk', (store) => {
  // A first plan is waited for as long as it takes: these tests want the proven one. The threads are shared.
  const log = openLog('silent')
  const patient = openPlans({ log, firstMs: 30_000, budgetMs: 30_000 })
  const lane = openPlanningLane()
  const rest = () => Promise.resolve()
  afterAll(() => Promise.all([patient.close(), lane.close()]))

  let workshop: Workshop
  let visitor: Visitor

  const open = async (garments: readonly Script[], about: Script = wish, plans?: Plans) => {
    workshop = await openWorkshop(store(), clock, { plans: plans ?? { ...patient, close: rest } })
    await confirmPile(workshop.conversation, garments, about)
    visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email: 'marta@lantern-street.example', password })
    return visitor.get(address)
  }
  const decide = async (n: number, verdict: string) => {
    await visitor.get('/desk/piles/1')
    const reason = 'It is as it is'
    await visitor.post(`/desk/piles/1/garments/${n}/decision`, {
      verdict,
      reason,
      seen: visitor.field('seen'),
    })
  }
  const planned = async (): Promise<Planned> => {
    const { pile } = planReviewed(await review(store().db, workshop.knowledge, '1'))
    return bestPlan(pile!, lane, { budgetMs: 30_000 })
  }

  beforeEach(async () => {
    const email = 'marta@lantern-street.example'
    await addAccount(store(), clock, { email, name: 'Marta', role: 'staff', password })
  })
  afterEach(() => workshop.close())

  test('the figures on the page are those that the check of the plan counts', async () => {
    const { status, body } = await open(mixed)
    expect(status).toBe(200)
    const { pile, plan, proven } = await planned()
    expect([proven, body.includes('data-plan="proven"')]).toEqual([true, true])
    const { worth, problems } = checkPlan(pile, plan)
    expect(problems).toEqual([])
    const [wanted, given, bought] = cells(footOf(body))
    expect(wanted).toBe(pile.demand.flat().reduce((all, count) => all + count, 0))
    expect(bought).toBe(worth.P)
    expect(given! + bought!).toBe(wanted)
    expect(quarterYards(footOf(body))).toBe(worth.Q)
    expect(worth.P).toBeGreaterThan(0)
    const each = [1, 2].map((n) => cells(rowOf(body, n))[0]!)
    expect(Math.max(...each)).toBe(worth.M)
    expect(each[0]! + each[1]!).toBe(given)
    expect(worth.V).toBe(0)
    expect(rowOf(body, 1)).toContain('Must be used')
    expect(rowOf(body, 2)).not.toContain('Must be used')
  })

  test('every garment that is cut has its drawings, its cuts and the blade caution behind one line', async () => {
    const { body } = await open(mixed)
    const folded = [...body.matchAll(/<details class="card plan-cut">([\s\S]*?)<\/details>/g)]
    expect(folded).toHaveLength(2)
    for (const [, cut] of folded) {
      expect(cut).toContain('<svg')
      expect(cut).toContain('<li value="1">')
      expect(plain(cut!)).toMatch(/blade/i)
      expect(plain(cut!)).toContain('Before the first cut')
    }
    expect(body).not.toMatch(/<script(?! src="\/assets\/)/)
    const opened = await visitor.get(`${address}?open=all`)
    expect([...opened.body.matchAll(/<details class="card plan-cut" open>/g)]).toHaveLength(2)
  })

  test('what the customer wants whole is told on top and where the garment is cut', async () => {
    const apron: Script = {
      kind: said('apron'),
      name: said('Kitchen apron'),
      details: said(['keep-a-spot']),
    }
    const about = { ...wish, not_to_cut: said('The <i>initials</i> on the pocket.') }
    const { body } = await open([apron, shirt], about)
    expect(plain(body)).toContain('Not to be cut, says the customer: The <i>initials</i> on')
    const cutOf = (n: number) =>
      plain(body.slice(body.indexOf(`id="cut-${n}"`)).split('</details>')[0]!)
    expect(cutOf(1)).toContain('Where a cut meets one, cut nothing')
    expect(cutOf(1)).toContain('Keep the marked part whole')
    expect(cutOf(2)).not.toContain('Where a cut meets one')
  })

  test('the cuts of a large pile stand on several pages, and every garment leads to its own', async () => {
    const shirts = Array.from({ length: 15 }, (_, n) => ({
      ...shirt,
      name: said(`Shirt ${n + 1}`),
    }))
    const first = await open(shirts, { ...wish, quilt_size: said('throw') })
    const hrefs = [...first.body.matchAll(/class="plan-how" href="([^"#]*)#(cut-\d+)"/g)]
    expect(hrefs.length).toBeGreaterThan(12)
    expect(first.body).toContain(`Garments 1 to 12 of ${hrefs.length} that are cut`)
    const pages = new Map([...new Set(hrefs.map(([, href]) => href!))].map((href) => [href, '']))
    for (const href of pages.keys()) pages.set(href, (await visitor.get(href)).body)
    expect([...pages.keys()]).toEqual([`${address}?cuts=1`, `${address}?cuts=2`])
    for (const [, href, id] of hrefs) expect(pages.get(href!)).toContain(`id="${id}"`)
    const { body: last } = await visitor.get(`${address}?cuts=999`)
    expect(last).toContain(`Garments 13 to ${hrefs.length} of ${hrefs.length} that are cut`)
  })

  test('cuts that a page has no time for come when it is looked at again', async () => {
    await open(mixed)
    const best = await planned()
    const { used } = planReviewed(await review(store().db, workshop.knowledge, '1'))
    const english = workshop.knowledge.languages.get('en')!
    const cuts = async (cutLists: Plans['cutLists']) =>
      (await planCuts({ number: 1, planned: best, used }, { page: 1, open: false }, english, {
        cutLists,
      }))!
    const noneYet = (working: boolean) =>
      cuts(async (_, all) => ({ lists: all.map(() => null), working }))
    const early = await noneYet(true)
    expect(early.garments.map(({ sheet }) => sheet)).toEqual([null, null])
    expect(early.garments[0]!.wait).toBe('Some cuts are still being worked out.')
    expect(early.more).toEqual({ label: 'Look again', href: `${address}?cuts=1#plan-cuts` })
    const never = await noneYet(false)
    expect(never.garments[0]!.wait).toMatch(/could not be worked out/)
    expect(never.more).toBeNull()
    const plans = openPlans({ log: openLog('silent') })
    const late = await cuts((pile, all) => plans.cutLists(pile, all, 60_000))
    await plans.close()
    expect(late.garments.every(({ sheet }) => sheet !== null)).toBe(true)
    expect(late.more).toBeNull()
  })

  test('a name of the customer brings no mark-up, and a pile leads to its plan', async () => {
    const { body } = await open(mixed)
    expect(body).not.toContain('<b>flannel')
    expect(plain(body)).toContain('Blue <b>flannel</b>')
    expect((await visitor.get('/desk/piles/1')).body).toContain(`href="${address}"`)
  })

  test('the plan speaks the language of the desk', async () => {
    await open(mixed)
    const { body } = await visitor.get(`${address}?lang=es`)
    expect(body).toContain('<html lang="es">')
    expect(plain(body)).toContain('Demostrado: ningún plan de estas prendas es mejor.')
    expect(plain(body)).toContain('piezas principales')
    expect(plain(body)).not.toMatch(/\b(pieces|garment|yards|cloth)\b/)
  })

  test('what waits for a decision is not planned with, and once it is taken it is', async () => {
    const unread: Script = { kind: said('uniform'), size: said('L'), name: said('Doubtful shirt') }
    const { body: before } = await open([...mixed.slice(0, 2), unread])
    expect(plain(before)).toContain('One garment waits for a decision and is not in the plan.')
    expect(plain(before)).toContain('The pile is not accepted yet: cut nothing by this plan.')
    expect(plain(before)).toContain('Doubtful shirt Waits for a decision.')
    expect(before).not.toContain('data-garment="3"')
    await decide(3, 'take')
    const { body } = await visitor.get(address)
    expect(plain(body)).not.toContain('waits for a decision')
    expect(body).toContain('data-garment="3"')
  })

  test('a garment that staff decline is planned with no longer', async () => {
    const before = await open(mixed)
    expect(before.body).toContain('data-garment="2"')
    await decide(2, 'decline')
    const { body } = await visitor.get(address)
    expect(body).not.toContain('data-garment="2"')
    expect(plain(body)).toContain('Sunday shirt Declined.')
  })

  test.each([
    [
      'wants another pile',
      { ...shirt, wear: said('shattered') },
      'Every garment was declined or stays at home. Ask the customer for others.',
    ],
    [
      'waits for a person',
      { kind: said('other') },
      'One garment waits for a decision and is not in the plan. Decide it, and look again.',
    ],
    [
      'suits another layout',
      pictured,
      'One garment does not suit this layout. Agree on another layout with the customer',
    ],
  ] as const)(
    'where no garment may be cut the page says what there is to do: %s',
    async (_, garment, todo) => {
      const { status, body } = await open([garment])
      expect([status, body.includes('data-plan="empty"')]).toEqual([200, true])
      expect(plain(body)).toContain(todo)
      expect(plain(body)).toContain('Not in this plan')
      expect(body).not.toContain('<table')
      if (garment === pictured) expect(plain(body)).toContain('Its picture would be cut up.')
    },
  )

  test('a garment that must be used and has no room for a piece is told on top', async () => {
    const tie: Script = { kind: said('tie'), name: said('Church tie'), details: said(['must-use']) }
    const { body } = await open([...mixed, tie], { ...wish, layout_wish: said('mixed-columns') })
    expect(plain(body)).toMatch(/· Church tie must be used and gives nothing\. Ask the customer/)
    expect(plain(rowOf(body, 4))).toContain('none of its panels is large enough for a piece')
  })

  test('a plan that is not there yet is asked for again by a link', async () => {
    const { status, body } = await open(
      mixed,
      wish,
      plansThat(() => Promise.resolve({ best: null, working: true })),
    )
    expect(status).toBe(200)
    expect(body).toContain('data-plan="waiting"')
    expect(body).toContain(`<a href="${address}">Look again</a>`)
  })

  test('a plan that may still change says so, and cut nothing by it', async () => {
    await open(mixed)
    const best = { ...(await planned()), proven: false }
    await workshop.close()
    const { body } = await open(
      mixed,
      wish,
      plansThat(() => Promise.resolve({ best, working: true })),
    )
    expect(body).toContain('data-plan="working"')
    expect(plain(body)).toContain(
      'cut nothing by it yet. How to cut is shown once it stands. Look again',
    )
    expect(cells(footOf(body))[2]).toBe(best.worth.P)
    expect(body).not.toContain('plan-cut')
    expect(body).not.toContain('How to cut Sunday')
  })

  test('a busy planning says try again, and is no fault of ours', async () => {
    const busy = plansThat(() => Promise.reject(new Failure('busy')))
    const { status, body } = await open(mixed, wish, busy)
    expect(status).toBe(503)
    expect(body).toContain('data-plan="failed"')
    expect(plain(body)).toContain('Try again in a few seconds. Look again')
  })

  test('several quilts alike want as many pieces together', async () => {
    const one = cells(footOf((await open(mixed)).body))[0]!
    await workshop.close()
    const three = { given: { amount: 3, unit: 'quilts' } }
    await open(mixed, { ...wish, quilts: said('several'), quilt_count: three })
    const { body } = await visitor.get('/desk/piles/2/plan')
    expect(cells(footOf(body))[0]).toBe(3 * one)
    expect(plain(body)).toContain('3 quilts from one pile')
    expect(plain(body)).toContain('quiet pieces, quilt 3')
  })

  test('nobody reads a plan without signing in, and there is none of a pile that is not there', async () => {
    await open(mixed)
    const stranger = await new Visitor(workshop.app).get(address)
    expect(stranger.status).toBe(303)
    expect(stranger.to).toBe(`/desk/sign-in?next=${encodeURIComponent(address)}`)
    expect((await visitor.get('/desk/piles/7/plan')).status).toBe(404)
  })
})
