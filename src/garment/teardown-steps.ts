import { practice } from '../base/figure.ts'
import type { Facts } from './facts.ts'
import {
  both,
  either,
  forGrownUp,
  forSmallChild,
  fusesFirst,
  fusesLater,
  has,
  hasGraphic,
  isFused,
  isWorn,
  mayBeFilled,
  mayGetWet,
  not,
  sewsFirst,
  sewsLater,
  type When,
  wantsTest,
} from './teardown-when.ts'

export const tools = [
  'camera',
  'bag',
  'thread',
  'mask',
  'seam-ripper',
  'nippers',
  'shears',
  'rotary-cutter',
  'ruler',
  'backing',
  'iron',
  'press-cloth',
  'damp-white-cloth',
] as const
export type Tool = (typeof tools)[number]

export const keptThings = [
  'found-things',
  'filling',
  'rivets',
  'zip',
  'buttons',
  'snaps',
  'cords',
  'insignia',
  'trims',
  'interlining',
  'elastic',
  'labels',
  'pocket-cloth',
  'hood',
  'collar',
  'yoke',
  'cuffs',
  'pads',
  'ribs',
  'placket',
  'waistband',
  'lining',
  'edge',
  'sleeves',
  'offcut',
] as const
export type KeptThing = (typeof keptThings)[number]

/** A step of the bench as the trade knows it, before a garment is looked at. */
export interface KnownStep {
  readonly code: string
  readonly when: When
  readonly tools: readonly Tool[]
  readonly keeps: readonly KeptThing[]
  /** Codes of cautions that stand with the step whatever the garment. */
  readonly cautions: readonly string[]
  readonly source: string
}

type Rest = Partial<Omit<KnownStep, 'code' | 'when'>>

const step = (code: string, when: When, rest: Rest = {}): KnownStep => ({
  code,
  when,
  tools: [],
  keeps: [],
  cautions: [],
  source: practice,
  ...rest,
})

const kinds = (...some: readonly Facts['kind'][]): When => has('kind', ...some)
const untested = has('bleed', 'untested')
const always: When = () => true

const pocketed = kinds(
  'polo',
  'hoodie',
  'button-shirt',
  'blouse',
  'jeans',
  'trousers',
  'skirt',
  'dress',
  'pyjamas',
  'apron',
  'uniform',
  'coat',
  'other',
)
const withPlacket = kinds('polo', 'button-shirt', 'blouse', 'pyjamas', 'uniform', 'coat')
const legged = kinds('jeans', 'trousers')
const tailored = kinds('button-shirt', 'blouse', 'pyjamas', 'uniform')
const flat = kinds('blanket', 'tie', 'scarf', 'apron')
const ripper: Rest = { tools: ['seam-ripper'] }
const takes = (...keeps: readonly KeptThing[]): Rest => ({ tools: ['seam-ripper', 'bag'], keeps })

/** Where one of these is so, nothing is taken apart: a person decides. */
export const stops: readonly KnownStep[] = [
  step('stop-no-cut', has('consent', 'no-cut')),
  step('stop-consent', has('consent', 'unknown')),
  step('stop-cloth', has('surface', 'leather', 'fur', 'film')),
  step('stop-historic', has('age', 'historic'), { cautions: ['no-pull-test'] }),
  step('stop-shattered', has('wear', 'shattered'), { cautions: ['no-pull-test'] }),
  step('stop-soil', has('soil', 'body-fluid', 'pests', 'mould', 'chemical'), {
    cautions: ['gloves-and-closed-bag'],
    source: '29 CFR 1910.1030 and US EPA mould advice; from memory, unverified',
  }),
  step('stop-sequins', both(has('trims', 'meltable', 'unknown'), not(has('age', 'modern'))), {
    source: 'old sequins may be gelatin or cellulose nitrate; from memory, unverified',
  }),
]

