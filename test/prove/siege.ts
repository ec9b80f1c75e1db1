import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import sharp from 'sharp'
import { systemClock } from '../../src/base/clock.ts'
import { derivedInOrder, fileOf } from '../../src/photo/keep.ts'
import { openStore, type Store, type StoreSettings } from '../../src/store/open.ts'
import { chanceOf } from '../help/chance.ts'
import { addGarment, answerAll, pileAnswers, shirt } from '../help/chat.ts'
import type { Cluster } from '../help/cluster.ts'
import { acceptedPile, atTheDoor, step } from '../help/custody.ts'
import { queuePile } from '../help/desk.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { Walker } from '../help/walker.ts'
import {
  type Acknowledged,
  answering,
  type Doors,
  deciding,
  moving,
  photographing,
  sender,
  type What,
} from './crowd.ts'
import { clerkCookie } from './load.ts'

export interface Siege {
  readonly kills: number
  readonly seed: number
  /** How many processes serve; more than one want a database. */
  readonly processes: number
  readonly databaseUrl?: string
  /** What is killed instead of a process of ours. */
  readonly cluster?: Cluster
  /** Processes are asked to end, and no request may fail: a rolling restart. */
  readonly gently?: boolean
}

export interface Held {
  readonly kills: number
  /** How many of each were told to be kept. */
  readonly acknowledged: Readonly<Record<What, number>>
  /** What was lost, doubled or put in another order; and what never came to be. */
  readonly faults: readonly string[]
}

/** What is at work again is killed within this time, ms. */
const longestMs = 400

/** So many things are kept between two kills at least. */
const busy = 4
/** Before every so-manieth kill somebody was told that a photo is kept. */
const photosEvery = 5

const custodyPile = 5000
const firstToDecide = 6000

/** A photo that is like no other of the siege. */
const photoOf = (n: number): Promise<Buffer> =>
  sharp({
    create: {
      width: 400,
      height: 300,
      channels: 3,
      background: { r: (n * 37) % 256, g: (n * 11) % 256, b: n % 256 },
    },
  })
    .jpeg()
    .toBuffer()

async function prepared(url: string, settings: StoreSettings, piles: number) {
  const customer = async () => answerAll(await new Walker(url).start(), pileAnswers, 'not_to_cut')
  const teller = await customer()
  const photographer = await answerAll(await customer(), pileAnswers)
  await addGarment(photographer, shirt, 'photos')
  const store = await openStore(settings)
  try {
    const { pileId, who } = await acceptedPile(store, { number: custodyPile })
    await atTheDoor(store, pileId, who)
    await step(store, pileId, { subject: '1', move: 'receive', via: 'P1', who })
    for (let n = 0; n < piles; n += 1) await queuePile(store.db, { number: firstToDecide + n })
    // Servers that start read the flows of all piles, and erase what nobody has touched for long.
    const { flow_hash } = await store.db
      .selectFrom('pile')
      .select('flow_hash')
      .where('number', '<', custodyPile)
      .executeTakeFirstOrThrow()
    const now = { changed_at: systemClock(), confirmed_at: systemClock() }
    await store.db
      .updateTable('pile')
      .set({ flow_hash, ...now })
      .where('number', '>=', custodyPile)
      .execute()
    await store.db.deleteFrom('flow_version').where('hash', '!=', flow_hash).execute()
  } finally {
    await store.close()
  }
  return {
    teller: teller.pilePath,
    photographer: photographer.pilePath,
    cookie: await clerkCookie(settings, 'owner'),
  }
}

