import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parse } from 'node-html-parser'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { newId } from '../../src/base/ids.ts'
import { openLog } from '../../src/base/log.ts'
import { addAccount } from '../../src/desk/accounts.ts'
import { frozen } from '../../src/intake/agreement.ts'
import { takePhoto } from '../../src/intake/photos.ts'
import type { KeptQuilt } from '../../src/papers/quilt-kept.ts'
import { makeSafe } from '../../src/photo/safe.ts'
import { openPlans, type Plans } from '../../src/planning/plans.ts'
import { migrate } from '../../src/store/migrate.ts'
import { openStore, type Store } from '../../src/store/open.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { leadTo, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const email = 'marta@lantern-street.example'
const password = 'needle and thimble'
const photographed = { r: 180, g: 40, b: 60 }

const shirt: Script = { kind: said('button-shirt'), size: said('XL') }
const garments: readonly Script[] = [
  { ...shirt, name: said('Choir <b>shirt</b> & "best"'), colours: said(['red']) },
  { ...shirt, name: said('Blue shirt'), colours: said(['blue']) },
  { ...shirt, name: said('Nobody told its colour'), colours: { skipped: true } },
]
const wish: Script = {
  recipient: said('adult'),
  quilts: said('one'),
  quilt_size: said('crib'),
  layout_wish: said('plain-squares'),
}

// One pile for all, and the planning at its leisure: what is tested are its pictures.
let store: Store
let workshop: Workshop
let key: string
let held: Plans['laid'] | null = null
const folder = mkdtempSync(join(tmpdir(), 'pieceworth-quilts-'))

beforeAll(async () => {
  store = await openStore({ dataDir: folder })
  await migrate(store)
  const patient = openPlans({ log: openLog('silent'), firstMs: 30_000, budgetMs: 30_000 })
  const plans: Plans = {
    ...patient,
    of: (pile) => patient.of(pile),
    laid: (job) => (held ? held(job) : patient.laid(job)),
  }
  workshop = await openWorkshop(store, clock, { plans })
  key = await leadTo('review', workshop.conversation, garments, wish)
  const { row } = await workshop.conversation.open(key)
  const place = { pileId: row.id, item: 1, question: 'photos' }
  const look = async (bytes: Uint8Array) => ({
    photo: await makeSafe(bytes),
    look: null,
    focal35: null,
  })
  const measure = () => Promise.reject(new Error('nobody measures here'))
  const lane = { makeSafe, look, measure, waiting: () => 0, close: () => Promise.resolve() }
  const bytes = await sharp({
    create: { width: 800, height: 600, channels: 3, background: photographed },
  })
    .jpeg()
    .toBuffer()
  const photo = await takePhoto(
    { db: store.db, photos: workshop.photos, lane, clock },
    place,
    bytes,
    'garment',
  )
  await workshop.conversation.act(key, {
    act: { act: 'answer', item: 1, question: 'photos', reply: { given: [photo] } },
    idem: newId(),
    seen: row.seq,
  })
  await addAccount(store, clock, { name: 'Marta', email, password, role: 'owner' })
})
afterAll(async () => {
  await workshop?.close()
  await store?.close()
  rmSync(folder, { recursive: true })
})

const get = async (url: string, accept = 'text/html') => {
  const answer = await workshop.app.inject({ method: 'GET', url, headers: { accept } })
  return {
    status: answer.statusCode,
    body: answer.body,
    bytes: answer.rawPayload,
    headers: answer.headers,
  }
}
const root = async (url: string) => parse((await get(url)).body)
const pictureIn = (html: string) =>
  /<svg[^>]*role="img"[\s\S]*?<\/svg><\/div>/.exec(html)?.[0] ?? ''

/** The parts of a picture without its words. */
const shapes = (html: string): string[] =>
  [...pictureIn(html).matchAll(/ d="([^"]*)"/g)].map(([, d]) => d!)

async function withLaying<T>(laying: Plans['laid'], work: () => Promise<T>): Promise<T> {
  held = laying
  try {
    return await work()
  } finally {
    held = null
  }
}