/** Every step in the order of the bench: found things first, metal before the blade, held before cut. */
export const steps: readonly KnownStep[] = [
  step('check-release', always, { tools: ['camera'] }),
  step('name-finish', both(kinds('pyjamas', 'baby-suit'), not(forGrownUp)), {
    source: "children's sleepwear (16 CFR 1615, 1616); from memory, unverified",
  }),
  step(
    'look-over',
    either(
      has('surface', 'unknown'),
      has('wear', 'unknown'),
      has('age', 'unknown'),
      has('soil', 'unknown'),
    ),
  ),
  step('empty-pockets', pocketed, { tools: ['bag'], keeps: ['found-things'] }),
  step('feel-folds', not(pocketed), { tools: ['bag'], keeps: ['found-things'] }),
  step('mark-keep', has('consent', 'part'), {
    tools: ['thread'],
    cautions: ['keep-the-marked-part'],
  }),
  step('mark-graphic', hasGraphic, { tools: ['thread'] }),
  step('contain-filling', mayBeFilled, {
    tools: ['thread', 'mask', 'bag'],
    keeps: ['filling'],
    cautions: ['contain-the-filling'],
  }),

  step('rivets-out', kinds('jeans'), {
    tools: ['nippers', 'bag'],
    keeps: ['rivets'],
    cautions: ['metal-out-first'],
  }),
  step(
    'zip-out',
    kinds('jeans', 'trousers', 'skirt', 'dress', 'hoodie', 'coat', 'uniform', 'baby-suit', 'other'),
    {
      ...takes('zip'),
      cautions: ['metal-out-first'],
    },
  ),
  step(
    'buttons-off',
    either(withPlacket, legged, kinds('dress', 'skirt', 'jumper', 'thermal', 'jersey', 'other')),
    takes('buttons'),
  ),
  step('snaps-off', kinds('baby-suit'), { tools: ['nippers', 'bag'], keeps: ['snaps'] }),
  step(
    'cords-out',
    kinds('hoodie', 'trousers', 'pyjamas', 'swimwear', 'coat', 'apron', 'other'),
    takes('cords'),
  ),
  step('insignia-off', kinds('uniform'), takes('insignia')),
  step('trims-off', has('trims', 'removable', 'meltable', 'unknown'), takes('trims')),
  step('hard-trims-off', forSmallChild, {
    ...takes('trims'),
    cautions: ['hard-trims-off'],
    source: '16 CFR 1501 (small parts); from memory, unverified',
  }),

  step('unpick-tie', kinds('tie'), { ...ripper, cautions: ['unpick-never-wet'] }),
  step('lift-interlining', kinds('tie'), {
    tools: ['bag'],
    keeps: ['interlining'],
    cautions: ['unpick-never-wet'],
  }),
  step(
    'release-gathers',
    kinds('trousers', 'skirt', 'pyjamas', 'dress', 'swimwear', 'baby-suit', 'blouse', 'other'),
    {
      ...takes('elastic'),
      cautions: ['release-gathers'],
    },
  ),

  step('swim-rubber-out', kinds('swimwear'), {
    ...takes('elastic', 'pads'),
    cautions: ['rubber-perishes'],
  }),

  step('test-bond-first', both(fusesFirst, wantsTest), {
    tools: ['backing', 'iron', 'press-cloth'],
    cautions: ['hold-before-cutting'],
  }),
  step('hold-first', fusesFirst, {
    tools: ['backing', 'iron', 'press-cloth'],
    cautions: ['hold-before-cutting'],
  }),
  step('hold-first-cold', sewsFirst, {
    tools: ['backing', 'thread'],
    cautions: ['hold-before-cutting'],
  }),

  step('patch-worn', both(isWorn, not(fusesFirst), not(sewsFirst)), {
    tools: ['backing', 'thread'],
    cautions: ['hold-before-cutting'],
  }),

  step('labels-off', always, takes('labels')),
  step('pockets-off', pocketed, takes('pocket-cloth')),
  step('hood-off', kinds('hoodie'), takes('hood')),
  step('collar-off', withPlacket, takes('collar')),
  step(
    'ribs-off',
    kinds(
      'tshirt',
      'long-sleeve',
      'jersey',
      'sweatshirt',
      'hoodie',
      'jumper',
      'thermal',
      'baby-suit',
    ),
    takes('ribs'),
  ),
  step('placket-off', either(withPlacket, kinds('thermal')), takes('placket')),
  step('yoke-off', tailored, takes('yoke')),
  step('waistband-off', either(legged, kinds('skirt', 'pyjamas')), takes('waistband')),
  step('lining-out', kinds('coat', 'skirt', 'dress', 'swimwear', 'uniform'), takes('lining')),
  step('canvas-out', kinds('coat', 'uniform'), takes('pads')),
  step('edge-off', kinds('blanket', 'scarf', 'apron'), takes('edge')),
  step('sleeves-off', not(either(flat, legged, kinds('skirt', 'swimwear'))), takes('sleeves')),
  step('cuffs-off', either(tailored, kinds('coat')), takes('cuffs')),
  step('part-at-waist', kinds('dress'), { tools: ['shears'] }),
  step('open-felled', kinds('jeans'), { tools: ['shears'] }),
  step('open-legs', kinds('trousers', 'pyjamas'), { tools: ['shears'] }),
  step('open-skirt', kinds('skirt'), { tools: ['shears'] }),
  step('open-seams', not(either(flat, legged, kinds('skirt'))), { tools: ['shears'] }),

  step('cut-clear', has('trims', 'meltable', 'glued', 'unknown'), { tools: ['shears'] }),
  step('measure', always, { tools: ['ruler'] }),
  step('rough-cut', always, { tools: ['shears', 'ruler', 'bag'], keeps: ['offcut'] }),
  step('test-bleed', both(untested, mayGetWet), {
    tools: ['damp-white-cloth'],
    cautions: ['damp-cloth-test'],
  }),
  step('keep-from-light', either(has('bleed', 'bleeds'), both(untested, not(mayGetWet))), {
    tools: ['bag'],
    cautions: ['away-from-light'],
  }),
  step('test-bond', both(fusesLater, wantsTest), { tools: ['backing', 'iron', 'press-cloth'] }),
  step('test-press', both(not(isFused), wantsTest), { tools: ['iron', 'press-cloth'] }),
  step('hold', fusesLater, { tools: ['backing', 'iron', 'press-cloth'] }),
  step('hold-cold', sewsLater, { tools: ['backing', 'thread'] }),
  step('cool-flat', fusesLater),
  step('trim-to-size', always, { tools: ['rotary-cutter', 'ruler'] }),
  step('bag-kept', always, { tools: ['bag'] }),
]
