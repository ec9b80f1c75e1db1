import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import type { Replies } from '../../src/flow/grammar.ts'
import { questionsOf } from '../../src/flow/kept.ts'
import { offered, type RawReply, readReply } from '../../src/flow/reply.ts'
import { makesSense } from '../../src/flow/sense.ts'
import { cleanText, readAmount } from '../../src/flow/text.ts'
import { parcelRules, parcels } from './parcels.ts'
import { steady } from './random.ts'

const questions = [...questionsOf(parcels).once.values(), ...questionsOf(parcels).repeated.values()]

const text = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.constantFrom('here', 'small', 'huge', 'yes', 'none', 'glass', '12', '12,5', 'ana@example.org'),
)

const anyRaw: fc.Arbitrary<RawReply> = fc.record(
  {
    act: fc.constantFrom('answer', 'skip', 'ask'),
    value: fc.oneof(text, fc.array(text, { maxLength: 4 })),
    unit: text,
    words: text,
    found: fc.oneof(text, fc.constantFrom('words', 'signs', 'none')),
    iron: fc.oneof(text, fc.constantFrom('cool', 'absent')),
    name: text,
    email: text,
    phone: text,
    note: text,
  },
  { requiredKeys: [] },
)

test('whatever a form sends is refused by name, or kept as a reply that makes sense', () => {
  let kept = 0
  fc.assert(
    fc.property(fc.constantFrom(...questions), anyRaw, fc.boolean(), (question, raw, isHere) => {
      const replies: Replies = { country: { given: isHere ? 'here' : 'abroad' } }
      try {
        const reply = readReply(question, offered(question, replies, parcelRules), raw)
        kept += 1
        expect(makesSense(question, reply, replies, parcelRules)).toBe(true)
      } catch (error) {
        expect(error).toBeInstanceOf(Failure)
        expect((error as Failure).details).toMatchObject({ question: question.id })
      }
    }),
    { ...steady, numRuns: 2000 },
  )
  expect(kept).toBeGreaterThan(200)
})

test('text that was cleaned once stays as it is', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (raw) => {
      expect(cleanText(cleanText(raw))).toBe(cleanText(raw))
    }),
    { ...steady, numRuns: 2000 },
  )
})

test('a number means the same with a point, a comma or full-width digits', () => {
  fc.assert(
    fc.property(fc.nat(9999), fc.nat(99), (whole, part) => {
      const decimals = String(part).padStart(2, '0')
      const wide = `${whole}`.replace(/\d/g, (d) => String.fromCharCode(0xff10 + Number(d)))
      const amount = Number(`${whole}.${decimals}`)
      expect(readAmount(`${whole}.${decimals}`)).toBe(amount)
      expect(readAmount(`${whole},${decimals}`)).toBe(amount)
      expect(readAmount(`${wide}．${decimals}`)).toBe(amount)
    }),
    steady,
  )
})
