import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { bundle } from '../../src/web/assets/bundle.ts'
import { type Assets, openAssets } from '../../src/web/assets/manifest.ts'

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

test.each(['chat.css', 'desk.css', 'chat.js', 'spots.js'])(
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
  expect(statSync(join(place, assets.path(name).replace('/assets/', ''))).size).toBeLessThan(6000)
})

test('the same sources give the same names', async () => {
  const before = readdirSync(place).toSorted()
  await bundle(folder)
  expect(readdirSync(place).toSorted()).toEqual(before)
})
