import { expect, test } from 'vitest'
import { checkedTag, tagCode } from '../../src/base/tag.ts'
import { paperNames } from '../../src/papers/paper-size.ts'
import { pdfOf } from '../../src/papers/pdf/make.ts'
import { tagSheet } from '../../src/papers/printed-tags.ts'
import { qrOf, sideOf } from '../../src/papers/qr.ts'
import { shopKnowledge } from '../help/bench-garments.ts'
import { hostileTexts, paperWith } from '../help/printed.ts'
import { drawPdf, readPdf, within } from '../help/read-pdf.ts'
import { scanCodes } from '../help/scan-code.ts'

const { languages } = shopKnowledge()
const [en, es] = [languages.get('en')!, languages.get('es')!]

const linkOf = (code: string): string => `https://quilts.lantern-street.example/t/${code}`
const garments = Array.from({ length: 13 }, (_, n) => ({
  code: tagCode(7, n + 1),
  name: `Shirt number ${n + 1}`,
  kind: 'Button shirt',
}))
const sheet = {
  pile: '7',
  at: Date.UTC(2026, 5, 1),
  garments,
  linkOf,
  units: 'inches',
} as const

test.each([en, es])(
  'every garment has its number and its name on a tag: $code',
  async (language) => {
    for (const paper of paperNames) {
      const {
        pages,
        words,
        language: code,
      } = await readPdf(await pdfOf(tagSheet(sheet, language), paper))
      expect(code).toBe(language.code)
      expect(pages).toHaveLength(2)
      for (const one of garments) expect(words).toContain(`${checkedTag(one.code)} ${one.name}`)
      expect(words).toContain(language.say('printed.tags.help'))
      expect(words).toContain(language.say('printed.measure.inches'))
      for (const page of pages) {
        expect(within(page)).toEqual([])
        expect([...page.colours].every(isGrey)).toBe(true)
      }
    }
  },
)

const isGrey = (colour: string): boolean => /^#(..)\1\1$/.test(colour)

test('every code of a sheet printed at 200 dots to the inch opens its own garment', async () => {
  const pdf = await pdfOf(tagSheet(sheet, en), 'letter')
  const found = [
    ...(await scanCodes(await drawPdf(pdf, 1, 200))),
    ...(await scanCodes(await drawPdf(pdf, 2, 200))),
  ]
  expect(found.map(({ text }) => text).sort()).toEqual(
    garments.map(({ code }) => linkOf(checkedTag(code))).sort(),
  )
})

// From the outer edges of the three corner squares: ISO/IEC 18004 has the symbol end there.
test.each([15, 20])(
  'a code that should be %s mm wide is so, and is read at 200 dots',
  async (side) => {
    const link = linkOf('K7-12')
    const printed = paperWith([
      {
        block: 'cards',
        columns: 2,
        high: 45,
        codeSide: side,
        cards: [{ big: 'K7-12', lines: [], code: link }],
      },
    ])
    const [found] = await scanCodes(await drawPdf(await pdfOf(printed, 'a4'), 1, 200))
    expect(found?.text).toBe(link)
    const [a, b] = found!.corners
    const wide = (Math.hypot(b!.x - a!.x, b!.y - a!.y) / 200) * 25.4
    expect(Math.abs(wide - side) / side).toBeLessThan(0.03)
    const code = qrOf(link)
    expect(sideOf(code, side)).toBe(side)
  },
)

test('a longer address makes a larger code before its squares become too small to read', async () => {
  const link = `https://${'a'.repeat(60)}.lantern-street.example/${'workshop/'.repeat(20)}t/K7-12`
  const code = qrOf(link)
  const side = sideOf(code, 15)
  expect(side).toBeGreaterThan(15)
  expect((side / code.rows.length / 25.4) * 200).toBeGreaterThanOrEqual(3)
  const printed = paperWith([
    {
      block: 'cards',
      columns: 2,
      high: 45,
      codeSide: 15,
      cards: [{ big: 'K7-12', lines: [], code: link }],
    },
  ])
  const [found] = await scanCodes(await drawPdf(await pdfOf(printed, 'a4'), 1, 200))
  expect(found?.text).toBe(link)
})

test('two hundred garments with names that nobody foresaw keep their pages whole', async () => {
  const names = Object.values(hostileTexts)
  const many = Array.from({ length: 200 }, (_, n) => ({
    code: tagCode(1234, n + 1),
    name: names[n % names.length]!,
    kind: names[(n + 1) % names.length]!,
  }))
  const { pages, words } = await readPdf(
    await pdfOf(tagSheet({ ...sheet, garments: many }, en), 'a4'),
  )
  expect(pages).toHaveLength(20)
  for (const page of pages) expect(within(page)).toEqual([])
  for (const { code } of many) expect(words).toContain(code)
})
