import { describe, expect, test } from 'vitest'
import { follow } from '../../src/flow/follow.ts'
import type { Act, Question, Reply, Value } from '../../src/flow/grammar.ts'
import type { Pile } from '../../src/intake/pile.ts'
import { rules } from '../../src/intake/rules.ts'
import { toPlan } from '../../src/intake/to-plan.ts'
import { calledOf } from '../../src/quilt/plan/instance.ts'
import { learnAt } from '../help/app.ts'
import { pileOf } from '../help/pile.ts'

const knowledge = learnAt('2026-06-01')

type Answers = Readonly<Record<string, Value>>

function plainReply({ optional, options }: Question): Reply {
  const [first] = options ?? []
  if (optional || first === undefined) return { skipped: true }
  return { given: typeof first === 'string' ? first : first.option }
}

/** A pile whose questions are answered as told, and left out or answered with their first option otherwise. */
function planned(about: Answers, garments: readonly Answers[]) {
  const acts: Act[] = []
  let added = 0
  for (;;) {
    const { place } = follow(knowledge.flow, acts, rules)
    if (place.at === 'question') {
      const { question, item } = place
      const given = (item === 0 ? about : garments[item - 1]!)[question.id]
      const reply = given === undefined ? plainReply(question) : { given }
      acts.push({ act: 'answer', item, question: question.id, reply })
    } else if (place.at === 'gather' && added < garments.length) {
      added += 1
      acts.push({ act: 'add', item: added })
    } else break
  }
  const pile = pileOf(knowledge, acts)
  return { pile, asked: toPlan({ pile, cloths: [] }) }
}

const quilts = (layout: string, sharing?: string): Answers => ({
  quilts: sharing ? 'several' : 'one',
  quilt_count: { amount: 2, unit: 'quilts' },
  ...(sharing && { sharing }),
  quilt_size: 'throw',
  layout_wish: layout,
  at_hand: { amount: 9, unit: 'garments' },
})

const tee: Answers = {
  kind: 'tshirt',
  size: 'XL',
  label: { found: 'words', words: '100% cotton, warm iron', iron: null },
  history: ['none'],
  pattern: 'single',
  print_make: 'screen',
  graphic_size: { amount: 9, unit: 'inches' },
  details: ['must-use'],
}

/** What the first garment plays, in whichever quilt. */
const rolesOf = ({ asked }: ReturnType<typeof planned>): string[] => {
  const { roles, garments } = asked.pile!
  return [...new Set(garments[0]!.roles.map((role) => calledOf(roles[role]!)))]
}

describe('a garment with a single picture', () => {
  test('has its block, and what is left of it plays what the table lets plain cloth play', () => {
    const one = planned(quilts('mixed-columns'), [tee])
    expect(one.pile.garments[0]!.rest).toContain('plain-squares')
    expect(rolesOf(one)).toEqual(['focal', 'background', 'accent'])
    const panels = one.asked.pile!.garments[0]!.panels
    expect(panels.filter(({ picture }) => picture)).toHaveLength(1)
  })

  test('plays the main role alone where the table says no', () => {
    const { pile } = planned(quilts('mixed-columns'), [tee])
    const strict: Pile = { ...pile, garments: [{ ...pile.garments[0]!, rest: [] }] }
    const asked = toPlan({ pile: strict, cloths: [] })
    expect(rolesOf({ pile: strict, asked })).toEqual(['focal'])
  })
})

describe('several quilts', () => {
  test.each(['must-in-all', 'evenly', 'as-it-falls'])('share their garments %s', (sharing) => {
    const { asked } = planned(quilts('framed-panels', sharing), [tee, tee, tee])
    expect(asked.pile!.sharing).toBe(sharing)
    expect(asked.designs).toHaveLength(2)
    // 9 in and 3/4 in of air on each side are 11 in: two pictures in one quilt, one in the other.
    const framed = asked.designs.map(
      ({ set }) => set.flat().filter((name) => name === 'panel of 11').length,
    )
    expect(framed).toEqual([2, 1])
  })

  test('are not asked of one', () => {
    expect(planned(quilts('framed-panels'), [tee]).asked.pile).not.toHaveProperty('sharing')
  })
})
