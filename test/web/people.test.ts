import { afterEach, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { linkTries } from '../../src/web/desk/door-routes.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
import { openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const password = 'needle and thimble'
const hostile = `<img src=x onerror=alert(1)> "O'Neil" \u202e李`

oneStore('the page of people', (store) => {
  let workshop: Workshop
  afterEach(() => workshop?.close())

  const owner = async (email = 'owner@lantern-street.example') => {
    await addAccount(store(), clock, { email, name: 'Ida', role: 'owner', password })
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email, password })
    await visitor.get('/desk/people')
    return visitor
  }

  const linkOn = (body: string) => /https?:\/\/[^<\s"]*(\/desk\/welcome\/[\w-]+)/.exec(body)?.[1]

  const idOf = async (email: string) =>
    (
      await store()
        .db.selectFrom('account')
        .select('id')
        .where('email', '=', email)
        .executeTakeFirstOrThrow()
    ).id

  test('a bench person who is added chooses a password and comes to the bench alone', async () => {
    workshop = await openWorkshop(store(), clock)
    const ida = await owner()
    const added = await ida.post('/desk/people', {
      name: 'Bo Anders',
      email: 'bo@lantern-street.example',
      role: 'bench',
    })
    const link = linkOn(added.body)!
    expect(added).toMatchObject({ status: 200 })
    expect(linkOn((await ida.get('/desk/people')).body), 'shown once').toBeUndefined()

    const bo = new Visitor(workshop.app)
    const page = await bo.get(link)
    expect(page.body).toContain('Welcome, Bo Anders')
    expect(page.body).toContain('value="bo@lantern-street.example"')
    expect((await bo.post(link, { password: 'short' })).body).toContain('too short')
    expect(await bo.post(link, { password })).toMatchObject({ status: 303, to: '/desk' })
    expect(await bo.get('/desk')).toMatchObject({ to: '/desk/bench' })
    expect((await bo.get('/desk/people')).status).toBe(403)
    expect((await bo.get('/desk/bench')).body).not.toContain('/desk/people')
    expect((await new Visitor(workshop.app).get(link)).status).toBe(410)
  })

  test('what is typed is shown as text, and stays in the form when it is refused', async () => {
    workshop = await openWorkshop(store(), clock)
    const ida = await owner()
    const refused = await ida.post('/desk/people', { name: hostile, email: 'none', role: 'staff' })
    expect(refused.status).toBe(422)
    expect(refused.body).not.toContain('<img src=x')
    expect(refused.body).toContain('&lt;img src=x')
    const added = await ida.post('/desk/people', {
      name: hostile,
      email: 'li@lantern-street.example',
      role: 'staff',
    })
    expect(added.status).toBe(200)
    expect(added.body).not.toContain('<img src=x')
    expect(added.body).toContain('李')
    expect(added.body).not.toContain('\u202e')
    for (const role of ['admin', '', 'owner\0']) {
      const answer = await ida.post('/desk/people', { name: 'X', email: 'x@shop.example', role })
      expect([role, answer.status]).toEqual([role, 400])
    }
  })

  test('who is closed is out at once; the last owner stays; a stale page changes nothing', async () => {
    workshop = await openWorkshop(store(), clock)
    const ida = await owner()
    const second = await owner('second@lantern-street.example')
    const [first, other] = [
      await idOf('owner@lantern-street.example'),
      await idOf('second@lantern-street.example'),
    ]
    const seen = { was: 'owner', closed: '0' }
    expect(await ida.post(`/desk/people/${other}/close`, seen)).toMatchObject({ status: 303 })
    expect((await second.get('/desk/people')).to).toContain('/desk/sign-in')
    await ida.get('/desk/people')
    const last = await ida.post(`/desk/people/${first}/close`, seen)
    expect(last).toMatchObject({ status: 409 })
    expect(last.body).toContain('Somebody must stay')
    const stale = await ida.post(`/desk/people/${other}/role`, { ...seen, role: 'staff' })
    expect(stale.status).toBe(409)
    expect(stale.body).toContain('Somebody changed this account')
    expect((await ida.post(`/desk/people/${other}/link`, seen)).status).toBe(409)
    const reopened = await ida.post(`/desk/people/${other}/reopen`, { was: 'owner', closed: '1' })
    expect(reopened).toMatchObject({ status: 303 })
    expect((await second.get('/desk/people')).to, 'the old session stays ended').toContain(
      'sign-in',
    )
    expect((await ida.post('/desk/people/nobody/close', seen)).status).toBe(404)
  })

  test('a form without the secret of its session does nothing', async () => {
    workshop = await openWorkshop(store(), clock)
    const ida = await owner()
    const sent = { csrf: 'x', name: 'Eve', email: 'eve@elsewhere.example', role: 'owner' }
    expect((await ida.postRaw('/desk/people', sent)).status).toBe(403)
    expect(await store().db.selectFrom('account').select('id').execute()).toHaveLength(1)
  })

  test('links are not guessed at without end', async () => {
    workshop = await openWorkshop(store(), clock)
    const stranger = new Visitor(workshop.app)
    const statuses = new Set<number>()
    for (let n = 0; n <= linkTries.max; n += 1) {
      statuses.add((await stranger.get(`/desk/welcome/${String(n).padStart(32, 'x')}`)).status)
    }
    expect([...statuses]).toEqual([404, 429])
  })
})