describe('an open pile', () => {
  test('shows on its review how the quilt may look, and what is in it, in both languages', async () => {
    for (const [language, title, pieces] of [
      ['en', 'How your quilt may look', 'pieces'],
      ['es', 'Cómo puede quedar su colcha', 'piezas'],
    ]) {
      await workshop.conversation.speak(key, language!)
      const page = await root(`/i/${key}/review`)
      const section = page.querySelector('[data-quilts]')!
      expect(section.getAttribute('data-quilts')).toBe('drawn')
      expect(section.querySelector('h2')!.text).toBe(title)
      expect(section.querySelector('svg[role=img]')!.getAttribute('aria-label')).toMatch(/6.*9/)
      const counts = section.querySelectorAll('.quilt-count').map((one) => one.text)
      expect(counts.every((one) => one.includes(pieces!.slice(0, 5)))).toBe(true)
      expect(counts.reduce((sum, one) => sum + Number.parseInt(one, 10), 0)).toBe(54)
      expect(section.querySelectorAll('[data-cloth]').length).toBeGreaterThan(0)
    }
    await workshop.conversation.speak(key, 'en')
  })

  test('shows the photo’s cloth by its own address, and leads to where an untold colour is told', async () => {
    const { body } = await get(`/i/${key}/review`)
    const [image] = parse(pictureIn(body)).querySelectorAll('image')
    const href = image!.getAttribute('href')!
    expect(href).toMatch(new RegExp(`^/i/${key}/photos/[^/]+/cloth$`))
    expect((await get(href)).headers['content-type']).toBe('image/jpeg')
    expect(body).toContain(`<a href="/i/${key}/3/colours">`)
    expect(body).toContain('Choir &lt;b>shirt&lt;/b> &amp; &quot;best&quot;')
    expect(pictureIn(body).length).toBeLessThan(20_000)
  })

  test('folds the picture on the page between two garments', async () => {
    await get(`/i/${key}/review`)
    const page = await root(`/i/${key}/garments`)
    const fold = page.querySelector('details[data-quilts]')!
    expect(fold.hasAttribute('open')).toBe(false)
    expect(fold.hasAttribute('data-opens-wide')).toBe(true)
    expect(fold.querySelector('summary')!.text).toBe('How your quilt may look')
    expect(fold.querySelectorAll('svg[role=img]').length).toBe(1)
  })

  test('gives the picture as a PNG with the photo’s cloth in it', async () => {
    const { status, bytes, headers } = await get(`/i/${key}/quilt/1.png`)
    expect([status, headers['content-type']]).toEqual([200, 'image/png'])
    expect(headers['cache-control']).toContain('private')
    const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true })
    expect(info.width).toBe(1200)
    let near = 0
    for (let at = 0; at < data.length; at += info.channels) {
      const [r, g, b] = data.subarray(at, at + 3)
      const off = Math.abs(r! - photographed.r) + Math.abs(g! - photographed.g)
      if (off + Math.abs(b! - photographed.b) < 12) near += 1
    }
    expect(near / (info.width * info.height)).toBeGreaterThan(0.1)
  })

  test('has no other picture, and none for who has not its link', async () => {
    for (const file of ['2.png', '0.png', '1.svg', '..%2F1.png', '999999.png', '1.png.png']) {
      expect([file, (await get(`/i/${key}/quilt/${file}`)).status]).toEqual([file, 404])
    }
    expect((await get(`/i/${'A'.repeat(key.length)}/quilt/1.png`)).status).toBe(404)
  })

  test('says while it is laid that it is, with a way to look again', async () => {
    const still = () => Promise.resolve({ laid: null, working: true })
    await withLaying(still, async () => {
      const page = await root(`/i/${key}/review`)
      const section = page.querySelector('[data-quilts="laying"]')!
      expect(section.hasAttribute('data-unsettled')).toBe(true)
      expect(section.querySelector('.quilt-again a')!.getAttribute('href')).toBe(`/i/${key}/review`)
      expect(section.querySelector('svg')).toBeNull()
      const png = await get(`/i/${key}/quilt/1.png`, 'application/json')
      expect([png.status, JSON.parse(png.body).code]).toEqual([503, 'picture_waiting'])
    })
  })

  test('says where it is not to be had now, and goes on without it', async () => {
    for (const failing of [
      () => Promise.resolve({ laid: null, working: false }),
      () => Promise.reject(new Failure('busy')),
    ]) {
      await withLaying(failing, async () => {
        const { status, body } = await get(`/i/${key}/review`)
        expect(status).toBe(200)
        expect(body).toContain('data-quilts="failed"')
        expect(body).toContain('data-act="confirm-pile"')
        const png = await get(`/i/${key}/quilt/1.png`, 'application/json')
        expect([png.status, JSON.parse(png.body).code]).toEqual([500, 'picture_failed'])
      })
    }
  })

  test('without a garment that can be cut there is nothing to draw, and it says so', async () => {
    const scarf: Script = { kind: said('scarf'), wear: said('shattered') }
    const other = await leadTo('review', workshop.conversation, [scarf], wish)
    const section = (await root(`/i/${other}/review`)).querySelector('[data-quilts="none"]')!
    expect(section.text).toContain('There is nothing to draw yet.')
    expect((await get(`/i/${other}/quilt/1.png`)).status).toBe(404)
  })

  test('that becomes several quilts shows each', async () => {
    const two = {
      ...wish,
      quilts: said('several'),
      quilt_count: { given: { amount: 2, unit: 'quilts' } },
    }
    const other = await leadTo('review', workshop.conversation, garments, two)
    const page = await root(`/i/${other}/review`)
    const headings = page.querySelectorAll('.quilt-drawn > h3').map((one) => one.text)
    expect(headings).toEqual(['Quilt 1 of 2', 'Quilt 2 of 2'])
    const ids = page.querySelectorAll('[id]').map((one) => one.id)
    expect(new Set(ids).size).toBe(ids.length)
    expect((await get(`/i/${other}/quilt/2.png`)).headers['content-type']).toBe('image/png')
  })
})

