import fc from 'fast-check'
import { expect, test } from 'vitest'
import { checkFlow } from '../../src/flow/check.ts'
import { drawFlow } from '../../src/flow/draw.ts'
import { Unreadable } from '../../src/flow/finding.ts'
import { follow } from '../../src/flow/follow.ts'
import type { Flow, Part, Reply, Rules } from '../../src/flow/grammar.ts'
import { longestPath } from '../../src/flow/longest.ts'
import { readFlow } from '../../src/flow/read.ts'
import { allReplies } from '../../src/flow/replies-of.ts'
import { makesSense } from '../../src/flow/sense.ts'
import { parseSource } from '../../src/flow/source.ts'
import { walk } from '../../src/flow/walk.ts'
import { parcelRules, parcels, parcelText } from './parcels.ts'
import { anyActs, anyFlow, steady } from './random.ts'

const around = {
  rules: parcelRules,
  readers: ['clerk', 'price'],
  words: new Map([['en', { has: () => true }]]),
  drawings: [],
  cautions: [],
}

const readOrNull = (value: unknown): Flow | null => {
  try {
    return readFlow(value)
  } catch (error) {
    if (error instanceof Unreadable && error.findings.length > 0) return null
    throw error
  }
}

/** A change at one place of plain data: gone, doubled, or in the place of another. */
function mutated(value: unknown, luck: () => number): unknown {
  const copy = structuredClone(value)
  const spots: [Record<string, unknown>, string][] = []
  const visit = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return
    for (const key of Object.keys(node)) {
      spots.push([node as Record<string, unknown>, key])
      visit((node as Record<string, unknown>)[key])
    }
  }
  visit(copy)
  const [holder, key] = spots[luck() % spots.length]!
  const alike = spots.filter((spot) => spot[1] === key)
  const [other] = alike[luck() % alike.length]!
  const way = luck() % 4
  if (way === 0) delete holder[key]
  else if (way === 1) holder[key] = structuredClone(other[key])
  else if (way === 2 && Array.isArray(holder)) holder.splice(0, 0, structuredClone(holder.at(-1)))
  else holder[key] = [null, 3, 'end', 'small', [], {}, { rule: 'stays_here' }][luck() % 7]
  return copy
}

const unguarded = (flow: Flow): boolean => {
  const known = new Set(Object.keys(parcelRules))
  return (JSON.stringify(flow).match(/"rule":"([^"]*)"/g) ?? []).every((text) =>
    known.has(text.slice('"rule":"'.length, -1)),
  )
}

test('a flow changed at random is read or refused, checked, drawn and followed to a halt', () => {
  let read = 0
  let faulty = 0
  fc.assert(
    fc.property(
      fc.infiniteStream(fc.nat()),
      fc.integer({ min: 1, max: 3 }),
      anyActs,
      (stream, times, acts) => {
        let value: unknown = parcels
        for (let time = 0; time < times; time += 1)
          value = mutated(value, () => stream.next().value)
        const flow = readOrNull(value)
        if (!flow) return
        read += 1
        if (checkFlow(flow, around).length > 0) faulty += 1
        drawFlow(flow)
        for (const part of flow.parts) longestPath(flow, part, parcelRules)
        if (unguarded(flow)) follow(flow, acts, parcelRules)
      },
    ),
    { ...steady, numRuns: 600 },
  )
  // The test would say little if nearly all changes were refused at once, or none mattered.
  expect(read).toBeGreaterThan(50)
  expect(faulty).toBeGreaterThan(25)
})

test('text changed at random is read or refused', () => {
  fc.assert(
    fc.property(
      fc.nat(parcelText.length),
      fc.nat(40),
      fc.string({ maxLength: 12 }),
      (at, length, put) => {
        const text = parcelText.slice(0, at) + put + parcelText.slice(at + length)
        const source = parseSource(text, 'a.yaml')
        try {
          checkFlow(readFlow(source.value, source), { ...around, where: source })
        } catch (error) {
          expect(error).toBeInstanceOf(Unreadable)
          expect((error as Unreadable).findings.every(({ line }) => line >= 1)).toBe(true)
        }
      },
    ),
    steady,
  )
})

/** The longest path by trying every answer to every question. */
function bruteLongest(part: Part, rules: Rules, answers = new Map<string, Reply>()): number {
  const { open, path, replies } = walk(part, answers, {}, rules)
  if (!open) return path.filter(({ question }) => !question.optional).length
  const ways = allReplies(open)!.filter((reply) => makesSense(open, reply, replies, rules))
  return Math.max(
    ...ways.map((reply) => bruteLongest(part, rules, new Map(answers).set(open.id, reply))),
  )
}

test('the longest path is that of trying every answer', () => {
  fc.assert(
    fc.property(anyFlow, ({ flow, rules }) => {
      const part = flow.parts[0]!
      const { count, path, free } = longestPath(flow, part, rules)
      expect(count).toBe(bruteLongest(part, rules))
      expect(free).toEqual([])
      // The path that is shown is a path: following its answers asks its questions.
      const answers = new Map(path.map(({ question, reply }) => [question.id, reply]))
      expect(walk(part, answers, {}, rules)).toMatchObject({ open: null, path })
    }),
    { ...steady, numRuns: 150 },
  )
})

test('a flow without findings about edges is never stuck', () => {
  fc.assert(
    fc.property(anyFlow, ({ flow, rules }) => {
      const found = checkFlow(flow, { ...around, rules })
      const faults = ['dead-end', 'edge-nowhere', 'unknown-rule', 'rule-reads']
      expect(found.filter(({ rule }) => faults.includes(rule))).toEqual([])
    }),
    steady,
  )
})
