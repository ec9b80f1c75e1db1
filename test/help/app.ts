import { mkdtempSync, rmSync } from 'node:fs'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import type { FastifyInstance } from 'fastify'
import { buildApp } from '../../src/app.ts'
import type { Clock } from '../../src/base/clock.ts'
import { type Log, openLog } from '../../src/base/log.ts'
import { openDrafts } from '../../src/desk/drafts.ts'
import { type Conversation, converse } from '../../src/intake/conversation.ts'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { type Knowledge, learn } from '../../src/intake/knowledge.ts'
import { openFolderPhotos } from '../../src/photo/keep.ts'
import type { LabelReader } from '../../src/photo/label-words.ts'
import type { Lane } from '../../src/photo/lane.ts'
import { openPaints } from '../../src/photo/paint.ts'
import { openPlans } from '../../src/planning/plans.ts'
import type { Store } from '../../src/store/open.ts'
import type { Assets } from '../../src/web/assets/manifest.ts'
import { papersFor } from '../../src/web/chat/quilts.ts'
import { liveHere } from './drafts.ts'
import { printingHere } from './printing.ts'
import { toldLane } from './told-lane.ts'
import { unhurried } from './workshop.ts'

/** The shop's own files, as they stand. */
export const flowsFolder = fileURLToPath(new URL('../../flows', import.meta.url))

export const learnAt = (day: string, folder = flowsFolder): Knowledge =>
  learn(readFlowsFolder(folder), day)

/** A time that a test may move on. */
export interface HeldClock {
  now: number
  readonly read: Clock
}

export function heldClock(now: number): HeldClock {
  const held: HeldClock = { now, read: () => held.now }
  return held
}

export interface TestApp {
  readonly url: string
  readonly app: FastifyInstance
  readonly store: Store
  readonly conversation: Conversation
  readonly knowledge: Knowledge
  readonly photosFolder: string
  close(): Promise<void>
}

/** The product in this process, listening, over a store that stays the test's own. */
export async function openApp(
  store: Store,
  {
    clock,
    knowledge = learnAt('2026-06-01'),
    labels,
    log = openLog('silent'),
    assets,
    lane = toldLane(),
    embedOrigins = [],
  }: {
    clock: Clock
    knowledge?: Knowledge
    labels?: LabelReader
    log?: Log
    assets?: Assets
    lane?: Lane
    embedOrigins?: readonly string[]
  },
): Promise<TestApp> {
  const photosFolder = mkdtempSync(join(tmpdir(), 'pieceworth-photos-'))
  const photos = await openFolderPhotos(photosFolder)
  // Most tests look at pages, not at how they are dressed: nothing is bundled for them.
  const undressed: Assets = {
    folder: pathToFileURL(`${photosFolder}/`),
    path: (name) => `/assets/${name}`,
  }
  const paints = openPaints()
  const plans = openPlans({ log })
  const live = liveHere()
  const drafts = openDrafts({ store, clock, log, live: live.files, folders: [] })
  const papers = papersFor({ knowledge, clock, plans })
  const conversation = converse(store, knowledge, clock, papers)
  const app = await buildApp({
    store,
    photos,
    lane,
    ...(labels && { labels }),
    paints,
    plans,
    printer: printingHere,
    knowledge,
    live,
    drafts,
    conversation,
    assets: assets ?? undressed,
    log,
    clock,
    embedOrigins,
    publicUrl: null,
    pressure: unhurried,
  })
  await app.listen({ port: 0, host: '127.0.0.1' })
  const { port } = app.server.address() as AddressInfo
  return {
    url: `http://127.0.0.1:${port}`,
    app,
    store,
    conversation,
    knowledge,
    photosFolder,
    close: async () => {
      await app.close()
      await lane.close()
      await paints.close()
      await plans.close()
      await drafts.close()
      rmSync(photosFolder, { recursive: true, force: true })
    },
  }
}
