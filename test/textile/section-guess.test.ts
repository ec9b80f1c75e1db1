import { describe, expect, test } from 'vitest'
import { readLabel } from '../../src/textile/label.ts'

// Invented slips in names of parts that are in the tables of languages.
const partsOf = (...lines: string[]) => {
  const { blocks, sure, problems } = readLabel(lines.join('\n'))
  return {
    parts: blocks.map(({ section }) => section),
    sure,
    problems: problems.map(({ code }) => code),
  }
}

const shell = ['60% cotton 40% polyester']
const inner = ['100% polyester']

describe('a line that is nearly the name of a part is read as it', () => {
  test.each([
    ['Shell:', 'Lininq:', 'lining'],
    ['Cuerpo', 'Forrro', 'lining'],
    ['Oberstoff:', 'Fulter:', 'lining'],
    ['Tejido exteriar:', 'Mangas:', 'sleeve'],
    ['Vrchni latka', 'Podsivk', 'lining'],
  ])('%s and %s', (first, second, part) => {
    expect(partsOf(first, ...shell, second, ...inner).parts).toEqual(['body', part])
  })
})

test('one that may be another name is asked about', () => {
  expect(partsOf('Shel:', ...shell, 'Lining:', ...inner)).toEqual({
    parts: ['body', 'lining'],
    sure: false,
    problems: ['section_unclear'],
  })
})

test('one that two other languages tell by its clear name is sure', () => {
  const german = ['Oberstoff:', '60% Baumwolle 40% Polyester', 'Futter:', '100% Polyester']
  const french = ['Extérieur:', '60% coton 40% polyester', 'Doublure:', '100% polyester']
  expect(partsOf(...german, ...french, 'Shel:', ...shell, 'Lining:', ...inner)).toEqual({
    parts: ['body', 'lining'],
    sure: true,
    problems: [],
  })
})

test.each(['Nordlys', 'Made in Peru', 'Relaxed fit', 'Cuff', 'Quillon'])(
  '%s above a make-up names no part by mistake',
  (line) => {
    const { blocks } = readLabel(`${line}\n60% cotton 40% polyester`)
    expect(blocks).toHaveLength(1)
    if (line !== 'Cuff') expect(blocks[0]!.section).toBeNull()
  },
)
