import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { refusal, runHere } from '../help/command.ts'

let folder: string
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pieceworth-plan-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function file(name: string, content: unknown): string {
  const path = join(folder, name)
  writeFileSync(path, JSON.stringify(content))
  return path
}

/** By hand: of squares of 5 in, a panel of 10 by 15 in gives six, and eight lie across 40 in of cloth. */
const pile = {
  sizes: [{ w: 20, h: 20, rot: true }],
  roles: [
    { name: 'focal', garments: true },
    { name: 'sash', garments: false },
  ],
  demand: [
    { size: 0, role: 'focal', count: 8 },
    { size: 0, role: 'sash', count: 3 },
  ],
  garments: [
    {
      id: 'T7',
      L: 40,
      roles: ['focal'],
      must: true,
      minIfUsed: 2,
      panels: [{ W: 40, H: 60, defects: [], mult: 1 }],
      story: 'worn every Sunday',
    },
  ],
  shareMax: 1,
  maxRolesPerGarment: 1,
  contrast: [],
  cloth: { width: 160, step: 36 },
}
const square = { size: 0, w: 20, h: 20, count: 1 }
const strip = { height: 20, times: 1, sections: new Array(8).fill(square) }
const planned = {
  V: 0,
  Q: 2,
  P: 5,
  M: 6,
  proven: true,
  supply: [{ garment: 'T7', role: 'focal', size: 0, count: 6 }],
  cuts: [{ garment: 'T7', panel: 0, pattern: [6], times: 1 }],
  buy: [
    { role: 'sash', size: 0, count: 3 },
    { role: 'focal', size: 0, count: 2 },
  ],
  cloth: [
    { role: 'sash', steps: 1, strips: [{ ...strip, sections: new Array(3).fill(square) }] },
    { role: 'focal', steps: 1, strips: [strip] },
  ],
  shortage: '2 more focal pieces, or 1/4 yd of cloth. 1/4 yd of cloth for 3 sash pieces.',
}

test('a pile is planned, and spoken of as the file spoke', async () => {
  const { code, stdout, stderr } = await runHere(['plan', file('pile.json', pile)])
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' })
  expect(JSON.parse(stdout)).toEqual(planned)
})

test('roles by place and garments without ids are answered by place', async () => {
  const [garment] = pile.garments
  const byPlace = {
    ...pile,
    demand: pile.demand.map((one, role) => ({ ...one, role })),
    garments: [{ ...garment, id: undefined, roles: [0] }],
  }
  const { stdout } = await runHere(['plan', file('places.json', byPlace)])
  expect(JSON.parse(stdout)).toMatchObject({
    supply: [{ garment: 0, role: 0, size: 0, count: 6 }],
    cloth: [{ role: 1 }, { role: 0 }],
  })
})

test('of several files each gets its line, and what cannot be read costs no other', async () => {
  const files = [file('pile.json', pile), file('no-cloth.json', { ...pile, cloth: {} })]
  const { code, stdout } = await runHere(['plan', ...files, files[0]!])
  expect(code).toBe(0)
  const lines = stdout
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line))
  expect(lines.map(({ file: name, ok }) => [name, ok])).toEqual([
    [files[0], true],
    [files[1], false],
    [files[0], true],
  ])
  expect(lines[0]).toEqual({ file: files[0], ok: true, ...planned })
  expect(lines[1].error).toMatchObject({ code: 'bad_input' })
  expect(lines[1].error.message).toMatch(/^cloth\.width: /)
})

test('a pile that is none is refused with what is wrong', async () => {
  const refused = refusal(await runHere(['plan', file('bad.json', { ...pile, sizes: 'large' })]))
  expect(refused).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
  expect(refused.message).toMatch(/^sizes: /)
})

test('a piece too wide for the cloth is said to be, with what to do', async () => {
  const { stdout } = await runHere([
    'plan',
    file('wide.json', { ...pile, cloth: { width: 15, step: 36 }, garments: [] }),
  ])
  const { proven, shortage, buy, cloth } = JSON.parse(stdout)
  expect(proven).toBe(true)
  expect(buy).toHaveLength(2)
  expect(cloth).toEqual([])
  expect(shortage).toMatch(/no garments yet.*wider than the cloth.*Choose wider cloth/)
})
