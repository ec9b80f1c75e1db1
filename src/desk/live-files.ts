import { sha256 } from '../base/ids.ts'
import { parseSource } from '../flow/source.ts'
import { type FlowFiles, readFlowFiles } from '../intake/flow-files.ts'
import type { Knowledge } from '../intake/knowledge.ts'
import type { Proven } from '../intake/proven.ts'
import { ratesAt } from '../quilt/rates.ts'
import type { Db } from '../store/schema.ts'

/** The owner's files as this start read them. */
export interface Live {
  readonly files: FlowFiles
  readonly folder: string
  readonly proof: Pick<Proven, 'name' | 'found' | 'counts'>
  /** When they were read, ms UTC. */
  readonly since: number
}

/** What a file is for, in the order in which they are listed. */
export const fileKinds = ['flow', 'tables', 'layouts', 'rates', 'words', 'shop'] as const
export type FileKind = (typeof fileKinds)[number]

export interface ListedFile {
  readonly name: string
  readonly kind: FileKind
  /** Of its bytes, SHA-256 in short. */
  readonly version: string
  readonly bytes: number
  /** A rates file's day, and how it stands today; null: it is none, or its day cannot be read. */
  readonly rates: { readonly from: string; readonly stands: 'before' | 'now' | 'later' } | null
}

export function kindOf(name: string): FileKind {
  if (name.includes('/words/')) return 'words'
  if (name.startsWith('intake/')) return 'flow'
  if (name.startsWith('layouts/')) return 'layouts'
  if (name.startsWith('rates/')) return 'rates'
  return name === 'shop.yaml' ? 'shop' : 'tables'
}

/** A hash as it is shown and said. */
export const inShort = (hash: string): string => hash.slice(0, 12)

/** A rates file is whole or says what changes from its day on: those before today's newest still stand under it. */
function ratesIn(name: string, text: string, { rates }: Knowledge, today: string) {
  if (kindOf(name) !== 'rates') return null
  const { value } = parseSource(text, name)
  const from = String((value as { from?: unknown } | null)?.from ?? '')
  if (!rates.some((one) => one.from === from)) return null
  const newest = ratesAt(rates, today).from
  const stands = from > newest ? 'later' : from === newest ? 'now' : 'before'
  return { from, stands } as const
}

/** Every file that applies, by kind and name. `today` is YYYY-MM-DD. */
export function listFiles({ files }: Live, knowledge: Knowledge, today: string): ListedFile[] {
  const all = [...files].map(([name, bytes]) => ({
    name,
    kind: kindOf(name),
    version: inShort(sha256(bytes)),
    bytes: bytes.length,
    rates: ratesIn(name, bytes.toString('utf8'), knowledge, today),
  }))
  return all.toSorted(
    (a, b) => fileKinds.indexOf(a.kind) - fileKinds.indexOf(b.kind) || (a.name < b.name ? -1 : 1),
  )
}

/** Names of files that are otherwise on the disk by now: they apply from the next start on. */
export function changedSince({ files, folder }: Live): readonly string[] {
  let now: FlowFiles
  try {
    now = readFlowFiles(folder)
  } catch {
    return [...files.keys()]
  }
  const names = new Set([...files.keys(), ...now.keys()])
  return [...names]
    .filter((name) => {
      const [before, after] = [files.get(name), now.get(name)]
      return !before || !after || !before.equals(after)
    })
    .toSorted()
}

export interface FlowVersion {
  readonly version: string
  /** When a conversation first began on it; null: none has. */
  readonly since: number | null
  /** Open intakes that stand on it. */
  readonly open: number
  readonly live: boolean
}

/** The flow that new conversations begin on, then every other that open ones still stand on, the newest first. */
export async function flowVersions(db: Db, { flowHash }: Knowledge): Promise<FlowVersion[]> {
  const open = await db
    .selectFrom('pile')
    .select(({ fn }) => ['flow_hash', fn.countAll<number>().as('n')])
    .where('status', '=', 'open')
    .groupBy('flow_hash')
    .execute()
  const hashes = [flowHash, ...open.map(({ flow_hash }) => flow_hash)]
  const known = await db
    .selectFrom('flow_version')
    .select(['hash', 'first_used_at'])
    .where('hash', 'in', hashes)
    .execute()
  const versions = [...new Set(hashes)].map((hash) => ({
    version: inShort(hash),
    since: known.find((one) => one.hash === hash)?.first_used_at ?? null,
    open: Number(open.find((one) => one.flow_hash === hash)?.n ?? 0),
    live: hash === flowHash,
  }))
  return versions.toSorted(
    (a, b) => Number(b.live) - Number(a.live) || (b.since ?? 0) - (a.since ?? 0),
  )
}
