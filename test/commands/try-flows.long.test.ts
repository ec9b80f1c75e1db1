import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import type { FlowFiles } from '../../src/intake/flow-files.ts'
import { run } from '../help/command.ts'
import { liveFiles, replaced } from '../help/drafts.ts'

const place = mkdtempSync(join(tmpdir(), 'try-flows-'))
afterAll(() => rmSync(place, { recursive: true, force: true }))

const env = { DATA_DIR: join(place, 'data') }

function written(name: string, files: FlowFiles): string {
  const folder = join(place, name)
  for (const [file, bytes] of files) {
    mkdirSync(dirname(join(folder, file)), { recursive: true })
    writeFileSync(join(folder, file), bytes)
  }
  return folder
}

test('a folder that holds is compared and told as JSON', async () => {
  const { code, stdout } = await run(['try-flows', written('same', liveFiles())], { env })
  expect(code).toBe(0)
  expect(JSON.parse(stdout)).toMatchObject({ ok: true, total: 0, changes: [], cutOff: false })
}, 180_000)

test('one that does not is told by its findings, with exit 2', async () => {
  const broken = replaced('tables/flags.yaml', /severity: eyes/, 'severity: grave')
  const { code, stdout } = await run(['try-flows', written('broken', broken)], { env })
  expect(code).toBe(2)
  const { ok, findings } = JSON.parse(stdout)
  expect(ok).toBe(false)
  expect(findings[0]).toMatchObject({ file: 'tables/flags.yaml', rule: 'output' })
}, 120_000)

test('no folder, and one that is not there, are refused', async () => {
  for (const args of [[], [join(place, 'nowhere')], ['a', 'b']]) {
    const { code, stdout } = await run(['try-flows', ...args], { env })
    expect([args.length, code]).toEqual([args.length, 2])
    expect(stdout).not.toContain('"ok":true')
  }
}, 120_000)
