import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'

const folder = new URL('../../src/web/look/', import.meta.url)
const sheets = readdirSync(folder).map((file) => ({
  file,
  css: readFileSync(new URL(file, folder), 'utf8').replaceAll(/\/\*[\s\S]*?\*\//g, ''),
}))
const sheet = (name: string): string => sheets.find(({ file }) => file === name)!.css

type Tokens = Readonly<Record<string, string>>

const colours = (css: string): Tokens =>
  Object.fromEntries([...css.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, n, v]) => [n!, v!]))

const tokens = sheet('tokens.css')
const darkAt = tokens.indexOf('@media (prefers-color-scheme: dark)')
const printAt = tokens.indexOf('@media print')
const light = colours(tokens.slice(0, darkAt))
const paperAt = sheet('paper.css').indexOf('.look-paper {')

const schemes: [string, Tokens][] = [
  ['light', light],
  ['dark', { ...light, ...colours(tokens.slice(darkAt, printAt)) }],
  ['printed', { ...light, ...colours(tokens.slice(printAt)) }],
  ['shown as paper', { ...light, ...colours(sheet('paper.css').slice(paperAt)) }],
]

/** WCAG 2.2, "relative luminance" and "contrast ratio". */
function contrast(one: string, other: string): number {
  const [high, low] = [luminance(one), luminance(other)].toSorted((a, b) => b - a)
  return (high! + 0.05) / (low! + 0.05)
}

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!
}

test('the measure of contrast agrees with the range WCAG gives: 1 to 21', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
  expect(contrast('#a63d2f', '#a63d2f')).toBe(1)
})

describe.each(schemes)('%s', (_, scheme) => {
  test.each(
    ['ink', 'soft', 'madder', 'sound', 'care', 'eyes', 'home'].flatMap((words) => [
      [words, 'cloth'],
      [words, 'paper'],
    ]),
  )('%s on %s meets AA for words, 4.5 to 1', (words, ground) => {
    expect(contrast(scheme[words]!, scheme[ground]!)).toBeGreaterThanOrEqual(4.5)
  })

  test.each(['ink', 'ink-strong'])('the words of a button on %s meet AA', (ground) => {
    expect(contrast(scheme['on-ink']!, scheme[ground]!)).toBeGreaterThanOrEqual(4.5)
  })

  test('digits drawn on cloth meet AA', () => {
    expect(contrast(scheme.ink!, scheme['cloth-fill']!)).toBeGreaterThanOrEqual(4.5)
  })
})

test('every colour comes from the tokens', () => {
  const loose = sheets
    .filter(({ file }) => !['tokens.css', 'paper.css'].includes(file))
    .flatMap(({ file, css }) =>
      (css.match(/#[0-9a-f]{3,8}\b/gi) ?? []).map((hex) => `${file} ${hex}`),
    )
  expect(loose).toEqual([])
})

test('no words are smaller than 15 px', () => {
  const small = sheets.flatMap(({ file, css }) =>
    [...css.matchAll(/font(?:-size)?:[^;]*?([\d.]+)rem/g)]
      .filter(([, rem]) => Number(rem) * 16 < 15)
      .map(([rule]) => `${file} ${rule}`),
  )
  expect(small).toEqual([])
  expect(Number(tokens.match(/--small: ([\d.]+)rem/)![1]) * 16).toBe(15)
})
