import { text } from 'node:stream/consumers'
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Cell, csvStream, decimal, harmless, isoTime, restored } from '../../src/desk/csv.ts'

const written = (columns: readonly string[], rows: readonly (readonly Cell[])[]) =>
  text(csvStream(columns, rows))

const read = (csv: string): string[][] => parse(csv, { relax_column_count: false })

/** RFC 4180, section 2: the examples of its seven rules, word for word. */
const published = [
  { rule: 1, csv: 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n' },
  { rule: 2, csv: 'aaa,bbb,ccc\r\nzzz,yyy,xxx' },
  { rule: 3, csv: 'field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n' },
  { rule: 5, csv: '"aaa","bbb","ccc"\r\nzzz,yyy,xxx' },
  { rule: 6, csv: '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx' },
  { rule: 7, csv: '"aaa","b""bb","ccc"' },
]

test.each(published)(
  'the example of rule $rule of RFC 4180 is what we write of its fields',
  async ({ csv }) => {
    const [head, ...rows] = read(csv)
    expect(head).toHaveLength(3)
    expect(read(await written(head!, rows))).toEqual([head, ...rows])
  },
)

test('plain fields are written as RFC 4180 prints them: CRLF, no quotes, a header first', async () => {
  expect(
    await written(
      ['field_name', 'b'],
      [
        ['aaa', 1],
        ['zzz', null],
      ],
    ),
  ).toBe('field_name,b\r\naaa,1\r\nzzz,\r\n')
  expect(await written(['a'], [['b"bb'], ['b\r\nbb'], ['b\nbb'], ['b,bb']])).toBe(
    'a\r\n"b""bb"\r\n"b\r\nbb"\r\n"b\nbb"\r\n"b,bb"\r\n',
  )
})

/** The characters that the OWASP page "CSV Injection" names. */
const formulas = [
  '=1+1',
  '+1',
  '-1',
  '@SUM(1)',
  '\t=1',
  '\r=1',
  '\n=1',
  '=HYPERLINK("http://elsewhere.example","x")',
  '＝1+1',
  '＋1',
  '－1',
  '＠A1',
  "'=1",
]

test.each(formulas)('%j begins no formula, and is given back as it was', async (formula) => {
  const csv = await written(['a', 'b'], [[formula, 5]])
  const [, row] = read(csv)
  expect(row![0]![0]).toBe("'")
  expect(restored(row![0]!)).toBe(formula)
  expect(row![1]).toBe('5')
})

test('what begins none stays as it is', () => {
  for (const plain of ['李', 'Dad’s shirt', '2026-06-01', '"=1"', ' =1', '']) {
    expect(harmless(plain)).toBe(plain)
  }
})

test('any text comes back through a reader that knows nothing of us', async () => {
  const hostile = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.string({
      unit: fc.constantFrom('"', ',', '\r', '\n', "'", '=', '-', ' ', '\t', '李', '\u0000'),
    }),
  )
  await fc.assert(
    fc.asyncProperty(fc.array(fc.tuple(hostile, hostile), { minLength: 1 }), async (rows) => {
      const [head, ...found] = read(await written(['a', 'b'], rows))
      expect(head).toEqual(['a', 'b'])
      expect(found.map((row) => row.map(restored))).toEqual(rows)
    }),
  )
})

test('times are ISO 8601 in UTC, money is a decimal', () => {
  expect(isoTime(Date.UTC(2026, 5, 1, 9, 30))).toBe('2026-06-01T09:30:00.000Z')
  expect(isoTime(null)).toBeNull()
  expect(decimal(41_205, 'USD')).toBe('412.05')
  // ISO 4217: the yen has no minor unit, the Kuwaiti dinar has thousandths.
  expect(decimal(412, 'JPY')).toBe('412')
  expect(decimal(412, 'KWD')).toBe('0.412')
  expect(decimal(0, 'USD')).toBe('0.00')
})
