import Fastify from 'fastify'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { decidePile } from '../../src/desk/decisions.ts'
import { graveFlags } from '../../src/desk/flag-decisions.ts'
import { openCustody } from '../../src/desk/ledger.ts'
import type { Store } from '../../src/store/open.ts'
import { type Role, roles } from '../../src/store/schema.ts'
import { type Guarded, requireWho, type Who } from '../../src/web/who.ts'
import { askPerson } from '../help/desk.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { photoOf } from '../help/kept-photo.ts'
import { openSqlite, type TestStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const password = 'needle and thimble'

test('a route that does not say who may use it stops the start', async () => {
  const app = Fastify()
  requireWho(app)
  expect(() => app.get('/open', { config: { who: ['anyone'] } }, async () => '')).not.toThrow()
  expect(() => app.get('/secret', async () => '')).toThrow(
    'GET /secret does not say who may use it',
  )
  expect(() => app.get('/nobody', { config: { who: [] } }, async () => '')).toThrow('/nobody')
})

/** A pile with all that an address may name of it. */
interface Own {
  readonly key: string
  readonly number: number
  readonly id: string
}

/** What stands in the address of a route for a `:parameter`; of two piles the second is somebody else's. */
const filled = (url: string, own: Own): string =>
  url.replaceAll(/:(\w+)(?:\([^)]*\))?/g, (_, name: string) => {
    const value: Record<string, string> = {
      key: own.key,
      pile: String(own.number),
      n: '1',
      quilt: '1',
      item: '1',
      code: 'es',
      size: 'thumb',
    }
    return value[name] ?? 'x'.repeat(24)
  })

/** No such link; or a form that is not whole, which is told before any pile is looked for. */
const turnedAway: readonly number[] = [404, 400]

/** Who may use a route is asked for before anything else is looked at. */
const isDesk = ({ url }: Guarded): boolean => url === '/desk' || url.startsWith('/desk/')

/** What most forms of the desk take; each reads what is its own. */
const anyForm = {
  verdict: 'accept',
  reason: 'as it was told',
  note: 'as it was told',
  how: 'typed wrong',
  act: 'save',
  seen: '0',
  idem: 'a-form-of-this-test',
}

/** Forms that take something else, by route. */
const formsOf: Readonly<Record<string, readonly Readonly<Record<string, string>>[]>> = {
  '/desk/piles/:pile/garments/:n/spots': [
    { act: 'mark', what: 'hole', cell: '' },
    { act: 'unmark', spot: 'x' },
  ],
  '/desk/piles/:pile/garments/:n/photos/:id/sheet': [
    { act: 'measure', sheet: 'a4' },
    { act: 'take-back' },
  ],
  '/desk/piles/:pile/garments/:n/decision': [{ ...anyForm, verdict: 'decline' }],
  '/desk/piles/:pile/garments/:n/flags/:flag/decision': [{ ...anyForm, verdict: 'decline' }],
  '/desk/piles/:pile/garments/:n/facts/undo': [{ set: 'their-set' }],
  '/desk/piles/:pile/garments/:n/record': [{ ...anyForm, act: 'ask' }],
  '/desk/piles/:pile/garments/:n/incident': [{ ...anyForm, act: 'tell' }],
  '/desk/piles/:pile/custody/:subject': [
    { ...anyForm, act: 'undo' },
    { ...anyForm, act: 'not-sent' },
  ],
}

