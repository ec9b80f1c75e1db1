import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { better, type Step } from '../../src/garment/better.ts'
import { readActs } from '../../src/garment/better-acts.ts'
import type { Outcome } from '../../src/garment/better-outcome.ts'
import { domains, type FactName, type Facts, pileDomains, untold } from '../../src/garment/facts.ts'
import { type Grading, grade, grades, type PileFacts } from '../../src/garment/grade.ts'
import { plainShirt } from '../help/garments.ts'
import { acts, knowledge, layouts, readYaml } from '../help/knowledge.ts'

const adult: PileFacts = { recipient: 'adult' }
const ask = (facts: Partial<Facts>, pile = adult) =>
  better({ ...plainShirt, ...facts }, pile, knowledge, acts)
const named = (steps: readonly Step[]) => steps.map(({ act }) => act.act)
const stepOf = (act: string, facts: Partial<Facts>, pile = adult) =>
  ask(facts, pile).steps.find((step) => step.act.act === act)

describe('what would make it better', () => {
  test('a sound garment has nothing to gain', () => {
    expect(ask({})).toMatchObject({ now: { grade: 'sound' }, steps: [], together: null })
  })

  test('the care label of an unknown knit that wants holding could make it sound, and fused', () => {
    const facts: Partial<Facts> = {
      kind: 'tshirt',
      surface: 'knit',
      stretch: 'little',
      heat: 'unknown',
      iron: 'missing',
    }
    const { now, steps } = ask(facts)
    expect(now).toMatchObject({ grade: 'care', backing: 'sewn-in', ceilingC: 110 })
    expect(named(steps)).toEqual(['read-label'])
    expect(steps[0]).toMatchObject({
      now: { heat: 'unknown', iron: 'missing' },
      best: {
        facts: { heat: 'hot', iron: 'hot' },
        outcome: { grade: 'sound', method: 'fuse', backing: 'fused', ceilingC: 200 },
      },
      worst: { outcome: { grade: 'care', method: 'do-not-press', ceilingC: null } },
      hangsOn: { heat: 'hot', iron: 'hot' },
      gains: ['grade', 'backing', 'heat'],
    })
  })

  test('both lines of the label are one act: fibre alone leaves it with care', () => {
    const chances = stepOf('read-label', { heat: 'unknown', iron: 'missing' })!.chances
    const of = (fact: string, value: string) =>
      chances.find((chance) => chance.fact === fact && chance.value === value)!.outcome
    expect(of('heat', 'hot').grade).toBe('sound')
    expect(of('heat', 'unknown').grade).toBe('care')
    expect(of('iron', 'missing').grade).toBe('care')
    expect(of('heat', 'none').ceilingC).toBeNull()
  })

  test.each<[act: string, facts: Partial<Facts>, gain: string]>([
    ['look-at-cloth', { surface: 'unknown' }, 'grade'],
    ['hold-to-light', { wear: 'unknown' }, 'grade'],
    ['tell-history', { soil: 'unknown', age: 'unknown', wash: 'unwashed' }, 'grade'],
    ['pull-test', { stretch: 'unknown' }, 'grade'],
    ['feel-weight', { weight: 'unknown' }, 'grade'],
    ['tell-pattern', { pattern: 'unknown', printMake: 'unknown', graphic: 'unknown' }, 'grade'],
    ['look-at-print', { printMake: 'unknown', pattern: 'allover' }, 'grade'],
    ['measure-picture', { pattern: 'single', graphic: 'unknown' }, 'grade'],
    ['tell-details', { trims: 'unknown', consent: 'unknown', oneWay: 'unknown' }, 'grade'],
    ['tell-details', { oneWay: 'unknown' }, 'layouts'],
    ['measure-cloth', { kind: 'baby-suit', yield: 'unknown' }, 'grade'],
    ['wash', { wash: 'unwashed' }, 'grade'],
    ['wash', { soil: 'soiled' }, 'grade'],
    ['wash-again', { wash: 'softener' }, 'grade'],
    ['test-again', { test: 'failed', stretch: 'much' }, 'backing'],
  ])('%s helps where it is the only thing in doubt', (act, facts, gain) => {
    const { steps } = ask(facts)
    expect(named(steps)).toEqual([act])
    expect(steps[0]!.gains[0]).toBe(gain)
  })

  test('a picture that patchwork would cut up is offered the layouts that keep it whole', () => {
    const pile = { recipient: 'adult', layout: 'plain-squares' } as const
    const step = stepOf('another-layout', { pattern: 'single', graphic: 'fits' }, pile)!
    expect(step.best).toMatchObject({
      facts: {},
      layout: 'framed-panels',
      outcome: { grade: 'sound', wish: 'fits' },
    })
    expect(stepOf('another-layout', {}, pile)).toBeUndefined()
  })

  test('what no act can change gives none', () => {
    for (const facts of [
      { surface: 'leather' },
      { age: 'historic' },
      { wear: 'shattered' },
      { soil: 'mould' },
      { consent: 'no-cut' },
      { wash: 'never' },
      { heat: 'none' },
      { iron: 'none' },
      { trims: 'meltable' },
    ] as const) {
      expect([facts, named(ask(facts).steps)]).toEqual([facts, []])
    }
  })

  test.each<[why: string, facts: Partial<Facts>]>([
    ['old', { age: 'old' }],
    ['of no known age', { age: 'unknown' }],
    ['worn thin', { wear: 'thin' }],
    ['leather', { surface: 'leather' }],
  ])('cloth that is %s is neither pulled nor washed', (_, facts) => {
    const found = named(
      ask({ ...facts, stretch: 'unknown', wash: 'unwashed', soil: 'soiled' }).steps,
    )
    expect(found.filter((act) => ['pull-test', 'wash', 'wash-again'].includes(act))).toEqual([])
  })

  test('without a label nobody is told to wash', () => {
    expect(named(ask({ wash: 'unwashed', iron: 'missing', heat: 'unknown' }).steps)).toEqual([
      'read-label',
    ])
  })

  test('what the best hangs on leaves out what follows from the rest', () => {
    expect(
      stepOf('tell-pattern', { pattern: 'unknown', printMake: 'unknown', graphic: 'unknown' })!
        .hangsOn,
    ).toEqual({ pattern: 'solid' })
    expect(stepOf('wash', { wash: 'unwashed', bleed: 'fast' })!.hangsOn).toEqual({})
    expect(stepOf('wash', { wash: 'unwashed', soil: 'soiled' })!.hangsOn).toEqual({
      soil: 'clean',
      bleed: 'fast',
    })
  })

  test('of two outcomes that are as good, the one that the label tells is hoped for', () => {
    const tie: Partial<Facts> = { kind: 'tie', stretch: 'bias', age: 'old' }
    const step = stepOf('read-label', { ...tie, heat: 'unknown', iron: 'missing' })
    expect(step!.hangsOn.iron).not.toBe('missing')
  })

  test('washing says that colour may run', () => {
    expect(stepOf('wash', { wash: 'unwashed' })!.worst.facts).toMatchObject({ bleed: 'bleeds' })
  })

  test('two doubts that only fall together are named together', () => {
    const { steps, together } = ask({ weight: 'unknown', printMake: 'unknown', pattern: 'allover' })
    expect(steps.every(({ best }) => best.outcome.grade === 'care')).toBe(true)
    expect(together!.acts.map(({ act }) => act).toSorted()).toEqual([
      'feel-weight',
      'look-at-print',
    ])
    expect(together!.best.outcome.grade).toBe('sound')
  })

  test('a picture nobody measured goes into a frame only where it is measured and the quilt is framed', () => {
    const pile = { recipient: 'adult', layout: 'plain-squares' } as const
    const { steps, together } = ask(
      { pattern: 'single', graphic: 'unknown', printMake: 'screen' },
      pile,
    )
    expect(named(steps)).toEqual([])
    expect(together!.acts.map(({ act }) => act)).toEqual(['measure-picture', 'another-layout'])
    expect(together!.best).toMatchObject({
      facts: { graphic: 'fits' },
      layout: 'framed-panels',
      outcome: { grade: 'care', wish: 'fits' },
    })
  })

  test('the grade comes first, then the layout, then press and backing; the lighter act before', () => {
    const { steps } = ask({
      kind: 'tshirt',
      surface: 'knit',
      heat: 'unknown',
      iron: 'missing',
      soil: 'unknown',
      stretch: 'little',
    })
    expect(named(steps)).toEqual(['tell-history', 'read-label'])
    expect(steps.map(({ gains }) => gains[0])).toEqual(['grade', 'backing'])
  })
})

