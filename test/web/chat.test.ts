import { readFileSync } from 'node:fs'
import sharp from 'sharp'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { heldClock, learnAt, openApp, type TestApp } from '../help/app.ts'
import {
  addGarment,
  answerAll,
  closingAnswers,
  pileAnswers,
  sendFiles,
  shirt,
} from '../help/chat.ts'
import { plain, segments, withSegment } from '../help/pictures.ts'
import { eachStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const day = 24 * 60 * 60 * 1000

const hrefOf = (walker: Walker, question: string): string =>
  walker.root
    .querySelectorAll('a')
    .map((link) => link.getAttribute('href') ?? '')
    .find((href) => href.endsWith(`/${question}`))!

const said = (walker: Walker): Record<string, string> =>
  Object.fromEntries(
    walker.root.querySelectorAll('dl.answers > div').map((row) => {
      const words = row.querySelector('dd span')?.text ?? ''
      return [row.querySelector('a')?.getAttribute('href')?.split('/').at(-1) ?? '', words.trim()]
    }),
  )

eachStore('the conversation', (store) => {
  let app: TestApp
  let walker: Walker
  beforeAll(async () => {
    app = await openApp(store(), { clock: clock.read })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    clock.now = Date.UTC(2026, 5, 1, 12)
    walker = await new Walker(app.url).start()
  })

  const acts = () =>
    app.store.db.selectFrom('act').select(['seq', 'idem', 'act']).orderBy('seq').execute()

  test('a script that prefers it gets the next page in place of the way to it (RFC 7240)', async () => {
    const form = walker.root.querySelector('form[data-question]')!
    const hidden = form
      .querySelectorAll('input[type=hidden]')
      .map((input) => [input.getAttribute('name')!, input.getAttribute('value')!])
    const send = () =>
      fetch(app.url + form.getAttribute('action'), {
        method: 'POST',
        body: new URLSearchParams([...hidden, ['act', 'answer'], ['value', 'adult']]),
        headers: { accept: 'text/html', prefer: 'return=representation' },
        redirect: 'manual',
      })
    // Sent twice it is taken once, and leads on both times.
    for (const answer of [await send(), await send()]) {
      expect(answer.status).toBe(200)
      expect(answer.headers.get('content-location')).toBe(walker.pilePath)
      expect(answer.headers.get('preference-applied')).toBe('return=representation')
      expect(await answer.text()).toContain('data-question="quilts"')
    }
    expect((await acts()).filter(({ act }) => act.includes('recipient'))).toHaveLength(1)
  })

  test('pages travel compressed, but not those to which a cookie is the key', async () => {
    const encodingOf = async (path: string, encoding: string) => {
      const answer = await fetch(app.url + path, { headers: { 'accept-encoding': encoding } })
      expect(await answer.text()).toContain('<html lang="en">')
      return answer.headers.get('content-encoding')
    }
    expect(await encodingOf(walker.pilePath, 'br, gzip')).toBe('br')
    expect(await encodingOf(walker.pilePath, 'gzip')).toBe('gzip')
    expect(await encodingOf(walker.pilePath, 'identity')).toBeNull()
    expect(await encodingOf('/desk/sign-in', 'br, gzip')).toBeNull()
  })

  test('an answer that is changed keeps the later ones that still make sense, and asks the others again', async () => {
    await answerAll(walker, pileAnswers)
    await addGarment(walker, shirt)
    await walker.open(hrefOf(walker, 'pattern'))
    expect(walker.question?.id).toBe('pattern')
    await walker.send({ value: 'single' })
    // A single picture is asked about; the answers behind it stay.
    expect(walker.question?.id).toBe('print_make')
    await answerAll(walker, { print_make: { value: 'screen' }, graphic_size: { value: '9 1/2' } })
    expect(walker.question).toBeNull()
    expect(said(walker)).toMatchObject({ graphic_size: '9 1/2 inches', details: 'None of these' })
    await walker.open(hrefOf(walker, 'pattern'))
    await walker.send({ value: 'solid' })
    expect(walker.question).toBeNull()
    expect(Object.keys(said(walker))).not.toContain('graphic_size')
  })

  test('a question left to a person leaves a note for the desk, and the conversation goes on', async () => {
    await answerAll(walker, pileAnswers)
    await addGarment(walker, shirt, 'wear')
    await walker.send({ act: 'ask', note: 'Is a worn collar holes?' })
    expect(walker.question?.id).toBe('history')
    expect(await app.store.db.selectFrom('note').selectAll().execute()).toMatchObject([
      { item: 1, question: 'wear', text: 'Is a worn collar holes?', settled_at: null },
    ])
    await answerAll(walker, shirt)
    expect(walker.grades.get(1)).toBe('eyes')
    expect(said(walker).wear).toContain('Is a worn collar holes?')
  })

  test('a garment can be copied, left out and put back, and keeps its number', async () => {
    await answerAll(walker, pileAnswers)
    await addGarment(walker, { ...shirt, name: { value: 'Blue one' } })
    await walker.press('copy-garment', 1)
    // Photos show one garment alone: the copy is asked for its own.
    expect(walker.question?.id).toBe('photos')
    await answerAll(walker, {})
    expect(walker.grades.get(1)).toBeDefined()
    expect(walker.grades.get(2)).toBe(walker.grades.get(1))
    await walker.press('drop-garment', 1)
    expect([...walker.grades.keys()]).toContain(2)
    const rows = () =>
      app.store.db.selectFrom('garment').select(['item', 'dropped']).orderBy('item').execute()
    expect(await rows()).toEqual([
      { item: 1, dropped: 1 },
      { item: 2, dropped: 0 },
    ])
    await walker.press('restore-garment', 1)
    await walker.press('copy-garment', 1)
    await answerAll(walker, {})
    expect(await rows()).toMatchObject([{ dropped: 0 }, { dropped: 0 }, { item: 3 }])
  })

  test('two garments added at the same moment both come in', async () => {
    await answerAll(walker, pileAnswers)
    const [one, two] = [new Walker(app.url), new Walker(app.url)]
    await Promise.all([one.open(walker.pilePath), two.open(walker.pilePath)])
    await Promise.all([one.press('add-garment'), two.press('add-garment')])
    expect([one.status, two.status]).toEqual([200, 200])
    expect((await acts()).slice(-2).map(({ act }) => JSON.parse(act))).toEqual([
      { act: 'add', item: 1 },
      { act: 'add', item: 2 },
    ])
  })

  test('who left comes back by the link to the same question', async () => {
    await answerAll(walker, pileAnswers, 'layout_wish')
    await walker.open(`${walker.pilePath}/keep`)
    const link = walker.text('.keep-link a')
    const later = await new Walker(app.url).open(link)
    expect(later.question?.id).toBe('layout_wish')
    expect(said(later)).toMatchObject({ quilt_size: 'Throw, for a sofa' })
  })

  test('the link works for as long as it says, and not longer', async () => {
    clock.now += app.knowledge.shop.link_days * day - 1
    expect((await walker.open(walker.pilePath)).status).toBe(200)
    clock.now += 1
    expect((await walker.open(walker.pilePath)).status).toBe(410)
  })

  test('the language changes under way, and nothing that was said does', async () => {
    await answerAll(walker, pileAnswers, 'at_hand')
    await walker.open(`${walker.pilePath}/language/es`)
    expect(walker.root.querySelector('html')?.getAttribute('lang')).toBe('es')
    expect(walker.question?.id).toBe('at_hand')
    expect(Object.keys(said(walker))).toEqual(['recipient', 'quilts', 'quilt_size', 'layout_wish'])
    await walker.open(`${walker.pilePath}/language/xx`)
    expect(walker.status).toBe(404)
  })

  test('a pile without a garment cannot be confirmed', async () => {
    await answerAll(walker, pileAnswers)
    const { pilePath } = walker
    await walker.open(`${pilePath}/confirm`, { method: 'POST', body: new URLSearchParams() })
    expect(walker.status).toBe(409)
    expect(walker.text('.help')).toContain('Add at least one garment first')
  })

  describe('a confirmed pile', () => {
    const confirmed = async () => {
      await answerAll(walker, pileAnswers)
      await addGarment(walker, { ...shirt, name: { value: 'Green check' } })
      await walker.press('confirm-pile')
      await answerAll(walker, closingAnswers)
      await walker.press('confirm-pile')
      expect(walker.confirmed).toBe(true)
    }

    test('shows its papers as they were, even where a later price and words say otherwise', async () => {
      await confirmed()
      const plain = (html: string) => html.replaceAll(/name="idem" value="[^"]*"/g, '')
      const before = plain(walker.html)
      const dearer = learnAt('2026-06-01')
      const rates = dearer.rates.map((one) => ({ ...one, deposit_percent: 99 }))
      const layouts = dearer.layouts.slice(0, 1)
      const other = await openApp(store(), {
        clock: clock.read,
        knowledge: { ...dearer, rates, layouts },
      })
      try {
        const later = await new Walker(other.url).open(walker.pilePath)
        expect(plain(later.html).replaceAll(other.url, app.url)).toBe(before)
      } finally {
        await other.close()
      }
    })

    test('has its paper in the language that is asked for later', async () => {
      await confirmed()
      const likely = walker.text('.estimate .likely')
      await walker.open(`${walker.pilePath}/language/es`)
      expect(walker.confirmed).toBe(true)
      expect(walker.text('.estimate .likely')).not.toBe(likely)
      expect(walker.text('.packed-name')).toContain('Green check')
      await walker.open(`${walker.pilePath}/paper`)
      expect(walker.root.querySelector('body')?.classList.contains('look-paper')).toBe(true)
    })

    test('takes no more answers, and says whom to write to', async () => {
      await confirmed()
      const { pilePath } = walker
      const count = (await acts()).length
      const late = { act: 'answer', value: 'queen' }
      await walker.open(`${pilePath}/0/quilt_size`, {
        method: 'POST',
        body: new URLSearchParams(late),
      })
      expect(walker.status).toBe(409)
      expect(walker.text('.help')).toContain('write to us')
      expect(await acts()).toHaveLength(count)
      await walker.open(`${pilePath}/0/quilt_size`)
      expect(walker.confirmed).toBe(true)
    })

    test('the first press of "confirm", sent once more at the end, confirms nothing', async () => {
      await answerAll(walker, pileAnswers)
      await addGarment(walker, shirt)
      const { pilePath } = walker
      const idem = 'first-press-1'
      const press = () =>
        walker.open(`${pilePath}/confirm`, { method: 'POST', body: new URLSearchParams({ idem }) })
      await press()
      await answerAll(walker, closingAnswers)
      await press()
      expect(walker.confirmed).toBe(false)
      await walker.press('confirm-pile')
      expect(walker.confirmed).toBe(true)
    })
  })

  describe('a photo', () => {
    // EXIF 2.32, an APP1 segment (marker FFE1) that begins with "Exif"; the text stands for a place.
    const exif = Buffer.from('Exif\0\0somewhere secret')
    const file = async () => ({
      bytes: withSegment(await plain(700, 500).jpeg().toBuffer(), 0xe1, exif),
      name: 'my house.jpg',
      type: 'image/jpeg',
    })
    const atPhotos = async () => {
      await answerAll(walker, pileAnswers)
      await addGarment(walker, shirt, 'photos')
    }
    const photo = async (path: string) => {
      const response = await fetch(app.url + path)
      return { status: response.status, bytes: Buffer.from(await response.arrayBuffer()) }
    }

    test('is kept without what the camera wrote into it', async () => {
      await atPhotos()
      await sendFiles(walker, [await file()])
      expect(walker.question?.id).toBe('wear')
      await answerAll(walker, shirt)
      const view = walker.root.querySelector('.photos a')!.getAttribute('href')!
      const { status, bytes } = await photo(view)
      expect(status).toBe(200)
      expect(bytes.includes('secret')).toBe(false)
      expect(segments(bytes).markers).not.toContain(0xe1)
      expect(walker.html).not.toContain('my house')
    })

    test('is shown through the link of its own pile alone', async () => {
      await atPhotos()
      await sendFiles(walker, [await file()])
      await answerAll(walker, shirt)
      const view = walker.root.querySelector('.photos a')!.getAttribute('href')!
      const [, , , , id] = view.split('/')
      const other = await new Walker(app.url).start()
      expect((await photo(`${other.pilePath}/photos/${id}/view`)).status).toBe(404)
      expect((await photo(`/i/${'x'.repeat(32)}/photos/${id}/view`)).status).toBe(404)
      expect((await photo(view.replace(/view$/, 'full'))).status).toBe(404)
      expect((await photo(view)).status).toBe(200)
    })

    test('as a phone writes it, in HEIC, is taken and shown as a JPEG', async () => {
      await atPhotos()
      const bytes = readFileSync(new URL('../photo/shirt.heic', import.meta.url))
      await sendFiles(walker, [{ bytes, name: 'IMG_0001.HEIC', type: 'image/heic' }])
      expect(walker.question?.id).toBe('wear')
      await answerAll(walker, shirt)
      const view = walker.root.querySelector('.photos a')!.getAttribute('href')!
      const shown = await sharp((await photo(view)).bytes).metadata()
      expect([shown.format, shown.width, shown.height]).toEqual(['jpeg', 642, 482])
    })

    test('stays as a draft on the page where another that came with it is refused', async () => {
      await atPhotos()
      const text = { bytes: Buffer.from('not a picture'), name: 'b.jpg', type: 'image/jpeg' }
      await sendFiles(walker, [await file(), text])
      expect(walker.status).toBe(415)
      expect(walker.question?.id).toBe('photos')
      expect(walker.root.querySelectorAll('.photos img')).toHaveLength(1)
      await sendFiles(walker, [])
      expect(walker.question?.id).toBe('wear')
      await answerAll(walker, shirt)
      expect(walker.root.querySelectorAll('.photos img')).toHaveLength(1)
    })

    test('sent twice by a double tap is there once', async () => {
      await atPhotos()
      const [one, two] = [new Walker(app.url), new Walker(app.url)]
      await Promise.all([one.open(walker.url), two.open(walker.url)])
      const idem = 'double-tap-1'
      const sent = await file()
      await Promise.all([one, two].map((each) => sendFiles(each, [sent], { idem })))
      await sendFiles(walker, [sent], { idem })
      await answerAll(walker, shirt)
      expect(walker.root.querySelectorAll('.photos img')).toHaveLength(1)
      const rows = await app.store.db
        .selectFrom('photo')
        .select(['kept', 'removed_at'])
        .where('removed_at', 'is', null)
        .execute()
      expect(rows).toEqual([{ kept: 1, removed_at: null }])
    })
  })
})
