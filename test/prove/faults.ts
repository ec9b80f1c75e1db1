import { execFileSync } from 'node:child_process'
import {
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { Failure } from '../../src/base/failures.ts'
import { newId } from '../../src/base/ids.ts'
import { openStore, storeFile } from '../../src/store/open.ts'
import { ownCluster } from '../help/cluster.ts'
import { s3Bucket, s3Keys, startS3 } from '../help/s3.ts'
import { openMailServer } from '../help/smtp.ts'
import type { What } from './crowd.ts'
import type { Told } from './held.ts'
import { type Borne, bear, type Trouble } from './trouble.ts'

/** A trouble, and what of it is left behind when it has been borne. Null: it cannot be brought about here. */
type Maker = (lastsMs: number) => Promise<{ trouble: Trouble; remove(): unknown } | null>

const everybody: readonly What[] = ['answers', 'photos', 'decisions', 'moves']

/** Runs a program of the system; false where this machine or account does not let it. */
function does(program: string, ...given: string[]): boolean {
  try {
    execFileSync(program, given, { stdio: 'ignore' })
    return true
  } catch {
    return false
  }
}

const folderHere = (name: string): string => mkdtempSync(join(tmpdir(), `pieceworth-${name}-`))

/** Every byte that a file system still has. */
function fill(file: string): void {
  const handle = openSync(file, 'a')
  try {
    for (const size of [1024 * 1024, 4096, 1]) {
      try {
        for (;;) writeSync(handle, Buffer.alloc(size))
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code !== 'ENOSPC') throw error
      }
    }
  } finally {
    closeSync(handle)
  }
}

/** Until the records can write nothing more: they have room within, which they would use first. */
async function fillRecords(where: Parameters<typeof openStore>[0]): Promise<void> {
  const store = await openStore(where)
  try {
    for (;;) {
      const rows = Array.from({ length: 200 }, () => ({ what: newId(), until_at: 0, uses: 1 }))
      await store.db.insertInto('use_count').values(rows).execute()
    }
  } catch (error) {
    if (!(error instanceof Failure && error.code === 'store_unavailable')) throw error
  } finally {
    await store.close()
  }
}

/** Records and photos on a small file system of their own, in memory, which another file fills to its last byte. */
const diskFull: Maker = async (lastsMs) => {
  const disk = folderHere('disk')
  if (!does('mount', '-t', 'tmpfs', '-o', 'size=64m,mode=700', 'pieceworth', disk)) return null
  const ballast = join(disk, 'ballast')
  const dataDir = join(disk, 'data')
  const photos = join(disk, 'photos')
  return {
    trouble: {
      name: 'disk full',
      how: 'a tmpfs of 64 MB with records and photos, filled to the last byte by another file',
      lastsMs,
      dataDir,
      photos: { url: photos, isThere: (file) => existsSync(join(photos, file)) },
      tasks: everybody,
      goesOn: [],
      putsOff: [503],
      begin: async () => {
        fill(ballast)
        await fillRecords({ dataDir })
      },
      end: () => rmSync(ballast),
    },
    remove: () => {
      // At once, whoever still holds a file of it.
      does('umount', '-l', disk)
      rmSync(disk, { recursive: true, force: true })
    },
  }
}

/**
 * Folders and records that nobody can change, whoever they are and though the files are open: the immutable attribute
 * of the file system (chattr(1)). The small file by which processes share the log of SQLite is mapped into memory and
 * spared: on a disk that turns read-only it stays writable there too.
 */
const readOnly: Maker = async (lastsMs) => {
  const folder = folderHere('read-only')
  const dataDir = join(folder, 'data')
  const photos = join(folder, 'photos')
  for (const one of [dataDir, photos]) mkdirSync(one, { mode: 0o700 })
  const remove = () => rmSync(folder, { recursive: true, force: true })
  if (!does('chattr', '+i', photos) || !does('chattr', '-i', photos)) {
    remove()
    return null
  }
  const records = [storeFile, `${storeFile}-wal`].map((name) => join(dataDir, name))
  const change = (how: '+i' | '-i') => {
    for (const one of [...records, dataDir, photos]) if (existsSync(one)) does('chattr', how, one)
  }
  return {
    trouble: {
      name: 'folder read-only',
      how: 'folders, records and their log made immutable (chattr +i), though they are open',
      lastsMs,
      dataDir,
      photos: { url: photos, isThere: (file) => existsSync(join(photos, file)) },
      tasks: everybody,
      goesOn: [],
      putsOff: [503],
      begin: () => change('+i'),
      end: () => change('-i'),
    },
    remove,
  }
}

