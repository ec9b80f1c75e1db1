import { createActor, getNextSnapshot, initialTransition } from 'xstate'
import { z } from 'zod'
import { type Following, following, followOn, type Place } from '../../src/flow/follow.ts'
import type { Act } from '../../src/flow/grammar.ts'
import { compileTable, decide } from '../../src/flow/table.ts'
import { columns } from '../../src/garment/facts.ts'
import { layoutFits, wishOf } from '../../src/garment/layout-fit.ts'
import { type Derived, derive, deriveOn, derivePile, type Pile } from '../../src/intake/pile.ts'
import { rules } from '../../src/intake/rules.ts'
import { learnAt } from '../help/app.ts'
import { knowledge as grading, tables } from '../help/knowledge.ts'
import { actsOfPile, entriesOfActs } from '../help/large-pile.ts'
import { rowOf } from '../help/pile.ts'
import { engineOf, eventOf, machineOf } from './flow-others.ts'
import { middle } from './readings.ts'

const given = z.tuple([
  z.coerce.number().int().positive().default(40),
  z.coerce.number().int().min(3).default(15),
])

const knowledge = learnAt('2026-06-01')
const { flow } = knowledge

/**
 * The flow engine beside general libraries, in turns in one run, on the shop's own questions and tables: steps of a
 * conversation beside a state machine of xstate, decisions of tables beside json-rules-engine. What they give is
 * compared first. Then what one answer of a pile of so many garments costs with every garment's grade derived.
 */
export async function benchFlow(told: readonly string[]): Promise<void> {
  const [garments, rounds] = given.parse([told[0], told[1]])
  await steps(1, rounds)
  await steps(garments, rounds)
  await decisions(rounds)
  answers(garments, rounds)
}

const cpuMs = (): number => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

/** CPU ms of each, in turns; the first two rounds warm up and are not counted. */
async function inTurns(
  runs: Readonly<Record<string, () => unknown>>,
  rounds: number,
): Promise<Map<string, number>> {
  const took = new Map(Object.keys(runs).map((name) => [name, [] as number[]]))
  for (let round = -2; round < rounds; round += 1) {
    for (const [name, run] of Object.entries(runs)) {
      const from = cpuMs()
      await run()
      if (round >= 0) took.get(name)!.push(cpuMs() - from)
    }
  }
  return new Map([...took].map(([name, all]) => [name, middle(all)]))
}

const placeName = (place: Place): string =>
  place.at === 'question' ? `ask ${place.question.id}` : place.at

function follows(acts: readonly Act[], onPlace: (place: Place) => void = () => {}): Following {
  let state = following(flow, [], rules)
  for (const act of acts) {
    state = followOn(flow, state, act, rules)
    onPlace(state.followed.place)
  }
  return state
}

async function steps(garments: number, rounds: number): Promise<void> {
  const acts = actsOfPile(knowledge, garments)
  const events = acts.map(eventOf)
  const machine = machineOf(flow, rules)
  const ours: string[] = []
  follows(acts, (place) => ours.push(placeName(place)))
  const actor = createActor(machine).start()
  const theirs = events.map((event) => {
    actor.send(event)
    return String(actor.getSnapshot().value)
  })
  const differs = ours.findIndex((place, nth) => place !== theirs[nth])
  if (differs >= 0) throw new Error(`${differs}: ${ours[differs]}, xstate: ${theirs[differs]}`)
  const times = Math.max(1, Math.round(2000 / acts.length))
  const often = (run: () => unknown) => () => {
    for (let n = 0; n < times; n += 1) run()
  }
  const took = await inTurns(
    {
      ours: often(() => follows(acts)),
      'xstate, an actor': often(() => {
        const one = createActor(machine).start()
        for (const event of events) one.send(event)
      }),
      'xstate, snapshots': often(() => {
        let [snapshot] = initialTransition(machine)
        for (const event of events) snapshot = getNextSnapshot(machine, snapshot, event)
      }),
    },
    rounds,
  )
  tell(`steps, ${garments} garments, ${acts.length} steps`, took, acts.length * times)
}