/** Kills while customers, desk and bench are at work, then holds what they were told against what is kept. */
export async function siege(asked: Siege): Promise<Held> {
  const { kills, seed, databaseUrl, cluster, gently = false } = asked
  const broken: string[] = []
  const chance = chanceOf(seed)
  const photos = mkdtempSync(join(tmpdir(), 'pieceworth-siege-'))
  const env = {
    LOG_LEVEL: 'fatal',
    PHOTOS_URL: photos,
    ...(gently && { LEAVE_SECONDS: '1' }),
    ...(databaseUrl && { DATABASE_URL: databaseUrl }),
  }
  const servers: RunningServer[] = []
  try {
    for (let n = 0; n < asked.processes; n += 1) servers.push(await startServer({ env }))
    const { dataDir } = servers[0]!
    const settings = { ...(databaseUrl && { databaseUrl }), dataDir }
    const toDecide = 20 + 4 * kills
    const there = await prepared(servers[0]!.url, settings, toDecide)

    let over = false
    const count: Record<What, number> = { answers: 0, photos: 0, decisions: 0, moves: 0 }
    const all = () => Object.values(count).reduce((sum, one) => sum + one, 0)
    /** Whatever was killed is at work again, and the crowd with it; a photo takes longest, and has its turn. */
    const busyAgain = async (nth: number) => {
      const [before, photosBefore] = [all(), count.photos]
      const waits = () =>
        all() < before + busy || (nth % photosEvery === 0 && count.photos === photosBefore)
      while (waits() && !over) await pause(5)
    }
    const doors: Doors = {
      urls: servers.map(({ url }) => url),
      over: () => over,
      told: (what) => {
        count[what] += 1
      },
      broken: (why) => {
        if (gently) broken.push(why)
      },
    }
    const send = () => sender(doors)
    const numbers = Array.from({ length: toDecide }, (_, n) => firstToDecide + n)
    const crowd = Promise.all([
      answering(send(), doors, there.teller),
      photographing(send(), doors, there.photographer, photoOf),
      deciding(send(), doors, there.cookie, numbers),
      moving(send(), doors, there.cookie, custodyPile),
    ])
    // Whoever fails ends the siege; it is told when the crowd is waited for.
    crowd.catch(() => {
      over = true
    })
    let killed = 0
    for (; killed < kills && !over; killed += 1) {
      await busyAgain(killed)
      await pause(chance.real(0, longestMs))
      if (cluster) {
        await cluster.kill()
        await cluster.start()
        continue
      }
      const at = killed % servers.length
      await (gently ? servers[at]!.stop() : servers[at]!.kill())
      servers[at] = await servers[at]!.restart()
    }
    await pause(longestMs)
    over = true
    const [answers, pictures, decisions, moves] = await crowd
    for (const server of servers) await server.stop()
    const told = { answers, photos: pictures, decisions, moves }
    const store = await openStore(settings)
    try {
      return {
        kills: killed,
        acknowledged: {
          answers: answers.length,
          photos: pictures.length,
          decisions: decisions.length,
          moves: moves.length,
        },
        faults: [...broken, ...emptyOf(told), ...(await differences(store, told, photos))],
      }
    } finally {
      await store.close()
    }
  } finally {
    for (const server of servers) await server.remove()
    rmSync(photos, { recursive: true, force: true })
  }
}

type Told = Readonly<Record<What, readonly Acknowledged[]>>

const emptyOf = (told: Told): string[] =>
  Object.entries(told).flatMap(([what, some]) =>
    some.length === 0 ? [`no ${what} were acknowledged`] : [],
  )

/** Where what is kept is not what was told, one after the other. */
function compared(what: What, told: readonly string[], kept: readonly string[]): string[] {
  const lost = told.filter((one) => !kept.includes(one))
  const doubled = kept.filter((one, at) => kept.indexOf(one) !== at)
  const strange = kept.filter((one) => !told.includes(one))
  const found = [
    ...lost.map((one) => `${what}: lost ${one}`),
    ...doubled.map((one) => `${what}: doubled ${one}`),
    ...strange.map((one) => `${what}: kept and never told ${one}`),
  ]
  if (found.length === 0 && told.join() !== kept.join()) return [`${what}: in another order`]
  return found
}

