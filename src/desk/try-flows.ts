import { Failure } from '../base/failures.ts'
import type { Finding } from '../flow/finding.ts'
import type { Flow } from '../flow/grammar.ts'
import { readFlow } from '../flow/read.ts'
import type { FlowFiles } from '../intake/flow-files.ts'
import { goneFrom } from '../intake/flow-versions.ts'
import { type FlowsFolder, parseFlows } from '../intake/flows-folder.ts'
import { type Knowledge, learn, wordsOf } from '../intake/knowledge.ts'
import { derivePile, type Wished } from '../intake/pile.ts'
import { type Around, proven } from '../intake/proven.ts'
import type { Entry } from '../intake/rows.ts'
import type { AtDesk } from '../intake/told.ts'
import type { PileRow } from '../store/schema.ts'
import type { Verdicts } from './consequences.ts'
import { type PileImpact, pileImpact } from './impact.ts'

/** A pile as it is handed over to be derived both ways. */
export interface PileToTry {
  readonly row: PileRow
  readonly entries: readonly Entry[]
  readonly atDesk: ReadonlyMap<number, AtDesk>
  readonly instead: Wished
  readonly verdicts: Verdicts
}

/** The live files, the draft's, and flows that conversations stand on, by hash. */
export interface FilesToTry {
  readonly live: FlowFiles
  readonly draft: FlowFiles
  readonly pinned: ReadonlyMap<string, { readonly body: string; readonly open: boolean }>
}

/** Two ways to derive a pile, ready for use. */
export interface Trying {
  /** YYYY-MM-DD: of its prices speaks what changes only with a pile's next change. */
  readonly day: string
  /** The draft's sentences of reasons and layouts, by language and key. */
  readonly said: Said
  of(pile: PileToTry): { readonly impact: PileImpact | null; readonly garments: number }
}

export type Said = Readonly<Record<string, Readonly<Record<string, string>>>>

export type Tried =
  | { readonly findings: readonly Finding[]; readonly trying: null }
  | { readonly findings: readonly []; readonly trying: Trying }

const asFinding = ({ details }: Failure): Finding => ({
  file: String(details.file),
  line: Number(details.line),
  rule: 'unreadable',
  message: String(details.why),
})

/** What the start would find wrong, also in files that cannot be read at all. */
async function findingsOf(files: FlowFiles, around: Around): Promise<readonly Finding[]> {
  try {
    return (await proven(files, around)).findings
  } catch (error) {
    if (!(error instanceof Failure) || error.code !== 'flows_invalid') throw error
    return [asFinding(error)]
  }
}

/** Open conversations stay on their flow: what it needs and can no longer have. */
function missedBy(pinned: FilesToTry['pinned'], draft: Knowledge): Finding[] {
  return [...pinned].flatMap(([hash, { body, open }]) => {
    const gone = open ? goneFrom(readFlow(JSON.parse(body)), draft) : undefined
    if (!gone) return []
    const message = `open conversations still need ${gone}`
    return [{ file: `flow version ${hash.slice(0, 12)}`, line: 1, rule: 'still-needed', message }]
  })
}

/** The day whose prices are compared: today, or the day from which the newest rates hold. */
const priceDay = (draft: Knowledge, today: string): string =>
  [today, ...draft.rates.map(({ from }) => from)].toSorted().at(-1)!

/**
 * Examines the draft as the start does and makes ready to compare. The live files are taken to hold: a start has
 * proven them.
 */
export async function tryFlows(files: FilesToTry, around: Around): Promise<Tried> {
  const findings = await findingsOf(files.draft, around)
  if (findings.length > 0) return { findings, trying: null }
  const live = learn(parseFlows(files.live), around.today)
  const draft = learn(parseFlows(files.draft), around.today)
  const missed = missedBy(files.pinned, draft)
  if (missed.length > 0) return { findings: missed, trying: null }

  const flows = new Map<string, Flow>()
  const flowOf = (hash: string): Flow => {
    if (hash === live.flowHash) return live.flow
    const known = flows.get(hash) ?? readFlow(JSON.parse(files.pinned.get(hash)!.body))
    flows.set(hash, known)
    return known
  }
  const day = priceDay(draft, around.today)

  return {
    findings: [],
    trying: {
      day,
      said: saidIn(parseFlows(files.draft)),
      of: ({ row, entries, atDesk, instead, verdicts }) => {
        const by = (knowledge: Knowledge) =>
          derivePile(knowledge, flowOf(row.flow_hash), row, entries, atDesk, instead)
        const before = by(live)
        const garments = before.garments.filter(({ dropped }) => !dropped).length
        try {
          const both = { live: before, draft: by(draft) }
          return { impact: pileImpact(row, both, verdicts, { live, draft, day }), garments }
        } catch (error) {
          if (!(error instanceof Failure)) throw error
          return { impact: failing(row, error), garments }
        }
      },
    },
  }
}

const told = /^trade\.(?:flags\..*\.message|layouts\.)/

const saidIn = (folder: FlowsFolder): Said =>
  Object.fromEntries(
    [...wordsOf(folder)].map(([code, all]) => [
      code,
      Object.fromEntries([...all].filter(([key]) => told.test(key))),
    ]),
  )

/** A pile that the draft leaves without a price, or whose wish it no longer knows. */
const failing = ({ number, status }: PileRow, { code }: Failure): PileImpact => ({
  number,
  status,
  garments: [],
  layout: null,
  plan: false,
  price: null,
  fails: code,
})
