import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeEach, describe, expect, test } from 'vitest'
import { readFlowFiles } from '../../src/intake/flow-files.ts'
import { parseFlows, provenFlows, valuesOf } from '../../src/intake/flows-folder.ts'
import {
  findProof,
  keepProof,
  type Proof,
  proofKey,
  provingRooms,
} from '../../src/intake/proofs.ts'
import { proven } from '../../src/intake/proven.ts'
import { drawings } from '../../src/papers/drawings/index.ts'
import { flowsFolder } from '../help/app.ts'
import { sources } from '../help/tree.ts'

const root = mkdtempSync(join(tmpdir(), 'pieceworth-proofs-'))
afterAll(() => rmSync(root, { recursive: true, force: true }))

let folder: string
beforeEach(() => {
  folder = join(mkdtempSync(join(root, 'data-')), 'proofs')
})

const files = readFlowFiles(flowsFolder)
const key = proofKey(files)

const proof: Proof = {
  key,
  from: '2026-01-01',
  until: '2026-07-01',
  counts: {
    flows: 1,
    questions: 2,
    longestPath: 3,
    paths: [{ name: 'any garment', most: 14, longest: 3 }],
    tables: 4,
    rows: 5,
    statements: 6,
    combinations: 7,
  },
  values: { 'shop.yaml': { name: 'Lantern Street' } },
}
const day = '2026-06-01'
const put = (content: string | Buffer, name = key) => {
  mkdirSync(folder, { recursive: true })
  writeFileSync(join(folder, `${name}.json`), content)
}

describe('the name of a proof', () => {
  test('is the same for the same bytes', () => {
    expect(key).toMatch(/^[0-9a-f]{64}$/)
    expect(proofKey(readFlowFiles(flowsFolder))).toBe(key)
  })

  test.each([...files.keys()])('is another one when a byte of %s is', (name) => {
    const changed = Buffer.from(files.get(name)!)
    changed[changed.length - 1] = changed.at(-1)! ^ 1
    expect(proofKey(new Map(files).set(name, changed))).not.toBe(key)
  })

  test('is another one where bytes move from one file to the next, or a file is renamed', () => {
    const [[one, first], [two, second]] = [...files] as [[string, Buffer], [string, Buffer]]
    const moved = new Map(files)
      .set(one, first.subarray(0, -1))
      .set(two, Buffer.concat([first.subarray(-1), second]))
    expect(proofKey(moved)).not.toBe(key)
    const renamed = [...files].map(
      ([name, bytes]) => [name.replace('shop', 'shed'), bytes] as const,
    )
    expect(proofKey(new Map(renamed))).not.toBe(key)
  })

  test('covers every module that takes part in proving', () => {
    const texts = new Map(sources().map(({ path, text }) => [path, text]))
    const seen = new Set<string>()
    const follow = (path: string): void => {
      if (seen.has(path)) return
      seen.add(path)
      for (const [, from] of texts.get(path)!.matchAll(/(?:from|import\() ?'(\.[^']+)'/g)) {
        follow(join(dirname(path), from!).replaceAll('\\', '/'))
      }
    }
    follow('src/intake/proven.ts')
    follow('src/papers/drawings/index.ts')
    expect(seen.size).toBeGreaterThan(50)
    const rooms: readonly string[] = provingRooms
    expect([...seen].filter((path) => !rooms.includes(path.split('/')[1]!))).toEqual([])
  })
})

