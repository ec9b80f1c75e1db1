import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { flowsFolder } from '../help/app.ts'
import { refusal, runHere } from '../help/command.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pieceworth-sources-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('sources', () => {
  test('lists every figure with its source and how sure that is', async () => {
    const { code, stdout, stderr } = await runHere(['sources'])
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
    expect(stdout.split('\n')).toHaveLength(2)
    const { sources, counts, ...rest } = JSON.parse(stdout)
    expect(rest).toEqual({})
    expect(counts.all).toBe(sources.length)
    for (const one of sources) {
      expect(Object.keys(one).filter((key) => key !== 'unit')).toEqual([
        'figure',
        'value',
        'source',
        'kind',
      ])
      expect(one.source).not.toBe('')
      expect(counts[one.kind], one.kind).toBeGreaterThan(0)
    }
    for (const part of ['tables', 'rates', 'layouts', 'sizes', 'fibres', 'iron', 'panels']) {
      const its = sources.filter(({ figure }: { figure: string }) => figure.startsWith(part))
      expect(its.length, part).toBeGreaterThan(3)
    }
  })

  test('names a figure that has lost its source, and ends with 2', async () => {
    const copy = join(folder, 'flows')
    cpSync(flowsFolder, copy, { recursive: true })
    const path = join(copy, 'tables/limits.yaml')
    const text = readFileSync(path, 'utf8')
    const source = 'source: ISO 3758:2012, one dot, as in national guides (secondary)'
    expect(text).toContain(source)
    writeFileSync(path, text.replace(source, 'source: obvious'))
    const refused = refusal(await runHere(['sources'], { FLOWS_DIR: copy }))
    expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'flows_invalid' })
    expect(refused.message).toContain('tables/limits/label-cool')
  })

  test('a part of a name finds the figures that hold it, however it is written', async () => {
    const { code, stdout } = await runHere(['sources', 'Weight/JEANS'])
    expect(code).toBe(0)
    expect(JSON.parse(stdout)).toEqual({
      sources: [
        {
          figure: 'rates from 2026-01-01/weight/jeans',
          value: 680,
          unit: 'g',
          source: 'from memory, unverified',
          kind: 'from memory',
        },
      ],
      counts: {
        all: 1,
        published: 0,
        secondary: 0,
        'common practice': 0,
        'from memory': 1,
        own: 0,
      },
    })
  })

  test('a name that no figure holds finds none', async () => {
    const { code, stdout } = await runHere(['sources', 'no such figure'])
    expect(code).toBe(0)
    expect(JSON.parse(stdout).counts.all).toBe(0)
  })

  test.each([
    ['an option it does not know', ['--kind'], '--kind'],
    ['an option behind a name', ['weight', '-x'], '-x'],
    ['two names', ['weight', 'jeans'], 'one name'],
  ])('refuses %s', async (_, given, names) => {
    const refused = refusal(await runHere(['sources', ...given]))
    expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
    expect(refused.message).toContain(names)
  })
})