/** Of a pile something of each kind that an address may name, by the parameter's name. */
async function oneOfEach(
  { db }: Store,
  { photos }: Workshop,
  pile: Own,
): Promise<Readonly<Record<string, string>>> {
  const { id: who } = await db.selectFrom('account').select('id').executeTakeFirstOrThrow()
  const hash = await photos.keep(photoOf('theirs'))
  await db
    .insertInto('photo')
    .values({
      id: 'their-photo',
      pile_id: pile.id,
      item: 2,
      question: 'photos',
      hash,
      width: 700,
      height: 500,
      bytes: 4,
      kept: 1,
      at: 1,
    })
    .execute()
  await db
    .insertInto('fact_set')
    .values({
      id: 'their-set',
      pile_id: pile.id,
      item: 2,
      fact: 'weight',
      value: 'heavy',
      source: 'staff',
      reason: 'seen',
      who,
      at: 1,
      undone_at: null,
      undone_by: null,
    })
    .execute()
  const { flags } = await db
    .selectFrom('garment')
    .select('flags')
    .where('pile_id', '=', pile.id)
    .where('item', '=', 2)
    .executeTakeFirstOrThrow()
  const grave = graveFlags(JSON.parse(flags))[0]!
  const note = await askPerson(db, pile.id, 2)
  await db
    .insertInto('message')
    .values({
      id: 'their-message',
      pile_id: pile.id,
      item: 2,
      account_id: null,
      text: 'Is it too thin?',
      wants_answer: 0,
      idem: 'their-message',
      at: 1,
      settled_at: null,
      settled_by: null,
    })
    .execute()
  await db
    .insertInto('payment')
    .values({
      id: 'their-payment',
      pile_id: pile.id,
      receipt: 1,
      kind: 'deposit',
      minor: 100,
      currency: 'USD',
      how: 'cash',
      undoes: null,
      idem: 'their-payment',
      who,
      at: 1,
    })
    .execute()
  return {
    n: '2',
    id: 'their-photo',
    note,
    message: 'their-message',
    payment: 'their-payment',
    subject: '2',
    flag: grave.code,
  }
}

