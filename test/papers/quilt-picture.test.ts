import { parse } from 'node-html-parser'
import { describe, expect, test } from 'vitest'
import { quiltsDrawn } from '../../src/papers/quilt-drawn.ts'
import {
  type DrawnCloth,
  type DrawnPiece,
  type QuiltLook,
  type QuiltToDraw,
  quiltPicture,
} from '../../src/papers/quilt-picture.ts'
import { mainColours, quiltTitle } from '../../src/papers/quilt-words.ts'
import { designOf } from '../../src/quilt/design.ts'
import { gridOf, type Rect } from '../../src/quilt/place/grid.ts'
import { language, readPageWords } from '../../src/words/words.ts'
import { layouts } from '../help/knowledge.ts'
import { bought, cloths, nine, sampleQuilt } from '../help/sample-quilt.ts'

const say = (code: string) => language(code, readPageWords().get(code)!).say

const cloth = (colour: string | null, more: Partial<DrawnCloth> = {}): DrawnCloth => ({
  garment: 1,
  bought: null,
  colour,
  second: null,
  print: 'solid',
  photo: null,
  ...more,
})

const piece = (more: Partial<DrawnPiece> = {}, side = 6, x = 0): DrawnPiece => ({
  parts: [{ x, y: 0, w: side, h: side }],
  cloth: 0,
  graphic: false,
  turned: false,
  ...more,
})

const quiltOf = (
  cloths: readonly DrawnCloth[],
  pieces: readonly DrawnPiece[] = [piece()],
): QuiltToDraw => ({
  finished: { w: 12, h: 6 },
  cloths,
  pieces,
  binding: { widthIn: 0.5, colour: '#27345a' },
})

const draw = (
  quilt: QuiltToDraw,
  look: Partial<QuiltLook> = {},
  title: string | null = 'A quilt',
) => quiltPicture(quilt, { name: 'one', ...look }, { title })

/** The rectangles of a path that is made of `M x y h w v h h -w z`, as many as it has. */
const rectsOf = (d: string): Rect[] =>
  [...d.matchAll(/M([\d.]+) ([\d.]+)h([\d.]+)v([\d.]+)h-[\d.]+z/g)].map(([, ...numbers]) => {
    const [x, y, w, h] = numbers.map(Number)
    return { x: x!, y: y!, w: w!, h: h! }
  })

/** Every piece of cloth that is drawn: the paths that bear a seam. */
const drawnParts = (svg: string): Rect[] =>
  parse(svg)
    .querySelectorAll('g > path[stroke-width="0.14"]')
    .flatMap((path) => rectsOf(path.getAttribute('d')!))

const whole = ({ x, y, w, h }: Rect): string =>
  [x - 0.07, y - 0.07, w + 0.14, h + 0.14].map((n) => Math.round(n * 100) / 100).join(' ')

