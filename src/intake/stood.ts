import { type Following, followOn } from '../flow/follow.ts'
import type { Flow } from '../flow/grammar.ts'
import type { Db, PileRow } from '../store/schema.ts'
import { type Deriving, deriving } from './deriving.ts'
import { pinnedFlow } from './flow-versions.ts'
import type { Knowledge } from './knowledge.ts'
import { derive } from './pile.ts'
import { actsOf, type KeptAct } from './rows.ts'
import { rules } from './rules.ts'
import { andThen, type Since } from './since.ts'

/** A pile as it stands after one of its acts, ready to be acted on. */
export interface Stood {
  readonly row: PileRow
  readonly flow: Flow
  readonly entries: readonly KeptAct[]
  readonly following: Following
  readonly derived: Deriving
  readonly unwritten: Since
}

/** Piles as they stood when they were last used, for a time. */
export interface Memory {
  of(pileId: string): Stood | undefined
  /** The pile behind a link, by its key's hash. */
  behind(hash: string): Stood | undefined
  /** `hash`: of the link's key by which it was found. */
  keep(stood: Stood, hash: string): void
}

export interface MemoryLimits {
  /** Acts of all piles that are remembered; an act takes 1 kB with what is derived from it, in a pile of ten garments. */
  readonly mostActs: number
  /** So long a pile is remembered that nobody uses, ms. */
  readonly keepMs: number
}

const usualLimits: MemoryLimits = { mostActs: 30_000, keepMs: 10 * 60 * 1000 }

interface Remembered {
  readonly stood: Stood
  readonly usedAt: number
  /** Hashes of the keys by which it was found. */
  readonly links: Set<string>
}

/** The least used piles are forgotten first. */
export function rememberPiles({ mostActs, keepMs }: MemoryLimits = usualLimits): Memory {
  const piles = new Map<string, Remembered>()
  const linked = new Map<string, Stood>()
  let acts = 0
  let timer: NodeJS.Timeout | null = null

  function forget(id: string): void {
    const known = piles.get(id)
    if (!known) return
    acts -= known.stood.entries.length
    for (const hash of known.links) linked.delete(hash)
    piles.delete(id)
  }

  function forgetOld(): void {
    timer = null
    const before = performance.now() - keepMs
    for (const [id, { usedAt }] of piles) {
      if (usedAt > before) break
      forget(id)
    }
    if (piles.size > 0) timer = setTimeout(forgetOld, keepMs).unref()
  }

  return {
    of: (id) => piles.get(id)?.stood,
    behind: (hash) => linked.get(hash),
    keep: (stood, hash) => {
      const { id } = stood.row
      const links = new Set(piles.get(id)?.links).add(hash)
      forget(id)
      piles.set(id, { stood, usedAt: performance.now(), links })
      for (const link of links) linked.set(link, stood)
      acts += stood.entries.length
      while (acts > mostActs) forget(piles.keys().next().value!)
      if (timer === null) timer = setTimeout(forgetOld, keepMs).unref()
    },
  }
}

export interface Standing {
  readonly knowledge: Knowledge
  readonly memory: Memory
}

/**
 * The pile as its row says that it stands. What is remembered holds where the row is the one that it was derived
 * with; where others have acted since, their acts are read and derived on.
 */
export async function standing(
  db: Db,
  row: PileRow,
  { knowledge, memory }: Standing,
): Promise<Stood> {
  const known = memory.of(row.id)
  if (known?.row.seq === row.seq && known.row.changed_at === row.changed_at) {
    return { ...known, row }
  }
  const caughtUp = known && (await catchUp(db, row, known))
  if (caughtUp) return caughtUp
  const flow = await pinnedFlow(db, row.flow_hash, knowledge)
  const acts = await actsOf(db, row)
  const derived = derive(knowledge, flow, row, acts)
  return {
    row,
    flow,
    entries: acts,
    following: derived.following,
    derived: deriving(knowledge, derived),
    unwritten: null,
  }
}

/** Null where what is remembered is no beginning of what is kept, as after a store was put back to an earlier hour. */
async function catchUp(db: Db, row: PileRow, known: Stood): Promise<Stood | null> {
  if (known.row.seq >= row.seq || known.row.seq === 0) return null
  const [last, ...acts] = await actsOf(db, row, known.row.seq)
  if (last?.idem !== known.entries.at(-1)?.idem) return null
  let { following } = known
  for (const { act } of acts) following = followOn(known.flow, following, act, rules)
  return standOn(known, { row, acts, following })
}

/** A pile with these acts more, which are followed already, and its row after them. */
export function standOn(
  before: Stood,
  { row, acts, following }: { row: PileRow; acts: readonly KeptAct[]; following: Following },
): Stood {
  return {
    row,
    flow: before.flow,
    entries: [...before.entries, ...acts],
    following,
    derived: before.derived.on(row, { entries: acts, following }),
    unwritten: andThen(
      before.unwritten,
      acts.map(({ act }) => act),
    ),
  }
}

/** Whether an act with this idempotency key was taken on it. */
export const knows = ({ entries }: Pick<Stood, 'entries'>, idem: string): boolean =>
  entries.some((entry) => entry.idem === idem)
