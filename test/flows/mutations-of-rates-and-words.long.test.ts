import { describe, test } from 'vitest'
import { each, isCaught, refusals } from '../help/mutations.ts'

describe('rates and layouts', () => {
  test.each(
    each([
      [
        'a layout without a price',
        '  plain-squares: 1',
        '  plane-squares: 1',
        'rates no-price',
        'plain-squares has no price',
      ],
      [
        'a sole that is a word',
        'sole_c: 115',
        'sole_c: warm',
        'rates from 2026-01-01 grammar',
        'sole_c',
      ],
      [
        'a sole as cold as its glue line',
        'glue_line_c: 120\n    sole_c: 140',
        'glue_line_c: 120\n    sole_c: 120',
        'rates from 2026-01-01 grammar',
      ],
    ]),
  )('%s', (_, mutation) => isCaught('rates/2026-01-01.yaml', mutation))

  test.each(
    each([
      [
        'a block that is none',
        'make: grid\n    patch_in: 6\n    roles: [[focal]]',
        'make: grit\n    patch_in: 6\n    roles: [[focal]]',
        'grammar',
      ],
      ['a seam that is a word', 'seam_in: 0.25', 'seam_in: narrow', 'grammar', 'seam_in'],
      ['a setting nobody knows', 'setting: patchwork', 'setting: crazy', 'grammar', 'setting'],
      [
        'a block that the setting does not have',
        '- [dark, light]',
        '- [dark, grey]',
        'grammar',
        'grey',
      ],
    ]),
  )('%s', (_, mutation) => isCaught('layouts/plain-squares.yaml', mutation))
})

describe('words', () => {
  test.each(
    each([
      ['a question without words', '\nwear:\n', '\nworn:\n', 'intake/flow.yaml words-missing'],
      [
        'an option without words',
        '    throw: Throw, for a sofa\n',
        '',
        'intake/flow.yaml words-missing',
      ],
    ]),
  )('%s', (_, mutation) => isCaught('intake/words/en.yaml', mutation))

  test.each(
    each([
      [
        'a caution without words',
        '\n  no-water:',
        '\n  no-watter:',
        'tables/words/es.yaml missing-words',
        'cautions.no-water',
      ],
    ]),
  )('%s', (_, mutation) => isCaught('tables/words/es.yaml', mutation))
})

describe('shop.yaml, at the start', () => {
  test.each(
    each([
      [
        'an address that is none',
        'email: hello@lantern-street.example',
        'email: nobody',
        'flows_invalid',
        'email',
      ],
      ['a unit nobody sews in', 'units: inches', 'units: ells', 'flows_invalid', 'units'],
      ['links that never live', 'link_days: 180', 'link_days: -1', 'flows_invalid', 'link_days'],
      [
        'bought cloth of no colour',
        'sashing: "#dcd0b6"',
        'sashing: sand',
        'flows_invalid',
        'cloth_colours.sashing',
      ],
    ]),
  )('%s', (_, mutation) => isCaught('shop.yaml', mutation, refusals))
})
