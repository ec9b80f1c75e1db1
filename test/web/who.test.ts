import Fastify from 'fastify'
import { expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { decidePile } from '../../src/desk/decisions.ts'
import { type Role, roles } from '../../src/store/schema.ts'
import { type Guarded, requireWho, type Who } from '../../src/web/who.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
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

oneStore('who may use which route', (store) => {
  let workshop: Workshop
  let routes: readonly Guarded[]
  let own: Own
  let other: Own
  const people = new Map<Role, Visitor>()

  const pileOf = async (key: string): Promise<Own> => {
    const { row } = await workshop.conversation.open(key)
    return { key, number: row.number, id: row.id }
  }

  const prepare = async () => {
    workshop = await openWorkshop(store(), clock)
    routes = workshop.app.guarded.filter(({ method }) => method !== 'HEAD')
    const shirt = { kind: said('button-shirt'), size: said('XL') }
    own = await pileOf(await confirmPile(workshop.conversation, [shirt]))
    other = await pileOf(await confirmPile(workshop.conversation, [shirt]))
    for (const role of roles) {
      const email = `${role}@lantern-street.example`
      await addAccount(store(), clock, { email, name: role, role, password })
      const visitor = new Visitor(workshop.app)
      await visitor.get('/desk/sign-in')
      await visitor.post('/desk/sign-in', { email, password })
      people.set(role, visitor)
    }
  }

  const send = (visitor: Visitor, { method, url }: Guarded, pile: Own) =>
    method === 'GET'
      ? visitor.get(filled(url, pile))
      : visitor.postRaw(filled(url, pile), { csrf: visitor.field('csrf') })

  test('everybody is let in where the table says so, and nowhere else', async () => {
    await prepare()
    try {
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
            // A page of theirs first: forms need its secret.
            await visitor.get('/desk/bench')
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
      expect([...told].sort()).toEqual(
        expect.arrayContaining(['anyone', 'bench', 'owner', 'staff']),
      )
    } finally {
      await workshop.close()
    }
  })

  test("a customer's route opens by its own key alone", async () => {
    await prepare()
    try {
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
    } finally {
      await workshop.close()
    }
  })

  test('the bench sees no prices and nothing of how a customer is reached', async () => {
    await prepare()
    try {
      const [staff] = await store().db.selectFrom('account').select('id').execute()
      const seen = Date.now()
      await decidePile(store(), clock, own.id, {
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
    } finally {
      await workshop.close()
    }
  })
})
