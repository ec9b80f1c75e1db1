import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { buildApp } from './app.ts'
import { systemClock } from './base/clock.ts'
import { Failure } from './base/failures.ts'
import { openLog } from './base/log.ts'
import type { Config } from './config.ts'
import { openToOthers, useDataFolder } from './data-folder.ts'
import { openDrafts } from './desk/drafts.ts'
import { reminding } from './desk/mail/reminders.ts'
import { openSender } from './desk/mail/sender.ts'
import { ownerLink } from './desk/once-links.ts'
import { openSweeper } from './desk/sweep.ts'
import { converse } from './intake/conversation.ts'
import { readFlowFiles } from './intake/flow-files.ts'
import { checkOpenVersions } from './intake/flow-versions.ts'
import { learnProven } from './intake/learn.ts'
import { proofFolders } from './intake/proofs.ts'
import { fillWaiting } from './intake/waiting.ts'
import { refuseUnfinished } from './keeping/move.ts'
import { openPurger } from './keeping/purge.ts'
import { openMailFolder, openSmtp } from './mail/post.ts'
import { drawings } from './papers/drawings/index.ts'
import { openFolderPhotos } from './photo/keep.ts'
import { openBucketPhotos } from './photo/keep-bucket.ts'
import { openLabelReader } from './photo/label-lane.ts'
import { openLane } from './photo/lane.ts'
import { openPaints } from './photo/paint.ts'
import { openPlans } from './planning/plans.ts'
import { holdFolder } from './store/lock.ts'
import { migrate } from './store/migrate.ts'
import { openStore } from './store/open.ts'
import { openAssets } from './web/assets/manifest.ts'
import { papersFor } from './web/chat/quilts.ts'
import { openPrinter } from './web/printer.ts'

/** A server that answers; `close` ends it once what is under way is done. */
export interface Serving {
  readonly url: string
  /** The link that makes the owner's account; null where there is one. */
  readonly ownerUrl: string | null
  close(): Promise<void>
}

const today = (at: number): string => new Date(at).toISOString().slice(0, 10)

/** What stands against listening, by the setting that is to be changed. */
function cannotListen(cause: NodeJS.ErrnoException): never {
  const why: Readonly<Record<string, readonly [setting: string, message: string]>> = {
    EADDRINUSE: ['PORT', 'another program listens there already'],
    EACCES: ['PORT', 'this account may not listen there; take one from 1024 up'],
    EADDRNOTAVAIL: ['HOST', 'this machine has no such address'],
    ENOTFOUND: ['HOST', 'no address is known by this name'],
  }
  const [setting, message] = why[cause.code ?? ''] ?? []
  if (!setting || !message) throw cause
  throw new Failure('setting_invalid', { setting, message }, { cause })
}

/** Opens the store, checks the flows, and listens. Throws a Failure that says which step refused. */
export async function serve(config: Config): Promise<Serving> {
  const log = openLog(config.logLevel)
  const clock = systemClock
  const started = clock()
  useDataFolder(config.dataDir)
  const files = readFlowFiles(config.flowsDir)
  const { knowledge, proof } = await learnProven(files, {
    drawings: () => Promise.resolve(Object.keys(drawings)),
    today: today(clock()),
    folders: proofFolders(config.dataDir),
  })
  log.info(
    proof.found
      ? `proof of ${proof.name} found`
      : `proven now, in ${clock() - started} ms: ${proof.name}`,
  )
  const hold = config.databaseUrl ? null : holdFolder(config.dataDir)
  const store = await openStore({
    ...(config.databaseUrl && { databaseUrl: config.databaseUrl }),
    dataDir: config.dataDir,
  })
  await migrate(store)
  await refuseUnfinished(store.db)
  await checkOpenVersions(store.db, knowledge)
  const filled = await fillWaiting(store.db)
  if (filled > 0) log.info({ piles: filled }, 'the queue knows of piles from before')

  const { photosAt } = config
  const photos = await ('bucket' in photosAt
    ? openBucketPhotos(photosAt.bucket)
    : openFolderPhotos(photosAt.folder))
  const kept = [config.dataDir, ...('folder' in photosAt ? [photosAt.folder] : [])]
  for (const folder of openToOthers(kept))
    log.warn(
      { folder },
      'other accounts of this machine can look into it: chmod 700 keeps them out',
    )
  const lane = openLane({ log })
  const labels = openLabelReader({
    onAbsent: (why) => log.warn({ why }, 'labels cannot be read on photos here: they are typed'),
  })
  const paints = openPaints()
  const plans = openPlans({ log })
  const printer = openPrinter({ log })
  const drafts = openDrafts({
    store,
    clock,
    log,
    live: files,
    folders: proofFolders(config.dataDir),
  })
  const papers = papersFor({ knowledge, clock, plans })
  const conversation = converse(store, knowledge, clock, papers)
  const app = await buildApp({
    store,
    photos,
    lane,
    labels,
    paints,
    plans,
    printer,
    knowledge,
    live: { files, folder: config.flowsDir, proof, since: started },
    drafts,
    conversation,
    assets: openAssets(),
    log,
    clock,
    embedOrigins: config.embedOrigins,
    publicUrl: config.publicUrl ?? null,
    metricsToken: config.metricsToken ?? null,
    quotas: config.quotas,
    trustedProxies: config.trustedProxies,
  })
  await app.listen({ port: config.port, host: config.host }).catch(cannotListen)
  const { port } = app.server.address() as AddressInfo
  const host = config.host.includes(':') ? `[${config.host}]` : config.host
  const url = config.publicUrl ?? `http://${host}:${port}`
  const token = await ownerLink(store, clock)
  const post = config.smtpUrl
    ? openSmtp(config.smtpUrl)
    : openMailFolder(join(config.dataDir, 'mail'))
  const mails = { store, knowledge, clock, log }
  const sender = openSender({ ...mails, post, url, quotas: config.mailQuotas }, reminding(mails))
  sender.start()
  const sweeper = openSweeper({ store, knowledge, clock, log })
  const purger = openPurger({
    store,
    photos,
    keeping: knowledge.shop.keeping,
    dataDir: config.dataDir,
    clock,
    log,
  })

  return {
    url,
    ownerUrl: token && `${url}/desk/welcome/${token}`,
    close: async () => {
      app.leaving.now = true
      await pause(config.leaveMs)
      await app.close()
      await sender.close()
      await sweeper.close()
      await purger.close()
      await lane.close()
      await labels.close()
      await paints.close()
      await plans.close()
      await printer.close()
      await drafts.close()
      await store.close()
      hold?.release()
    },
  }
}
