import fc from 'fast-check'
import { expect, test } from 'vitest'
import { bulkOf } from '../../src/garment/bulk.ts'
import { domains, type Facts, pileDomains, type Recipient } from '../../src/garment/facts.ts'
import { pressPlan } from '../../src/garment/press.ts'
import { type TeardownStep, teardownOf } from '../../src/garment/teardown.ts'
import { flatten } from '../../src/words/words.ts'
import { plainShirt } from '../help/garments.ts'
import { knowledge, readYaml } from '../help/knowledge.ts'

const said = ['en', 'es'].map((code) => flatten(readYaml(`tables/words/${code}.yaml`) as never))

const agreed: Facts = { ...plainShirt, consent: 'yes', trims: 'none', printMake: 'none' }
/** Taken apart as its own press plan says. */
const apart = (facts: Facts, recipient: Recipient): TeardownStep[] =>
  teardownOf(facts.kind, facts, recipient, pressPlan(facts, recipient, knowledge))

const stepsOf = (kind: Facts['kind'], told: Partial<Facts> = {}, recipient: Recipient = 'adult') =>
  apart({ ...agreed, ...told, kind }, recipient)

const codes = (...about: Parameters<typeof stepsOf>) => stepsOf(...about).map(({ code }) => code)

const blades = ['shears', 'rotary-cutter']
const uses = (some: readonly string[]) => (step: TeardownStep) =>
  step.tools.some((tool) => some.includes(tool))
const cuts = uses(blades)
const firstCut = (steps: readonly TeardownStep[]) => steps.findIndex(cuts)
const placeOf = (steps: readonly TeardownStep[], ...some: readonly string[]) =>
  steps.findLastIndex(({ code }) => some.includes(code))

const metal = ['rivets-out', 'zip-out', 'buttons-off', 'snaps-off', 'trims-off', 'hard-trims-off']

const anyFacts = fc.record(
  Object.fromEntries(
    Object.entries(domains).map(([name, values]) => [name, fc.constantFrom(...values)]),
  ),
) as unknown as fc.Arbitrary<Facts>
const anyRecipient = fc.constantFrom(...pileDomains.recipient)
// Most combinations hold some stop; these hold none, so that the steps themselves are looked at.
const openFacts = anyFacts.map(
  (facts): Facts => ({
    ...facts,
    consent: facts.consent === 'part' ? 'part' : 'yes',
    surface: ['leather', 'fur', 'film'].includes(facts.surface) ? 'unknown' : facts.surface,
    age:
      facts.trims === 'none' || facts.trims === 'removable' || facts.trims === 'glued'
        ? facts.age === 'historic'
          ? 'old'
          : facts.age
        : 'modern',
    wear: facts.wear === 'shattered' ? 'holes' : facts.wear,
    soil: ['clean', 'soiled', 'unknown'].includes(facts.soil) ? facts.soil : 'clean',
  }),
)

const holdsFor = (
  some: fc.Arbitrary<Facts>,
  fact: (steps: TeardownStep[], facts: Facts, recipient: Recipient) => void,
) =>
  fc.assert(
    fc.property(some, anyRecipient, (facts, recipient) =>
      fact(apart(facts, recipient), facts, recipient),
    ),
    { seed: 24, numRuns: 3000 },
  )

test.each(domains.kind)('a %s is looked at, opened, cut and bagged', (kind) => {
  const steps = stepsOf(kind)
  expect(steps[0]!.code).toBe('check-release')
  expect(['empty-pockets', 'feel-folds']).toContain(steps[1]!.code)
  expect(steps.at(-1)!.code).toBe('bag-kept')
  expect(steps.filter(cuts).at(-1)!.code).toBe('trim-to-size')
  expect(steps.length).toBeGreaterThan(6)
  expect(said.every((words) => words.has(`teardown.bulk.${bulkOf(kind).bulk}`))).toBe(true)
})

