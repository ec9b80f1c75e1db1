import { describe, expect, test } from 'vitest'
import { drawFlow } from '../../src/flow/draw.ts'
import { breakLines } from '../../src/flow/draw-text.ts'
import { questionsOf } from '../../src/flow/kept.ts'
import { parcels } from './parcels.ts'
import { xmlProblem } from './xml.ts'

const questions = [...questionsOf(parcels).once.keys(), ...questionsOf(parcels).repeated.keys()]
const { svg, text } = drawFlow(parcels)

describe('the picture of a flow', () => {
  test('is well-formed', () => {
    expect(xmlProblem(svg)).toBeNull()
  })

  test('stays so whatever the words hold', () => {
    const hostile = drawFlow(parcels, () => '</text><script>&"\u0000\ufffe\ud800 ]]>').svg
    expect(xmlProblem(hostile)).toBeNull()
    expect(hostile).not.toContain('<script')
  })

  test('says what it is to those who cannot see it', () => {
    expect(svg).toMatch(/<svg[^>]* role="img" aria-labelledby="title desc"/)
    expect(svg).toContain('<title id="title">The flow parcels</title>')
    expect(svg).toContain('sender: 2 questions; parcel: 6 questions; last: 1 questions')
  })

  test('needs nothing from elsewhere', () => {
    expect(svg.replace('xmlns="http://www.w3.org/2000/svg"', '')).not.toMatch(
      /https?:|href|url\(|@import|<image|<script/,
    )
  })

  test('shows every question, option and guard', () => {
    for (const id of questions) expect(svg).toContain(`>${id}: `)
    expect(svg).toContain('huge\u00a0[if\u00a0stays_here]')
    expect(svg).toContain('>small: contents<')
    expect(svg).toContain('>if needs_two_people: floor<')
    expect(svg).toContain('>only while goes_abroad<')
  })
})

test('the text shows questions, edges and guards', () => {
  const parcel = text.slice(text.indexOf('parcel ('), text.indexOf('last\n'))
  expect(parcel).toContain(
    [
      'parcel (for each item, 3 at most)',
      '=================================',
      '  size: choice',
      '    of: small | large | huge\u00a0[if\u00a0stays_here]',
      '    read by: price',
      '    small -> contents',
      '    otherwise -> weight',
      '  weight: number, 1 to 40 kg',
      '    read by: price, needs_two_people',
      '    if needs_two_people -> floor',
      '    otherwise -> contents',
    ].join('\n'),
  )
  expect(text).toContain('  customs: text, 20 characters at most, only while goes_abroad')
})

test('questions stand in the words of the flow', () => {
  const drawn = drawFlow(parcels, (key) => `words of ${key}`)
  expect(drawn.text).toContain('"words of size.ask"')
  expect(drawn.svg).toContain('>words of size.ask<')
})

test('lines break at blanks, and a longer word is cut', () => {
  expect(breakLines('one two three', 7)).toEqual(['one two', 'three'])
  expect(breakLines('abcdefghij k', 4)).toEqual(['abcd', 'efgh', 'ij k'])
  expect(breakLines('', 4)).toEqual([])
})
