import { parse } from 'node-html-parser'
import { expect, test } from 'vitest'
import { type QuiltToDraw, quiltPicture } from '../../src/papers/quilt-picture.ts'
import { type QuiltTouched, quiltTouched } from '../../src/papers/quilt-touch.ts'
import { designOf } from '../../src/quilt/design.ts'
import { gridOf } from '../../src/quilt/place/grid.ts'
import { layouts } from '../help/knowledge.ts'

const plain: QuiltTouched = {
  linkOf: (n) => ({ href: `?piece=${n + 1}`, label: `Piece ${n + 1}` }),
  pinned: new Set(),
  chosen: [],
  pale: new Set(),
}

const layout = layouts.find(({ id }) => id === 'quartered-nine-patch')!
const grid = gridOf(designOf(layout, 'crib', []))
const quarters: QuiltToDraw = {
  finished: grid.finished,
  cloths: [
    { garment: 1, bought: null, colour: '#27345a', second: null, print: 'solid', photo: null },
  ],
  pieces: grid.pieces.map(({ parts }) => ({ parts, cloth: 0, graphic: false, turned: false })),
  binding: { widthIn: 0.5, colour: '#27345a' },
}
const over = (more: Partial<QuiltTouched> = {}) =>
  parse(`<svg>${quiltTouched(quarters.pieces, { ...plain, ...more })}</svg>`)

test('every piece is one link over all of its parts, and no stop of the Tab key', () => {
  const links = over().querySelectorAll('a')
  expect(links).toHaveLength(quarters.pieces.length)
  for (const [n, link] of links.entries()) {
    expect(link.getAttribute('href')).toBe(`?piece=${n + 1}`)
    expect(link.getAttribute('tabindex')).toBe('-1')
    const parts = link.querySelector('path')!.getAttribute('d')!.split('M').slice(1)
    expect(parts).toHaveLength(quarters.pieces[n]!.parts.length)
    const { x, y, w, h } = quarters.pieces[n]!.parts[0]!
    expect(parts[0]).toBe(`${x} ${y}h${w}v${h}h${-w}z`)
  }
  expect(quarters.pieces.some(({ parts }) => parts.length === 4)).toBe(true)
})

test('a piece that leads nowhere is no link, and names are escaped', () => {
  const named = over({
    linkOf: (n) => (n === 3 ? { href: '?piece=4&with=9', label: '<b>"Best" & last</b>' } : null),
  })
  expect(named.querySelectorAll('a')).toHaveLength(1)
  const html = named.toString()
  expect(html).toContain('?piece=4&amp;with=9')
  expect(html).not.toContain('<b>')
})

test('a pin is a sign of its own, and the two that are chosen differ without their colour', () => {
  expect(over().querySelectorAll('circle')).toHaveLength(0)
  expect(over({ pinned: new Set([0, 7]) }).querySelectorAll('circle')).toHaveLength(2)
  const dashes = (chosen: number[]) =>
    over({ chosen })
      .querySelectorAll('g > path')
      .filter((path) => path.getAttribute('stroke') && !path.closest('a'))
      .map((path) => path.hasAttribute('stroke-dasharray'))
  expect(dashes([2])).toEqual([false, false])
  expect(dashes([2, 5])).toEqual([false, false, false, true])
})

test('what is pale is covered, and all of it lies over the pieces and under nothing', () => {
  expect(over().querySelector('[opacity]')).toBeNull()
  const pale = over({ pale: new Set([1]) }).querySelector('[opacity]')!
  expect(pale.getAttribute('d')!.split('M').length - 1).toBe(quarters.pieces[1]!.parts.length)
  const shapes = quiltTouched(quarters.pieces, plain)
  const picture = quiltPicture(
    quarters,
    { name: 'one', numbers: true, over: shapes },
    { title: null },
  )
  expect(picture.indexOf(shapes)).toBeGreaterThan(picture.lastIndexOf('<text'))
})
