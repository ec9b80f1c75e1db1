import { describe, expect, test } from 'vitest'
import type { LabelValue, Replies } from '../../src/flow/grammar.ts'
import type { Facts } from '../../src/garment/facts.ts'
import { ironOf, readingOf, readingStands } from '../../src/intake/label.ts'
import { learnAt } from '../help/app.ts'
import { plainShirt } from '../help/garments.ts'
import { labels } from '../help/wander.ts'

const knowledge = learnAt('2026-06-01')
const irons: readonly LabelValue['iron'][] = [null, 'hot', 'warm', 'cool', 'none', 'absent']

const label = (
  value: Partial<LabelValue>,
  others: Readonly<Record<string, string | readonly string[]>> = {},
): Replies => ({
  label: { given: { found: 'words', words: '', iron: null, ...value } },
  ...Object.fromEntries(Object.entries(others).map(([name, given]) => [name, { given }])),
})

/** How hot the press may be for an otherwise plain shirt; -1: no iron. */
const ceiling = (iron: Facts['iron'], heat: Facts['heat'] = 'hot'): number =>
  knowledge.grade({ ...plainShirt, iron, heat }, { recipient: 'adult' }).press.ceilingC ?? -1

describe('the ironing line', () => {
  test.each([
    ['no label at all', { label: { given: { found: 'none', words: '', iron: null } } }, 'missing'],
    ['no reply', {}, 'missing'],
    ['a label left to a person', { label: { asked: '' } }, 'missing'],
    ['signs without one of ironing', label({ found: 'signs' }, { signs: ['wash-30'] }), 'silent'],
    [
      'a sign that says there is none',
      label({ found: 'signs' }, { signs: ['iron-absent'] }),
      'silent',
    ],
    ['the cool sign', label({ found: 'signs' }, { signs: ['wash-30', 'iron-cool'] }), 'cool'],
    ['the crossed iron', label({ found: 'signs' }, { signs: ['iron-none'] }), 'none'],
    ['sure words', label({ words: '100% cotton, warm iron' }), 'warm'],
    ['words and no iron', label({ words: '100% cotton' }), 'silent'],
    [
      'sure words and a colder sign',
      label({ words: '100% cotton, hot iron', iron: 'cool' }),
      'cool',
    ],
    ['sure words and a hotter sign', label({ words: '100% wool, cool iron', iron: 'hot' }), 'cool'],
    ['sure words and no sign', label({ words: '100% wool, cool iron', iron: 'absent' }), 'cool'],
    ['words without iron and a sign', label({ words: '100% cotton', iron: 'hot' }), 'hot'],
  ] as const)('of %s', (_, replies, iron) => {
    expect(ironOf(replies)).toBe(iron)
  })

  test.each(labels)(
    'of "%s", while unconfirmed, is never hotter than of a silent label',
    (words) => {
      for (const check of [undefined, 'no']) {
        for (const iron of irons) {
          const replies = label({ words, iron }, check ? { label_check: check } : {})
          const reading = readingOf(replies)!
          if (readingStands(replies, reading)) continue
          const picked = iron === null || iron === 'absent' ? 'silent' : iron
          for (const heat of ['hot', 'warm', 'cool', 'none', 'unknown'] as const) {
            expect(ceiling(ironOf(replies), heat)).toBeLessThanOrEqual(ceiling(picked, heat))
          }
          expect(ironOf(label({ words, iron: null }))).not.toBe('hot')
        }
      }
    },
  )

  test.each(labels)('of "%s" is never made hotter by a sign', (words) => {
    for (const check of [undefined, 'yes', 'no']) {
      const others: Record<string, string> = check ? { label_check: check } : {}
      const alone = ceiling(ironOf(label({ words }, others)))
      for (const iron of irons) {
        const both = ironOf(label({ words, iron }, others))
        const worded = ironOf(label({ words }, others))
        if (worded === 'silent') continue
        expect(ceiling(both)).toBeLessThanOrEqual(alone)
      }
    }
  })
})

describe('a reading', () => {
  test('that is unsure stands once the customer has confirmed it, and not before', () => {
    const words = '60% cotton, hot iron'
    expect(readingOf(label({ words }))!.sure).toBe(false)
    expect(ironOf(label({ words }))).toBe('silent')
    expect(ironOf(label({ words }, { label_check: 'yes' }))).toBe('hot')
    expect(ironOf(label({ words }, { label_check: 'no' }))).toBe('silent')
  })

  test('that is unsure but colder holds at once', () => {
    expect(ironOf(label({ words: '70% acrylic, do not iron' }))).toBe('none')
  })

  test('is none where no words were typed', () => {
    expect(readingOf(label({ found: 'signs' }))).toBeNull()
    expect(readingOf({})).toBeNull()
  })
})
