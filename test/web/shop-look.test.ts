import { afterEach, describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { readShop } from '../../src/intake/shop.ts'
import { lookPath, lookSheet } from '../../src/web/chat/shop-look.ts'
import { learnAt, openApp, type TestApp } from '../help/app.ts'
import type { Visitor } from '../help/desk-visitor.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import type { App } from '../help/workshop.ts'

const knowledge = learnAt('2026-06-01')
const clock = () => Date.UTC(2026, 5, 1, 9)

describe('the shop’s look', () => {
  test('is a stylesheet for the screen alone, by what the reader prefers', () => {
    const sheet = lookSheet({ accent: '#2f6f73', corner: 6 })
    expect(sheet).toContain('@media screen and (prefers-color-scheme: light){:root{')
    expect(sheet).toContain('--button:#2f6f73')
    expect(sheet).toContain('--round:6px')
  })

  test('a light ground is not forced on who wishes dark pages', () => {
    const [light, dark] = lookSheet({ ground: '#ffffff', corner: 6 }).split('@media').slice(1)
    expect(light).toContain('--cloth:#ffffff')
    expect(dark).not.toContain('--cloth')
  })

  // WCAG 2.2, 1.4.3: words want 4.5 to 1. Grey of middle light reaches that with no ink of ours.
  test('a ground on which words fade is left out', () => {
    expect(lookSheet({ ground: '#808080' })).toBe('')
    expect(lookPath({ ground: '#808080' })).toBeNull()
  })

  test('another look has another address', () => {
    expect(lookPath({})).toBeNull()
    expect(lookPath({ corner: 6 })).not.toBe(lookPath({ corner: 7 }))
  })
})

oneStore('the owner’s page of the shop', (store) => {
  let app: TestApp
  afterEach(() => app?.close())

  async function owner(): Promise<Visitor> {
    app = await openApp(store(), { clock })
    const visitor = await signedIn(store(), clock, app.app as App, { name: 'Ida', role: 'owner' })
    expect((await visitor.get('/desk/shop')).status).toBe(200)
    return visitor
  }

  const fields = (change: Readonly<Record<string, string>>) => {
    const { shop } = knowledge
    return {
      name: shop.name,
      email: shop.email,
      phone: shop.phone,
      address: shop.address.join('\r\n'),
      tagline_en: shop.tagline.en!,
      tagline_es: shop.tagline.es!,
      policies_en: shop.policies.map(({ en }) => en).join('\r\n'),
      policies_es: shop.policies.map(({ es }) => es).join('\r\n'),
      accent: '',
      ground: '',
      font: '',
      corner: '',
      ...change,
    }
  }

  test('shows what applies, and what is typed before it is kept', async () => {
    const visitor = await owner()
    expect((await visitor.get('/desk/shop')).body).toContain('value="Lantern Street Quilts"')
    const change = { act: 'show', name: 'Harbour <b>Quilts</b>', accent: '#2f6f73' }
    const { status, body } = await visitor.post('/desk/shop', fields(change))
    expect(status).toBe(200)
    expect(body).toContain('<strong>Harbour &lt;b>Quilts')
    expect(body).toMatch(/<pieceworth-intake[^>]*accent="#2f6f73"/)
    expect(await store().db.selectFrom('flow_draft').selectAll().execute()).toEqual([])
  })

  test('a draft holds the whole file with the change in it', async () => {
    const visitor = await owner()
    const change = {
      act: 'draft',
      name: 'Harbour Quilts',
      policies_en: 'One.\r\nTwo.',
      corner: '6',
    }
    const { status, to } = await visitor.post(
      '/desk/shop',
      fields({ ...change, policies_es: 'Uno.\r\nDos.' }),
    )
    expect(status).toBe(303)
    expect(to).toMatch(/^\/desk\/files\/drafts\//)
    const [draft] = await store().db.selectFrom('flow_draft').select('files').execute()
    const [file] = JSON.parse(draft!.files) as { name: string; text: string }[]
    expect(file!.name).toBe('shop.yaml')
    expect(readShop(parse(file!.text))).toEqual({
      ...knowledge.shop,
      name: 'Harbour Quilts',
      policies: [
        { en: 'One.', es: 'Uno.' },
        { en: 'Two.', es: 'Dos.' },
      ],
      look: { corner: 6 },
    })
  })

  test.each([
    [{ name: '' }, 'Please write something here.'],
    [{ email: 'nowhere' }, 'does not look like an e-mail'],
    [{ policies_es: 'Solo una.' }, 'as many lines as the first'],
    [{ accent: 'teal' }, 'Write the accent as #'],
    [{ font: 'Geo"rgia' }, 'Use letters, digits'],
    [{ corner: '99' }, 'Write a number from 0 to 24'],
  ])('%j is refused with its reason, and what was typed stays', async (change, why) => {
    const visitor = await owner()
    const { status, body } = await visitor.post(
      '/desk/shop',
      fields({ act: 'draft', tagline_en: 'Kept as it was typed', ...change }),
    )
    expect(status).toBe(422)
    expect(body).toContain(why)
    expect(body).toContain('Kept as it was typed')
    expect(await store().db.selectFrom('flow_draft').selectAll().execute()).toEqual([])
  })

  test('a ground on which words fade is told, not forbidden', async () => {
    const visitor = await owner()
    const { body } = await visitor.post('/desk/shop', fields({ act: 'show', ground: '#808080' }))
    expect(body).toContain('Words are hard to read on this ground')
  })

  test('speaks Spanish', async () => {
    const visitor = await owner()
    expect((await visitor.get('/desk/shop?lang=es')).body).toContain('Su taller como lo ven')
  })

  test('customers’ pages wear the look', async () => {
    const shop = { ...knowledge.shop, look: { accent: '#2f6f73' } }
    app = await openApp(store(), { clock, knowledge: { ...knowledge, shop } })
    const page = await app.app.inject({ url: '/', headers: { accept: 'text/html' } })
    const href = /href="(\/look\.css\?v=\w+)"/.exec(page.body)![1]!
    const sheet = await app.app.inject({ url: href })
    expect(sheet.headers['content-type']).toContain('text/css')
    expect(sheet.body).toBe(lookSheet(shop.look))
  })
})
