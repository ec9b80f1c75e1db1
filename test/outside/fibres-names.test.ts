import { describe, expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'
import { labelLanguages } from '../../src/textile/languages/all.ts'

// Sources: Annex I of Regulation (EU) 1007/2011 in English, Italian, German, Turkish and Czech, the
// Brazilian list for Portuguese, the designated terms for Japanese (status seen); other lists that
// are not official (secondary); the rest from memory.
const names = labelLanguages.flatMap(({ code, fibres }) =>
  Object.entries(fibres).flatMap(([key, entry]) =>
    entry.names.map((name) => ({ code, key, name })),
  ),
)

// One word for two fibres, or a word of everyday speech.
const ambiguous = new Set(['elastane ja ポリウレタン', 'elastane ko 폴리우레탄', 'linen ro in'])

const plain = names.filter(({ key, code, name }) => !ambiguous.has(`${key} ${code} ${name}`))

describe('names of fibres in sixteen languages', () => {
  test('the table is whole', () => {
    expect(labelLanguages).toHaveLength(16)
    expect(names).toHaveLength(658)
    expect(names.length - plain.length).toBe(3)
  })

  test.each(plain)(
    '$code "$name" with a share before or behind it is $key for sure',
    ({ key, name }) => {
      for (const text of [`100% ${name}`, `${name} 100%`, `100 % ${name.toUpperCase()}`]) {
        const { blocks, sure } = readLabel(text)
        expect(blocks.map(({ fibres }) => fibres.map(({ fibre }) => fibre))).toEqual([[key]])
        expect(sure).toBe(true)
      }
    },
  )

  test('no name of one language stands for another fibre in the next', () => {
    const keysOf = new Map<string, Set<string>>()
    for (const { name, key } of names) {
      const lower = name.toLowerCase()
      keysOf.set(lower, (keysOf.get(lower) ?? new Set()).add(key))
    }
    const shared = [...keysOf].filter(([, keys]) => keys.size > 1)
    expect(shared.map(([name]) => name)).toEqual(['ポリウレタン', '폴리우레탄'])
  })
})
