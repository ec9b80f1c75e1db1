import { createHash, type Hash } from 'node:crypto'
import {
  existsSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { makeFolder } from '../base/make-folder.ts'
import type { FlowFiles } from './flow-files.ts'

/*
 * A proof that found nothing wrong is kept, so that the next start need not repeat it. Findings are
 * never kept: files that fail are examined anew each time.
 *
 * A kept proof counts only for the very same bytes: of the owner's files, of every module that takes
 * part in proving and of the pages' words (compiled or source, whichever runs), of the lock file that
 * names the libraries, and under the same major version of Node. It tells the days on which the
 * interfacings it was proven with are on sale, and counts on these days alone.
 *
 * What is trusted: whoever may write into the folders of proofs could put a false one there. They hold
 * the program or the shop's records, so that person could change either as well. The libraries are
 * taken for what the lock file says of them; their files are not read.
 */

/** What was counted while proving. */
export interface Counts {
  readonly flows: number
  readonly questions: number
  /** The most answers any garment is asked for; optional questions are not counted. */
  readonly longestPath: number
  /** By named example: the most answers allowed, and the most that some path asks. */
  readonly paths: readonly {
    readonly name: string
    readonly most: number
    readonly longest: number
  }[]
  readonly tables: number
  readonly rows: number
  /** Statements that were proven over the whole space of facts. */
  readonly statements: number
  /** Distinct combinations of facts that the tables were proven over. */
  readonly combinations: number
}

/** Days (YYYY-MM-DD) from the first up to, not including, `until`; null: no end is known. */
export interface Days {
  readonly from: string
  readonly until: string | null
}

export interface Proof extends Days {
  readonly key: string
  readonly counts: Counts
  /** What each of the owner's files says, as plain data: reading YAML takes a start longer than all else. */
  readonly values: Readonly<Record<string, unknown>>
}

const program = fileURLToPath(new URL('..', import.meta.url))
const project = join(program, '..')

/** Rooms whose code takes part in proving; a test follows the imports and finds any other. */
export const provingRooms = [
  'base',
  'flow',
  'garment',
  'intake',
  'papers',
  'photo',
  'quilt',
  'store',
  'textile',
  'words',
] as const

/** Changes when the shape of what is kept does. */
const shape = 'proof 2'

const most = { kept: 12, bytes: 4 * 2 ** 20 }

function put(hash: Hash, name: string, bytes: Buffer): void {
  hash.update(`${name}\0${bytes.length}\0`).update(bytes)
}

function putFolder(hash: Hash, folder: string, name: string): void {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true })
  const files = entries.filter((entry) => entry.isFile()).map((e) => join(e.parentPath, e.name))
  for (const file of files.sort()) {
    put(hash, `${name}${file.slice(folder.length)}`, readFileSync(file))
  }
}

function codeHash(): string {
  const hash = createHash('sha256').update(shape)
  for (const room of provingRooms) putFolder(hash, join(program, room), room)
  const lock = join(project, 'package-lock.json')
  if (existsSync(lock)) put(hash, 'lock', readFileSync(lock))
  return hash.update(process.versions.node.split('.')[0]!).digest('hex')
}

let code: string | null = null

/** Names a proof of these files by this program (sha256, hexadecimal). */
export function proofKey(files: FlowFiles): string {
  code ??= codeHash()
  const hash = createHash('sha256').update(code)
  for (const [name, bytes] of files) put(hash, name, bytes)
  return hash.digest('hex')
}

/** Beside the compiled program: there the build leaves the proof of the flows that come with it. */
export const builtProofs = join(program, 'proofs')

/** Where proofs are looked for. A program that runs from its sources has no place beside it. */
export const proofFolders = (dataDir: string): readonly string[] => [
  ...(import.meta.url.endsWith('.js') ? [builtProofs] : []),
  join(dataDir, 'proofs'),
]

/** The kept proof that counts on a day (YYYY-MM-DD); null where there is none that can be read. */
export function findProof(key: string, day: string, folders: readonly string[]): Proof | null {
  for (const folder of folders) {
    const proof = readProof(join(folder, `${key}.json`), key)
    if (proof && proof.from <= day && (proof.until === null || day < proof.until)) return proof
  }
  return null
}

function readProof(path: string, key: string): Proof | null {
  try {
    const { size } = statSync(path)
    if (size > most.bytes) return null
    const value: unknown = JSON.parse(readFileSync(path, 'utf8'))
    return isProof(value) && value.key === key ? value : null
  } catch {
    return null
  }
}

type Fields = Readonly<Record<string, unknown>>

const hasOnly = (value: unknown, names: readonly string[]): value is Fields =>
  typeof value === 'object' &&
  value !== null &&
  Object.keys(value).sort().join() === [...names].sort().join()

const isCount = (value: unknown): boolean => Number.isInteger(value) && (value as number) >= 0
const isDay = (value: unknown): boolean =>
  typeof value === 'string' && /^\d{4}-\d\d-\d\d$/.test(value)

const plainCounts = [
  'flows',
  'questions',
  'longestPath',
  'tables',
  'rows',
  'statements',
  'combinations',
] as const

// By hand and not by a schema: what is kept must be read before any library is loaded.
const isProof = (value: unknown): value is Proof =>
  hasOnly(value, ['key', 'from', 'until', 'counts', 'values']) &&
  isDay(value.from) &&
  (value.until === null || isDay(value.until)) &&
  hasOnly(value.counts, [...plainCounts, 'paths']) &&
  plainCounts.every((name) => isCount((value.counts as Fields)[name])) &&
  Array.isArray((value.counts as Fields).paths) &&
  ((value.counts as Fields).paths as unknown[]).every(isPath) &&
  typeof value.values === 'object' &&
  value.values !== null

const isPath = (value: unknown): boolean =>
  hasOnly(value, ['name', 'most', 'longest']) &&
  typeof value.name === 'string' &&
  isCount(value.most) &&
  isCount(value.longest)

/**
 * Keeps a proof: in the data folder where there is one, else beside the program. Where nothing can be
 * written it is not kept, and the next start proves again. The newest few stay.
 */
export function keepProof(proof: Proof, folders: readonly string[]): void {
  for (const folder of [...folders].reverse()) {
    if (existsSync(join(folder, '..')) && wasKept(proof, folder)) return
  }
}

function wasKept(proof: Proof, folder: string): boolean {
  const path = join(folder, `${proof.key}.json`)
  const beside = `${path}.${process.pid}`
  try {
    // Whoever runs the program reads what its build left, by whichever account it was built.
    makeFolder(folder, 0o777)
    writeFileSync(beside, JSON.stringify(proof))
    renameSync(beside, path)
    prune(folder)
    return true
  } catch {
    return false
  }
}

function prune(folder: string): void {
  const files = readdirSync(folder)
    .filter((name) => /^[0-9a-f]{64}\.json/.test(name))
    .map((name) => join(folder, name))
    .map((path) => ({ path, at: statSync(path).mtimeMs }))
    .sort((a, b) => b.at - a.at)
  for (const { path } of files.slice(most.kept)) rmSync(path, { force: true })
}
