// Leaves a data folder and a PostgreSQL dump of this release in test/releases/<version>/, for the tests of every
// later one:
//
//   createdb release && DATABASE_URL=postgres://…/release node --import ./test/help/sources.mjs test/releases/make.ts
//
// A release that is there is never made again. Everybody in it is invented.
import { execFileSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { newId } from '../../src/base/ids.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import { decidePile } from '../../src/desk/decisions.ts'
import { openCustody } from '../../src/desk/ledger.ts'
import { takePhoto } from '../../src/intake/photos.ts'
import { derivedInOrder, fileOf } from '../../src/photo/keep.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store, type StoreSettings, storeFile } from '../../src/store/open.ts'
import { plain } from '../help/pictures.ts'
import { toldLane } from '../help/told-lane.ts'
import { leadTo, openWorkshop, said } from '../help/workshop.ts'

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }
const folder = join('test/releases', version)
const photosFolder = join(folder, 'photos')
const now = Date.UTC(2026, 5, 1, 12)
const clock = () => now

/** Piles in each state that later releases must go on with; gives the keys of their links. */
async function fill(store: Store): Promise<object> {
  await migrate(store)
  const lane = toldLane()
  const shop = await openWorkshop(store, clock, { lane })
  try {
    await addAccount(store, clock, {
      email: 'owner@lantern-street.example',
      name: 'Ines Vidal',
      role: 'owner',
      password: 'bobbins and pins',
    })
    const review = await leadTo('review', shop.conversation, [{}])
    const confirmed = await leadTo('confirmed', shop.conversation, [{}, {}])
    const accepted = await leadTo('confirmed', shop.conversation, [{}])
    const begun = await shop.conversation.start('es')
    const answer = { act: 'answer', item: 0, question: 'recipient', reply: said('adult') } as const
    await shop.conversation.act(begun, { act: answer, idem: newId(), seen: 0 })
    const { row } = await shop.conversation.open(begun)
    await takePhoto(
      { db: store.db, photos: shop.photos, lane, clock },
      { pileId: row.id, item: 1, question: 'photos' },
      await plain(256, 256).jpeg().toBuffer(),
      'other',
    )
    const { hash } = await store.db.selectFrom('photo').select('hash').executeTakeFirstOrThrow()
    mkdirSync(photosFolder, { recursive: true })
    for (const derived of derivedInOrder) {
      const bytes = await shop.photos.open(hash, derived)
      writeFileSync(join(photosFolder, fileOf(hash, derived)), bytes)
    }
    const { id: who } = await store.db.selectFrom('account').select('id').executeTakeFirstOrThrow()
    const { row: taken } = await shop.conversation.open(accepted)
    await decidePile(store, clock, taken.id, { verdict: 'accept', reason: '', who, seen: 0 })
    await openCustody({ store, clock }, taken.id, who)
    return { at: now, begun, review, confirmed, accepted }
  } finally {
    await shop.close()
    await lane.close()
  }
}

async function filled<T>(settings: StoreSettings, after: (store: Store) => Promise<T>) {
  const store = await openStore(settings)
  try {
    const keys = await fill(store)
    await after(store)
    return keys
  } finally {
    await store.close()
  }
}

const databaseUrl = process.env.DATABASE_URL
if (!databaseUrl) throw new Error('name an empty database in DATABASE_URL')
if (existsSync(folder)) throw new Error(`${folder} is there`)
const dataDir = mkdtempSync(join(tmpdir(), 'pieceworth-release-'))
const sqlite = await filled({ dataDir }, async () => {})
const postgres = await filled({ databaseUrl, dataDir }, async () => {})
const dump = execFileSync(
  'pg_dump',
  ['--inserts', '--rows-per-insert=50', '--no-owner', '--no-privileges', databaseUrl],
  { encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 },
)
const packed = (name: string, bytes: string | Buffer) =>
  writeFileSync(join(folder, `${name}.gz`), gzipSync(bytes, { level: 9 }))
packed(storeFile, readFileSync(join(dataDir, storeFile)))
packed('postgres.sql', dump)
writeFileSync(join(folder, 'piles.json'), `${JSON.stringify({ sqlite, postgres }, undefined, 2)}\n`)
rmSync(dataDir, { recursive: true })