const facts: fc.Arbitrary<Facts> = fc
  .record(
    Object.fromEntries(
      Object.entries(domains).map(([fact, all]) => [
        fact,
        // Mostly plain or untold, so that single doubts are met as well as many.
        fc.oneof(
          { weight: 5, arbitrary: fc.constant(plainShirt[fact as FactName]) },
          { weight: 2, arbitrary: fc.constant(untold[fact as FactName]) },
          { weight: 1, arbitrary: fc.constantFrom(...(all as readonly string[])) },
        ),
      ]),
    ),
  )
  .map((all) => all as unknown as Facts)

const piles: fc.Arbitrary<PileFacts> = fc.record({
  recipient: fc.constantFrom(...pileDomains.recipient),
  layout: fc.constantFrom(undefined, ...layouts.map(({ id }) => id)),
})

interface Raw {
  act: string
  wets?: boolean
  layout?: boolean
  open?: Record<string, string | string[]>
  may?: Record<string, string | string[]>[]
  where?: Record<string, string | string[]>
  unless?: Record<string, string | string[]>
}
const raw = (readYaml('better.yaml') as { acts: Raw[] }).acts

const has = (facts: Facts, fact: string, values: string | string[] | undefined) =>
  [values].flat().includes(facts[fact as FactName])
const any = (facts: Facts, conditions: Record<string, string | string[]>) =>
  Object.entries(conditions).some(([fact, values]) => has(facts, fact, values))