/** Two servers on a PostgreSQL of their own, which is asked to end with all connections and started again. */
const databaseAway: Maker = async (lastsMs) => {
  const cluster = await ownCluster()
  if (!cluster) return null
  return {
    trouble: {
      name: 'database away',
      how: 'the PostgreSQL of two servers stopped and started',
      lastsMs: 2 * lastsMs,
      processes: 2,
      databaseUrl: await cluster.database('faults'),
      tasks: everybody,
      goesOn: [],
      putsOff: [503],
      begin: () => cluster.stop(),
      end: () => cluster.start(),
    },
    remove: () => cluster.remove(),
  }
}

/** The PostgreSQL of two servers on a small file system of its own, which another file fills to its last byte. */
const databaseFull: Maker = async (lastsMs) => {
  const disk = folderHere('database')
  if (!does('mount', '-t', 'tmpfs', '-o', 'size=160m,mode=777', 'pieceworth', disk)) return null
  const remove = () => {
    does('umount', '-l', disk)
    rmSync(disk, { recursive: true, force: true })
  }
  const cluster = await ownCluster(disk)
  if (!cluster) {
    remove()
    return null
  }
  const databaseUrl = await cluster.database('faults')
  const ballast = join(disk, 'ballast')
  return {
    trouble: {
      name: 'disk of the database full',
      how: 'the PostgreSQL of two servers on a tmpfs of 160 MB, filled to the last byte by another file',
      lastsMs,
      processes: 2,
      databaseUrl,
      tasks: everybody,
      goesOn: [],
      putsOff: [503],
      begin: async () => {
        fill(ballast)
        await fillRecords({ databaseUrl, dataDir: disk })
      },
      end: async () => {
        rmSync(ballast)
        // It ends itself where it cannot write its log: whoever runs it makes room and starts it again.
        await cluster.start()
      },
    },
    remove: async () => {
      await cluster.remove()
      remove()
    },
  }
}

const photosAway: Maker = async (lastsMs) => {
  const s3 = await startS3()
  return {
    trouble: {
      name: 'photo store away',
      how: 'the photo store (S3) listens no more',
      lastsMs,
      photos: {
        url: `s3://${s3Bucket}/shop`,
        isThere: (file) => s3.objects.has(`shop/${file}`),
      },
      env: {
        S3_ENDPOINT: s3.url,
        S3_REGION: s3Keys.region,
        S3_ACCESS_KEY_ID: s3Keys.accessKeyId,
        S3_SECRET_ACCESS_KEY: s3Keys.secretAccessKey,
      },
      tasks: everybody,
      goesOn: ['answers', 'decisions', 'moves'],
      putsOff: [503],
      begin: () => s3.down(),
      end: () => s3.back(),
    },
    remove: () => s3.close(),
  }
}

/** Longer than the first pause of a mail that could not be sent, and a round of the sender. */
const mailPatienceMs = 120_000

const mailAway: Maker = async (lastsMs) => {
  let mails = await openMailServer()
  const { url } = mails
  const port = Number(new URL(url).port)
  const texts: string[] = []
  const away = async () => {
    await mails.close()
    texts.push(...mails.arrived.map(({ mail }) => mail.text ?? ''))
  }
  const timesOf = (value: string) =>
    [...texts, ...mails.arrived.map(({ mail }) => mail.text ?? '')].filter((text) =>
      text.includes(value),
    ).length
  return {
    trouble: {
      name: 'mail server away',
      how: 'the mail server (SMTP) listens no more',
      lastsMs,
      env: { SMTP_URL: url, MAILS_PER_ADDRESS: '100000', MAILS_PER_DAY: '100000' },
      tasks: [...everybody, 'messages'],
      goesOn: [...everybody, 'messages'],
      putsOff: [],
      begin: away,
      end: async () => {
        mails = await openMailServer(port)
      },
      afterwards: async ({ messages = [] }: Told) => {
        const until = performance.now() + mailPatienceMs
        const missing = () => messages.filter(({ value }) => timesOf(value) === 0)
        while (missing().length > 0 && performance.now() < until) await pause(100)
        if (missing().length > 0) throw new Error(`${missing().length} mails never came`)
        const twice = messages.filter(({ value }) => timesOf(value) > 1)
        if (twice.length > 0) throw new Error(`${twice.length} mails came twice`)
      },
    },
    remove: () => mails.close(),
  }
}

