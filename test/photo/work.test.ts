import { expect, test, vi } from 'vitest'
import type { lookAt } from '../../src/photo/look/look.ts'
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

test('who looks at the safe picture is told the focal length of the file as it came', async () => {
  const look = vi.fn<typeof lookAt>().mockRejectedValue(new RangeError('not today'))
  vi.spyOn(process.stderr, 'write').mockReturnValue(true)
  const told = plain(400, 300).withExif({ IFD2: { FocalLengthIn35mmFilm: '27' } })
  await work({ bytes: await told.jpeg().toBuffer(), looks: true }, look)
  await work({ bytes: await photo(), looks: true }, look)
  vi.restoreAllMocks()
  expect(look.mock.calls.map(([, taken]) => taken)).toEqual([{ focal35: 27 }, { focal35: null }])
})
