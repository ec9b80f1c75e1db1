import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { type Flow, flowSchema } from '../../src/flow/grammar.ts'
import { domains } from '../../src/garment/facts.ts'
import { type Drawing, pathPoints, reach, toSvg } from '../../src/papers/drawing.ts'
import { drawings, garmentNames, helpNames, signNames } from '../../src/papers/drawings/index.ts'
import { readPageWords } from '../../src/words/words.ts'

describe.each(Object.entries(drawings))('the drawing %s', (name, drawing) => {
  test('stays inside its box', () => {
    for (const [x, y] of drawing.marks.flatMap(reach)) {
      expect(x).toBeGreaterThanOrEqual(0)
      expect(x).toBeLessThanOrEqual(drawing.width)
      expect(y).toBeGreaterThanOrEqual(0)
      expect(y).toBeLessThanOrEqual(drawing.height)
    }
  })

  test('is well-formed', () => {
    expect(openElements(toSvg(drawing, { title: name, description: `seen: ${name}` }))).toEqual([])
  })
})

/** Elements left open at the end, by the rules of XML for tags; throws on a tag closed out of turn. */
function openElements(xml: string): string[] {
  const open: string[] = []
  const rest = xml.replace(
    /<(\/?)([a-z]+)((?: [a-zA-Z0-9:-]+="[^"<&]*(?:&(?:amp|lt|gt|quot);[^"<&]*)*")*)(\/?)>/g,
    (_, closes: string, name: string, _attributes, alone: string) => {
      if (closes) {
        if (open.pop() !== name) throw new Error(`</${name}> closes nothing`)
      } else if (!alone) open.push(name)
      return ''
    },
  )
  if (/[<>]/.test(rest)) throw new Error(`not a tag: ${rest}`)
  return open
}

test('the check of tags notices what is wrong', () => {
  expect(openElements('<svg a="1"><path d="M0 0"/></svg>')).toEqual([])
  expect(openElements('<svg><g></g>')).toEqual(['svg'])
  expect(() => openElements('<svg><g></svg></g>')).toThrow('closes nothing')
  expect(() => openElements('<svg><path d=1/></svg>')).toThrow('not a tag')
})

test('every kind of garment has its silhouette', () => {
  expect([...garmentNames].toSorted()).toEqual([...domains.kind].toSorted())
})

test('a help drawing is told in words in every language; signs stand beside their words', () => {
  for (const sentences of readPageWords().values()) {
    for (const name of helpNames) expect(sentences.get(`drawings.${name}`)).toBeTruthy()
  }
  for (const name of signNames) {
    expect(toSvg(drawings[name]!, { title: null })).toContain('aria-hidden="true"')
  }
})

const intake: Flow = flowSchema.parse(
  parse(readFileSync(new URL('../../flows/intake/flow.yaml', import.meta.url), 'utf8')),
)
const questions = intake.parts.flatMap((part) => part.questions)

test('every drawing that the intake names is there', () => {
  const named = questions.flatMap(({ drawing }) => drawing ?? [])
  expect(named.length).toBeGreaterThan(0)
  expect(named.filter((name) => !helpNames.includes(name))).toEqual([])
})

test.each([
  ['label', 'find-the-label'],
  ['photos', 'lay-out-for-a-photo'],
  ['wear', 'hold-to-the-light'],
  ['stretch', 'pull-test'],
  ['graphic_size', 'measure-a-graphic'],
])('where hands are needed for %s, %s is drawn beside it', (id, drawing) => {
  expect(questions.find((question) => question.id === id)?.drawing).toBe(drawing)
})

test('what pulling can harm is said beside the pull test', () => {
  expect(questions.find(({ id }) => id === 'stretch')?.cautions).toEqual(['gentle-pull'])
})

test('every sign that the intake offers is drawn, and its group has a heading', () => {
  const offered = questions
    .filter(({ kind }) => kind === 'symbols')
    .flatMap(({ options = [] }) => options.map((o) => (typeof o === 'string' ? o : o.option)))
  expect(offered.length).toBeGreaterThan(0)
  expect(offered.filter((sign) => !signNames.includes(sign))).toEqual([])
  for (const sentences of readPageWords().values()) {
    for (const sign of offered) expect(sentences.has(`signs.${sign.split('-')[0]}`)).toBe(true)
  }
})

test('words in a drawing are escaped', () => {
  const drawing: Drawing = {
    width: 10,
    height: 10,
    unit: 'mm',
    marks: [{ mark: 'text', at: [1, 9], size: 4, anchor: 'start', words: '<a & "b">' }],
  }
  const svg = toSvg(drawing, { title: 'x < y' })
  expect(svg).toContain('&lt;a &amp; &quot;b&quot;&gt;')
  expect(svg).toContain('<title>x &lt; y</title>')
})

test.each(['m 1 1', 'M1 1 A2 2 0 0 1 3 3', 'M1 1 H4', 'M1 1 L2'])('the path %s is refused', (d) => {
  expect(() => pathPoints(d)).toThrow('A path')
})

test('half the width of a pen counts as reached', () => {
  expect(reach({ mark: 'line', from: [2, 2], to: [4, 2], stroke: 'ink', width: 2 })).toEqual([
    [1, 1],
    [3, 3],
    [3, 1],
    [5, 3],
  ])
})
