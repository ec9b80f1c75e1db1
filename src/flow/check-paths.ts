import type { Spot } from './check.ts'
import { leading, reached } from './edges.ts'
import type { Part } from './grammar.ts'

/** Where edges lead, and what no path comes to. */
export function checkPaths(spots: readonly Spot[]): void {
  const reach = new Map<Part, Set<number>>()
  for (const spot of spots) {
    const found = reach.get(spot.part) ?? reached(spot.part)
    reach.set(spot.part, found)
    if (!found.has(spot.at)) spot.report('orphan', 'no path comes to this question')
    checkTargets(spot, spots)
    checkLeading(spot)
  }
}

function checkTargets({ question, part, at, report }: Spot, spots: readonly Spot[]): void {
  for (const [edge, { to }] of (question.next ?? []).entries()) {
    if (to === 'end') continue
    const target = part.questions.findIndex(({ id }) => id === to)
    if (target > at) continue
    const elsewhere = spots.find((spot) => spot.question.id === to)
    const why =
      target >= 0
        ? `${to} does not come later`
        : elsewhere
          ? `${to} stands in the part ${elsewhere.part.id}`
          : `there is no question ${to}`
    report('edge-nowhere', why, ['next', edge, 'to'])
  }
}

function checkLeading({ question, report }: Spot): void {
  const { taken, stuck } = leading(question)
  for (const { label } of stuck) {
    const example = `${question.id} = ${label}`
    report('dead-end', 'an answer may find no edge', ['next'], example)
  }
  for (const [edge, { to }] of (question.next ?? []).entries()) {
    if (taken.has(edge)) continue
    report('edge-unreachable', `no answer takes the edge to ${to}`, ['next', edge])
  }
}