/** All that an act may lead to, found by trying every value of every domain and asking the file. */
function reachable(facts: Facts, act: Raw): Facts[] {
  const open = Object.keys(act.open ?? {}).filter((fact) => has(facts, fact, act.open![fact]))
  let all = [facts]
  for (const fact of open) {
    all = all.flatMap((one) =>
      domains[fact as FactName].map((value) => ({ ...one, [fact]: value }) as Facts),
    )
  }
  return all.filter((one) =>
    act.may!.some((line) => Object.entries(line).every(([fact, values]) => has(one, fact, values))),
  )
}

const misfits = ({ layouts: fits }: Grading, { layout }: PileFacts) =>
  layout !== undefined && !fits.find((fit) => fit.layout === layout)!.fits
const hold = ({ press }: Grading) =>
  ({ none: 3, fused: press.method === 'fuse' ? 2 : 1, 'sewn-in': 0 })[press.backing]

/** Better in something that counts, worse in nothing. Written apart from the program's own. */
function betters(now: [Grading, PileFacts], then: [Grading, PileFacts]): boolean {
  const [a, b] = [now[0], then[0]]
  const [gradeA, gradeB] = [grades.indexOf(a.grade), grades.indexOf(b.grade)]
  const fitting = (one: Grading) =>
    one.layouts.filter(({ fits }) => fits).map(({ layout }) => layout)
  const pairs: [number, number][] = [
    [-gradeA, -gradeB],
    [Number(!misfits(...now)), Number(!misfits(...then))],
    [Number(a.press.ceilingC !== null), Number(b.press.ceilingC !== null)],
    [hold(a), hold(b)],
    [a.press.ceilingC ?? 0, b.press.ceilingC ?? 0],
  ]
  if (pairs.some(([before, after]) => after < before)) return false
  if (fitting(a).some((id) => !fitting(b).includes(id))) return false
  if (gradeB < gradeA) return true
  if (gradeA === 3) return false
  const more = now[1].layout === undefined && fitting(b).length > fitting(a).length
  return more || pairs.some(([before, after]) => after > before)
}

function helps(facts: Facts, pile: PileFacts, act: Raw): boolean {
  if (act.wets && facts.wash === 'never') return false
  if (any(facts, act.unless ?? {}) || (act.where && !any(facts, act.where))) return false
  const now: [Grading, PileFacts] = [grade(facts, pile, knowledge), pile]
  if (act.layout) {
    if (!misfits(...now)) return false
    const others = layouts.map(({ id }) => ({ ...pile, layout: id }))
    return others.some((other) => betters(now, [grade(facts, other, knowledge), other]))
  }
  if (!any(facts, act.open!)) return false
  return reachable(facts, act).some((then) => betters(now, [grade(then, pile, knowledge), pile]))
}