async function decisions(rounds: number): Promise<void> {
  const acts = actsOfPile(knowledge, 14)
  const pile = derivePile(knowledge, flow, rowOf(knowledge, acts.length), entriesOfActs(acts))
  for (const name of ['flags', 'permit', 'cautions']) {
    const table = tables.find((one) => one.table === name)!
    const compiled = compileTable(table, columns())
    const engine = engineOf(table)
    const cases = pile.garments.map(({ facts, grading: graded }) => ({
      ...facts,
      recipient: pile.recipient,
      wish: wishOf(layoutFits(facts, grading), pile.wish.layout.id),
      ceiling: graded?.press.ceilingC ?? 0,
    }))
    for (const facts of cases) {
      const ours = decide(compiled, facts).map(({ id }) => id)
      const theirs = await engine(facts)
      if (ours.join() !== theirs.join()) throw new Error(`${name}: ${ours} beside ${theirs}`)
    }
    const times = 20
    const took = await inTurns(
      {
        ours: () => {
          for (let n = 0; n < times; n += 1) for (const facts of cases) decide(compiled, facts)
        },
        'json-rules-engine': async () => {
          for (let n = 0; n < times; n += 1) for (const facts of cases) await engine(facts)
        },
      },
      rounds,
    )
    tell(`decisions of ${name}, ${table.rows.length} rows`, took, times * cases.length)
  }
}

function tell(what: string, took: ReadonlyMap<string, number>, times: number): void {
  const ours = took.get('ours')!
  for (const [name, ms] of took) {
    const rate = Math.round((times / ms) * 1000)
    const beside = name === 'ours' ? '' : `, ours ${(ms / ours).toFixed(1)} times as many`
    process.stdout.write(`${what}: ${name}: ${rate} a second of CPU${beside}\n`)
  }
}

/** What is looked at of a pile after an answer: grades are derived at once, the others when a page asks. */
const looks: readonly [what: string, look: (pile: Pile) => unknown][] = [
  ['every grade derived', ({ garments }) => garments],
  ['the tally too', ({ tally }) => tally],
  ['the tally and the price too', ({ tally, estimate }) => [tally, estimate]],
]

/** Every answer of the last garment, one after the other, each behind a page that showed everything. */
function answers(garments: number, rounds: number): void {
  const acts = actsOfPile(knowledge, garments)
  const entries = entriesOfActs(acts)
  const from = acts.findLastIndex(({ act }) => act === 'add')
  const begun = derive(knowledge, flow, rowOf(knowledge, from + 1), entries.slice(0, from + 1))
  const last = entries.slice(from + 1)
  const rows = last.map(({ seq }) => rowOf(knowledge, seq))
  const on = (before: Derived, nth: number): Derived => {
    const entry = last[nth]!
    const followed = followOn(flow, before.following, entry.act, rules)
    return deriveOn(knowledge, rows[nth]!, before, { entries: [entry], following: followed })
  }
  const took = looks.map(() => last.map(() => [] as number[]))
  const whole: number[] = []
  const again = 20
  for (let round = -10; round < rounds; round += 1) {
    let stands = begun
    for (const nth of last.keys()) {
      for (const [, look] of looks) look(stands.pile)
      for (const [at, [, look]] of looks.entries()) {
        const start = cpuMs()
        for (let n = 0; n < again; n += 1) look(on(stands, nth).pile)
        if (round >= 0) took[at]![nth]!.push((cpuMs() - start) / again)
      }
      stands = on(stands, nth)
    }
    const start = cpuMs()
    derivePile(knowledge, flow, rows.at(-1)!, entries)
    if (round >= 0) whole.push(cpuMs() - start)
  }
  for (const [at, [what]] of looks.entries()) {
    const each = took[at]!.map(middle)
    const mean = each.reduce((sum, ms) => sum + ms, 0) / each.length
    process.stdout.write(
      `one answer of ${garments} garments, ${what}: ${mean.toFixed(3)} ms of CPU in the mean of ${each.length} answers, ${Math.max(...each).toFixed(3)} ms the dearest${at === 0 ? ' (asked: 1)' : ''}\n`,
    )
  }
  process.stdout.write(`all grades derived anew: ${middle(whole).toFixed(2)} ms\n`)
}
