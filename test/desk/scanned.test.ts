import { expect, test } from 'vitest'
import { checkedTag, checkSign } from '../../src/base/tag.ts'
import { scannedCode } from '../../src/desk/scanned.ts'

test.each([
  ['B2-1', 'B2-1'],
  ['b2 1', 'B2-1'],
  ['B2-1-L1', 'B2-1-L1'],
  ['82-I', 'B2-1'],
  ['B2-P1', 'B2-P1'],
])('%s, of before tags had check signs or copied by hand, is read as %s', (typed, code) => {
  expect(scannedCode(typed)).toEqual({ code, fits: true })
})

test.each(['B2-1', 'B2-12', 'A2B-3', 'B2-1-L1', 'B2-F1'])(
  '%s is read with its check sign',
  (code) => {
    expect(scannedCode(checkedTag(code))).toEqual({ code, fits: true })
    const wrong = checkSign(code) === '0' ? '1' : '0'
    expect(scannedCode(`${code}-${wrong}`)).toEqual({ code, fits: false })
  },
)

test.each(['', 'flannel', 'shelf 1', 'B2', 'B2-1-4-4-4', 'B2--'])('%j is no code', (typed) => {
  expect(scannedCode(typed)).toBeNull()
})
