import { expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { told } from '../../src/commands/output.ts'

const full = Object.assign(new Error('database or disk is full'), {
  code: 'ERR_SQLITE_ERROR',
  errcode: 13,
})
const away = Object.assign(new Error('connect ECONNREFUSED'), { code: 'ECONNREFUSED' })

test.each([
  ['a full disk', full, '(SQLite 13)'],
  ['a database that is away', away, '(ECONNREFUSED)'],
])('whoever runs a command is told of %s what to look at', (_, cause, why) => {
  const { code, message } = told(new Failure('store_unavailable', {}, { cause }))
  expect(code).toBe('store_unavailable')
  for (const part of [why, 'DATA_DIR', 'DATABASE_URL', 'PHOTOS_URL'])
    expect(message).toContain(part)
})

test('and of records that another program holds that it is to be run again', () => {
  expect(told(new Failure('busy')).message).toMatch(/another program.*run this again/i)
})
