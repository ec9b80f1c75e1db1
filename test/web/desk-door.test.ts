import { afterEach, beforeEach, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { ownerLink } from '../../src/desk/once-links.ts'
import { sessionLasts } from '../../src/desk/sessions.ts'
import { ownPage } from '../../src/web/desk/paths.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
import { openWorkshop, type Workshop } from '../help/workshop.ts'

const marta = { email: 'marta@lantern-street.example', password: 'needle and thimble' }

test.each([
  ['/desk', '/desk'],
  ['/desk/piles/4', '/desk/piles/4'],
  ['/desk?list=nobody&page=2', '/desk?list=nobody&page=2'],
])('%s is a page of the desk', (next, page) => {
  expect(ownPage(next)).toBe(page)
})

test.each([
  [undefined],
  [''],
  ['//evil.example'],
  ['//evil.example/desk'],
  ['/\\evil.example'],
  ['\\\\evil.example/desk'],
  ['https://evil.example/desk'],
  ['javascript:alert(1)'],
  ['/desk/../i/abc'],
  ['/desk/%2e%2e/%2e%2e/i'],
  ['/deskx'],
  ['/i/somebody'],
  ['/\tdesk'],
  ['/desk\r\nset-cookie: a=b'],
  ['desk'],
])('%j leads to the queue and nowhere else', (next) => {
  expect(ownPage(next)).toBe('/desk')
})

oneStore('the door of the desk', (store) => {
  let workshop: Workshop
  let now = Date.UTC(2026, 5, 1, 9)
  const clock = () => now

  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterEach(() => workshop.close())

  const staff = () => addAccount(store(), clock, { ...marta, name: 'Marta Quill', role: 'staff' })

  async function signedIn(next = ''): Promise<Visitor> {
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    const answer = await visitor.post('/desk/sign-in', { ...marta, next })
    expect(answer.status).toBe(303)
    return visitor
  }

  test('the first start’s link makes the owner, who then stands at the desk', async () => {
    const token = await ownerLink(store(), clock)
    const visitor = new Visitor(workshop.app)
    expect((await visitor.get(`/desk/welcome/${token}`)).status).toBe(200)
    const answer = await visitor.post(`/desk/welcome/${token}`, { ...marta, name: 'Ida' })
    expect(answer).toMatchObject({ status: 303, to: '/desk' })
    expect((await visitor.get('/desk')).body).toContain('Ida')
  })

  test('a used link says so', async () => {
    const token = await ownerLink(store(), clock)
    const visitor = new Visitor(workshop.app)
    await visitor.get(`/desk/welcome/${token}`)
    await visitor.post(`/desk/welcome/${token}`, { ...marta, name: 'Ida' })
    const again = await new Visitor(workshop.app).get(`/desk/welcome/${token}`)
    expect(again.status).toBe(410)
    expect(again.body).toContain('This link has done its work')
  })

  test('a refused welcome keeps name and address, and never the password', async () => {
    const token = await ownerLink(store(), clock)
    const visitor = new Visitor(workshop.app)
    await visitor.get(`/desk/welcome/${token}`)
    const answer = await visitor.post(`/desk/welcome/${token}`, {
      name: '<i>Ida</i> "Q"',
      email: 'ida@lantern-street.example',
      password: 'sh0rt!',
    })
    expect(answer.status).toBe(422)
    expect(answer.body).toContain('value="&lt;i>Ida&lt;/i> &quot;Q&quot;"')
    expect(answer.body).toContain('value="ida@lantern-street.example"')
    expect(answer.body).not.toContain('sh0rt!')
  })

  test('signing in leads back to the page that was asked for', async () => {
    await staff()
    const visitor = new Visitor(workshop.app)
    const turned = await visitor.get('/desk?list=nobody')
    expect(turned).toMatchObject({
      status: 303,
      to: `/desk/sign-in?next=${encodeURIComponent('/desk?list=nobody')}`,
    })
    await visitor.get(turned.to!)
    const answer = await visitor.post('/desk/sign-in', { ...marta, next: visitor.field('next') })
    expect(answer.to).toBe('/desk?list=nobody')
  })

  test('signing in never leads to another site', async () => {
    await staff()
    const visitor = new Visitor(workshop.app)
    const page = await visitor.get('/desk/sign-in?next=//evil.example/desk')
    expect(page.body).not.toContain('evil.example')
    const answer = await visitor.post('/desk/sign-in', { ...marta, next: '//evil.example/desk' })
    expect(answer.to).toBe('/desk')
  })

  test('the cookie is out of reach of scripts and of other sites’ forms', async () => {
    await staff()
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    const { cookies } = await visitor.post('/desk/sign-in', marta)
    const session = cookies.find((cookie) => cookie.startsWith('pw_desk='))!
    expect(session).toMatch(/; Path=\/desk;/)
    expect(session).toMatch(/; HttpOnly/)
    expect(session).toMatch(/; SameSite=Lax/)
    expect(session).not.toMatch(/; Secure/)
  })

  test('behind https the cookie goes over https alone', async () => {
    await staff()
    const safe = await openWorkshop(store(), clock, { publicUrl: 'https://quilts.example' })
    const visitor = new Visitor(safe.app)
    await visitor.get('/desk/sign-in')
    const { cookies } = await visitor.post('/desk/sign-in', marta)
    expect(cookies.find((cookie) => cookie.startsWith('pw_desk='))).toMatch(/; Secure/)
    await safe.close()
  })

  test('unknown address and wrong password get the same words', async () => {
    await staff()
    const refusal = async (fields: Record<string, string>) => {
      const visitor = new Visitor(workshop.app)
      await visitor.get('/desk/sign-in')
      const answer = await visitor.post('/desk/sign-in', fields)
      return { status: answer.status, said: /role="alert">([^<]*)</.exec(answer.body)?.[1] }
    }
    const wrong = await refusal({ ...marta, password: 'thimble and needle' })
    const unknown = await refusal({ ...marta, email: 'nobody@lantern-street.example' })
    expect(wrong).toEqual({
      status: 401,
      said: 'The e-mail address or the password is not right. Please try again.',
    })
    expect(unknown).toEqual(wrong)
  })

  test('a refused sign-in keeps the address, escaped, and never the password', async () => {
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    const answer = await visitor.post('/desk/sign-in', {
      email: '"><script>alert(1)</script>',
      password: 'a secret of mine',
    })
    expect(answer.status).toBe(401)
    expect(answer.body).toContain('value="&quot;>&lt;script>alert(1)&lt;/script>"')
    expect(answer.body).not.toContain('<script>')
    expect(answer.body).not.toContain('a secret of mine')
  })

  test.each([
    ['no secret', {}],
    ['an empty one', { csrf: '' }],
    ['a made-up one', { csrf: 'a'.repeat(64) }],
  ])('a sign-in form with %s is refused', async (_, forged) => {
    await staff()
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    const answer = await visitor.postRaw('/desk/sign-in', { ...marta, ...forged })
    expect(answer.status).toBe(403)
    expect(visitor.cookies.has('pw_desk')).toBe(false)
  })

  test('a sign-in form without our cookie is refused', async () => {
    await staff()
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    const csrf = visitor.field('csrf')
    visitor.cookies.clear()
    expect((await visitor.postRaw('/desk/sign-in', { ...marta, csrf })).status).toBe(403)
  })

  test('the eleventh try for one address has to wait, and another address does not', async () => {
    await staff()
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    for (let n = 0; n < 10; n++) {
      const answer = await visitor.post('/desk/sign-in', {
        ...marta,
        password: `guess number ${n}`,
      })
      expect(answer.status).toBe(401)
    }
    const held = await visitor.post('/desk/sign-in', {
      ...marta,
      email: ` ${marta.email.toUpperCase()}`,
    })
    expect(held.status).toBe(429)
    expect(held.body).toContain('Please wait 15 minutes')
    const other = await visitor.post('/desk/sign-in', {
      ...marta,
      email: 'ivo@lantern-street.example',
    })
    expect(other.status).toBe(401)
  })

  test('signing out ends the session for whoever holds its cookie', async () => {
    await staff()
    const visitor = await signedIn()
    const thief = visitor.twin()
    expect((await thief.get('/desk')).status).toBe(200)
    await visitor.get('/desk')
    expect(await visitor.post('/desk/sign-out', {})).toMatchObject({
      status: 303,
      to: '/desk/sign-in',
    })
    expect(visitor.cookies.has('pw_desk')).toBe(false)
    expect((await thief.get('/desk')).status).toBe(303)
  })

  test('signing in again makes a new session and ends the one before', async () => {
    await staff()
    const visitor = await signedIn()
    const before = visitor.twin()
    visitor.cookies.set('pw_desk_form', before.cookies.get('pw_desk_form')!)
    const door = new Visitor(workshop.app)
    await door.get('/desk/sign-in')
    door.cookies.set('pw_desk', visitor.cookies.get('pw_desk')!)
    await door.post('/desk/sign-in', marta)
    expect(door.cookies.get('pw_desk')).not.toBe(before.cookies.get('pw_desk'))
    expect((await before.get('/desk')).status).toBe(303)
    expect((await door.get('/desk')).status).toBe(200)
  })

  test('a closed account and a session left alone are turned to the door', async () => {
    const { id } = await staff()
    const visitor = await signedIn()
    now += sessionLasts.idle
    expect((await visitor.get('/desk')).status).toBe(303)
    now = Date.UTC(2026, 5, 1, 9)
    expect((await visitor.get('/desk')).status).toBe(200)
    await store().db.updateTable('account').set({ disabled_at: 1 }).where('id', '=', id).execute()
    expect((await visitor.get('/desk')).status).toBe(303)
  })

  test('a session the server never made opens nothing', async () => {
    const visitor = new Visitor(workshop.app)
    visitor.cookies.set('pw_desk', 'x'.repeat(32))
    expect((await visitor.get('/desk')).status).toBe(303)
  })

  test('a language that is asked for before signing in is that of the desk', async () => {
    await staff()
    const visitor = new Visitor(workshop.app)
    const { to } = await visitor.get('/desk?lang=es', { accept: 'text/html' })
    expect((await visitor.get(to!)).body).toContain('<html lang="es">')
    await visitor.post('/desk/sign-in', marta)
    expect((await visitor.get('/desk')).body).toContain('<html lang="es">')
  })

  test('the desk speaks the reader’s language and keeps the one that was chosen', async () => {
    await staff()
    const visitor = await signedIn()
    expect((await visitor.get('/desk', { 'accept-language': 'es' })).body).toContain(
      'Nos toca a nosotros',
    )
    expect((await visitor.get('/desk?lang=es')).body).toContain('lang="es"')
    expect((await visitor.get('/desk', { 'accept-language': 'en' })).body).toContain(
      'Nos toca a nosotros',
    )
    expect((await visitor.get('/desk?lang=zz')).status).toBe(200)
  })
})