// Common practice, no source: what each kind is known for.
test.each<[Facts['kind'], string[]]>([
  ['tshirt', ['ribs-off', 'sleeves-off', 'open-seams']],
  ['hoodie', ['zip-out', 'cords-out', 'pockets-off', 'hood-off', 'sleeves-off']],
  ['polo', ['buttons-off', 'collar-off', 'placket-off', 'sleeves-off']],
  [
    'button-shirt',
    [
      'buttons-off',
      'pockets-off',
      'collar-off',
      'placket-off',
      'yoke-off',
      'sleeves-off',
      'cuffs-off',
    ],
  ],
  ['jeans', ['rivets-out', 'zip-out', 'pockets-off', 'waistband-off', 'open-felled']],
  [
    'trousers',
    ['zip-out', 'cords-out', 'release-gathers', 'waistband-off', 'open-legs', 'measure'],
  ],
  ['skirt', ['zip-out', 'release-gathers', 'waistband-off', 'lining-out', 'open-skirt', 'measure']],
  [
    'dress',
    ['zip-out', 'release-gathers', 'lining-out', 'sleeves-off', 'part-at-waist', 'open-seams'],
  ],
  ['pyjamas', ['buttons-off', 'release-gathers', 'waistband-off', 'open-legs', 'measure']],
  ['coat', ['zip-out', 'buttons-off', 'lining-out', 'canvas-out', 'sleeves-off', 'cuffs-off']],
  ['swimwear', ['release-gathers', 'swim-rubber-out', 'lining-out', 'open-seams']],
  ['thermal', ['buttons-off', 'ribs-off', 'placket-off', 'sleeves-off']],
  ['scarf', ['feel-folds', 'edge-off', 'measure']],
  ['apron', ['empty-pockets', 'cords-out', 'pockets-off', 'edge-off', 'measure']],
  ['baby-suit', ['snaps-off', 'release-gathers', 'sleeves-off']],
  ['tie', ['unpick-tie', 'lift-interlining', 'measure']],
  ['uniform', ['insignia-off', 'collar-off', 'sleeves-off']],
  ['blanket', ['feel-folds', 'edge-off']],
])('a %s is taken apart its own way, in order', (kind, own) => {
  expect(codes(kind).filter((code) => own.includes(code))).toEqual(own)
})

test('rivets and zip of jeans are out before the blade', () => {
  const steps = stepsOf('jeans')
  expect(placeOf(steps, 'rivets-out', 'zip-out')).toBeGreaterThan(0)
  expect(placeOf(steps, 'rivets-out', 'zip-out')).toBeLessThan(firstCut(steps))
})

test('a knitted jumper is held before any seam is opened or cut, and rough-cut before it is trimmed', () => {
  const steps = codes('jumper', { surface: 'loose-knit', stretch: 'much' })
  const order = ['hold-first', 'ribs-off', 'sleeves-off', 'open-seams', 'rough-cut', 'trim-to-size']
  expect(steps.filter((code) => order.includes(code))).toEqual(order)
  expect(said[0]!.get('teardown.steps.rough-cut')).toMatch(/inch over/)
})

test('a T-shirt is rough-cut, held, cooled flat, and only then trimmed', () => {
  const order = ['rough-cut', 'hold', 'cool-flat', 'trim-to-size']
  const steps = codes('tshirt', { surface: 'knit', stretch: 'little' })
  expect(steps.filter((code) => order.includes(code))).toEqual(order)
})

test('a firm sound woven wants no holding', () => {
  const steps = codes('button-shirt', {
    surface: 'woven',
    stretch: 'none',
    weight: 'medium',
    wear: 'sound',
  })
  expect(steps.filter((code) => code.startsWith('hold') || code === 'cool-flat')).toEqual([])
})

test.each<[Partial<Facts>, string]>([
  [{ surface: 'leather' }, 'stop-cloth'],
  [{ surface: 'fur' }, 'stop-cloth'],
  [{ surface: 'film' }, 'stop-cloth'],
  [{ age: 'historic' }, 'stop-historic'],
  [{ wear: 'shattered' }, 'stop-shattered'],
  [{ consent: 'no-cut' }, 'stop-no-cut'],
  [{ consent: 'unknown' }, 'stop-consent'],
  [{ soil: 'pests' }, 'stop-soil'],
  [{ trims: 'meltable', age: 'old' }, 'stop-sequins'],
])('of %o a person decides, and nothing is done', (told, stop) => {
  expect(domains.kind.map((kind) => codes(kind, told))).toEqual(domains.kind.map(() => [stop]))
})

