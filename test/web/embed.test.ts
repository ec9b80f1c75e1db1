import { readFileSync } from 'node:fs'
import { afterEach, describe, expect, test } from 'vitest'
import { readConfig } from '../../src/config.ts'
import { openAssets } from '../../src/web/assets/manifest.ts'
import { snippetOf } from '../../src/web/desk/present-embed.ts'
import { contrast, dress, grounds } from '../../src/web/embed/dress.ts'
import { openApp, type TestApp } from '../help/app.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const site = 'https://quilts.example'

describe('how a frame is dressed', () => {
  // WCAG 2.2, "contrast ratio": 1 to 21; #777777 on white is the published near miss of 4.5 (4.48).
  test('contrast is that of WCAG', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6)
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2)
    expect(contrast('#a63d2f', '#a63d2f')).toBe(1)
  })

  test('paper and pale words are those of the stylesheet', () => {
    const css = readFileSync(new URL('../../src/web/look/tokens.css', import.meta.url), 'utf8')
    const [light, dark] = css.split('@media (prefers-color-scheme: dark)') as [string, string]
    for (const [sheet, { paper, soft }] of [
      [light, grounds.light],
      [dark, grounds.dark],
    ] as const) {
      expect(/--paper: (#\w+)/.exec(sheet)?.[1]).toBe(paper)
      expect(/--soft: (#\w+)/.exec(sheet)?.[1]).toBe(soft)
    }
  })

  test.each([
    ['accent', 'red'],
    ['accent', '#12345'],
    ['accent', 'url(//evil.example)'],
    ['ground', '#ffffff;}*{display:none'],
    ['ground', 'var(--x)'],
    ['font', 'a;b'],
    ['font', 'url(x)'],
    ['font', 'x'.repeat(121)],
    ['corner', '-1'],
    ['corner', '25'],
    ['corner', '3px'],
    ['corner', 'NaN'],
  ])('%s "%s" is left out and named', (name, value) => {
    const { tokens, dark, wrong } = dress({ [name]: value }, false)
    expect({ tokens, dark, wrong }).toEqual({ tokens: {}, dark: null, wrong: [name] })
  })

  test('a ground on which words fade is not used', () => {
    for (const ground of ['#808080', '#9a9a9a', '#5d6070'])
      expect(dress({ ground }, false)).toMatchObject({ tokens: {}, dark: null, pale: ['ground'] })
    expect(dress({ ground: '#FFFFFF' }, false)).toMatchObject({ dark: false, pale: [] })
    expect(dress({ ground: '#101820' }, false)).toMatchObject({ dark: true, pale: [] })
  })

  test('words on the button are always easy to read, whatever the accent', () => {
    for (let colour = 0; colour < 0xffffff; colour += 0x0123f7) {
      const accent = `#${colour.toString(16).padStart(6, '0')}`
      const { tokens } = dress({ accent }, false)
      expect(contrast(accent, tokens['--on-button']!), accent).toBeGreaterThanOrEqual(4.5)
      if (tokens['--madder'])
        expect(contrast(accent, grounds.light.paper)).toBeGreaterThanOrEqual(4.5)
      if (contrast(accent, grounds.light.paper) < 3)
        expect(tokens['--button-edge'], accent).toBe('var(--ink)')
    }
  })
})

test('the lines to copy hold no markup but their own', () => {
  const lines = snippetOf('https://shop.example', { lang: 'en', font: '"A" <b>&' }, 'Ida & "Bo" <3')
  expect(lines.split('\n')).toEqual([
    '<script src="https://shop.example/embed.js" async></script>',
    '<pieceworth-intake lang="en" font="&quot;A&quot; &lt;b>&amp;">',
    '  <a href="https://shop.example/?lang=en">Ida &amp; &quot;Bo&quot; &lt;3</a>',
    '</pieceworth-intake>',
  ])
})

describe('the setting EMBED_ORIGINS', () => {
  test.each([
    ['', []],
    ['https://quilts.example', ['https://quilts.example']],
    ['https://a.example, http://b.example:8081', ['https://a.example', 'http://b.example:8081']],
  ])('"%s" allows %j', (value, origins) => {
    expect(readConfig({ EMBED_ORIGINS: value }).embedOrigins).toEqual(origins)
  })

  test.each([
    'https://a.example/',
    'https://a.example/shop',
    'a.example',
    '*',
    "'none'",
    'https://*.a.example',
    'ftp://a.example',
    'https://a.example:443',
    'https://a.example; script-src *',
  ])('"%s" is refused by the name of the setting', (value) => {
    expect(() => readConfig({ EMBED_ORIGINS: value })).toThrow(
      expect.objectContaining({
        code: 'setting_invalid',
        details: expect.objectContaining({ setting: 'EMBED_ORIGINS' }),
      }),
    )
  })
})

oneStore('pages in a frame', (store) => {
  let app: TestApp | undefined
  let workshop: Workshop | undefined
  afterEach(async () => {
    await app?.close()
    await workshop?.close()
    app = workshop = undefined
  })

  test('the customer’s pages name who may hold them; nobody may hold others', async () => {
    app = await openApp(store(), { clock, embedOrigins: [site] })
    const around = async (path: string) => {
      const { headers } = await fetch(app!.url + path, { redirect: 'manual' })
      expect(headers.get('x-frame-options')).toBeNull()
      return /frame-ancestors ([^;]*)/.exec(headers.get('content-security-policy')!)?.[1]
    }
    for (const path of ['/', '/?lang=es', '/i/unknown', '/i/unknown/garments'])
      expect(await around(path), path).toBe(`'self' ${site}`)
    for (const path of [
      '/desk',
      '/desk/sign-in',
      '/t/ABCD',
      '/healthz',
      '/api/docs',
      '/index',
      '/%2Fi/x',
    ])
      expect(await around(path), path).toBe("'none'")
  })

  test('the script may be loaded by other sites, and is asked for again by its tag', async () => {
    const assets = openAssets(new URL('../../dist/assets/', import.meta.url))
    app = await openApp(store(), { clock, assets })
    const first = await fetch(`${app.url}/embed.js`)
    expect(first.headers.get('cross-origin-resource-policy')).toBe('cross-origin')
    expect(first.headers.get('content-type')).toBe('text/javascript; charset=utf-8')
    expect(await first.text()).toContain('pieceworth-intake')
    const tag = first.headers.get('etag')!
    const again = await fetch(`${app.url}/embed.js`, { headers: { 'if-none-match': tag } })
    expect(again.status).toBe(304)
  })

  test('the owner gets the lines for the looks that are wished, and is told of those that cannot be', async () => {
    workshop = await openWorkshop(store(), clock)
    const ida = await signedIn(store(), clock, workshop.app, { name: 'Ida', role: 'owner' })
    const plain = await ida.get('/desk/embed')
    expect(plain.status).toBe(200)
    expect(plain.body).toContain('EMBED_ORIGINS')
    expect(plain.body).toMatch(/<pieceworth-intake lang="en" name="preview-en">/)

    const asked = new URLSearchParams({
      accent: '#ffe08a',
      ground: '"><script>alert(1)</script>',
      corner: '4',
      in: 'es',
    })
    const { body } = await ida.get(`/desk/embed?${asked}`)
    expect(body).not.toContain('<script>alert')
    expect(body).toContain('Write the ground as # and six digits')
    expect(body).toContain('This accent is hard to read on our paper')
    expect(body).toMatch(
      /<pieceworth-intake lang="es" accent="#ffe08a" corner="4" name="preview-en">/,
    )

    const spanish = await ida.get('/desk/embed?lang=es')
    expect(spanish.body).toContain('Líneas para copiar')
    const hostile = await ida.get(`/desk/embed?accent=a&accent=b&in[]=x&corner=${'x'.repeat(3000)}`)
    expect(hostile.status).toBe(200)
  })
})
