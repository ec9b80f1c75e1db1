import { test } from 'vitest'
import { each, isCaught, rowOf, rowWith } from '../help/mutations.ts'

const english = 'tables/words/en.yaml'

test.each(
  each([
    [
      'a range moved: one dot may steam',
      ...rowWith('cautions', 'cool-means-dry', 'from: 1, to: 110', 'from: 1, to: 109'),
      'the-iron-is-warned-of',
    ],
    [
      'a range moved: a cool sole not warned of',
      ...rowWith('cautions', 'hot-sole', 'from: 1 ', 'from: 111 '),
      'the-iron-is-warned-of',
    ],
    [
      'a range moved out of the domain',
      '{ from: 1, to: 110 }',
      '{ from: 1, to: 1100 }',
      'unknown-value',
      'cool-means-dry',
    ],
    [
      'a range turned round',
      '{ from: 1, to: 110 }',
      '{ from: 110, to: 1 }',
      'unknown-value',
      'cool-means-dry',
    ],
    [
      'a print without its caution',
      ...rowWith('cautions', 'face-print', '[screen, film, ', '[screen, '),
      'what-melts-is-not-fused',
    ],
    [
      'a baby that nobody warns of',
      ...rowWith('cautions', 'under-one', '[under1, unknown]', 'unknown'),
      'small-children-are-safe',
    ],
    [
      'a caution without words',
      '{ code: no-steam }',
      '{ code: no-steem }',
      `${english} missing-words`,
      'cautions.no-steem',
    ],
  ]),
)('%s', (_, mutation) => isCaught('tables/cautions.yaml', mutation))

test.each(
  each([
    [
      'a guard flipped: what is other',
      ...rowWith('flags', 'kind-other', 'kind: other', 'kind: { not: other }'),
      'untold-is-never-sound',
    ],
    [
      'a milder reason for leather',
      ...rowWith('flags', 'leather', 'severity: eyes', 'severity: note'),
      'skins-and-film-need-a-person',
    ],
    [
      'an order turned round: holes not named',
      ...rowWith('flags', 'holes', 'wear: holes', 'wear: unknown'),
      'worse-is-never-better',
    ],
    [
      'a reason kept from the customer',
      ...rowWith('flags', 'thin', 'for: [customer, maker]', 'for: [maker]'),
      'reasons-are-named',
    ],
    [
      'a severity nobody knows',
      ...rowWith('flags', 'surface-unknown', 'severity: eyes', 'severity: dire'),
      'output',
      'surface-unknown: severity',
    ],
    [
      'a reason without words',
      'id: tie-on-the-bias',
      'id: tie-on-a-slant',
      `${english} missing-words`,
      'flags.tie-on-a-slant',
    ],
  ]),
)('%s', (_, mutation) => isCaught('tables/flags.yaml', mutation))

test.each(
  each([
    [
      'a row flipped: a picture that may be cut up',
      ...rowWith('layout-fit', 'graphic-cut-up', 'fits: false', 'fits: true'),
      'pictures-stay-whole',
    ],
    [
      'a row flipped: a one-way print that may be turned',
      ...rowWith('layout-fit', 'print-turned', 'fits: false', 'fits: true'),
      'one-way-is-not-turned',
    ],
    [
      'a row flipped: a skin that may be pieced',
      ...rowWith('layout-fit', 'needs-a-person', 'fits: false', 'fits: true'),
      'skins-and-film-need-a-person',
    ],
    [
      'a pile that may be turned',
      ...rowWith('layout-fit', 'nap-turned', 'surface: pile', 'surface: knit'),
      'pile-is-not-fused-or-turned',
    ],
    [
      'the last row dropped',
      rowOf('layout-fit', 'cuts-well'),
      '',
      'gap',
      'layout-fit: no row matches',
    ],
  ]),
)('%s', (_, mutation) => isCaught('tables/layout-fit.yaml', mutation))