/** A library that changes the clock of a process while it runs (Debian: `faketime`); null: it is not installed. */
function clockLibrary(): string | null {
  const [found] = readdirSync('/usr/lib')
    .map((one) => join('/usr/lib', one, 'faketime/libfaketimeMT.so.1'))
    .filter((one) => existsSync(one))
  return found ?? null
}

/** The clock of the server's processes alone, by libfaketime; what measures durations goes on as it is. */
const clockJumps =
  (name: string, jump: string, others: Partial<Trouble> = {}): Maker =>
  async (lastsMs) => {
    const library = clockLibrary()
    if (!library) return null
    const folder = folderHere('clock')
    const file = join(folder, 'jump')
    const set = (to: string) => writeFileSync(file, `${to}\n`)
    set('+0')
    return {
      trouble: {
        name,
        how: `the clock of the server jumps by ${jump} and back (libfaketime)`,
        lastsMs,
        env: {
          LD_PRELOAD: library,
          FAKETIME_TIMESTAMP_FILE: file,
          FAKETIME_CACHE_DURATION: '1',
          FAKETIME_DONT_FAKE_MONOTONIC: '1',
        },
        tasks: everybody,
        goesOn: everybody,
        putsOff: [],
        begin: () => set(jump),
        end: () => set('+0'),
        ...others,
      },
      remove: () => rmSync(folder, { recursive: true, force: true }),
    }
  }

/** By the names that they are asked for. */
export const makers: Readonly<Record<string, Maker>> = {
  disk: diskFull,
  'read-only': readOnly,
  database: databaseAway,
  'database-full': databaseFull,
  photos: photosAway,
  mail: mailAway,
  ahead: clockJumps('clock an hour ahead', '+1h'),
  behind: clockJumps('clock an hour behind', '-1h'),
  // Links have ended by then (410): whoever comes is told so, and nothing else may happen to what they gave.
  'far-ahead': clockJumps('clock 400 days ahead', '+400d', {
    tasks: ['answers', 'photos'],
    goesOn: [],
    putsOff: [410],
  }),
}

export interface AllBorne {
  readonly borne: readonly Borne[]
  /** What could not be brought about on this machine. */
  readonly notHere: readonly string[]
  readonly faults: readonly string[]
}

/** Brings about the named troubles one after the other, all of them where none is named. Linux alone. */
export async function bearAll(lastsMs: number, named: readonly string[]): Promise<AllBorne> {
  const borne: Borne[] = []
  const notHere: string[] = []
  for (const name of named.length > 0 ? named : Object.keys(makers)) {
    const made = await makers[name]!(lastsMs)
    if (!made) {
      notHere.push(name)
      continue
    }
    try {
      borne.push(await bear(made.trouble))
    } finally {
      await made.remove()
    }
  }
  return {
    borne,
    notHere,
    faults: borne.flatMap(({ name, faults: some }) => some.map((one) => `${name}: ${one}`)),
  }
}

const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`

/** A line for each trouble, in Markdown. */
export function tableOf({ borne, notHere }: AllBorne): string {
  const heads = [
    'what',
    'how',
    'answers by status',
    'longest',
    'kept meanwhile',
    'itself again after',
    'kept in all',
    'lost, doubled',
    'a start meanwhile',
  ]
  const rows = borne.map((one) => [
    one.name,
    `${one.how}, for ${seconds(one.lastedMs)}`,
    Object.entries(one.answered)
      .map(([status, count]) => `${count} × ${status}`)
      .join(', '),
    seconds(one.longestMs),
    one.keptMeanwhile,
    one.recoveredMs === null ? 'never' : seconds(one.recoveredMs),
    one.kept,
    `${one.lost}, ${one.doubled}`,
    one.start.said,
  ])
  const lines = [heads, heads.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`)
  return [...lines, ...notHere.map((name) => `not brought about on this machine: ${name}`)].join(
    '\n',
  )
}