describe('of any garment', () => {
  test('an act is named exactly where some of what it may bring betters the outcome', () => {
    const met = new Set<string>()
    fc.assert(
      fc.property(facts, piles, (one, pile) => {
        const found = named(better(one, pile, knowledge, acts).steps)
        for (const act of found) met.add(act)
        const brute = raw.filter((act) => helps(one, pile, act)).map(({ act }) => act)
        expect(found.toSorted()).toEqual(brute.toSorted())
      }),
      { seed: 20260101, numRuns: 300 },
    )
    expect(met.size).toBeGreaterThan(8)
  })

  test('the best that is told comes true where the facts turn out so, and nothing is worse', () => {
    let promised = 0
    fc.assert(
      fc.property(facts, piles, (one, pile) => {
        const { steps, together } = better(one, pile, knowledge, acts)
        const told = [...steps.map(({ best }) => best), ...(together ? [together.best] : [])]
        promised += told.length
        for (const { facts: turned, layout, outcome } of told) {
          const then = { ...pile, layout: layout ?? pile.layout }
          const graded = grade({ ...one, ...turned }, then, knowledge)
          expect(outcome).toEqual({
            grade: graded.grade,
            wish:
              then.layout === undefined ? 'undecided' : misfits(graded, then) ? 'misfit' : 'fits',
            method: graded.press.method,
            backing: graded.press.backing,
            ceilingC: graded.press.ceilingC,
            layouts: graded.layouts.filter(({ fits }) => fits).map(({ layout: id }) => id),
          })
          expect(betters([grade(one, pile, knowledge), pile], [graded, then])).toBe(true)
        }
      }),
      { seed: 20260101, numRuns: 400 },
    )
    expect(promised).toBeGreaterThan(100)
  })

  test('wherever it turns out as the best hangs on, all that was told follows', () => {
    let held = 0
    fc.assert(
      fc.property(facts, piles, (one, pile) => {
        for (const { act, best, hangsOn, gains } of better(one, pile, knowledge, acts).steps) {
          if (act.layout) continue
          const asTold = reachable(one, raw.find((other) => other.act === act.act)!).filter(
            (then) =>
              Object.entries(hangsOn).every(([fact, value]) => then[fact as FactName] === value),
          )
          expect(asTold.length).toBeGreaterThan(0)
          for (const then of asTold) {
            const graded = grade(then, pile, knowledge)
            held += 1
            expect(graded.grade).toBe(best.outcome.grade)
            if (gains.includes('heat')) {
              expect(graded.press.ceilingC ?? 0).toBeGreaterThan(
                grade(one, pile, knowledge).press.ceilingC ?? 0,
              )
            }
            if (gains.includes('layout')) expect(misfits(graded, pile)).toBe(false)
          }
        }
      }),
      { seed: 20260101, numRuns: 200 },
    )
    expect(held).toBeGreaterThan(100)
  })

  test('what is never to be washed is never advised to be washed, and stays so in every outcome', () => {
    fc.assert(
      fc.property(facts, piles, (one, pile) => {
        const { steps, together } = better({ ...one, wash: 'never' }, pile, knowledge, acts)
        const all = [...steps.map(({ act }) => act), ...(together?.acts ?? [])]
        expect(all.filter(({ wets }) => wets)).toEqual([])
        for (const { best, worst } of steps) {
          expect([best.facts.wash, worst.facts.wash]).toEqual([undefined, undefined])
        }
      }),
      { seed: 20260101, numRuns: 300 },
    )
  })

  test('together is named only where it reaches a grade or layout that no single act does', () => {
    let seen = 0
    fc.assert(
      fc.property(facts, piles, (one, pile) => {
        const { steps, together } = better(one, pile, knowledge, acts)
        if (!together) return
        seen += 1
        expect(together.acts.length).toBeGreaterThan(1)
        const rank = ({ grade: given, wish }: Outcome) =>
          grades.indexOf(given) * 2 + Number(wish === 'misfit')
        for (const { best } of steps) {
          expect(rank(together.best.outcome)).toBeLessThan(rank(best.outcome))
        }
      }),
      { seed: 20260101, numRuns: 400 },
    )
    expect(seen).toBeGreaterThan(10)
  })
})

describe('better.yaml', () => {
  const one = {
    act: 'feel',
    by: 'customer',
    effort: 1,
    open: { weight: 'unknown' },
    may: [{ weight: ['fine'] }],
    answers: [],
    source: 'common practice, no source',
  }

  test.each<[what: string, change: object, says: RegExp]>([
    [
      'a fact that is none',
      { open: { colour: 'unknown' }, may: [{ colour: 'red' }] },
      /colour is no fact/,
    ],
    ['a value that is none', { may: [{ weight: ['airy'] }] }, /weight is never "airy"/],
    ['a guard on what is none', { unless: { wear: 'eaten' } }, /wear is never "eaten"/],
    ['a line that leaves out what is open', { may: [{ heat: 'hot' }] }, /leaves out weight/],
    [
      'washing what is never to be washed',
      { open: { wash: 'never' }, may: [{ wash: 'washed' }] },
      /never to be washed/,
    ],
    [
      'talking a customer into the cut',
      { open: { consent: 'no-cut' }, may: [{ consent: 'yes' }] },
      /word on cutting/,
    ],
    ['no source', { source: undefined }, /source/],
    ['somebody else', { by: 'neighbour' }, /by/],
    ['an act that changes nothing', { open: {} }, /needs "open" and "may"/],
    ['a layout that changes facts', { layout: true }, /needs "open" and "may"/],
    ['a field that is none', { cost: 3 }, /cost/],
  ])('refuses %s', (_, change, says) => {
    let why = ''
    try {
      readActs({ acts: [{ ...one, ...change }] })
    } catch (error) {
      why = String((error as { details?: { why?: string } }).details?.why)
    }
    expect(why).toMatch(says)
  })

  test('refuses an act twice, and reads it once', () => {
    expect(() => readActs({ acts: [one, one] })).toThrow()
    expect(readActs({ acts: [one] })).toHaveLength(1)
  })
})
