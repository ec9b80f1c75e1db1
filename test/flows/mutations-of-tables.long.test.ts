import { describe, test } from 'vitest'
import { rowReading } from '../help/changed-tables.ts'
import { each, isCaught, rowOf, rowWith } from '../help/mutations.ts'

const takesAll = `  - id: anything
    when: {}
    give: { most: press }
    source: common practice, no source
`

const screen = rowReading('limits', 'printMake', 'screen')
const sublimated = rowReading('limits', 'printMake', 'sublimated')
const film = rowReading('limits', 'printMake', 'film')
const historic = rowReading('limits', 'age', 'historic')

describe('limits.yaml', () => {
  test.each(
    each([
      ['fibre without heat dropped', rowOf('limits', 'fibre-none'), '', 'no-heat-no-press'],
      ['label without heat dropped', rowOf('limits', 'label-none'), '', 'no-heat-no-press'],
      [
        'a hotter ceiling for one dot',
        ...rowWith('limits', 'label-cool', '110', '120'),
        'lowest-limit-rules',
      ],
      [
        'a hotter ceiling for fibres of two dots',
        ...rowWith('limits', 'fibre-warm', '150', '160'),
        'lowest-limit-rules',
      ],
      [
        'a ceiling hotter than any label',
        ...rowWith('limits', 'label-hot', 'limitC: 200', 'limitC: 210'),
        'output',
        'label-hot: limitC',
      ],
      [
        'a hotter ceiling for dye that moves',
        ...rowWith('limits', sublimated, 'limitC: 125', 'limitC: 130'),
        'screen-and-sublimated-stay-cool',
      ],
      [
        'an order turned round: a screen print colder than film',
        ...rowWith('limits', screen, 'limitC: 110', 'limitC: 100'),
        'worse-is-never-hotter',
      ],
      [
        'an order turned round: shattered cloth forgotten, thin cloth spared',
        ...rowWith('limits', 'wear-shattered', 'wear: shattered', 'wear: thin'),
        'weaker-is-never-hotter',
      ],
      [
        'a silent label taken for two values less',
        ...rowWith('limits', 'label-says-nothing', '[silent, missing]', '[silent]'),
        'silent-label-is-not-hot',
      ],
      [
        'a guard flipped: the pile',
        ...rowWith('limits', 'fibre-unknown-with-pile', 'surface: pile', 'surface: { not: pile }'),
        'unknown-pile-no-iron',
      ],
      [
        'a guard flipped: film prints',
        ...rowWith(
          'limits',
          film,
          'printMake: [film, unknown]',
          'printMake: { not: [film, unknown] }',
        ),
        'lowest-limit-rules',
      ],
      [
        'skins that forget fur',
        ...rowWith('limits', 'surface-no-iron', 'leather, fur,', 'leather,'),
        'skins-and-film-need-a-person',
      ],
      [
        'historic cloth forgotten',
        ...rowWith('limits', historic, '[historic, unknown]', '[unknown]'),
        'historic-and-shattered-are-spared',
      ],
      [
        'a setter nobody knows',
        ...rowWith('limits', 'age-old', 'setBy: age', 'setBy: aeg'),
        'output',
        'age-old: setBy',
      ],
      [
        'a column nobody knows',
        'reads: [iron, heat,',
        'reads: [iron, heet,',
        'unknown-column',
        'heet',
      ],
      [
        'a value nobody knows',
        ...rowWith('limits', 'fibre-warm', 'heat: warm', 'heat: tepid'),
        'unknown-value',
        'fibre-warm: heat',
      ],
      [
        'the same id twice',
        'id: fibre-warm',
        'id: fibre-cool',
        'duplicate-id',
        'another row is called fibre-cool',
      ],
      ['a collecting table that takes the first', 'hit: collect', 'hit: first', 'row-unreachable'],
    ]),
  )('%s', (_, mutation) => isCaught('tables/limits.yaml', mutation))
})

describe('permit.yaml', () => {
  test.each(
    each([
      ['a failed test that lets fuse', rowOf('permit', 'test-failed'), '', 'cool-fuse-is-tested'],
      [
        'a pile that may be fused',
        ...rowWith('permit', 'surface-takes-no-glue', '[pile, ', '['),
        'pile-is-not-fused-or-turned',
      ],
      [
        'cloth of unknown wear that may be fused',
        ...rowWith('permit', 'too-worn-for-glue', '[shattered, unknown]', '[shattered]'),
        'untold-is-taken-for-the-worst',
      ],
      ['the last row dropped', rowOf('permit', 'otherwise'), '', 'gap', 'permit: no row matches'],
      [
        'the last row first',
        'rows:\n',
        `rows:\n${takesAll}`,
        'row-unreachable',
        'test-failed never decides anything',
      ],
      ['a method nobody knows', '{ most: fuse }', '{ most: glue }', 'output', 'otherwise: most'],
      ['an output renamed', 'gives: [most]', 'gives: [least]', 'output-missing', 'test-failed'],
    ]),
  )('%s', (_, mutation) => isCaught('tables/permit.yaml', mutation))
})

describe('backing.yaml and testing.yaml', () => {
  test.each(
    each([
      [
        'bias cloth that is not held',
        ...rowWith('backing', 'stretches', 'two-way, bias, unknown', 'two-way, unknown'),
        'gap',
        'backing: no row matches',
      ],
      [
        'thin cloth that is not held',
        ...rowWith('backing', 'worn', '[thin, ', '['),
        'weak-cloth-is-held',
      ],
      [
        'the backing of what stretches dropped',
        ...rowWith('backing', 'stretches', 'holds: true', 'holds: false'),
        'weak-cloth-is-held',
      ],
      [
        'a backing put behind firm cloth',
        ...rowWith('backing', 'firm-and-sound', 'holds: false', 'holds: true'),
        'firm-cloth-stays-as-it-is',
      ],
      ['a weight left out', '[medium, heavy, padded]', '[medium, padded]', 'gap'],
      [
        'a row that the one above takes',
        'stretch: little, weight: heavy',
        'stretch: little, weight: medium',
        'row-unreachable',
        'gives-a-little-but-firm',
      ],
      [
        'the answer in words',
        ...rowWith('backing', 'gives-a-little-but-firm', 'holds: false', 'holds: perhaps'),
        'output',
        'gives-a-little-but-firm: holds',
      ],
    ]),
  )('%s', (_, mutation) => isCaught('tables/backing.yaml', mutation))

  test.each(
    each([
      [
        'softener not tested',
        ...rowWith('testing', 'not-washed', '[softener, ', '['),
        'washing-is-respected',
      ],
      [
        'a missing label not tested',
        ...rowWith('testing', 'label-says-nothing', '[silent, missing]', '[silent]'),
        'silent-label-is-not-hot',
      ],
      [
        'a row without its source',
        ...rowWith('testing', 'not-washed', '    source: ', '    sauce: '),
        'grammar',
      ],
    ]),
  )('%s', (_, mutation) => isCaught('tables/testing.yaml', mutation))
})
