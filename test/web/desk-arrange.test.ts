import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parse } from 'node-html-parser'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { newId } from '../../src/base/ids.ts'
import { openLog } from '../../src/base/log.ts'
import { keptMark, pinMark } from '../../src/desk/arranged.ts'
import { planMarksOf } from '../../src/desk/plan-marks.ts'
import { openPlans, type Plans } from '../../src/planning/plans.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import type { PileRow } from '../../src/store/schema.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { signedIn } from '../help/signed-in.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const address = '/desk/piles/1/quilt/1'

const shirt: Script = { kind: said('button-shirt'), size: said('XL') }
const garments: readonly Script[] = [
  { ...shirt, name: said('Choir <b>shirt</b> & "best"'), colours: said(['red']) },
  { ...shirt, name: said('Blue shirt'), colours: said(['blue']) },
  { ...shirt, name: said('Green shirt'), colours: said(['green']) },
]
const wish: Script = {
  recipient: said('adult'),
  quilts: said('one'),
  quilt_size: said('crib'),
  layout_wish: said('plain-squares'),
}

// Piles for all of these tests, and the planning at its leisure: what is tested are its pages.
let store: Store
let workshop: Workshop
let marta: Visitor
let ivo: Visitor
let key: string
let pile: PileRow
let held: Plans['laid'] | null = null
const folder = mkdtempSync(join(tmpdir(), 'pieceworth-arrange-'))

const signIn = async (name: string): Promise<Visitor> => {
  return signedIn(store, clock, workshop.app, { name })
}

beforeAll(async () => {
  store = await openStore({ dataDir: folder })
  await migrate(store)
  const patient = openPlans({ log: openLog('silent'), firstMs: 30_000, budgetMs: 30_000 })
  const plans: Plans = {
    ...patient,
    of: (asked) => patient.of(asked),
    laid: (job) => (held ? held(job) : patient.laid(job)),
  }
  workshop = await openWorkshop(store, clock, { plans })
  key = await confirmPile(workshop.conversation, garments, wish)
  await confirmPile(workshop.conversation, garments.slice(0, 1), wish)
  pile = (await workshop.conversation.open(key)).row
  marta = await signIn('Marta')
  ivo = await signIn('Ivo')
})
afterAll(async () => {
  await workshop?.close()
  await store?.close()
  rmSync(folder, { recursive: true })
})
beforeEach(async () => {
  await store.db.deleteFrom('plan_mark').execute()
  await store.db.deleteFrom('decision').execute()
})

const look = async (query = '', visitor = marta) => {
  const answer = await visitor.get(`${address}${query}`)
  return { ...answer, page: parse(answer.body) }
}

type Page = Awaited<ReturnType<typeof look>>['page']

/** What lies where, by the list of the rows: the cloth of each piece by its number. */
const lying = (page: Page): Map<number, string> =>
  new Map(
    page.querySelectorAll('.arrange-row a').map((link) => {
      const n = Number(/piece=(\d+)/.exec(link.getAttribute('href')!)![1])
      return [n, link.text.replace(/^\d+:[^:]*: /, '')]
    }),
  )

/** The path of every cloth in the picture, without what lies over the pieces. */
const shapes = (html: string): string[] =>
  [...html.matchAll(/<path d="([^"]*)" fill="#[0-9a-f]{6}" stroke="#[0-9a-f]{6}"/g)].map(
    ([, d]) => d!,
  )

const fieldsOf = (page: Page, act: string): Record<string, string> => {
  const form = page
    .querySelectorAll('form[method=post]')
    .find((one) => one.querySelector(`[name=act][value=${act}]`))
  return Object.fromEntries(
    form!
      .querySelectorAll('input')
      .map((input) => [input.getAttribute('name')!, input.getAttribute('value')!]),
  )
}

/** Presses the button of a form as it stands on a page. */
const press = async (page: Page, act: string, visitor = marta) =>
  visitor.postRaw(address, fieldsOf(page, act))

const options = (page: Page): number[] =>
  page.querySelectorAll('#arrange-piece option').map((one) => Number(one.getAttribute('value')))

const plain = (page: Page): string =>
  page.text.replaceAll('&lt;', '<').replaceAll('&amp;', '&').replaceAll(/\s+/g, ' ')

/** Two pieces of one part and size in different cloth. */
async function pair(): Promise<readonly [number, number]> {
  const { page } = await look()
  const [first] = [...lying(page)].find(([, name]) => name.includes('Blue'))!
  const partners = options((await look(`?piece=${first}`)).page)
  return [first, partners.at(-1)!]
}