describe('a kept proof', () => {
  test('is found again, on the days its interfacings are on sale and on no other', () => {
    mkdirSync(dirname(folder), { recursive: true })
    keepProof(proof, [folder])
    expect(findProof(key, day, ['/nowhere', folder])).toEqual(proof)
    expect(findProof(key, '2026-01-01', [folder])).toEqual(proof)
    expect(findProof(key, '2025-12-31', [folder])).toBeNull()
    expect(findProof(key, '2026-07-01', [folder])).toBeNull()
    keepProof({ ...proof, until: null }, [folder])
    expect(findProof(key, '2036-07-01', [folder])).not.toBeNull()
    expect(readdirSync(folder)).toEqual([`${key}.json`])
  })

  const { from, ...dayless } = proof
  const { rows, ...rowless } = proof.counts
  test.each<[string, string | Buffer]>([
    ['that is empty', ''],
    ['cut off', JSON.stringify(proof).slice(0, -9)],
    ['of bytes', Buffer.from([0, 255, 254, 7])],
    ['of nothing', 'null'],
    ['that is a list', JSON.stringify([proof])],
    ['of other files', JSON.stringify({ ...proof, key: key.replace(/^./, 'x') })],
    ['without its day', JSON.stringify(dayless)],
    ['of a day that is none', JSON.stringify({ ...proof, from: 0 })],
    ['with more in it', JSON.stringify({ ...proof, findings: [] })],
    ['that says nothing of the files', JSON.stringify({ ...proof, values: null })],
    ['without a count', JSON.stringify({ ...proof, counts: rowless })],
    [
      'with a count of less than nothing',
      JSON.stringify({ ...proof, counts: { ...proof.counts, rows: -1 } }),
    ],
    ['with a count in words', JSON.stringify({ ...proof, counts: { ...proof.counts, rows: '5' } })],
    [
      'with paths that are none',
      JSON.stringify({ ...proof, counts: { ...proof.counts, paths: [{}] } }),
    ],
    ['far too long', JSON.stringify(proof) + ' '.repeat(4 * 2 ** 20)],
  ])('%s is passed over', (_, content) => {
    put(JSON.stringify(proof))
    expect(findProof(key, day, [folder])).not.toBeNull()
    put(content)
    expect(findProof(key, day, [folder])).toBeNull()
  })

  test('that is a folder is passed over', () => {
    mkdirSync(join(folder, `${key}.json`), { recursive: true })
    expect(findProof(key, day, [folder])).toBeNull()
  })

  test('is not kept, and nothing fails, where nothing can be written', () => {
    const file = join(root, 'a-file')
    writeFileSync(file, '')
    keepProof(proof, [join(file, 'proofs')])
    expect(findProof(key, day, [join(file, 'proofs')])).toBeNull()
    // A data folder that is not there is not made: the server makes it, as its own.
    keepProof(proof, [join(root, 'no-data', 'proofs')])
    expect(readdirSync(root)).not.toContain('no-data')
    // Where the last folder takes nothing, the one before it does.
    keepProof(proof, [folder, join(file, 'proofs')])
    expect(findProof(key, day, [folder])).toEqual(proof)
  })

  test('goes when a dozen newer ones are there; what is no proof stays', () => {
    put('keep me', 'notes')
    for (let n = 0; n < 14; n += 1) {
      const name = n.toString(16).padStart(64, '0')
      put('{}', name)
      utimesSync(join(folder, `${name}.json`), n, n)
    }
    keepProof(proof, [folder])
    const left = readdirSync(folder)
    expect(left).toHaveLength(13)
    expect(left).toContain(`${key}.json`)
    expect(left).toContain('notes.json')
    expect(left).not.toContain(`${'2'.padStart(64, '0')}.json`)
    expect(left).toContain(`${'3'.padStart(64, '0')}.json`)
  })
})

describe('the owner’s files', () => {
  let asked = 0
  const around = () => ({
    drawings: () => {
      asked += 1
      return Promise.resolve(Object.keys(drawings))
    },
    today: day,
    folders: [folder],
  })
  const withFile = (name: string, before: string, after: string) => {
    const text = files.get(name)!.toString('utf8')
    if (!text.includes(before)) throw new Error(`${name} has no "${before}"`)
    return new Map(files).set(name, Buffer.from(text.replace(before, after)))
  }

  test('are proven once, and found proven then; a byte more and they are proven anew', async () => {
    const first = await proven(files, around())
    expect(first).toMatchObject({ found: false, findings: [] })
    asked = 0
    // What it says of the files is what reading them says.
    const values = valuesOf(parseFlows(files))
    expect(await proven(files, around())).toEqual({ ...first, found: true, values })
    expect(valuesOf(provenFlows(values))).toEqual(values)
    expect(asked).toBe(0)
    const more = withFile('shop.yaml', '\n', '\n\n')
    expect(await proven(more, around())).toMatchObject({ found: false, findings: [] })
    const { from, until } = JSON.parse(readFileSync(join(folder, `${key}.json`), 'utf8')) as Proof
    expect([from <= day, until]).toEqual([true, null])
  })

  test('that fail leave no proof, and are examined each time', async () => {
    const wrong = withFile('intake/flow.yaml', 'to: quilt_count', 'to: quilt_cuont')
    for (const _ of ['once', 'again']) {
      const { found, findings } = await proven(wrong, around())
      expect(found).toBe(false)
      expect(findings[0]).toMatchObject({ file: 'intake/flow.yaml', rule: 'edge-nowhere' })
    }
    expect(findProof(proofKey(wrong), day, [folder])).toBeNull()
  })
})
