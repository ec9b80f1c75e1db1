import { parse } from 'node-html-parser'
import { describe, expect, test } from 'vitest'
import { type DrawnPiece, quiltPicture } from '../../src/papers/quilt-picture.ts'
import { mainColours, quiltTitle } from '../../src/papers/quilt-words.ts'
import { language, readPageWords } from '../../src/words/words.ts'
import { layouts } from '../help/knowledge.ts'
import { nine, sampleQuilt } from '../help/sample-quilt.ts'

const say = (code: string) => language(code, readPageWords().get(code)!).say

const piece = (colour: string, print: DrawnPiece['print'], side = 6): DrawnPiece => ({
  parts: [{ x: 0, y: 0, w: side, h: side }],
  colour,
  print,
})

const draw = (pieces: readonly DrawnPiece[], title: string | null = 'A quilt') =>
  quiltPicture(
    {
      finished: { w: 12, h: 6 },
      pieces,
      binding: { widthIn: 0.5, colour: '#27345a' },
      name: 'one',
    },
    { title },
  )

describe.each(layouts.map((layout) => [layout.id, layout] as const))('%s', (_, layout) => {
  const { quilt, pieces, touching } = sampleQuilt(layout, 'throw')
  const svg = parse(quiltPicture(quilt, { title: 'A quilt' }))

  test('every part of every piece is drawn once, in its place within the quilt', () => {
    const parts = pieces.flatMap((one) => one.parts)
    const drawn = svg
      .querySelectorAll('g > rect')
      .filter((rect) => rect.getAttribute('stroke-width') === '0.14')
    expect(drawn.length).toBe(parts.length)
    const [, , width, height] = svg
      .querySelector('svg')!
      .getAttribute('viewBox')!
      .split(' ')
      .map(Number)
    for (const rect of drawn) {
      const [x, y, w, h] = ['x', 'y', 'width', 'height'].map((name) =>
        Number(rect.getAttribute(name)),
      )
      expect(x! + w!).toBeLessThan(width!)
      expect(y! + h!).toBeLessThan(height!)
    }
  })

  test('every print that a fill names is there', () => {
    const ids = svg.querySelectorAll('pattern').map((pattern) => pattern.id)
    const named = [...svg.toString().matchAll(/url\(#([\w-]+)\)/g)].map(([, id]) => id!)
    expect(new Set(named)).toEqual(new Set(ids))
    expect(ids.every((id) => id.startsWith(quilt.name))).toBe(true)
  })

  test('no piece touches another of its garment', () => {
    expect(touching).toBe(0)
  })
})

test('each kind of print is drawn in its own way', () => {
  const [solid, allover, check, single] = (
    ['solid', 'allover', 'stripe-check', 'single'] as const
  ).map((print) => draw([piece('#5b7ba3', print)]))
  expect(new Set([solid, allover, check, single]).size).toBe(4)
  expect(solid).not.toContain('<pattern')
  expect(allover).toContain('<circle')
  expect(check).toContain('<path')
  expect(single).toContain('<path')
  expect(draw([piece('#5b7ba3', 'unknown')])).toBe(solid)
})

test('a graphic is not drawn where it would be too small to tell', () => {
  expect(draw([piece('#5b7ba3', 'single', 2)])).not.toContain('<path')
})

test('like cloth shares one pattern', () => {
  const svg = parse(draw([piece('#5b7ba3', 'allover'), piece('#5b7ba3', 'allover')]))
  expect(svg.querySelectorAll('pattern').length).toBe(1)
})

test('the border lies within the binding and around the pieces', () => {
  const svg = parse(
    quiltPicture(
      {
        finished: { w: 12, h: 6 },
        pieces: [],
        border: { widthIn: 3, colour: '#8d9096' },
        binding: { widthIn: 0.5, colour: '#27345a' },
        name: 'one',
      },
      { title: null },
    ),
  )
  const rects = svg
    .querySelectorAll('svg > rect')
    .map((rect) => [
      rect.getAttribute('fill'),
      rect.getAttribute('width'),
      rect.getAttribute('height'),
    ])
  expect(rects).toEqual([
    ['#27345a', '19', '13'],
    ['#8d9096', '18', '12'],
    ['none', '19', '13'],
  ])
})

test('words are escaped, and a colour that is none is refused', () => {
  expect(draw([], 'a < b & "c"')).toContain('<title>a &lt; b &amp; &quot;c&quot;</title>')
  expect(() => draw([piece('"/><script>', 'solid')])).toThrow('Not a colour')
  expect(() => draw([piece('red', 'allover')])).toThrow('Not a colour')
})

describe('what is shown is told in words', () => {
  const told = { size: 'throw', columns: 4, rows: 5, garments: 9 } as const
  const blue = piece('#5b7ba3', 'solid')
  const grey = piece('#8d9096', 'solid')

  test('size, blocks, garments and the two main colours', () => {
    const pieces = [blue, blue, grey]
    expect(quiltTitle({ ...told, pieces }, say('en'))).toBe(
      'A throw of 4 by 5 blocks from 9 garments, mostly blue and grey.',
    )
    expect(quiltTitle({ ...told, pieces }, say('es'))).toBe(
      'Una manta de sofá de 4 por 5 bloques, hecha de 9 prendas, sobre todo en azul y gris.',
    )
  })

  test('a colour that covers little is not told', () => {
    const pieces = [...Array<DrawnPiece>(9).fill(blue), grey]
    expect(mainColours(pieces)).toEqual(['blue'])
    expect(quiltTitle({ ...told, garments: 1, pieces }, say('en'))).toBe(
      'A throw of 4 by 5 blocks from 1 garment, mostly blue.',
    )
  })

  test('colours count by the cloth that is seen, not by pieces', () => {
    const small = piece('#8d9096', 'solid', 2)
    expect(mainColours([small, small, blue])).toEqual(['blue', 'grey'])
  })

  test('no pieces, no colours', () => {
    expect(mainColours([])).toEqual([])
  })
})

test('the sample has nine garments and every kind of print', () => {
  expect(nine.length).toBe(9)
  expect(new Set(nine.map(({ print }) => print)).size).toBe(4)
})