/** Dark or light: the squares of a chessboard of six columns. */
const shade = (n: number): number => (Math.floor((n - 1) / 6) + n - 1) % 2

const refused = (page: Page): string => page.querySelector('[role=alert]')?.text.trim() ?? ''

describe('a laid quilt at the desk', () => {
  test('the plan leads to it, and it is whole in both languages and without a script', async () => {
    const { body } = await marta.get('/desk/piles/1/plan')
    expect(body).toContain(`href="${address}"`)
    for (const [language, row, column, choose] of [
      ['en', 'Row 1', 'Column 1:', 'Choose a piece'],
      ['es', 'Fila 1', 'Columna 1:', 'Elija una pieza'],
    ]) {
      const { status, page, body } = await look(`?lang=${language}`)
      expect(status).toBe(200)
      expect(page.querySelector('main')!.getAttribute('data-quilts')).toBe('drawn')
      expect(page.querySelector('.arrange-panel h2')!.text).toBe(choose)
      expect(page.querySelector('.arrange-row h3')!.text).toBe(row)
      // Six by nine squares, each in the picture, the list and the select.
      expect(lying(page).size).toBe(54)
      expect(page.querySelectorAll('.quilt-links a')).toHaveLength(54)
      expect(options(page)).toHaveLength(54)
      expect(page.querySelectorAll('.arrange-row')).toHaveLength(9)
      expect(page.querySelector('.arrange-row .unseen')!.text).toBe(column)
      expect(page.querySelector('.quilt-picture > svg')!.getAttribute('aria-hidden')).toBe('true')
      expect(body).not.toMatch(/<script(?! src="\/assets\/)/)
      expect(body).toContain('Choir &lt;b>shirt&lt;/b> &amp; &quot;best&quot;')
      expect(body).not.toContain('<b>shirt')
    }
    await look('?lang=en')
  })

  test('a piece is chosen, and only those that can change places with it are offered', async () => {
    const [first] = await pair()
    const { page: before } = await look()
    const { page } = await look(`?piece=${first}`)
    expect(page.querySelectorAll('.arrange-chosen')).toHaveLength(1)
    expect(plain(page)).toMatch(/Row \d, column \d: Blue shirt/)
    expect(plain(page)).toMatch(/(main|quiet) pieces, cut 6 1\/2 × 6 1\/2 in/)
    const offered = options(page)
    const names = lying(before)
    expect(offered.length).toBeGreaterThan(0)
    expect(offered.some((n) => names.get(n)!.includes('Blue'))).toBe(false)
    // A chessboard: the dark half, but for those of its own cloth.
    expect(offered.every((n) => shade(n) === shade(first))).toBe(true)
    const own = [...names].filter(([n, name]) => shade(n) === shade(first) && name.includes('Blue'))
    expect(offered).toHaveLength(27 - own.length)
    expect(page.querySelectorAll('.quilt-links a')).toHaveLength(54)
  })

  test('a second piece is told of, or why it cannot be', async () => {
    const [first, second] = await pair()
    const { page } = await look(`?piece=${first}&with=${second}`)
    expect(page.querySelector('.arrange-swap button')!.text.trim()).toBe('Change places')
    expect(plain(page)).toMatch(/of one garment (touch|that touch)/)
    expect(plain(page)).toMatch(/(Less|More|As much) alike would lie side by side/)
    const names = lying((await look()).page)
    const other = [...names.keys()].find((n) => shade(n) !== shade(first))!
    const { page: unlike } = await look(`?piece=${first}&with=${other}`)
    expect(unlike.querySelector('.arrange-swap button')).toBeNull()
    expect(plain(unlike)).toMatch(/These two cannot change places. One: (main|quiet) pieces/)
    const [, twin] = [...names].flatMap(([n, name]) =>
      name.includes('Blue') && shade(n) === shade(first) ? [n] : [],
    )
    const { page: alike } = await look(`?piece=${first}&with=${twin}`)
    expect(alike.querySelector('.arrange-swap button')).toBeNull()
  })

  test('an address that asks for what is not there shows the quilt and says so', async () => {
    for (const query of ['?piece=9999', '?piece=55', '?piece=3&with=55']) {
      const { status, page } = await look(query)
      expect([query, status]).toEqual([query, 200])
      expect(plain(page)).toContain('There is no such piece to move')
    }
    for (const query of [
      '?piece=0',
      '?piece=-3',
      '?piece=x',
      '?piece=1&piece=2',
      '?moved=1-99',
      '?moved=a',
    ]) {
      const { status, page } = await look(query)
      expect([query, status, lying(page).size]).toEqual([query, 200, 54])
    }
    for (const path of [
      '/desk/piles/1/quilt/2',
      '/desk/piles/1/quilt/0',
      '/desk/piles/9/quilt/1',
    ]) {
      expect([path, (await marta.get(path)).status]).toEqual([path, 404])
    }
    expect((await marta.get('/desk/piles/1/quilt/1.png')).type).toBe('image/png')
  })
})

describe('a change of two', () => {
  test('moves exactly two pieces, pins them by name, and is taken back', async () => {
    const [first, second] = await pair()
    const before = lying((await look()).page)
    const answer = await press((await look(`?piece=${first}&with=${second}`)).page, 'swap')
    expect([answer.status, answer.to]).toEqual([303, `${address}?moved=${first}-${second}#chosen`])
    const { page, body } = await look(`?moved=${first}-${second}`)
    const after = lying(page)
    expect([...after.keys()].filter((n) => after.get(n) !== before.get(n)).sort()).toEqual(
      [first, second].sort(),
    )
    expect([after.get(first), after.get(second)]).toEqual([before.get(second), before.get(first)])
    expect(page.querySelectorAll('.arrange-pins li')).toHaveLength(2)
    expect(page.querySelectorAll('.arrange-pinned').map((one) => one.text.trim())).toEqual([
      'pinned',
      'pinned',
    ])
    expect(body.match(/<circle cx="[\d.]+" cy="[\d.]+" r="0.5"/g)).toHaveLength(2)
    expect(plain(page)).toContain('Marta, Jun 1, 2026')
    expect(page.querySelector('.done')!.text).toContain('All other pieces lie as before')
    await press(page, 'swap')
    expect(lying((await look()).page)).toEqual(before)
  })

  test('shows the same quilt on the plan and in its picture to save, and leaves the customer’s', async () => {
    const customer = (await workshop.app.inject({ url: `/i/${key}` })).body
    const plan = shapes((await marta.get('/desk/piles/1/plan')).body)
    const png = (await workshop.app.inject({ url: `${address}.png`, headers: cookies() }))
      .rawPayload
    const [first, second] = await pair()
    await press((await look(`?piece=${first}&with=${second}`)).page, 'swap')
    const here = shapes((await look()).body)
    expect(here).toEqual(shapes((await marta.get('/desk/piles/1/plan')).body))
    expect(here).not.toEqual(plan)
    const now = (await workshop.app.inject({ url: `${address}.png`, headers: cookies() }))
      .rawPayload
    expect(now.equals(png)).toBe(false)
    const agreed = (await workshop.app.inject({ url: `/i/${key}` })).body
    expect(shapes(agreed)).toEqual(shapes(customer))
  })

  test('a colleague who did not see it is told, and shown how the quilt lies now', async () => {
    const [first, second] = await pair()
    const stale = (await look(`?piece=${first}&with=${second}`, ivo)).page
    const other = options((await look(`?piece=${first}`)).page)[0]!
    await press((await look(`?piece=${first}&with=${other}`)).page, 'swap')
    const now = lying((await look()).page)
    const answer = await press(stale, 'swap', ivo)
    expect(answer.status).toBe(409)
    const page = parse(answer.body)
    expect(refused(page)).toContain('lies otherwise now')
    expect(lying((await look()).page)).toEqual(now)
    // Pinned alone, nothing moved: what the colleague decides is still asked for again.
    await store.db.deleteFrom('plan_mark').execute()
    const early = (await look(`?piece=${first}`, ivo)).page
    await press((await look(`?piece=${second}`)).page, 'keep')
    const late = await press(early, 'keep', ivo)
    expect(late.status).toBe(409)
    expect(refused(parse(late.body))).toContain('Somebody decided here')
  })

  test('the same button pressed twice is one change', async () => {
    const [first, second] = await pair()
    const { page } = await look(`?piece=${first}&with=${second}`)
    expect((await press(page, 'swap')).status).toBe(303)
    const after = lying((await look()).page)
    expect((await press(page, 'swap')).status).toBe(303)
    expect(lying((await look()).page)).toEqual(after)
  })
})

describe('pins', () => {
  test('are made and let go of with nothing moving, and told with who', async () => {
    const [first] = await pair()
    const before = lying((await look()).page)
    const made = await press((await look(`?piece=${first}`, ivo)).page, 'keep', ivo)
    expect(made.to).toBe(`${address}?piece=${first}#chosen`)
    const { page } = await look(`?piece=${first}`)
    expect(plain(page.querySelector('.arrange-chosen') as Page)).toMatch(/Pinned here\. Ivo, Jun 1/)
    expect(lying((await look()).page)).toEqual(before)
    await press(page, 'release')
    const { page: free } = await look()
    expect(free.querySelectorAll('.arrange-pins li')).toHaveLength(0)
    expect(plain(free)).toContain('The quilt is kept as it lies')
    expect(lying(free)).toEqual(before)
  })

  test('hold while the rest is laid anew, and all is let go to lie as it first did', async () => {
    const before = lying((await look()).page)
    const [first, second] = await pair()
    await press((await look(`?piece=${first}&with=${second}`)).page, 'swap')
    const moved = lying((await look()).page)
    await press((await look()).page, 'rest')
    const { page } = await look()
    const rest = lying(page)
    expect([rest.get(first), rest.get(second)]).toEqual([moved.get(first), moved.get(second)])
    expect([...rest.values()].sort()).toEqual([...moved.values()].sort())
    expect(plain(page)).toContain('Pinned pieces stay.')
    expect(page.querySelectorAll('.arrange-fixed .acts button')).toHaveLength(1)
    await press(page, 'anew')
    const { page: anew } = await look()
    expect(lying(anew)).toEqual(before)
    expect(anew.querySelector('.arrange-fixed')).toBeNull()
  })

  test('that fit no longer are told with why, and left out until they fit again', async () => {
    const [first] = await pair()
    await press((await look(`?piece=${first}`)).page, 'keep')
    const before = lying((await look()).page)
    await marta.get('/desk/piles/1')
    await marta.post('/desk/piles/1/garments/2/decision', {
      verdict: 'decline',
      reason: 'It stays at home',
      seen: marta.field('seen'),
    })
    const { page } = await look()
    expect(plain(page)).toContain('This pin is not used now')
    const onPlan = async () => plain(parse((await marta.get('/desk/piles/1/plan')).body))
    expect(await onPlan()).toContain('One piece cannot lie where it was pinned any more.')
    expect(plain(page)).toContain('The plan has no such piece of it any more')
    expect(plain(page)).toMatch(/\d+ pieces lie otherwise than they were kept/)
    const after = lying(page)
    expect([...after.values()].some((name) => name.includes('Blue'))).toBe(false)
    // What garments still give lies where it lay, as far as there are as many.
    const kinds = new Set([...after].map(([n, name]) => `${shade(n)} ${name}`))
    for (const kind of kinds) {
      const those = (of: ReadonlyMap<number, string>) =>
        [...of].flatMap(([n, name]) => (`${shade(n)} ${name}` === kind ? [n] : []))
      const [was, is] = [those(before), those(after)]
      const stayed = was.filter((n) => is.includes(n)).length
      expect([kind, stayed]).toEqual([kind, Math.min(was.length, is.length)])
    }
    await store.db.deleteFrom('decision').execute()
    const { page: again } = await look()
    expect(lying(again)).toEqual(before)
    expect(await onPlan()).toContain('One piece is pinned where it lies.')
    expect(plain(again)).not.toContain('not used now')
  })

  test('of another layout or of a place that is gone are kept and not used', async () => {
    const of = { layout: 'plain-squares', size: 'crib', quilt: 0 } as const
    const before = lying((await look()).page)
    const marks = [
      pinMark(of, { x: 999, y: 3, garment: 2 }),
      pinMark(of, { x: 998, y: 3, garment: null }),
      pinMark({ ...of, size: 'throw' }, { x: 0, y: 0, garment: 3 }),
      keptMark({ ...of, layout: 'framed-panels' }, [{ x: 0, y: 0, garment: 1 }]),
      pinMark({ ...of, quilt: 1 }, { x: 0, y: 0, garment: 1 }),
    ]
    const who = (await store.db.selectFrom('account').select('id').executeTakeFirstOrThrow()).id
    const at = clock()
    for (const [n, { kind, garment, body }] of marks.entries()) {
      const own = { id: newId(), pile_id: pile.id, kind, garment, body: JSON.stringify(body) }
      await store.db
        .insertInto('plan_mark')
        .values({ ...own, who, at: at + n, undone_at: null, undone_by: null })
        .execute()
    }
    const { page } = await look()
    expect(lying(page)).toEqual(before)
    expect(plain(page)).toContain('These pins are not used now')
    expect(plain(page)).toContain('The quilt has no piece at this place any more')
    expect(plain(page)).toContain('One piece is pinned in another layout or size')
    expect(page.querySelectorAll('.arrange-pins li')).toHaveLength(2)
    await press(page, 'release')
    expect((await look()).page.querySelectorAll('.arrange-pins li')).toHaveLength(1)
  })
})

const cookies = () => ({
  cookie: [...marta.cookies].map(([name, value]) => `${name}=${value}`).join('; '),
})

describe('hostile forms', () => {
  const send = async (fields: Record<string, string>, to = address) => {
    const { page } = await look('?piece=1')
    const { csrf, shown, seen } = fieldsOf(page, 'keep')
    return marta.postRaw(to, { csrf: csrf!, shown: shown!, seen: seen!, ...fields })
  }
  const marksLeft = async () => (await planMarksOf(store.db, pile.id)).length

  test('pieces that are not there, are no numbers or of another part change nothing', async () => {
    const names = lying((await look()).page)
    const [first] = await pair()
    const unlike = [...names.keys()].find((n) => shade(n) !== shade(first))!
    for (const [fields, status] of [
      [{ act: 'swap', a: String(first), b: '55' }, 404],
      [{ act: 'swap', a: '99999', b: '1' }, 404],
      [{ act: 'keep', piece: '55' }, 404],
      [{ act: 'release', pin: 'nobody' }, 404],
      [{ act: 'swap', a: String(first), b: String(unlike) }, 422],
      [{ act: 'swap', a: '0', b: '1' }, 400],
      [{ act: 'swap', a: '-1', b: '1' }, 400],
      [{ act: 'swap', a: '1e1', b: '1' }, 400],
      [{ act: 'swap', a: '', b: '1' }, 400],
      [{ act: 'swap', a: '1' }, 400],
      [{ act: 'keep', piece: 'one' }, 400],
      [{ act: 'burn' }, 400],
      [{}, 400],
      [{ act: 'keep', piece: '1', shown: 'otherwise' }, 409],
      [{ act: 'keep', piece: '1', seen: '7' }, 409],
      [{ act: 'keep', piece: '1', seen: 'never' }, 400],
      [{ act: 'keep', piece: '1', csrf: 'guessed' }, 403],
    ] as [Record<string, string>, number][]) {
      const answer = await send(fields)
      expect([fields, answer.status]).toEqual([fields, status])
    }
    expect(await marksLeft()).toBe(0)
    const told = parse((await send({ act: 'swap', a: String(first), b: String(unlike) })).body)
    expect(refused(told)).toContain('Only pieces of the same part')
    expect(told.querySelectorAll('.arrange-chosen')).toHaveLength(2)
  })

  test('a pin of another pile is not let go of, and nobody comes in without signing in', async () => {
    const [first] = await pair()
    await press((await look(`?piece=${first}`)).page, 'keep')
    const [pin] = (await planMarksOf(store.db, pile.id)).filter(({ kind }) => kind === 'pin')
    const neighbour = '/desk/piles/2/quilt/1'
    const { body } = await marta.get(`${neighbour}?piece=1`)
    const fields = fieldsOf(parse(body), 'keep')
    const answer = await marta.postRaw(neighbour, { ...fields, act: 'release', pin: pin!.id })
    expect(answer.status).toBe(404)
    expect((await planMarksOf(store.db, pile.id)).every(({ undone }) => undone === null)).toBe(true)
    const stranger = new Visitor(workshop.app)
    expect((await stranger.get(address)).to).toBe(
      `/desk/sign-in?next=${encodeURIComponent(address)}`,
    )
    expect((await stranger.postRaw(address, { ...fields, act: 'anew' })).status).toBe(401)
  })
})

describe('a quilt that is not there', () => {
  const withLaying = async <T>(laying: Plans['laid'], work: () => Promise<T>): Promise<T> => {
    held = laying
    try {
      return await work()
    } finally {
      held = null
    }
  }

  test('is waited for, and takes no form meanwhile', async () => {
    const fields = fieldsOf((await look('?piece=1')).page, 'keep')
    await withLaying(
      async () => ({ laid: null, working: true }),
      async () => {
        const { status, page } = await look()
        expect([status, page.querySelector('main')!.getAttribute('data-quilts')]).toEqual([
          200,
          'laying',
        ])
        expect(page.querySelector(`.plan-state a[href="${address}"]`)!.text).toBe('Look again')
        expect(page.querySelector('form[action$="/quilt/1"]')).toBeNull()
        expect((await marta.postRaw(address, fields)).status).toBe(503)
      },
    )
  })

  test('or cannot be had now', async () => {
    await withLaying(
      () => Promise.reject(new Failure('busy')),
      async () => {
        const { status, page } = await look()
        expect(status).toBe(503)
        expect(page.querySelector('main')!.getAttribute('data-quilts')).toBe('failed')
      },
    )
  })
})