const line = ({ key, value }: Acknowledged): string => `${key} ${value}`

async function differences(store: Store, told: Told, photos: string): Promise<string[]> {
  const { db } = store
  const acts = await db.selectFrom('act').selectAll().orderBy('pile_id').orderBy('seq').execute()
  const standing = await db.selectFrom('standing').selectAll().execute()
  const given = acts
    .filter(({ idem }) => idem.startsWith('siege-'))
    .map(({ idem, act }) => {
      const { question, reply } = JSON.parse(act) as {
        question: string
        reply: { given: string | readonly string[] }
      }
      return { key: idem, question, given: reply.given }
    })
  const answers = given.flatMap(({ key, question, given: value }) =>
    question === 'not_to_cut' ? [line({ key, value: String(value) })] : [],
  )
  const shown = given.filter(({ question }) => question === 'photos')
  const pictures = shown.map(({ key, given: ids }) => line({ key, value: String(ids.length) }))
  const moves = await db
    .selectFrom('custody_move')
    .select(['idem', 'place'])
    .where('idem', 'like', 'siege-%')
    .orderBy('seq')
    .execute()
  const decisions = await db
    .selectFrom('decision')
    .innerJoin('pile', 'pile.id', 'decision.pile_id')
    .select(['pile.number', 'decision.verdict'])
    .where('pile.number', '>=', firstToDecide)
    .orderBy('pile.number')
    .execute()
  return [
    ...compared('answers', told.answers.map(line), answers),
    ...compared('photos', told.photos.map(line), pictures),
    ...compared(
      'decisions',
      told.decisions.map(line),
      decisions.map(({ number, verdict }) => line({ key: String(number), value: verdict })),
    ),
    ...compared(
      'moves',
      told.moves.map(line),
      moves.map(({ idem, place }) => line({ key: idem, value: place ?? '' })),
    ),
    ...gapsIn(acts, standing),
    ...(await missingPhotos(
      store,
      shown.flatMap(({ given: ids }) => ids),
      photos,
    )),
  ]
}

/** Acts of a pile are numbered from 1 without a gap, and what stands was made from the last. */
function gapsIn(
  acts: readonly { readonly pile_id: string; readonly seq: number }[],
  standing: readonly { readonly pile_id: string; readonly seq: number }[],
): string[] {
  return standing.flatMap(({ pile_id: pile, seq: stands }) => {
    const some = acts.filter(({ pile_id }) => pile_id === pile)
    const gap = some.some(({ seq }, at) => seq !== at + 1)
    return [
      ...(gap ? [`acts of ${pile} have a gap`] : []),
      ...(stands === some.length ? [] : [`${pile} stands at ${stands} of ${some.length} acts`]),
    ]
  })
}

/** Each photo that an answer held is a row with its files; the last answer's one is there, and no draft is left. */
async function missingPhotos(
  { db }: Store,
  ids: readonly string[],
  folder: string,
): Promise<string[]> {
  const rows = await db.selectFrom('photo').selectAll().where('question', '=', 'photos').execute()
  const byId = new Map(rows.map((row) => [row.id, row]))
  const faults = ids.flatMap((id) => {
    const row = byId.get(id)
    if (!row) return [`photos: the row of ${id} is lost`]
    const lost = derivedInOrder.filter((one) => !existsSync(join(folder, fileOf(row.hash, one))))
    return lost.map((one) => `photos: ${one} of ${id} is lost`)
  })
  const there = rows.filter(({ removed_at }) => removed_at === null)
  const [last] = there
  if (there.length !== 1 || last!.id !== ids.at(-1) || last!.kept !== 1) {
    const told = there.map(({ id, kept }) => `${id} (${kept === 1 ? 'kept' : 'draft'})`)
    faults.push(`photos: ${ids.at(-1)} should be there alone: ${told.join(', ')}`)
  }
  return faults
}
