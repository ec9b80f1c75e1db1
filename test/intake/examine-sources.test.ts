import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { parseSource } from '../../src/flow/source.ts'
import { examine } from '../../src/intake/examine.ts'
import { sourceFindings } from '../../src/intake/examine-sources.ts'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { refusalOf } from '../../src/intake/proven.ts'
import { drawings } from '../../src/papers/drawings/index.ts'
import { flowsFolder } from '../help/app.ts'

const today = '2026-06-01'
const folder = readFlowsFolder(flowsFolder)
const drawn = Object.keys(drawings)

type Part = 'tables' | 'layouts' | 'rates'

/** The folder with a line of a file changed, and the number of that line. */
function changed(part: Part, file: string, before: RegExp, after: string) {
  const lines = readFileSync(join(flowsFolder, file), 'utf8').split('\n')
  const at = lines.findIndex((line) => before.test(line))
  expect(at, `${file} has ${before}`).toBeGreaterThan(0)
  lines[at] = lines[at]!.replace(before, after)
  const put = parseSource(lines.join('\n'), file)
  const all = folder[part].map((one) => (one.file === file ? put : one))
  return { changed: { ...folder, [part]: all }, line: at + 1 }
}

test('every figure of the shop’s own files names its source', () => {
  expect(sourceFindings(folder)).toEqual([])
})

describe('the start refuses', () => {
  test.each<[string, Part, string, RegExp, string, RegExp]>([
    [
      'a row whose source says nothing',
      'tables',
      'tables/permit.yaml',
      /source: common practice, no source$/,
      'source: obvious',
      /^tables\/permit\/.* names no source \("obvious"\)$/,
    ],
    [
      'an interfacing whose source says nothing',
      'rates',
      'rates/2026-01-01.yaml',
      /source: glue line 120 to 160 °C.*$/,
      'source: the roll',
      /interfacing\/light\/glue line names no source/,
    ],
  ])('%s, with its file and line', (_, part, file, before, after, message) => {
    const { changed: flows, line } = changed(part, file, before, after)
    expect(sourceFindings(flows)).toEqual([
      { file, line, rule: 'no-source', message: expect.stringMatching(message) },
    ])
    const { findings } = examine(flows, drawn, { today })
    expect(findings).toEqual(sourceFindings(flows))
    expect(refusalOf(findings[0]!)).toMatchObject({
      code: 'flows_invalid',
      details: { file, line },
    })
  })

  test.each<[string, Part, string, RegExp, RegExp]>([
    ['weights', 'rates', 'rates/2026-01-01.yaml', /^ {2}weights_g: from.*$/, /weight\/tshirt/],
    ['a layout', 'layouts', 'layouts/plain-squares.yaml', /^ {2}seam_in: common.*$/, /seam names/],
  ])('%s without a source, at the list of sources', (_, part, file, before, message) => {
    const { changed: flows } = changed(part, file, before, '')
    const { changed: same, line } = changed(part, file, /^sources:/, 'sources:')
    expect(sourceFindings(same)).toEqual([])
    expect(sourceFindings(flows)).toEqual([
      { file, line, rule: 'no-source', message: expect.stringMatching(message) },
    ])
    expect(examine(flows, drawn, { today }).findings).toEqual(sourceFindings(flows))
  })
})
