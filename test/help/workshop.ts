import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { buildApp } from '../../src/app.ts'
import type { Clock } from '../../src/base/clock.ts'
import { newId } from '../../src/base/ids.ts'
import { openLog } from '../../src/base/log.ts'
import { openDrafts } from '../../src/desk/drafts.ts'
import type { Act, Question, Reply } from '../../src/flow/grammar.ts'
import { offered } from '../../src/flow/reply.ts'
import { type Conversation, converse } from '../../src/intake/conversation.ts'
import { readFlowsFolder } from '../../src/intake/flows-folder.ts'
import { type Knowledge, learn } from '../../src/intake/knowledge.ts'
import { rules } from '../../src/intake/rules.ts'
import { openFolderPhotos, type PhotoStore } from '../../src/photo/keep.ts'
import type { Lane } from '../../src/photo/lane.ts'
import { openPaints } from '../../src/photo/paint.ts'
import type { Plans } from '../../src/planning/plans.ts'
import type { Store } from '../../src/store/open.ts'
import { type Assets, assetsFolder } from '../../src/web/assets/manifest.ts'
import { papersFor } from '../../src/web/chat/quilts.ts'
import type { PressureLimits } from '../../src/web/pressure.ts'
import type { QuotaSettings } from '../../src/web/quotas.ts'
import { liveHere } from './drafts.ts'
import { printingHere } from './printing.ts'

export type App = Awaited<ReturnType<typeof buildApp>>

/** A whole product over a store, in this process; it does not listen until asked. */
export interface Workshop {
  readonly app: App
  readonly knowledge: Knowledge
  readonly conversation: Conversation
  readonly photos: PhotoStore
  readonly close: () => Promise<void>
}

/** A planning that never comes to a plan: pages count roughly, and no thread is started for them. */
const restingPlans: Plans = {
  of: async () => ({ best: null, working: false }),
  known: () => null,
  warm: () => {},
  cutLists: async (_, cuts) => ({ lists: cuts.map(() => null), working: false }),
  laid: async () => ({ laid: null, working: false }),
  waiting: () => 0,
  close: async () => {},
}

const noPhoto = () => Promise.reject(new Error('no photo is sent in these tests'))
const noLane: Lane = {
  makeSafe: noPhoto,
  look: noPhoto,
  measure: noPhoto,
  waiting: () => 0,
  close: () => Promise.resolve(),
}

const plainAssets: Assets = { folder: assetsFolder, path: (name) => `/assets/${name}` }

let known: Knowledge | null = null
const flows = new URL('../../flows', import.meta.url).pathname
const knowledgeOf = (): Knowledge => (known ??= learn(readFlowsFolder(flows), '2026-06-01'))

export interface WorkshopOptions {
  readonly assets?: Assets
  readonly publicUrl?: string | null
  /** Absent: no photo can be sent. It stays the test's own. */
  readonly lane?: Lane
  /** Closed with the workshop; absent, none that comes to a plan. */
  readonly plans?: Plans
  readonly metricsToken?: string | null
  readonly quotas?: QuotaSettings
  readonly pressure?: PressureLimits
}

export async function openWorkshop(
  store: Store,
  clock: Clock,
  {
    assets = plainAssets,
    publicUrl = null,
    lane = noLane,
    plans = restingPlans,
    metricsToken = null,
    quotas,
    pressure,
  }: WorkshopOptions = {},
): Promise<Workshop> {
  const knowledge = knowledgeOf()
  const folder = mkdtempSync(join(tmpdir(), 'pieceworth-photos-'))
  const photos = await openFolderPhotos(folder)
  const log = openLog('silent')
  const paints = openPaints()
  const live = liveHere()
  const drafts = openDrafts({ store, clock, log, live: live.files, folders: [] })
  const papers = papersFor({ knowledge, clock, plans })
  const conversation = converse(store, knowledge, clock, papers)
  const app = await buildApp({
    store,
    photos,
    lane,
    paints,
    plans,
    printer: printingHere,
    knowledge,
    live,
    drafts,
    conversation,
    assets,
    log,
    clock,
    embedOrigins: [],
    publicUrl,
    metricsToken,
    ...(quotas && { quotas }),
    pressure: pressure ?? unhurried,
  })
  return {
    app,
    knowledge,
    conversation,
    photos,
    close: async () => {
      await app.close()
      await plans.close()
      await drafts.close()
      await paints.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** The test and the server share an event loop, and a machine may be slow. */
export const unhurried: PressureLimits = { requests: 400, lagMs: Number.POSITIVE_INFINITY }

/** Replies by question id; what is not named is answered plainly. */
export type Script = Readonly<Record<string, Reply>>

export const said = (value: string | readonly string[]): Reply => ({ given: value })

function plainReply(question: Question, options: readonly string[]): Reply {
  switch (question.kind) {
    case 'choice':
      return said(options[0]!)
    case 'many':
      return said([options.includes('none') ? 'none' : options[0]!])
    case 'symbols':
      return said([options[0]!])
    case 'confirm':
      return said('yes')
    case 'number':
      return { given: { amount: question.min ?? 1, unit: question.unit ?? '' } }
    case 'label':
      return { given: { found: 'words', words: '100 % cotton. Warm iron.', iron: null } }
    case 'contact':
      return { given: { name: 'Ana Ruiz', email: 'ana@ruiz.example', phone: '+1 555 0100' } }
    default:
      return { skipped: true }
  }
}

/** No intake of a test is longer: one that does not come to its end says where it stands. */
const mostSteps = 400

/** Leads an intake from hello to a confirmed pile. Returns the key of its link. */
export const confirmPile = (
  conversation: Conversation,
  garments: readonly Script[],
  about: Script = {},
): Promise<string> => leadTo('confirmed', conversation, garments, about)

/** Leads an intake from hello to its review, or on until it is confirmed. */
export async function leadTo(
  goal: 'review' | 'confirmed',
  conversation: Conversation,
  garments: readonly Script[],
  about: Script = {},
): Promise<string> {
  return leadOn(goal, conversation, await conversation.start('en'), garments, about)
}

/** Leads an intake on from where it stands; `garments`: all of the pile's, those that are there too. */
export async function leadOn(
  goal: 'review' | 'confirmed',
  conversation: Conversation,
  key: string,
  garments: readonly Script[],
  about: Script = {},
): Promise<string> {
  const act = (one: Act) => conversation.act(key, { act: one, idem: newId(), seen: 0 })
  let added = (await conversation.open(key)).pile.followed.items.length
  for (let step = 0; step < mostSteps; step++) {
    const { row, pile } = await conversation.open(key)
    const { place } = pile.followed
    if (row.status !== 'open' || (goal === 'review' && place.at === 'end')) return key
    if (place.at === 'question') {
      const { question, item } = place
      const script = item === 0 ? about : garments[item - 1]!
      const walk =
        item === 0
          ? pile.followed.parts.find(({ part }) => part === place.part)
          : pile.followed.items.find(({ n }) => n === item)
      const options = offered(question, walk!.replies, rules)
      const reply = script[question.id] ?? plainReply(question, options)
      await act({ act: 'answer', item, question: question.id, reply })
    } else if (place.at === 'gather' && added < garments.length) {
      added += 1
      await act({ act: 'add', item: added })
    } else {
      await conversation.confirm(key, newId())
    }
  }
  const { pile } = await conversation.open(key)
  throw new Error(`the intake does not get beyond ${JSON.stringify(pile.followed.place)}`)
}