describe('who may use which route', () => {
  let opened: TestStore
  let workshop: Workshop
  let routes: readonly Guarded[]
  let own: Own
  /** Of somebody else; it has a garment more. */
  let other: Own
  const people = new Map<Role, Visitor>()

  const pileOf = async (key: string): Promise<Own> => {
    const { row } = await workshop.conversation.open(key)
    return { key, number: row.number, id: row.id }
  }

  const signIn = async (role: Role): Promise<Visitor> => {
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email: `${role}@lantern-street.example`, password })
    return visitor
  }

  beforeAll(async () => {
    opened = await openSqlite()
    const { store } = opened
    workshop = await openWorkshop(store, clock)
    routes = workshop.app.guarded.filter(({ method }) => method !== 'HEAD')
    const shirt = { kind: said('button-shirt'), size: said('XL') }
    const waits = { ...shirt, wear: said('shattered'), photos: said(['their-photo']) }
    own = await pileOf(await confirmPile(workshop.conversation, [shirt]))
    other = await pileOf(await confirmPile(workshop.conversation, [shirt, waits]))
    for (const role of roles) {
      const email = `${role}@lantern-street.example`
      await addAccount(store, clock, { email, name: role, role, password })
      people.set(role, await signIn(role))
    }
  })
  afterAll(async () => {
    await workshop?.close()
    await opened?.end()
  })

  /** The secret of each visitor's forms, from a page of theirs; it stays the same while they are signed in. */
  const secrets = new Map<Visitor, string>()
  const secretOf = async (visitor: Visitor): Promise<string> => {
    if (!secrets.has(visitor)) {
      await visitor.get('/desk/bench')
      secrets.set(visitor, visitor.field('csrf'))
    }
    return secrets.get(visitor)!
  }

  const send = async (
    visitor: Visitor,
    { method, url }: Pick<Guarded, 'method' | 'url'>,
    pile: Own,
    fields: Readonly<Record<string, string>> = {},
  ) =>
    method === 'GET'
      ? visitor.get(filled(url, pile))
      : visitor.postRaw(filled(url, pile), { csrf: await secretOf(visitor), ...fields })

  test('everybody is let in where the table says so, and nowhere else', async () => {
    expect(routes.length).toBeGreaterThan(30)
    const wrong: string[] = []
    const told = new Set<Who>()
    for (const route of routes.filter(isDesk)) {
      const open = route.who.includes('anyone')
      for (const one of route.who) told.add(one)
      const stranger = await send(new Visitor(workshop.app), route, own)
      const asksToSignIn =
        stranger.status === 401 || (stranger.to ?? '').startsWith('/desk/sign-in')
      if (asksToSignIn === open) wrong.push(`nobody: ${route.method} ${route.url}`)
      if (open || route.url === '/desk/sign-out') continue
      for (const [role, visitor] of people) {
        for (const pile of [own, other]) {
          const { status, body } = await send(visitor, route, pile)
          const refused = status === 403 && body.includes('not for your account')
          if (refused === route.who.includes(role)) {
            wrong.push(`${role}: ${route.method} ${route.url} ${status}`)
          }
          if (status >= 500) wrong.push(`${role}: ${route.method} ${route.url} fails: ${status}`)
        }
      }
    }
    expect(wrong).toEqual([])
    expect([...told].sort()).toEqual(expect.arrayContaining(['anyone', 'bench', 'owner', 'staff']))
  })

  test("a customer's route opens by its own key alone", async () => {
    const theirs = routes.filter(({ who }) => who.includes('customer'))
    expect(theirs.length).toBeGreaterThan(8)
    const wrong: string[] = []
    for (const route of theirs) {
      expect(route.url, 'a pile is named by its key alone').toMatch(/^\/i\/:key(\/|$)/)
      for (const key of ['0'.repeat(own.key.length), own.id, String(own.number)]) {
        const { status } = await send(new Visitor(workshop.app), route, { ...own, key })
        if (!turnedAway.includes(status)) {
          wrong.push(`${route.method} ${route.url} by a wrong key: ${status}`)
        }
      }
      for (const [role, visitor] of people) {
        const { status } = await send(visitor, route, { ...own, key: own.id })
        if (!turnedAway.includes(status)) {
          wrong.push(`${role}: ${route.method} ${route.url}: ${status}`)
        }
      }
    }
    expect(wrong).toEqual([])
    expect((await new Visitor(workshop.app).get(`/i/${own.key}`)).status).toBe(200)
  })

  test("nothing of another pile is reached by way of one's own", async () => {
    const theirs = await oneOfEach(opened.store, workshop, other)
    const staff = people.get('staff')!
    const { id: who } = await opened.store.db
      .selectFrom('account')
      .select('id')
      .executeTakeFirstOrThrow()
    for (const { id } of [own, other]) {
      await openCustody({ store: opened.store, clock }, id, who)
    }
    const wrong: string[] = []
    const tried: string[] = []
    // What is erased is not there for the next: that comes last.
    const erases = ({ url }: Guarded) => Number(url.endsWith('/erase'))
    const deeper = routes.filter(({ url }) => /^\/desk\/piles\/:pile\/.*:/.test(url))
    for (const route of deeper.toSorted((a, b) => erases(a) - erases(b))) {
      const names = [...route.url.matchAll(/:(\w+)/g)].map(([, name]) => name!)
      const name = names.find((one) => one in theirs)
      // Quilts are counted from one in every pile; papers have the same names.
      if (!name)
        expect(names.filter((one) => !['pile', 'quilt', 'file', 'name'].includes(one))).toEqual([])
      if (!name) continue
      const forms = route.method === 'GET' ? [{}] : (formsOf[route.url] ?? [{ ...anyForm }])
      for (const form of forms) {
        const url = names.reduce(
          (at, one) => at.replace(`:${one}`, theirs[one] ?? `:${one}`),
          route.url,
        )
        tried.push(`${route.method} ${route.url}`)
        const foreign = await send(staff, { method: route.method, url }, own, form)
        if (foreign.status !== 404) wrong.push(`${route.method} ${url}: ${foreign.status}`)
        // The same by its own pile is there: a mistyped address or form would prove nothing.
        const right = await send(staff, { method: route.method, url }, other, form)
        if (right.status === 404 || right.status === 400) {
          wrong.push(`${route.method} ${url} by its own pile: ${right.status}`)
        }
      }
    }
    expect(wrong).toEqual([])
    expect(tried.length).toBeGreaterThan(14)
  })

  test('the bench sees no prices and nothing of how a customer is reached', async () => {
    const [staff] = await opened.store.db.selectFrom('account').select('id').execute()
    const seen = Date.now()
    await decidePile(opened.store, clock, own.id, {
      verdict: 'accept',
      reason: 'fine',
      who: staff!.id,
      seen,
    })
    const pages: string[] = []
    for (const { method, url, who } of routes) {
      if (method !== 'GET' || !url.startsWith('/desk') || !who.includes('bench')) continue
      const { status, body, type } = await people.get('bench')!.get(filled(url, own))
      if (status === 200 && type.includes('html')) pages.push(body)
    }
    expect(pages.length).toBeGreaterThan(1)
    for (const page of pages) {
      expect(page).not.toMatch(/\$\s?\d/)
      expect(page).not.toContain('ana@ruiz.example')
      expect(page).not.toContain('555 0100')
    }
  })
})
