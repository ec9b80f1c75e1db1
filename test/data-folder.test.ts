import { chmodSync, mkdirSync, mkdtempSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { openToOthers, useDataFolder } from '../src/data-folder.ts'

const place = () => mkdtempSync(join(tmpdir(), 'pieceworth-data-'))

test('a data folder is made for this account alone', () => {
  const folder = join(place(), 'a', 'b')
  useDataFolder(folder)
  expect(statSync(folder).mode & 0o777).toBe(0o700)
  expect(openToOthers([folder])).toEqual([])
})

test('one that others may look into is named, and left as it is', () => {
  const own = place()
  const others = [0o755, 0o710, 0o704].map((mode) => {
    const folder = join(own, mode.toString(8))
    mkdirSync(folder)
    chmodSync(folder, mode)
    return folder
  })
  for (const folder of others) useDataFolder(folder)
  expect(openToOthers([own, ...others])).toEqual(others)
})

test('one that cannot be made is told by its setting', () => {
  expect(() => useDataFolder('/proc/nowhere')).toThrow(
    expect.objectContaining({
      code: 'setting_invalid',
      details: expect.objectContaining({ setting: 'DATA_DIR' }),
    }),
  )
})
