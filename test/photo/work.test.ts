import { expect, test, vi } from 'vitest'
import { work } from '../../src/photo/work.ts'
import { plain } from '../help/pictures.ts'

const photo = () => plain(400, 300).jpeg().toBuffer()

test('a look that fails costs no photo, and is told in the log', async () => {
  const told = vi.spyOn(process.stderr, 'write').mockReturnValue(true)
  const done = await work({ bytes: await photo(), looks: true }, async () => {
    throw new RangeError('too few colours')
  })
  const line = JSON.parse(String(told.mock.calls[0]?.[0]))
  told.mockRestore()
  expect(done).toMatchObject({ look: null, photo: { width: 400, height: 300 } })
  expect(line).toMatchObject({ level: 50, err: 'RangeError: too few colours' })
})

test('nobody looks where that was not asked for', async () => {
  const look = vi.fn()
  expect(await work({ bytes: await photo(), looks: false }, look)).toMatchObject({ look: null })
  expect(look).not.toHaveBeenCalled()
})
