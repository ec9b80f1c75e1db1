import { expect, test } from 'vitest'
import { paperNames, papers } from '../../../src/papers/paper-size.ts'
import { pdfOf } from '../../../src/papers/pdf/make.ts'
import type { Block } from '../../../src/papers/printed.ts'
import { hostileTexts, paperWith } from '../../help/printed.ts'
import { darkRow, drawPdf, readPdf, within } from '../../help/read-pdf.ts'

const words = (text: string): Block => ({ block: 'words', words: text })

const everything = (text: string): Block[] => [
  { block: 'heading', level: 1, words: text },
  { block: 'heading', level: 3, words: text },
  words(text),
  { block: 'caution', words: text },
  { block: 'list', as: 'step', items: [{ words: text, notes: [text], cautions: [text] }] },
  { block: 'list', as: 'plain', items: [{ words: text }] },
  { block: 'rows', rows: [{ name: text, words: text }] },
  { block: 'table', head: [text, text], widths: [0.3, 0.7], right: [1], rows: [[text, text]] },
  { block: 'fields', names: [text, text] },
  {
    block: 'cards',
    columns: 2,
    high: 45,
    cards: [{ big: text, lines: [text, text, text], code: 'https://shop.example/t/A2-1' }],
  },
  {
    block: 'drawing',
    told: text,
    drawing: {
      width: 100,
      height: 20,
      unit: 'mm',
      marks: [{ mark: 'text', at: [50, 10], size: 3, anchor: 'middle', words: text.slice(0, 40) }],
    },
  },
]

// ISO 216: A4 is 210 × 297 mm. ANSI/ASME Y14.1: size A is 8 1/2 × 11 in. A point is 1/72 in (ISO 32000-1, 8.3.2.3).
test.each([
  ['letter', 612, 792],
  ['a4', (210 / 25.4) * 72, (297 / 25.4) * 72],
] as const)('a page of %s has its size in points', async (paper, w, h) => {
  const { pages } = await readPdf(await pdfOf(paperWith([words('One line.')]), paper))
  expect(pages).toHaveLength(1)
  const [x, y, right, top] = pages[0]!.box
  expect([x, y]).toEqual([0, 0])
  expect(right).toBeCloseTo(w, 3)
  expect(top).toBeCloseTo(h, 3)
})

test('the same paper gives the same bytes, and another time others', async () => {
  const paper = paperWith(everything('A shirt'))
  const [one, other] = [await pdfOf(paper, 'letter'), await pdfOf(paper, 'letter')]
  expect(one.equals(other)).toBe(true)
  const later = await pdfOf({ ...paper, at: paper.at + 1000 }, 'letter')
  expect(later.equals(one)).toBe(false)
})

test('a paper tells its title and language, and its words in the order they are read', async () => {
  const printed = paperWith(
    [
      { block: 'heading', level: 1, words: 'Łukasz Nguyễn’s niño' },
      words('First a paragraph.'),
      { block: 'list', as: 'number', items: [{ words: 'one step' }, { words: 'another step' }] },
      { block: 'rows', rows: [{ name: 'Heat', words: '110 °C, set by fibre' }] },
      { block: 'table', head: ['Item', 'Amount'], widths: [0.5, 0.5], rows: [['Cloth', '$12.00']] },
    ],
    { title: 'Papers of Łukasz', language: 'es' },
  )
  const read = await readPdf(await pdfOf(printed, 'a4'))
  expect(read.title).toBe('Papers of Łukasz')
  expect(read.language).toBe('es')
  expect(read.words).toContain(
    'Łukasz Nguyễn’s niño First a paragraph. 1 one step 2 another step Heat 110 °C, set by fibre Item Amount Cloth $12.00',
  )
  expect(read.words).toContain('Page 1 of 1')
})

test('its structure names headings, lists, tables and figures, with what a figure shows', async () => {
  const pdf = await pdfOf(paperWith(everything('A shirt')), 'letter')
  const { roles, alts } = await readPdf(pdf)
  for (const role of ['H1', 'H3', 'P', 'L', 'LI', 'LBody', 'Table', 'TR', 'TH', 'TD', 'Figure']) {
    expect(roles).toContain(role)
  }
  expect(alts).toContain('A shirt')
})

test('a character that no typeface has is a box with its code point, in its place', async () => {
  const { words: text } = await readPdf(await pdfOf(paperWith([words('Li 李 end 🧵')]), 'letter'))
  expect(text).toMatch(/Li 67 ?4E ?end 1F9 ?F5/)
  expect('李'.codePointAt(0)!.toString(16)).toBe('674e')
})

test('long text is told whole, over as many pages as it takes', async () => {
  const story = Array.from({ length: 1200 }, (_, n) => `word${n}`).join(' ')
  const table: Block = {
    block: 'table',
    head: ['a', 'b'],
    widths: [0.2, 0.8],
    rows: [['x', story]],
  }
  for (const block of [words(story), table, { block: 'caution', words: story } as const]) {
    const read = await readPdf(await pdfOf(paperWith([block]), 'letter'))
    expect(read.pages.length).toBeGreaterThan(1)
    for (const n of [0, 500, 1199]) expect(read.words).toContain(`word${n}`)
    expect(read.words.match(/\bword\d+\b/g)).toHaveLength(1200)
    expect(read.words).toContain(`Page 2 of ${read.pages.length}`)
  }
})

test.each(Object.entries(hostileTexts))('%s text stays on the page everywhere', async (_, text) => {
  for (const paper of paperNames) {
    const printed = paperWith(everything(text), { title: text, head: text })
    const { pages, words: all } = await readPdf(await pdfOf(printed, paper))
    for (const page of pages) expect(within(page)).toEqual([])
    // biome-ignore lint/suspicious/noControlCharactersInRegex: none of them may be drawn
    expect(all).not.toMatch(/[\u0000-\u001f\u200b\u202e]/)
  }
})

test('an empty text is no line, and an empty paper is one page', async () => {
  for (const blocks of [[], everything('')]) {
    const { pages } = await readPdf(await pdfOf(paperWith(blocks), 'letter'))
    expect(pages.length).toBeGreaterThanOrEqual(1)
  }
})

test.each(paperNames)('the line to measure is as long as it says, on %s', async (paper) => {
  const dpi = 300
  const { h } = papers[paper]
  for (const long of [50.8, 50]) {
    const printed = paperWith([words('To scale.')], { measure: { words: 'Measure.', long } })
    const canvas = await drawPdf(await pdfOf(printed, paper), 1, dpi)
    const row = Math.round(((h - 11) / 25.4) * dpi)
    const longest = Math.max(...[-2, -1, 0, 1, 2].map((off) => darkRow(canvas, row + off)))
    expect(Math.abs(longest / dpi - long / 25.4) / (long / 25.4)).toBeLessThan(0.01)
  }
})

test('where nothing is drawn to scale there is no line to measure', async () => {
  const { words: text } = await readPdf(await pdfOf(paperWith([], { measure: null }), 'letter'))
  expect(text).not.toContain('Two inches')
})
