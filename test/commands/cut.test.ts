import { expect, test } from 'vitest'
import { refusal, runHere } from '../help/command.ts'
import { givenFiles } from '../help/given-files.ts'

const { file } = givenFiles()

const squares = { W: 9, H: 4, pieces: [{ w: 4, h: 4, rot: false }], defects: [] }

test('tells every pattern of a panel and the cuts that make it', async () => {
  const { code, stdout } = await runHere(['cut', file('squares.json', squares)])
  expect(code).toBe(0)
  expect(JSON.parse(stdout)).toEqual({
    patterns: [[2]],
    lists: [
      {
        counts: [2],
        items: [
          { k: 0, x: 0, y: 0, w: 4, h: 4 },
          { k: 0, x: 4, y: 0, w: 4, h: 4 },
        ],
        cuts: [
          { cut: 'V', at: 8, rect: [0, 0, 9, 4] },
          { cut: 'V', at: 4, rect: [0, 0, 8, 4] },
        ],
      },
    ],
  })
})

test('several files print a line each, a refused one among them', async () => {
  const { code, stdout } = await runHere([
    'cut',
    file('one.json', { ...squares, unknown: 'passed over' }),
    file('two.json', { ...squares, W: 2.5 }),
    file('three.json', 'no JSON'),
  ])
  expect(code).toBe(0)
  const lines = stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))
  expect(lines.map(({ ok }) => ok)).toEqual([true, false, false])
  expect(lines[1].error.code).toBe('bad_input')
  expect(lines[1].error.message).toContain('W')
})

test.each([
  ['no pieces', { ...squares, pieces: [] }, 'pieces'],
  ['a panel of nothing', { ...squares, W: 0 }, 'W'],
  ['a panel longer than any', { ...squares, H: 1e9 }, 'H'],
  ['a piece without a height', { ...squares, pieces: [{ w: 4, rot: true }] }, 'pieces.0.h'],
  ['a list', [], 'panel'],
])('%s is refused, and the place is told', async (_, panel, place) => {
  const ran = refusal(await runHere(['cut', file('refused.json', panel)]))
  expect(ran).toMatchObject({ exit: 2, stdout: '', code: 'bad_input' })
  expect(ran.message).toContain(place === 'panel' ? 'object' : place)
})
