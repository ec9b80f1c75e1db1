import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

interface Locked {
  readonly version?: string
  readonly resolved?: string
  readonly integrity?: string
  readonly license?: string
  readonly dev?: boolean
  readonly optional?: boolean
}

const lock = JSON.parse(
  readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8'),
) as { readonly packages: Readonly<Record<string, Locked>> }
const packages = Object.entries(lock.packages).filter(([path]) => path !== '')

/**
 * Licences (SPDX identifiers, spdx.org/licenses) under which a shop may run what it installs, without a duty to publish
 * its own files. LGPL: used unchanged, in packages of their own that can be replaced.
 */
const fine = [
  '0BSD',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'ISC',
  'LGPL-3.0',
  'LGPL-3.0-or-later',
  'MIT',
  'MIT-0',
  'OFL-1.1',
  'Python-2.0',
  'Unlicense',
  'Zlib',
]

/** Packages whose entry names no licence that is in the list, and where it was read instead. */
const readElsewhere: Readonly<Record<string, string>> = {
  'node_modules/png-js': 'MIT', // its file LICENSE
}

const isFine = (licence: string): boolean =>
  licence
    .replaceAll(/[()]/g, '')
    .split(/ OR /)
    .some((one) => one.split(/ AND /).every((part) => fine.includes(part.trim())))

test('every package that a shop runs is under a licence that it may run', () => {
  const run = packages.filter(([, { dev }]) => !dev)
  expect(run.length).toBeGreaterThan(50)
  const strange = run
    .filter(([path, { license }]) => !isFine(license ?? readElsewhere[path] ?? 'none told'))
    .map(([path, { license }]) => `${path}: ${license ?? 'none told'}`)
  expect(strange).toEqual([])
})

test('every package is pinned by version and content, and none by an address', () => {
  const loose = packages
    .filter(([, { version, integrity }]) => !version || !/^sha512-/.test(integrity ?? ''))
    .map(([path]) => path)
  expect(loose).toEqual([])
  expect(packages.filter(([, { resolved }]) => resolved !== undefined)).toEqual([])
  expect(JSON.stringify(lock)).not.toMatch(/"(?:git\+|file:|https?:)[^"]*(?:\.tgz|\.git)"/)
})

test('what is installed runs no script of its own but those that are known', () => {
  const scripted = packages
    .filter(([, one]) => (one as { hasInstallScript?: boolean }).hasInstallScript)
    .map(([path]) => path.replace(/^.*node_modules\//, ''))
  const known = [
    'esbuild',
    'fsevents',
    'onnxruntime-node',
    'protobufjs',
    'sharp',
    '@photostructure/sqlite',
  ]
  expect([...new Set(scripted)].filter((name) => !known.includes(name))).toEqual([])
})