describe('a confirmed pile', () => {
  let before: string
  beforeAll(async () => {
    before = (await get(`/i/${key}/review`)).body
    await workshop.conversation.confirm(key, newId())
  })

  test('keeps its picture as it was agreed, without addresses', async () => {
    const { row } = await workshop.conversation.open(key)
    const papers = await frozen<{ quilts: readonly KeptQuilt[] }>(store.db, row.id)
    const kept = JSON.stringify(papers!.en!.quilts)
    expect(kept).not.toContain('/photos/')
    expect(kept.length).toBeLessThan(4_000)
    expect(papers!.es!.quilts).toEqual(papers!.en!.quilts)
    const never = () => Promise.reject(new Error('nothing is laid any more'))
    await withLaying(never, async () => {
      for (const url of [`/i/${key}`, `/i/${key}/paper`]) {
        const { body } = await get(url)
        expect(shapes(body).length).toBeGreaterThan(0)
        expect(shapes(body)).toEqual(shapes(before))
      }
      expect((await get(`/i/${key}/quilt/1.png`)).headers['content-type']).toBe('image/png')
      expect((await get(`/i/${key}/quilt/2.png`)).status).toBe(404)
    })
  })

  test('that was confirmed before there was a picture says so', async () => {
    const other = await leadTo('review', workshop.conversation, garments, wish)
    const still = () => Promise.resolve({ laid: null, working: true })
    await withLaying(still, () => workshop.conversation.confirm(other, newId()))
    const section = (await root(`/i/${other}`)).querySelector('[data-quilts]')!
    expect(section.text).toContain('There was no picture yet')
    expect(section.querySelector('a, svg')).toBeNull()
    expect((await get(`/i/${other}/quilt/1.png`)).status).toBe(404)
  })

  test('tells no more where a colour may be told', async () => {
    const { body } = await get(`/i/${key}`)
    expect(body).toContain('We do not know the colour of one garment.')
    expect(body).not.toContain('/3/colours')
  })

  test('lies at the desk piece by piece, each with its garment’s number', async () => {
    const png = '/desk/piles/1/quilt/1.png'
    expect((await get(png)).headers['content-type']).not.toBe('image/png')
    const marta = new Visitor(workshop.app)
    await marta.get('/desk/sign-in')
    await marta.post('/desk/sign-in', { email, password })
    const { body } = await marta.get('/desk/piles/1/plan')
    const section = parse(body).querySelector('[data-quilts="drawn"]')!
    const numbers = section.querySelectorAll('svg text').map((one) => one.text)
    const counts = section
      .querySelectorAll('[data-cloth]')
      .map((one) => [
        one.getAttribute('data-cloth'),
        Number.parseInt(one.querySelector('.quilt-count')!.text, 10),
      ])
    for (const [n, count] of counts) expect(numbers.filter((one) => one === n).length).toBe(count)
    expect(body).toMatch(/href="\/desk\/piles\/1\/photos\/[^/]+\/cloth"/)
    expect((await marta.get(png)).type).toContain('image/png')
  })
})
