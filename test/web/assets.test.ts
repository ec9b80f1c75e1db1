import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { gzipSync } from 'node:zlib'
import Fastify from 'fastify'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { bundle } from '../../src/web/assets/bundle.ts'
import { type Assets, openAssets } from '../../src/web/assets/manifest.ts'
import { assetRoutes } from '../../src/web/assets/routes.ts'

const place = mkdtempSync(join(tmpdir(), 'assets-'))
const folder = pathToFileURL(`${place}/`)
let assets: Assets

beforeAll(async () => {
  await bundle(folder)
  assets = openAssets(folder)
})
afterAll(() => rmSync(place, { recursive: true }))

const text = (name: string): string =>
  readFileSync(join(place, assets.path(name).replace('/assets/', '')), 'utf8')

test.each(['chat.css', 'desk.css', 'chat.js', 'spots.js', 'framed.js', 'embed.js'])(
  '%s is served under a name that changes with it',
  (name) => {
    expect(assets.path(name)).toMatch(/^\/assets\/[a-z.]+-[A-Z0-9]{8}\.(css|js)$/)
  },
)

test('a file that was not built is refused by name', () => {
  expect(() => assets.path('nothing.css')).toThrow('nothing.css')
})

test('the faces come from the shop itself and text shows before they are there', () => {
  const css = text('chat.css')
  const files = [...css.matchAll(/url\("?([^)"]+)"?\)/g)].map(([, url]) => url!)
  expect(files.length).toBeGreaterThan(3)
  for (const file of files) expect(readdirSync(place)).toContain(file.replace('./', ''))
  expect(css.match(/font-display:swap/g)?.length).toBe(css.match(/@font-face/g)?.length)
})

test.each(['chat.js', 'spots.js'])('%s stays a small thing', (name) => {
  expect(statSync(join(place, assets.path(name).replace('/assets/', ''))).size).toBeLessThan(10_000)
})

/** Bytes of a file as it is sent to a browser that takes `encoding`. */
async function sent(name: string, encoding: string): Promise<number> {
  const app = Fastify()
  await app.register(assetRoutes(assets))
  const headers = { 'accept-encoding': encoding }
  const answer = await app.inject({ url: assets.path(name), headers })
  await app.close()
  expect(answer.headers['content-encoding'] ?? '').toBe(encoding)
  expect(answer.headers.vary).toContain('accept-encoding')
  return answer.rawPayload.length
}

test('what the first question loads is 25 kB at most as it is sent', async () => {
  for (const encoding of ['br', 'gzip']) {
    const files = ['chat.css', 'chat.js', 'framed.js'].map((name) => sent(name, encoding))
    const whole = (await Promise.all(files)).reduce((sum, bytes) => sum + bytes)
    expect(whole).toBeGreaterThan(5_000)
    expect(whole).toBeLessThanOrEqual(25_000)
  }
  expect(await sent('chat.css', '')).toBe(text('chat.css').length)
})

test('the element for other sites is 3 kB at most', () => {
  expect(gzipSync(text('embed.js')).length).toBeLessThanOrEqual(3_000)
})

test('the same sources give the same names', async () => {
  const before = readdirSync(place).toSorted()
  await bundle(folder)
  expect(readdirSync(place).toSorted()).toEqual(before)
})