test('hard trims come off for a small child and for somebody untold, not for the grown', () => {
  const off = pileDomains.recipient.filter((who) =>
    codes('blouse', {}, who).includes('hard-trims-off'),
  )
  expect(off).toEqual(['under3', 'under1', 'unknown'])
  // 16 CFR 1501 holds for children under three years of age.
  const step = stepsOf('blouse', {}, 'under3').find(({ code }) => code === 'hard-trims-off')!
  expect(step.source).toMatch(/16 CFR 1501/)
})

test('every step has its words in both languages, and a source', () => {
  const plain = /^common practice, no source$|from memory, unverified$/
  for (const some of [anyFacts, openFacts])
    holdsFor(some, (steps) => {
      expect(steps.length).toBeGreaterThan(0)
      const wanted = steps.flatMap(({ code, tools, cautions, keeps }) => [
        `teardown.steps.${code}`,
        ...tools.map((tool) => `teardown.tools.${tool}`),
        ...keeps.map((thing) => `teardown.keeps.${thing}`),
        ...cautions.map((caution) => `cautions.${caution}`),
      ])
      expect(wanted.filter((key) => !said.every((words) => words.has(key)))).toEqual([])
      expect(steps.filter(({ source }) => !plain.test(source))).toEqual([])
      expect(new Set(steps.map(({ code }) => code)).size).toBe(steps.length)
    })
})

test('nothing is opened, cut, warmed or wetted where a person decides first', () => {
  holdsFor(anyFacts, (steps, facts) => {
    const mustStop =
      facts.consent === 'no-cut' ||
      facts.consent === 'unknown' ||
      facts.age === 'historic' ||
      facts.wear === 'shattered' ||
      ['leather', 'fur', 'film'].includes(facts.surface) ||
      ['body-fluid', 'pests', 'mould', 'chemical'].includes(facts.soil)
    if (mustStop) expect(steps.flatMap(({ tools }) => tools)).toEqual([])
  })
})

test('whatever the facts, found things come first, metal before the blade, marks before both', () => {
  holdsFor(openFacts, (steps) => {
    const cut = firstCut(steps)
    expect(cut).toBeGreaterThan(0)
    const found = placeOf(steps, 'empty-pockets', 'feel-folds')
    expect(found).toBeGreaterThan(0)
    expect(found).toBeLessThan(steps.findIndex(uses(['seam-ripper', 'nippers', ...blades])))
    expect(placeOf(steps, ...metal)).toBeLessThan(cut)
    expect(placeOf(steps, 'mark-keep', 'mark-graphic', 'contain-filling')).toBeLessThan(
      steps.findIndex(uses(['seam-ripper', 'nippers', ...blades])),
    )
    expect(placeOf(steps, 'release-gathers', 'unpick-tie')).toBeLessThan(placeOf(steps, 'measure'))
  })
})

test('whatever may never be wet is not wetted', () => {
  const wetted = new Set<boolean>()
  holdsFor(openFacts, (steps, { kind, wash }) => {
    const wets = steps.some(uses(['damp-white-cloth']))
    wetted.add(wets)
    if (kind === 'tie' || wash === 'never') expect(wets).toBe(false)
  })
  expect(wetted.size).toBe(2)
})

test('a part to keep is marked first, and every blade is warned of it', () => {
  holdsFor(openFacts, (steps, { consent }) => {
    if (consent !== 'part') return
    expect(placeOf(steps, 'mark-keep')).toBeGreaterThan(0)
    const blind = steps
      .filter(cuts)
      .filter(({ cautions }) => !cautions.includes('keep-the-marked-part'))
    expect(blind).toEqual([])
  })
})

test('every blade and every iron stands with its caution', () => {
  holdsFor(openFacts, (steps) => {
    const bare = (tools: readonly string[], caution: string) =>
      steps.filter(uses(tools)).filter(({ cautions }) => !cautions.includes(caution))
    expect(bare(blades, 'sharp-blade')).toEqual([])
    expect(bare(['iron'], 'hot-iron')).toEqual([])
  })
})

test('no needle goes through a print of film unwarned', () => {
  holdsFor(openFacts, (steps, { printMake }) => {
    if (printMake !== 'film') return
    const sewn = steps.filter(uses(['thread']))
    expect(sewn.every(({ cautions }) => cautions.includes('no-stitch-through'))).toBe(true)
  })
})

