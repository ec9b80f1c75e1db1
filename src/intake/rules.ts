import type { Replies, Rule, Rules } from '../flow/grammar.ts'
import { implied } from '../garment/derive.ts'
import type { FactName, Facts } from '../garment/facts.ts'
import { readingOf } from './label.ts'
import { furtherParts, hasLetterSize, partsRead, tellsEnough } from './own-words.ts'
import { chosen, labelValue, ticked } from './replies.ts'
import { spotValues } from './spots.ts'

const rule = (reads: readonly string[], holds: (replies: Replies) => boolean): Rule => ({
  reads,
  holds,
})

const kindOf = (replies: Replies) => (chosen(replies, 'kind') ?? 'other') as Facts['kind']

/** What is known of a fact before asking: said, or implied by the kind. */
const known = (replies: Replies, fact: FactName & string, question = fact): string | undefined =>
  chosen(replies, question) ?? implied(kindOf(replies))[fact]

const neverABabys: readonly Facts['kind'][] = [
  'polo',
  'jersey',
  'button-shirt',
  'blouse',
  'thermal',
  'uniform',
]

const brittle = (replies: Replies) =>
  chosen(replies, 'wear') === 'shattered' || ticked(replies, 'history').includes('historic')

const isWornOrStained = (replies: Replies) =>
  ['thin', 'holes'].includes(chosen(replies, 'wear') ?? '') ||
  ticked(replies, 'history').includes('stained')

/** The guards that the intake's flow may name. Each says which questions it looks at. */
export const rules: Rules = {
  words_tell_enough: rule(['name'], tellsEnough),
  ...Object.fromEntries(
    furtherParts.map((part) => [
      `words_tell_${part}`,
      rule(['name'], (r: Replies) => partsRead(r).has(part)),
    ]),
  ),

  has_a_size: rule(['kind'], (r) => hasLetterSize(kindOf(r))),
  may_be_a_babys: rule(['kind'], (r) => !neverABabys.includes(kindOf(r))),
  outgrew_toddler: rule(['kind'], (r) => kindOf(r) !== 'baby-suit'),

  label_is_signs: rule(['label'], (r) => labelValue(r)?.found === 'signs'),
  label_is_unsure: rule(['label'], (r) => {
    const reading = readingOf(r)
    return reading !== null && !reading.sure
  }),

  surface_is_open: rule(['kind'], (r) => implied(kindOf(r)).surface === undefined),
  weight_is_open: rule(['kind'], (r) => implied(kindOf(r)).weight === undefined),
  pull_test_is_wanted: rule(
    ['kind', 'surface', 'wear', 'history'],
    (r) =>
      implied(kindOf(r)).stretch === undefined &&
      !brittle(r) &&
      !['leather', 'fur', 'film'].includes(known(r, 'surface') ?? ''),
  ),

  stays_at_home: rule(['history'], (r) =>
    ticked(r, 'history').some((mark) => mark === 'damp' || mark === 'chemical'),
  ),

  picture_is_single: rule(['pattern'], (r) => chosen(r, 'pattern') === 'single'),
  print_is_open: rule(['pattern'], (r) =>
    ['single', 'allover'].includes(chosen(r, 'pattern') ?? ''),
  ),
  has_a_spot_to_mark: rule(
    ['photos', 'wear', 'history'],
    (r) => ticked(r, 'photos').length > 0 && isWornOrStained(r),
  ),
  has_a_spot_to_tell: rule(
    ['wear', 'history', 'details', 'spots'],
    (r) =>
      (isWornOrStained(r) && spotValues(r).length === 0) ||
      ticked(r, 'details').includes('keep-a-spot'),
  ),
}
