import { parse } from 'node-html-parser'
import { expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, leadTo, openWorkshop, said } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const owner = { email: 'marta@lantern-street.example', password: 'needle and thimble' }

/** What Content Security Policy Level 3 (W3C) counts as inline, and `script-src 'self'` refuses. */
function inlineOf(html: string): string[] {
  const page = parse(html)
  const found: string[] = []
  for (const script of page.querySelectorAll('script')) {
    const data = script.getAttribute('type')?.includes('json') ?? false
    if (!script.getAttribute('src') && !data) found.push(script.outerHTML)
    if (/^(?:https?:)?\/\//.test(script.getAttribute('src') ?? '')) found.push(script.outerHTML)
  }
  for (const style of page.querySelectorAll('style')) {
    if (!style.closest('svg')) found.push(style.outerHTML.slice(0, 80))
  }
  for (const one of page.querySelectorAll('*')) {
    for (const [name, value] of Object.entries(one.attributes)) {
      if (/^on[a-z]+$/i.test(name) || /^\s*javascript:/i.test(value)) found.push(`${name}=${value}`)
    }
  }
  return found
}

oneStore('the content-security policy', (store) => {
  test('stands at every page that can be opened by its address, and no page has anything inline', async () => {
    // Many pages one after the other would be refused as too much on a slow machine.
    const workshop = await openWorkshop(store(), clock, {
      pressure: { requests: 400, lagMs: 1_000_000 },
    })
    try {
      const shirt = { kind: said('button-shirt') }
      const keys = [
        await confirmPile(workshop.conversation, [shirt]),
        await leadTo('review', workshop.conversation, [shirt]),
      ]
      await addAccount(store(), clock, { ...owner, name: 'Marta', role: 'owner' })
      const visitor = new Visitor(workshop.app)
      await visitor.get('/desk/sign-in')
      await visitor.post('/desk/sign-in', owner)
      const cookie = [...visitor.cookies].map(([name, value]) => `${name}=${value}`).join('; ')

      const urls = workshop.app.guarded
        .filter(({ method }) => method === 'GET')
        .flatMap(({ url }) => keys.map((key, at) => ({ url, key, pile: String(at + 1) })))
        .map(({ url, key, pile }) =>
          url.replaceAll(
            /:(\w+)(?:\([^)]*\))?/g,
            (_, name: string) =>
              ({ key, pile, item: '1', n: '1', quilt: '1', code: 'en' })[name] ?? 'kind',
          ),
        )
      const wrong: string[] = []
      let pages = 0
      for (const url of new Set(urls)) {
        const { headers, body } = await workshop.app.inject({
          url,
          headers: { accept: 'text/html', cookie },
        })
        const policy = String(headers['content-security-policy'] ?? '')
        if (!/(^|;)\s*script-src 'self'\s*(;|$)/.test(policy)) wrong.push(`${url}: ${policy}`)
        if (/unsafe-(?:inline|eval)|\*/.test(policy)) wrong.push(`${url}: ${policy}`)
        if (headers['x-content-type-options'] !== 'nosniff') wrong.push(`${url}: may be sniffed`)
        if (!String(headers['content-type']).startsWith('text/html')) continue
        pages += 1
        wrong.push(...inlineOf(body).map((one) => `${url}: ${one}`))
      }
      expect(wrong).toEqual([])
      expect(pages).toBeGreaterThan(60)
    } finally {
      await workshop.close()
    }
  })

  test('stands at what is refused as too much, too', async () => {
    const workshop = await openWorkshop(store(), clock, {
      pressure: { requests: 0, lagMs: 1_000_000 },
    })
    try {
      const { statusCode, headers } = await workshop.app.inject('/')
      expect(statusCode).toBe(503)
      expect(headers['content-security-policy']).toContain("script-src 'self'")
      expect(headers['x-content-type-options']).toBe('nosniff')
    } finally {
      await workshop.close()
    }
  })

  test('finds what is inline', () => {
    const page =
      '<script>1</script><p onclick="x()">a</p><a href="javascript:1">b</a><style>p{}</style>'
    expect(inlineOf(page)).toHaveLength(4)
  })
})

oneStore('headers that a whole site stands by', (store) => {
  test.each([
    ['https://lantern-street.example', 'max-age=31536000; includeSubDomains'],
    ['http://lantern-street.example', undefined],
  ])('at %s stand at a page and at a refusal alike', async (publicUrl, transport) => {
    const workshop = await openWorkshop(store(), clock, { publicUrl })
    try {
      for (const url of ['/', '/not-there']) {
        const { headers } = await workshop.app.inject({ url, headers: { accept: 'text/html' } })
        expect(headers).toMatchObject({
          'referrer-policy': 'no-referrer',
          'cross-origin-opener-policy': 'same-origin',
          'x-content-type-options': 'nosniff',
        })
        // Said over plain http, a browser takes no notice of it (RFC 6797, section 8.1).
        expect(headers['strict-transport-security']).toBe(transport)
      }
    } finally {
      await workshop.close()
    }
  })
})
