import { expect, test } from 'vitest'
import { isFair, plainBoard } from '../help/boards.ts'
import { refusal, runHere } from '../help/command.ts'
import { givenFiles } from '../help/given-files.ts'

const { file } = givenFiles()

test('tells the type of each cell, the cost, whether it is proven and what touches', async () => {
  const { code, stdout } = await runHere(['place', file('two.json', plainBoard(2, 2, [2, 2]))])
  expect(code).toBe(0)
  const { cells, ...rest } = JSON.parse(stdout)
  expect(cells[0]).toBe(cells[3])
  expect(rest).toEqual({ cost: 60, proven: true, touching: 0 })
})

test('several files print a line each, the same every time, a refused one among them', async () => {
  const board = plainBoard(7, 7, [20, 15, 14])
  const files = [file('a.json', board), file('b.json', '{'), file('c.json', board)]
  const { code, stdout } = await runHere(['place', ...files])
  expect(code).toBe(0)
  const [a, b, c] = stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))
  expect([a.ok, b.ok, c.ok]).toEqual([true, false, true])
  expect(a.cells).toEqual(c.cells)
  expect(isFair(board, a.cells)).toBe(true)
  expect(b.error.code).toBe('bad_input')
})

test('a refusal says in a sentence what does not fit', async () => {
  const board = { ...plainBoard(2, 2, [2, 2]), adj: [[0, 0]] }
  expect(refusal(await runHere(['place', file('short.json', board)]))).toEqual({
    exit: 2,
    stdout: '',
    code: 'bad_input',
    message: 'adj: 1 row for 2 types',
  })
})
