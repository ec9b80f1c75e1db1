import type { Block, ProblemCode } from '../reading.ts'
import { blockOf, type Grouped, groupPairs, isEither, near, totalOf } from './blocks.ts'
import { type Agreed, agreedOn, othersTold } from './majority.ts'
import type { Pair, Told } from './pairing.ts'
import type { Part } from './parts.ts'
import type { Repeat } from './repeats.ts'

export interface Merged {
  readonly blocks: readonly Block[]
  readonly problems: ReadonlySet<ProblemCode>
  /** Of the parts whose every repetition tells the same, but for slips. */
  readonly repeats: readonly (readonly Repeat[])[]
  /** Stretches whose part is told again elsewhere, under names that are clear. */
  readonly confirmed: ReadonlySet<Part>
}

/** One block for each part that the label names, however many languages tell it. */
export function mergeParts(parts: readonly Part[]): Merged {
  const told = partsByName(parts)
  const first = new Map([...told].map(([name, own]) => [name, agreedOn(stretchesOf(own), [])]))
  const problems = new Set<ProblemCode>()
  const repeats: (readonly Repeat[])[] = []
  const confirmed = new Set<Part>()
  const blocks: Block[] = []
  for (const [section, own] of told) {
    const others = [...first].flatMap(([name, agreed]) =>
      name !== null && name !== section && agreed && agreed.copies > 1 ? [agreed.group] : [],
    )
    const lost = section === null ? othersTold(stretchesOf(own), others) : null
    if (lost) {
      repeats.push(lost)
      for (const part of own) confirmed.add(part)
      continue
    }
    const {
      groups,
      problems: found,
      repeats: agreeing,
    } = groupsOf(own, first.get(section)!, others)
    if (agreeing) repeats.push(agreeing)
    if (agreeing && isNamedClearly(own, agreeing)) for (const part of own) confirmed.add(part)
    for (const problem of found) problems.add(problem)
    for (const group of groups) {
      for (const { fibre } of group) if (fibre.doubt) problems.add(fibre.doubt)
      if (group.some(isEither)) problems.add('name_ambiguous')
      blocks.push(blockOf(section, group))
    }
  }
  return { blocks: withoutEcho(blocks), problems, repeats, confirmed }
}

/** So many clear names of a part bear out any that are not. */
const enoughNames = 2

function isNamedClearly(parts: readonly Part[], agreeing: readonly Repeat[]): boolean {
  const clear = parts.filter(({ region, pairing }) => {
    const told = new Set(pairing.told)
    return !region.unclear && agreeing.some((one) => one.flaws === 0 && told.has(one.told[0]!))
  })
  return clear.length >= enoughNames
}

function partsByName(parts: readonly Part[]): Map<string | null, Part[]> {
  const byName = new Map<string | null, Part[]>()
  for (const part of parts) {
    const names = part.region.sections.length > 0 ? part.region.sections : [null]
    for (const name of names) byName.set(name, [...(byName.get(name) ?? []), part])
  }
  return byName
}

const stretchesOf = (parts: readonly Part[]): (readonly Told[])[] =>
  parts.map(({ pairing }) => pairing.told)

interface Settled extends Grouped {
  readonly repeats?: readonly Repeat[]
}

/** As all of it together tells; where that is no one make-up, what most of its repetitions tell. */
function groupsOf(
  parts: readonly Part[],
  alone: Agreed | null,
  others: readonly (readonly Pair[])[],
): Settled {
  const plain = groupPairs(parts.flatMap(({ pairs }) => pairs))
  if (isClear(plain) && parts.every(isAllPaired))
    return alone?.explained ? { ...plain, repeats: alone.repeats } : plain
  const among = others.length > 0 ? agreedOn(stretchesOf(parts), others) : null
  const agreed = among?.explained ? among : (alone ?? among)
  if (!agreed) return plain
  return agreed.explained
    ? { groups: [agreed.group], problems: [], repeats: agreed.repeats }
    : { groups: [agreed.group], problems: ['languages_disagree'] }
}

const isClear = ({ groups, problems }: Grouped): boolean =>
  problems.length === 0 &&
  groups.length <= 1 &&
  groups.every((group) => near(totalOf(group)) && group.every(({ fibre }) => fibre.doubt === null))

const isAllPaired = ({ pairing }: Part): boolean => pairing.pairs.length === pairing.told.length

/** Shares that stand before the first part's name and are told again under it are the same ones. */
function withoutEcho(blocks: readonly Block[]): Block[] {
  const [first, ...rest] = blocks
  if (!first || first.section !== null || rest.length !== 1) return [...blocks]
  return sameShares(first, rest[0]!) ? rest : [...blocks]
}

const sameShares = (a: Block, b: Block): boolean =>
  a.fibres.length === b.fibres.length &&
  a.fibres.every(({ fibre, percent }) =>
    b.fibres.some((other) => other.fibre === fibre && other.percent === percent),
  )