describe.each(layouts.map((layout) => [layout.id, layout] as const))('%s', (_, layout) => {
  const { quilt, touching } = sampleQuilt(layout, 'throw')
  const svg = draw(quilt)

  test('every part of every piece is drawn once, where it lies', () => {
    const parts = quilt.pieces.flatMap((one) => one.parts)
    const told = parts.map(({ x, y, w, h }) => `${x} ${y} ${w} ${h}`)
    expect(drawnParts(svg).map(whole).sort()).toEqual(told.sort())
  })

  test('all of it lies within the quilt, and fills it', () => {
    const { w, h } = quilt.finished
    const parts = quilt.pieces.flatMap((one) => one.parts)
    expect(parts.every((one) => one.x >= 0 && one.y >= 0)).toBe(true)
    expect(parts.every((one) => one.x + one.w <= w && one.y + one.h <= h)).toBe(true)
    expect(parts.reduce((sum, one) => sum + one.w * one.h, 0)).toBeCloseTo(w * h)
  })

  test('every print that a fill names is there', () => {
    const ids = parse(svg)
      .querySelectorAll('pattern')
      .map((pattern) => pattern.id)
    const named = [...svg.matchAll(/url\(#([\w-]+)\)/g)].map(([, id]) => id!)
    expect(new Set(named)).toEqual(new Set(ids))
    expect(ids.every((id) => id.startsWith('one-'))).toBe(true)
  })

  test('no piece touches another of its garment', () => {
    expect(touching).toBe(0)
  })
})

test.each(layouts.map((layout) => [layout.id, layout] as const))(
  'a queen of %s stays small, with photos too',
  (_, layout) => {
    const { finished, pieces } = gridOf(designOf(layout, 'queen', []))
    const photographed = cloths.map((one) => ({ ...one, photo: `${one.garment}`.repeat(21) }))
    const laid = { finished, pieces, cells: pieces.map((_, n) => 1 + (n % nine.length)) }
    const [quilt] = quiltsDrawn({ quilts: [laid], cloths: photographed, bought })
    const parts = quilt!.pieces.flatMap((one) => one.parts).length
    const addressOf = (id: string) => `/i/${'k'.repeat(22)}/photos/${id}/cloth`
    // What stands in every picture is about a kilobyte; 240 pieces stay under 40.
    expect(draw(quilt!).length).toBeLessThan(6_000 + 40 * parts)
    expect(draw(quilt!, { addressOf }).length).toBeLessThan(6_000 + 140 * parts)
  },
)

test('each kind of print is drawn in its own way', () => {
  const [solid, allover, check] = (['solid', 'allover', 'stripe-check'] as const).map((print) =>
    draw(quiltOf([cloth('#5b7ba3', { print })])),
  )
  expect(new Set([solid, allover, check]).size).toBe(3)
  expect(solid).not.toContain('<pattern')
  expect(allover).toContain('<circle')
  expect(check).toContain('<pattern')
  expect(draw(quiltOf([cloth('#5b7ba3', { print: 'unknown' })]))).toBe(solid)
})

test('a print takes the second colour where it is told', () => {
  const plain = draw(quiltOf([cloth('#5b7ba3', { print: 'allover' })]))
  const two = draw(quiltOf([cloth('#5b7ba3', { print: 'allover', second: '#fafaf0' })]))
  expect(plain).not.toContain('#fafaf0')
  expect(two).toContain('<circle cx="0.38" cy="0.38" r="0.26" fill="#fafaf0"/>')
})

test('our sign of a graphic is on the piece that has it alone, if that is not too small to tell', () => {
  const single = cloth('#5b7ba3', { print: 'single' })
  const signs = (pieces: readonly DrawnPiece[]) =>
    draw(quiltOf([single], pieces)).split('<circle').length - 1
  expect(signs([piece(), piece({ graphic: true }, 6, 6)])).toBe(1)
  expect(signs([piece({ graphic: true }, 2)])).toBe(0)
})

test('cloth of one garment is one path, however many pieces it has', () => {
  const pieces = [piece(), piece({}, 6, 6)]
  const svg = draw(quiltOf([cloth('#5b7ba3', { print: 'allover' })], pieces))
  expect(parse(svg).querySelectorAll('pattern').length).toBe(1)
  expect(parse(svg).querySelectorAll('g > path').length).toBe(1)
})

test('cloth that nobody told of and cloth that is bought bear their own signs', () => {
  const told = draw(quiltOf([cloth('#d6cebd')]))
  const untold = draw(quiltOf([cloth(null)]))
  const bought = draw(quiltOf([cloth('#d6cebd', { garment: null })]))
  expect(told).not.toMatch(/stroke-dasharray|l0\.8/)
  expect(untold.match(/l0\.8 -0\.8/g)?.length).toBe(1)
  expect(bought.match(/stroke-dasharray/g)?.length).toBe(1)
})

describe('with photos', () => {
  const addressOf = (id: string) => `/photos/${id}?a=1&b="2"`
  const checked = cloth('#5b7ba3', { print: 'stripe-check', photo: 'p1' })
  const row = [0, 6, 12, 18].map((x) => piece({}, 6, x))

  test('the photo is there once, by an address that is escaped, and each piece shows its own part', () => {
    const svg = draw(quiltOf([checked], row), { addressOf })
    const images = parse(svg).querySelectorAll('image')
    expect(images.length).toBe(1)
    expect(svg).toContain('href="/photos/p1?a=1&amp;b=&quot;2&quot;"')
    const crops = parse(svg).querySelectorAll('g svg')
    const seen = crops.map((one) => one.getAttribute('viewBox')!)
    expect(new Set(seen).size).toBe(row.length)
    for (const crop of seen) {
      const [x, y, w, h] = crop.split(' ').map(Number)
      expect([w, h]).toEqual([60, 60])
      expect(Math.min(x!, y!)).toBeGreaterThanOrEqual(0)
      expect(Math.max(x! + w!, y! + h!)).toBeLessThanOrEqual(100)
    }
    expect(crops.every((one) => one.querySelector('use')!.getAttribute('href') === '#one-1')).toBe(
      true,
    )
    expect(draw(quiltOf([checked], row), { addressOf })).toBe(svg)
  })

  test('beneath it lies its colour, and without an address the colour and the print', () => {
    expect(draw(quiltOf([checked]), { addressOf })).toContain('fill="#5b7ba3"')
    expect(draw(quiltOf([checked]), { addressOf: () => null })).toBe(draw(quiltOf([checked])))
    expect(draw(quiltOf([checked]))).toContain('<pattern')
  })

  test('cloth that lies across is turned', () => {
    const turned = draw(quiltOf([checked], [piece({ turned: true })]), { addressOf })
    expect(turned).toContain('transform="rotate(90 50 50)"')
    expect(draw(quiltOf([checked]), { addressOf })).not.toContain('rotate')
  })

  test('of a garment with a graphic only its own piece shows the photo', () => {
    const single = cloth('#5b7ba3', { print: 'single', photo: 'p1' })
    const svg = draw(quiltOf([single], [piece({ graphic: true }), piece({}, 6, 6)]), { addressOf })
    const shown = parse(svg).querySelectorAll('g svg')
    expect(shown.map((one) => one.getAttribute('viewBox'))).toEqual(['0 0 100 100'])
    expect(drawnParts(svg).length).toBe(2)
  })
})

test('for the bench each part bears its garment’s number, and bought cloth none', () => {
  const quilt = quiltOf(
    [cloth('#27345a', { garment: 7 }), cloth('#efe7d6', { garment: null })],
    [piece(), piece({ cloth: 1 }, 6, 6)],
  )
  const numbers = parse(draw(quilt, { numbers: true })).querySelectorAll('text')
  expect(numbers.map((one) => one.text)).toEqual(['7'])
  expect(numbers[0]!.getAttribute('x')).toBe('3')
  expect(draw(quilt)).not.toContain('<text')
})

test('the border lies within the binding and around the pieces', () => {
  const quilt = { ...quiltOf([], []), border: { widthIn: 3, colour: '#8d9096' } }
  const rects = parse(draw(quilt, {}, null))
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
  expect(draw(quiltOf([], []), {}, 'a < b & "c"')).toContain(
    '<title>a &lt; b &amp; &quot;c&quot;</title>',
  )
  expect(() => draw(quiltOf([cloth('"/><script>')]))).toThrow('Not a colour')
  expect(() => draw(quiltOf([cloth('red', { print: 'allover' })]))).toThrow('Not a colour')
  expect(() => draw(quiltOf([cloth('#5b7ba3', { print: 'allover', second: '"/>' })]))).toThrow(
    'Not a colour',
  )
})

describe('what is shown is told in words', () => {
  const told = { size: 'throw', columns: 4, rows: 5 } as const
  const cloths = [cloth('#5b7ba3'), cloth('#8d9096', { garment: 2 }), cloth(null, { garment: 3 })]
  const blue = piece()
  const grey = piece({ cloth: 1 })
  const untold = piece({ cloth: 2 })

  test('size, blocks, garments and the two main colours', () => {
    const quilt = { cloths, pieces: [blue, blue, grey] }
    expect(quiltTitle({ ...told, quilt }, say('en'))).toBe(
      'A throw of 4 by 5 blocks. It is made of 2 garments, mostly blue and grey.',
    )
    expect(quiltTitle({ ...told, quilt }, say('es'))).toBe(
      'Una manta de sofá de 4 por 5 bloques, hecha de 2 prendas, sobre todo en azul y gris.',
    )
  })

  test('a colour that covers little is not told', () => {
    const pieces = [...Array<DrawnPiece>(9).fill(blue), { ...grey, cloth: 1 }]
    expect(mainColours({ cloths, pieces })).toEqual(['blue'])
    expect(quiltTitle({ ...told, quilt: { cloths, pieces: [blue] } }, say('en'))).toBe(
      'A throw of 4 by 5 blocks. It is made of 1 garment, mostly blue.',
    )
  })

  test('colours count by the cloth that is seen, not by pieces', () => {
    const small = piece({ cloth: 1 }, 2)
    expect(mainColours({ cloths, pieces: [small, small, blue] })).toEqual(['blue', 'grey'])
  })

  test('no pieces, no colours; and none is told of where nobody told any', () => {
    expect(mainColours({ cloths, pieces: [] })).toEqual([])
    expect(quiltTitle({ ...told, quilt: { cloths, pieces: [untold] } }, say('en'))).toBe(
      'A throw of 4 by 5 blocks. It is made of 1 garment.',
    )
  })
})

test('the sample has nine garments and every kind of print', () => {
  expect(nine.length).toBe(9)
  expect(new Set(nine.map(({ print }) => print)).size).toBe(4)
})
