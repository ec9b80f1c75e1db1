import {
  appendFileSync,
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type Ran, refusal, run } from '../help/command.ts'
import { startServer } from '../help/server.ts'

const project = fileURLToPath(new URL('../..', import.meta.url))

let root: string
/** The built program and its flows, in a place of their own. */
let copy: string
beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'pieceworth-proven-'))
  copy = join(root, 'pieceworth')
  for (const part of ['dist', 'flows', 'src/words', 'package.json', 'package-lock.json']) {
    cpSync(join(project, part), join(copy, part), { recursive: true })
  }
  withOneStatement(join(copy, 'flows'))
  symlinkSync(join(project, 'node_modules'), join(copy, 'node_modules'))
})
afterAll(() => rmSync(root, { recursive: true, force: true }))

/** Most of a proof's time goes into the statements, and what is tried here needs one of them. */
function withOneStatement(flows: string): void {
  const path = join(flows, 'tables/must-hold.yaml')
  const statements = readFileSync(path, 'utf8').split(/^(?=- id: )/m)
  writeFileSync(path, statements.find((one) => one.includes('spare_c: 10'))!)
}

const command = () => join(copy, 'dist/cli.js')
const proofs = () => readdirSync(join(copy, 'dist/proofs'))
const check = (env: Readonly<Record<string, string>> = {}): Promise<Ran> =>
  run(['check-flows'], {
    command: command(),
    env: { FLOWS_DIR: join(copy, 'flows'), DATA_DIR: join(root, 'no-data'), ...env },
  })
const counts = ({ code, stdout, stderr }: Ran) => {
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
  return JSON.parse(stdout)
}

/** Puts another count into a kept proof, so that it is seen when that proof is used. */
function mark(path: string, questions: number): void {
  const proof = JSON.parse(readFileSync(path, 'utf8'))
  writeFileSync(path, JSON.stringify({ ...proof, counts: { ...proof.counts, questions } }))
}

describe('check-flows', () => {
  test('finds the proof of the shipped files that the build left', async () => {
    const left = () => readdirSync(join(project, 'dist/proofs')).sort()
    const before = left()
    expect(before).not.toEqual([])
    const ran = await run(['check-flows'], { env: { DATA_DIR: join(root, 'no-data') } })
    expect(counts(ran)).toMatchObject({ proof: 'kept', statements: expect.any(Number) })
    // What had to be proven would have been kept.
    expect(left()).toEqual(before)
  })

  test('uses a proof that was left beside the program, until a byte of a file or of the program is another', async () => {
    expect(counts(await check())).toMatchObject({ proof: 'new', statements: 1 })
    const [left] = proofs()
    expect(left).toMatch(/^[0-9a-f]{64}\.json$/)
    for (const name of proofs()) mark(join(copy, 'dist/proofs', name), 4321)
    expect(counts(await check()).questions).toBe(4321)

    appendFileSync(join(copy, 'flows/tables/permit.yaml'), '# looked through\n')
    const before = proofs().length
    expect(counts(await check()).questions).toBeLessThan(100)
    expect(proofs()).toHaveLength(before + 1)

    for (const name of proofs()) mark(join(copy, 'dist/proofs', name), 4321)
    expect(counts(await check()).questions).toBe(4321)
    appendFileSync(join(copy, 'dist/garment/grade.js'), '\n')
    expect(counts(await check()).questions).toBeLessThan(100)
  })

  test('is not hindered by a proof that was spoilt, nor by settings that are not its own', async () => {
    for (const name of proofs()) writeFileSync(join(copy, 'dist/proofs', name), '{"key":')
    expect(counts(await check({ PORT: 'eighty' })).questions).toBeLessThan(100)
  })
})

describe('the server', () => {
  test('proves changed flows at its first start and finds the proof at its second', async () => {
    const dataDir = mkdtempSync(join(root, 'data-'))
    appendFileSync(join(copy, 'flows/shop.yaml'), '# moved\n')
    const env = { FLOWS_DIR: join(copy, 'flows') }
    const server = await startServer({ command: command(), dataDir, env })
    expect(server.stderr()).toMatch(/"proven now, in \d+ ms: [0-9a-f]{12}"/)
    await server.stop()
    const again = await server.restart()
    await again.stop()
    expect(again.stderr()).toMatch(/"proof of [0-9a-f]{12} found"/)
    expect(readdirSync(join(dataDir, 'proofs'))).toHaveLength(1)
  })

  test('refuses what only the proof finds wrong, by file and line, with what to do; so does grading', async () => {
    const flows = join(root, 'flows')
    cpSync(join(project, 'flows'), flows, { recursive: true })
    withOneStatement(flows)
    const path = join(flows, 'tables/must-hold.yaml')
    const text = readFileSync(path, 'utf8')
    writeFileSync(path, text.replace('spare_c: 10', 'spare_c: 50'))
    const facts = join(root, 'facts.json')
    writeFileSync(facts, '{"garment":{}}')
    const env = { FLOWS_DIR: flows, DATA_DIR: mkdtempSync(join(root, 'data-')), PORT: '0' }
    for (const verb of [['serve'], ['grade', facts]]) {
      const refused = refusal(await run(verb, { env }))
      expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'flows_invalid' })
      expect(refused.message).toMatch(/^tables\/must-hold\.yaml, line \d+: does not hold: /)
      expect(refused.message).toMatch(/\(facts \{.*\}, must \{"spare_c":50\}, cameOut \d+\)/)
      expect(refused.message).toContain('Put it right and start again')
    }
    expect(readdirSync(env.DATA_DIR)).toEqual([])
  })
})
