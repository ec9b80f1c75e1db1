import { afterEach, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import { decidePile } from '../../src/desk/decisions.ts'
import { draftsKept, openDrafts } from '../../src/desk/drafts.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { liveFiles } from '../help/drafts.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, leadTo, openWorkshop, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const password = 'needle and thimble'
const shirt = { kind: said('button-shirt'), size: said('XL') }
const about = { layout_wish: said('plain-squares'), quilt_size: said('throw') }
const ratesFile = 'rates/2026-01-01.yaml'

const dearer = () =>
  liveFiles()
    .get(ratesFile)!
    .toString('utf8')
    .replace('  button-shirt: 600\n', '  button-shirt: 700\n')

oneStore('files that are tried', (store) => {
  let workshop: Workshop
  afterEach(() => workshop?.close())

  const owner = async (email = 'owner@lantern-street.example') => {
    const { id } = await addAccount(store(), clock, { email, name: 'Ida', role: 'owner', password })
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email, password })
    return { id, visitor }
  }

  /** The draft's page once it is compared. */
  const settled = async (visitor: Visitor, path: string) => {
    for (let tries = 0; tries < 60; tries += 1) {
      const { body } = await visitor.get(path)
      if (!body.includes('It is being compared')) return body
    }
    throw new Error('the draft is never compared')
  }

  test('a dearer teardown is told pile by pile; an accepted pile is named as untouched', async () => {
    workshop = await openWorkshop(store(), clock)
    const { id: who, visitor } = await owner()
    await confirmPile(workshop.conversation, [shirt, shirt], about)
    await leadTo('review', workshop.conversation, [shirt], about)
    const key = await confirmPile(workshop.conversation, [shirt], about)
    const { row } = await workshop.conversation.open(key)
    await decidePile(store(), clock, row.id, { verdict: 'accept', reason: '', who, seen: 0 })

    const form = await visitor.get(`/desk/files/try?name=${ratesFile}`)
    expect(form.body).toContain('  button-shirt: 600\n')
    const sent = await visitor.post('/desk/files/drafts', {
      name: ratesFile,
      text: dearer().replaceAll('\n', '\r\n'),
      base: '',
    })
    expect(sent.status).toBe(303)
    const page = await settled(visitor, sent.to!)
    const [row1] = await store().db.selectFrom('flow_draft').selectAll().execute()
    const { report } = JSON.parse(row1!.report!)
    expect(report).toMatchObject({
      total: 2,
      cutOff: false,
      counts: { piles: 2, garments: 3, changed: 2, regraded: 0, repriced: 2, plans: 0, fails: 0 },
      agreed: [3],
      changes: [
        { number: 1, price: { when: 'at-once', lines: [{ code: 'teardown', byMinor: 200 }] } },
        { number: 2, price: { when: 'at-once', lines: [{ code: 'teardown', byMinor: 100 }] } },
      ],
    })
    expect(page).toContain('+$2.00')
    expect(page).toContain('Accepted and not touched by any file')
    const other = await owner('second@lantern-street.example')
    expect((await other.visitor.get('/desk/files')).body).toContain(sent.to)
    const file = await visitor.get(`${sent.to}/file?name=${ratesFile}`)
    expect(file.body).toBe(dearer())
    expect(liveFiles().get(ratesFile)!.toString('utf8'), 'what applies stays').toContain(
      'button-shirt: 600',
    )
    // Every statement is proven anew over the draft.
  }, 240_000)

  test('what the start would refuse is told by file and line, escaped', async () => {
    workshop = await openWorkshop(store(), clock)
    const { visitor } = await owner()
    await visitor.get('/desk/files/try')
    const sent = await visitor.post('/desk/files/drafts', {
      name: 'tables/flags.yaml',
      text: 'table: flags\nhit: collect\nreads: [<script>alert(1)</script>]\ngives: []\nrows: []\n',
      base: '',
    })
    const page = await settled(visitor, sent.to!)
    expect(page).toContain('It does not hold')
    expect(page).toMatch(/tables\/flags\.yaml, line \d+/)
    expect(page).not.toContain('<script>alert')
  }, 120_000)

  test('a name that is none of ours, and far too much text, come back with what was typed', async () => {
    workshop = await openWorkshop(store(), clock)
    const { visitor } = await owner()
    const names = [
      '../../etc/passwd',
      '/etc/passwd',
      'rates/../x.yaml',
      'rates/.yaml',
      'notes.txt',
      '',
    ]
    for (const name of names) {
      await visitor.get('/desk/files/try')
      const sent = await visitor.post('/desk/files/drafts', { name, text: 'from: x', base: '' })
      expect([name, sent.status]).toEqual([name, 422])
      expect(sent.body).toContain('from: x')
    }
    await visitor.get('/desk/files/try')
    const long = await visitor.post('/desk/files/drafts', {
      name: 'rates/2027-01-01.yaml',
      text: '李'.repeat(200_001),
      base: '',
    })
    expect(long.status).toBe(413)
    expect((await visitor.get('/desk/files/view?name=../package.json')).status).toBe(404)
    expect(await store().db.selectFrom('flow_draft').select('id').execute()).toEqual([])
  })

  test('drafts are kept, the newest few; one whose time is up says so', async () => {
    workshop = await openWorkshop(store(), clock)
    const { id: who } = await owner()
    let now = clock()
    const drafts = openDrafts({
      store: store(),
      clock: () => ++now,
      log: openLog('silent'),
      live: liveFiles(),
      folders: [],
      takes: 0,
    })
    const ids: string[] = []
    for (let n = 0; n < draftsKept + 3; n += 1) {
      ids.push(await drafts.begin(who, [{ name: ratesFile, text: `# ${n}` }]))
    }
    await drafts.settled(ids.at(-1)!, 20_000)
    const rows = await store().db.selectFrom('flow_draft').selectAll().orderBy('at').execute()
    expect(rows.map(({ id }) => id)).toEqual(ids.slice(3))
    expect(new Set(rows.map(({ state }) => state))).toEqual(new Set(['failed']))
    await drafts.close()
  })
})