test('the steps agree with the pressing: what it holds is held, and no iron where none may touch', () => {
  holdsFor(openFacts, (steps, facts, recipient) => {
    const plan = pressPlan(facts, recipient, knowledge)
    const held = steps.filter(({ code }) => code.startsWith('hold'))
    const fuses = held.filter(uses(['iron'])).length
    expect(held.length).toBe(plan.backing !== 'none' || alwaysHeld.includes(facts.kind) ? 1 : 0)
    expect(fuses).toBe(plan.backing === 'fused' ? 1 : 0)
    if (plan.ceilingC === null) expect(steps.some(uses(['iron']))).toBe(false)
    if (plan.cautions.includes('hold-before-cutting') && held.length > 0)
      expect(placeOf(steps, 'hold-first', 'hold-first-cold', 'patch-worn')).toBeGreaterThan(0)
    if (held.length > 0)
      expect(placeOf(steps, ...held.map(({ code }) => code))).toBeLessThan(
        placeOf(steps, 'trim-to-size'),
      )
    expect(placeOf(steps, 'hold-first', 'hold-first-cold', 'patch-worn')).toBeLessThan(
      firstCut(steps),
    )
  })
})

const alwaysHeld: readonly string[] = ['tie', 'jumper']
const tests = ['test-bond', 'test-bond-first', 'test-press']

test('where the plan tests first, one test comes before glue; none where it was made or no iron may touch', () => {
  const seen = new Set<string>()
  // Few of all combinations may be fused; these may, where the label or the washing leaves it open.
  const fusible = openFacts.map(
    (facts): Facts => ({
      ...facts,
      ...plainShirt,
      kind: facts.kind,
      stretch: 'much',
      iron: facts.iron,
      wash: facts.wash,
      test: facts.test,
    }),
  )
  for (const some of [openFacts, fusible])
    holdsFor(some, (steps, facts, recipient) => {
      const plan = pressPlan(facts, recipient, knowledge)
      const tested = steps.filter(({ code }) => tests.includes(code)).map(({ code }) => code)
      const wanted = plan.testFirst && facts.test === 'none' && plan.ceilingC !== null
      expect(tested).toHaveLength(wanted ? 1 : 0)
      for (const code of tested) {
        seen.add(code)
        expect(code === 'test-press').toBe(plan.backing !== 'fused')
        const glued = placeOf(steps, 'hold', 'hold-first')
        if (glued > 0) expect(placeOf(steps, code)).toBeLessThan(glued)
      }
    })
  expect([...seen].toSorted()).toEqual(tests.toSorted())
})

test('after a failed test nothing is glued, whatever else is known', () => {
  holdsFor(
    openFacts.map((facts) => ({ ...facts, test: 'failed' as const })),
    (steps) => {
      expect(placeOf(steps, 'hold', 'hold-first')).toBe(-1)
    },
  )
})

test('colour is tried on a damp cloth, or the bag says that it was not', () => {
  holdsFor(openFacts, (steps, { bleed }) => {
    const told = steps.filter(({ code }) => ['test-bleed', 'keep-from-light'].includes(code))
    expect(told).toHaveLength(bleed === 'fast' ? 0 : 1)
    if (bleed === 'bleeds') expect(told[0]!.cautions).toContain('away-from-light')
  })
})

test('every backing that is put on something that stretches says which way it lies', () => {
  holdsFor(openFacts, (steps, { stretch, kind }) => {
    const backed = steps.filter(({ code }) => code.startsWith('hold'))
    const way =
      kind === 'tie' || ['two-way', 'bias', 'unknown'].includes(stretch)
        ? 'hold-both-ways'
        : stretch === 'none'
          ? null
          : 'low-stretch-along-stretch'
    if (way) expect(backed.filter(({ cautions }) => !cautions.includes(way))).toEqual([])
  })
})

// Published: 16 CFR 1615 and 1616 hold for sleepwear of children up to size 14.
test('night clothes that may go to a child are looked over for a finish against fire', () => {
  const named = domains.kind.filter((kind) => codes(kind, {}, 'child').includes('name-finish'))
  expect(named).toEqual(['pyjamas', 'baby-suit'])
  const readers = pileDomains.recipient.filter((who) =>
    codes('pyjamas', {}, who).includes('name-finish'),
  )
  expect(readers).toEqual(['child', 'under3', 'under1', 'unknown'])
})
