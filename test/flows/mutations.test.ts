import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { parseSource, type Source } from '../../src/flow/source.ts'
import { examine } from '../../src/intake/examine.ts'
import { type FlowsFolder, readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { learn } from '../../src/intake/knowledge.ts'
import { drawings } from '../../src/papers/drawings/index.ts'
import { flowsFolder } from '../help/app.ts'

const today = '2026-06-01'
const folder = readFlowsFolder(flowsFolder)
const drawn = Object.keys(drawings)

/** Replaces what stands there once, or says that this test is lost. */
function changedText(file: string, before: string, after: string): string {
  const text = readFileSync(join(flowsFolder, file), 'utf8')
  if (text.split(before).length !== 2) throw new Error(`${file} has "${before}" not once`)
  return text.replace(before, () => after)
}

/** The shop's folder with one file saying something else. */
function folderWith(file: string, before: string, after: string): FlowsFolder {
  const source = parseSource(changedText(file, before, after), file)
  const put = (one: Source): Source => (one.file === file ? source : one)
  const putAll = (words: ReadonlyMap<string, Source>) =>
    new Map([...words].map(([code, one]) => [code, put(one)]))
  return {
    shop: put(folder.shop),
    flow: put(folder.flow),
    pathLimits: put(folder.pathLimits),
    tables: folder.tables.map(put),
    mustHold: put(folder.mustHold),
    better: put(folder.better),
    layouts: folder.layouts.map(put),
    rates: folder.rates.map(put),
    words: { intake: putAll(folder.words.intake), trade: putAll(folder.words.trade) },
  }
}

type Mutation = readonly [what: string, before: string, after: string, caught: RegExp]

/**
 * For what is changed beside the flow: garments are not repeated, so that no longest path is looked
 * for again, and the statements are those that hold at each point by itself.
 */
function quicker(changed: FlowsFolder): FlowsFolder {
  const flow = changedText('intake/flow.yaml', '    repeat: true\n    most: 300\n', '')
  const value = (changed.mustHold.value as object[]).filter((one) => !('worse' in one))
  return {
    ...changed,
    flow: parseSource(flow, 'intake/flow.yaml'),
    mustHold: { ...changed.mustHold, value },
  }
}

/** The names under which a proof finds fault: file, rule and message of each finding. */
function faults(changed: FlowsFolder): string {
  try {
    return examine(changed, drawn, { today })
      .findings.map(({ file, rule, message }) => `${file} ${rule}: ${message}`)
      .join('\n')
  } catch (error) {
    if (error instanceof Failure) return `refused ${error.code}: ${JSON.stringify(error.details)}`
    throw error
  }
}

const quickFaults = (changed: FlowsFolder): string => faults(quicker(changed))

let tried = 0
let caught = 0

function seen(file: string, [, before, after, name]: Mutation, look = faults): void {
  tried += 1
  expect(look(folderWith(file, before, after))).toMatch(name)
  caught += 1
}

afterAll(() => {
  process.stdout.write(`mutations: ${caught} of ${tried} caught by name\n`)
})

/** A row of a table as it stands in its file, from its id to the next row or the end. */
function rowOf(table: string, id: string): string {
  const text = readFileSync(join(flowsFolder, `tables/${table}.yaml`), 'utf8')
  const from = text.indexOf(`  - id: ${id}\n`)
  if (from < 0) throw new Error(`${table} has no row "${id}"`)
  const next = text.indexOf('  - id: ', from + 1)
  return text.slice(from, next < 0 ? text.length : next)
}

/** The row, its cells changed. */
const rowWith = (table: string, id: string, before: string, after: string): [string, string] => {
  const row = rowOf(table, id)
  if (row.split(before).length !== 2) throw new Error(`${id} has "${before}" not once`)
  return [row, row.replace(before, after)]
}

const takesAll = `  - id: anything
    when: {}
    give: { most: press }
    source: common practice, no source
`

describe('limits.yaml', () => {
  test.each<Mutation>([
    ['a row dropped: fibre without heat', rowOf('limits', 'fibre-none'), '', /no-heat-no-press/],
    ['a row dropped: label without heat', rowOf('limits', 'label-none'), '', /no-heat-no-press/],
    [
      'a hotter ceiling for one dot',
      '{ limitC: 110, setBy: label }',
      '{ limitC: 120, setBy: label }',
      /lowest-limit-rules/,
    ],
    [
      'a hotter ceiling for fibres of two dots',
      '{ limitC: 150, setBy: fibre }',
      '{ limitC: 160, setBy: fibre }',
      /lowest-limit-rules/,
    ],
    [
      'a ceiling hotter than any label',
      '{ limitC: 200, setBy: label }',
      '{ limitC: 210, setBy: label }',
      /label-hot: limitC/,
    ],
    [
      'a hotter ceiling for dye that moves',
      'limitC: 125',
      'limitC: 130',
      /lowest-limit-rules[\s\S]*screen-and-sublimated/,
    ],
    [
      'a silent label taken for two values less',
      '{ iron: [silent, missing] }',
      '{ iron: [silent] }',
      /silent-label-is-not-hot/,
    ],
    [
      'a guard flipped: the pile',
      '{ heat: unknown, surface: pile }',
      '{ heat: unknown, surface: { not: pile } }',
      /unknown-pile-no-iron/,
    ],
    [
      'skins that forget fur',
      '[leather, fur, film, unknown]',
      '[leather, film, unknown]',
      /skins-and-film-need-a-person/,
    ],
    [
      'historic cloth forgotten',
      '[historic, unknown]',
      '[unknown]',
      /historic-and-shattered-are-spared/,
    ],
    [
      'a setter nobody knows',
      '{ limitC: 150, setBy: age }',
      '{ limitC: 150, setBy: aeg }',
      /age-old: setBy/,
    ],
    ['a column nobody knows', 'reads: [iron, heat,', 'reads: [iron, heet,', /unknown-column: heet/],
    [
      'a value nobody knows',
      '{ heat: warm }',
      '{ heat: tepid }',
      /unknown-value: fibre-warm: heat/,
    ],
    [
      'the same id twice',
      'id: fibre-warm',
      'id: fibre-cool',
      /duplicate-id: another row is called fibre-cool/,
    ],
    [
      'a collecting table that takes the first',
      'hit: collect',
      'hit: first',
      /row-unreachable: label-says-nothing|row-unreachable/,
    ],
  ])('%s', (...mutation) => seen('tables/limits.yaml', mutation, quickFaults))
})

describe('permit.yaml', () => {
  test.each<Mutation>([
    [
      'a failed test that still lets fuse',
      rowOf('permit', 'test-failed'),
      '',
      /cool-fuse-is-tested/,
    ],
    [
      'a pile that may be fused',
      '[pile, leather, fur, film, unknown]',
      '[leather, fur, film, unknown]',
      /pile-is-not-fused-or-turned/,
    ],
    [
      'the last row dropped',
      rowOf('permit', 'otherwise'),
      '',
      /permit\.yaml gap: permit: no row matches/,
    ],
    [
      'the last row first',
      'rows:\n',
      `rows:\n${takesAll}`,
      /row-unreachable: test-failed never decides anything/,
    ],
    ['a method nobody knows', '{ most: fuse }', '{ most: glue }', /otherwise: most/],
    [
      'an output renamed',
      'gives: [most]',
      'gives: [least]',
      /output-missing: test-failed does not give least/,
    ],
  ])('%s', (...mutation) => seen('tables/permit.yaml', mutation, quickFaults))
})

describe('backing.yaml and testing.yaml', () => {
  test.each<Mutation>([
    [
      'bias cloth that is not held',
      '[much, two-way, bias, unknown]',
      '[much, two-way, unknown]',
      /backing\.yaml gap: backing: no row matches/,
    ],
    [
      'thin cloth that is not held',
      '[thin, holes, shattered, unknown]',
      '[holes, shattered, unknown]',
      /weak-cloth-is-held/,
    ],
    ['a weight left out', '[medium, heavy, padded]', '[medium, padded]', /gap: backing/],
    [
      'a row that the one above takes',
      'stretch: little, weight: heavy',
      'stretch: little, weight: medium',
      /row-unreachable: gives-a-little-but-firm/,
    ],
    [
      'the answer in words',
      ...rowWith('backing', 'gives-a-little-but-firm', 'holds: false', 'holds: perhaps'),
      /gives-a-little-but-firm: holds/,
    ],
  ])('%s', (...mutation) => seen('tables/backing.yaml', mutation, quickFaults))
  test.each<Mutation>([
    [
      'softener not tested',
      '[softener, unwashed, never]',
      '[unwashed, never]',
      /washing-is-respected/,
    ],
    ['a missing label not tested', '[silent, missing]', '[silent]', /silent-label-is-not-hot/],
    [
      'a row without its source',
      ...rowWith('testing', 'not-washed', '    source: ', '    sauce: '),
      /testing\.yaml grammar/,
    ],
  ])('%s', (...mutation) => seen('tables/testing.yaml', mutation, quickFaults))
})

describe('cautions.yaml, flags.yaml and layout-fit.yaml', () => {
  test.each<Mutation>([
    [
      'a range moved out of the domain',
      '{ from: 1, to: 110 }',
      '{ from: 1, to: 1100 }',
      /unknown-value: cool-means-dry/,
    ],
    [
      'a range turned round',
      '{ from: 1, to: 110 }',
      '{ from: 110, to: 1 }',
      /cautions\.yaml (grammar|unknown-value|row-unreachable)/,
    ],
    [
      'a print without its caution',
      '[screen, film, unknown]',
      '[screen, unknown]',
      /what-melts-is-not-fused/,
    ],
    [
      'a caution without words',
      '{ code: no-steam }',
      '{ code: no-steem }',
      /missing-words: no words for cautions\.no-steem/,
    ],
  ])('%s', (...mutation) => seen('tables/cautions.yaml', mutation, quickFaults))
  test.each<Mutation>([
    [
      'a guard flipped: what is other',
      '{ kind: other }',
      '{ kind: { not: other } }',
      /untold-is-never-sound/,
    ],
    [
      'a milder reason for leather',
      ...rowWith('flags', 'leather', 'severity: eyes', 'severity: note'),
      /skins-and-film-need-a-person/,
    ],
    [
      'a severity nobody knows',
      '{ severity: eyes, for: [customer, staff], because: [surface] }',
      '{ severity: dire, for: [customer, staff], because: [surface] }',
      /surface-unknown: severity/,
    ],
    [
      'a reason without words',
      'id: tie-on-the-bias',
      'id: tie-on-a-slant',
      /missing-words: no words for flags\.tie-on-a-slant/,
    ],
  ])('%s', (...mutation) => seen('tables/flags.yaml', mutation, quickFaults))
  test.each<Mutation>([
    [
      'a picture that may be cut up',
      'id: graphic-cut-up\n    when: { setting: [quartered, patchwork], pattern: single }\n    give: { fits: false',
      'id: graphic-cut-up\n    when: { setting: [quartered, patchwork], pattern: single }\n    give: { fits: true',
      /pictures-stay-whole/,
    ],
    [
      'a pile that may be turned',
      '{ setting: quartered, surface: pile }',
      '{ setting: quartered, surface: knit }',
      /pile-is-not-fused-or-turned/,
    ],
  ])('%s', (...mutation) => seen('tables/layout-fit.yaml', mutation, quickFaults))
})

describe('must-hold.yaml and the rates', () => {
  test.each<Mutation>([
    ['a statement that asks more than is so', 'spare_c: 10', 'spare_c: 50', /heat-to-spare/],
    ['a statement nobody can read', 'spare_c: 10', 'spare_f: 10', /flows_invalid[\s\S]*must-hold/],
  ])('%s', (...mutation) => seen('tables/must-hold.yaml', mutation, quickFaults))
  test.each<Mutation>([
    [
      'a layout without a price',
      '  plain-squares: { crib',
      '  plane-squares: { crib',
      /plain-squares has no price/,
    ],
    ['a sole that is a word', 'sole_c: 115', 'sole_c: warm', /rates[\s\S]*sole_c/],
  ])('%s', (...mutation) => seen('rates/2026-01-01.yaml', mutation, quickFaults))
})

const photos = '      - id: photos\n        kind: photo\n'
const more = '        max: 6\n        drawing: lay-out-for-a-photo\n        read_by: [staff]\n\n'
const story = '      - id: story\n        kind: text\n'

describe('flow.yaml', () => {
  test.each<Mutation>([
    ['an edge to nowhere', 'to: quilt_count', 'to: quilt_cuont', /edge-nowhere.*quilt_cuont/],
    [
      'an edge backwards',
      '{ when: { answer: shattered }, to: photos }',
      '{ when: { answer: shattered }, to: kind }',
      /flow\.yaml edge-nowhere/,
    ],
    [
      'an edge on an answer that is none',
      '{ when: { answer: shattered }',
      '{ when: { answer: ragged }',
      /unknown-answer: .*ragged/,
    ],
    ['the last edge dropped', '          - { to: quilt_count }\n', '', /dead-end/],
    ['a rule nobody knows', 'rule: has_a_size', 'rule: has_a_sighs', /unknown-rule: .*has_a_sighs/],
    [
      'a guard that looks ahead',
      'rule: has_a_size',
      'rule: picture_is_single',
      /rule-reads: .*picture_is_single/,
    ],
    ['a reader nobody is', 'read_by: [tally]', 'read_by: [tully]', /unknown-reader.*tully/],
    [
      'a drawing that is not there',
      'drawing: pull-test',
      'drawing: push-test',
      /unknown-drawing.*push-test/,
    ],
    [
      'a caution that is not there',
      'cautions: [soiled]',
      'cautions: [spoiled]',
      /unknown-caution.*spoiled/,
    ],
    ['an empty range', 'max: 8', 'max: 1', /empty-range/],
    [
      'an option twice',
      '[solid, allover, stripe-check, single]',
      '[solid, allover, allover, single]',
      /duplicate-option: .*allover/,
    ],
    [
      'an option without words',
      '[solid, allover, stripe-check, single]',
      '[solid, allover, stripes, single]',
      /words/,
    ],
    ['two questions of one name', 'id: weight', 'id: stretch', /duplicate-id/],
    [
      'a question without its options',
      '        options: [woven, knit, loose-knit, pile, leather, fur, film]\n',
      '',
      /field-missing|grammar/,
    ],
    [
      'a longest path too long',
      `${photos}        optional: true\n${more}${story}        optional: true\n`,
      `${photos}${more}${story}`,
      /too-long/,
    ],
    ['a flow that is no YAML', 'flow: intake', 'flow: [intake', /yaml/],
  ])('%s', (...mutation) => seen('intake/flow.yaml', mutation))
})

describe('statements that compare two garments', () => {
  test.each<Mutation>([
    [
      'worse wear that betters the grade',
      'id: holes\n    when: { wear: holes }',
      'id: holes\n    when: { wear: unknown }',
      /worse-is-never-better/,
    ],
  ])('%s', (...mutation) => seen('tables/flags.yaml', mutation))
})

describe('words', () => {
  test.each<Mutation>([
    ['a question without words', '\nwear:\n', '\nworn:\n', /words.*wear/],
    ['an option without words', '    throw: Throw, for a sofa\n', '', /throw/],
  ])('%s', (...mutation) => seen('intake/words/en.yaml', mutation))
})

/** Why the start refuses; empty where it does not. */
function refusal(changed: FlowsFolder): string {
  try {
    learn(changed, today)
    return ''
  } catch (error) {
    if (error instanceof Failure) return `${error.code} ${JSON.stringify(error.details)}`
    throw error
  }
}

describe('shop.yaml, at the start', () => {
  test.each<Mutation>([
    [
      'an address that is none',
      'email: hello@lantern-street.example',
      'email: nobody',
      /flows_invalid.*email/,
    ],
    ['a unit nobody sews in', 'units: inches', 'units: ells', /flows_invalid.*units/],
    ['links that never live', 'link_days: 180', 'link_days: -1', /flows_invalid.*link_days/],
  ])('%s', (...mutation) => seen('shop.yaml', mutation, refusal))
})

test('the files as they stand have no fault', () => {
  expect(faults(folder)).toBe('')
  expect(quickFaults(folder)).toBe('')
  expect(refusal(folder)).toBe('')
})
