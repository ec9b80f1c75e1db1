import { mkdirSync, rmSync } from 'node:fs'
import { Writable } from 'node:stream'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { Failure, type FailureCode } from '../../src/base/failures.ts'
import { openLog } from '../../src/base/log.ts'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import { addGarment, answerAll, pileAnswers, sendFiles, shirt } from '../help/chat.ts'
import { labelOf, type ToldReader, toldReader } from '../help/label-reader.ts'
import { plain } from '../help/pictures.ts'
import { oneStore } from '../help/stores.ts'
import { Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const clear = ['60% COTTON', '40% POLYESTER', 'WARM IRON']
const words = clear.join('\n')

const picture = async (background = '#dddddd') => ({
  bytes: await plain(700, 500, background).jpeg().toBuffer(),
  name: 'label.jpg',
  type: 'image/jpeg',
})

const readIt = { act: 'read-label' }

oneStore('the photo of a label', (store) => {
  let app: TestApp
  let reader: ToldReader
  let walker: Walker
  const logged: string[] = []
  beforeAll(async () => {
    reader = toldReader()
    const log = openLog(
      'info',
      new Writable({
        write: (line, _, done) => {
          logged.push(String(line))
          done()
        },
      }),
    )
    app = await openApp(store(), { clock: clock.read, labels: reader, log })
  })
  afterAll(() => app?.close())
  beforeEach(async () => {
    reader.is = 'ready'
    reader.tells = labelOf(clear)
    reader.given.length = 0
    logged.length = 0
    walker = await atLabel()
  })

  async function atLabel(url = app.url): Promise<Walker> {
    const one = await new Walker(url).start()
    await answerAll(one, pileAnswers)
    return addGarment(one, shirt, 'label')
  }

  const field = () => walker.root.querySelector('textarea[name=words]')!.text
  const chosen = (name: string) =>
    walker.root.querySelector(`input[name=${name}][checked]`)?.getAttribute('value') ?? null
  const thumbs = () =>
    walker.root.querySelectorAll('.label-taken img').map((img) => img.getAttribute('src')!)
  const photoId = () => thumbs()[0]!.split('/')[4]!

  /** The last answer to the label that was kept. */
  async function kept(): Promise<unknown> {
    const rows = await store()
      .db.selectFrom('act')
      .innerJoin('pile', 'pile.id', 'act.pile_id')
      .select('act')
      .orderBy('pile.number')
      .orderBy('act.seq')
      .execute()
    const last = rows.map(({ act }) => JSON.parse(act)).findLast((act) => act.question === 'label')
    return last?.reply
  }

  const rows = () =>
    store()
      .db.selectFrom('photo')
      .select(['id', 'kept', 'removed_at', 'question', 'item'])
      .orderBy('at')
      .execute()

  test('is read into the field, and the words are asked about', async () => {
    await sendFiles(walker, [await picture()], { ...readIt, iron: 'cool' })
    expect(walker.status).toBe(200)
    expect(walker.question?.id).toBe('label')
    expect(field()).toBe(words)
    expect(walker.text('#label-read')).toContain('We read: cotton 60 %, polyester 40 %. Warm iron.')
    expect(walker.text('#label-read')).toContain('Is that right?')
    expect(walker.text('#label-read button[value=answer]')).toBe('Yes, go on')
    expect(chosen('found')).toBe('words')
    expect(chosen('iron')).toBe('cool')
    expect(reader.given).toHaveLength(1)
    expect(await kept()).toBeUndefined()
  })

  test('sent on unchanged is an answer like typed words, with the photo and what was read', async () => {
    await sendFiles(walker, [await picture()], readIt)
    const id = photoId()
    await walker.send({ found: 'words', words: field() })
    expect(walker.question?.id).toBe('photos')
    expect(await kept()).toEqual({
      given: { found: 'words', words, iron: null, photo: id, read: words },
    })
    expect(await rows()).toMatchObject([
      { id, kept: 1, removed_at: null, question: 'label', item: 1 },
    ])
  })

  test('changed by the customer, both are kept', async () => {
    await sendFiles(walker, [await picture()], readIt)
    await walker.send({ found: 'words', words: '100% linen' })
    expect(await kept()).toMatchObject({ given: { words: '100% linen', read: words } })
  })

  test('that is read but not surely asks to look at each line, and once more on the next page', async () => {
    reader.tells = labelOf(['60% COTTON', 'XQZW 1RON'])
    await sendFiles(walker, [await picture()], readIt)
    expect(walker.text('#label-read')).toContain('We are not sure. Please look at each line.')
    expect(walker.text('#label-read')).not.toContain('Is that right?')
    expect(walker.root.querySelector('#label-read button')).toBeNull()
    await walker.send({ found: 'words', words: field() })
    expect(walker.question?.id).toBe('label_check')
  })

  test('whose letters were hard to see names the lines, though the words make sense', async () => {
    const { lines } = labelOf(clear)
    reader.tells = { lines: [lines[0]!, { ...lines[1]!, sure: 0.2 }, lines[2]!], faults: [] }
    await sendFiles(walker, [await picture()], readIt)
    expect(walker.root.querySelector('[data-verdict=unsure]')).not.toBeNull()
    expect(walker.text('#label-read .label-lines')).toBe('40% POLYESTER')
  })

  test('where nothing hangs on letters that were hard to see asks for nothing', async () => {
    const { lines } = labelOf(clear)
    reader.tells = { lines: [...lines, { text: 'MADE IN PEKU', sure: 0.1 }], faults: ['dark'] }
    await sendFiles(walker, [await picture()], readIt)
    expect(walker.root.querySelector('[data-verdict=sure]')).not.toBeNull()
    expect(walker.root.querySelector('#label-read .label-lines')).toBeNull()
    expect(walker.text('#label-read')).not.toContain('near a window')
  })

  test.each([
    ['no-words', 'with the words towards you'],
    ['blurred', 'hold the phone still'],
    ['dark', 'near a window, or with a lamp'],
    ['small', 'Please go nearer'],
  ] as const)(
    'that is %s brings advice and the drawing, and loses nothing typed',
    async (fault, advice) => {
      reader.tells = labelOf([], { faults: [fault] })
      await sendFiles(walker, [await picture()], {
        ...readIt,
        words: 'cotton, I think',
        found: 'none',
        note: 'Is wool all right?',
      })
      expect(walker.status).toBe(200)
      expect(walker.text('#label-read')).toContain('We found no words on this photo.')
      expect(walker.text('#label-read')).toContain(advice)
      expect(walker.root.querySelector('#label-photo svg')).not.toBeNull()
      expect(field()).toBe('cotton, I think')
      expect(chosen('found')).toBe('none')
      expect(walker.text('textarea[name=note]')).toBe('Is wool all right?')
      await walker.send({ found: 'none' })
      expect(await kept()).toMatchObject({ given: { found: 'none', read: '' } })
    },
  )

  test('on which one share was not seen tells which was worked out, and asks', async () => {
    reader.tells = labelOf(['60% COTTON', 'POLYESTER', 'WARM IRON'])
    await sendFiles(walker, [await picture()], readIt)
    expect(walker.text('#label-read')).toContain('It is what the others leave of 100 %.')
    expect(walker.root.querySelector('[data-verdict=unsure]')).not.toBeNull()
    expect(field()).toBe('60% COTTON\n40% POLYESTER\nWARM IRON')
  })

  test.each([
    [['60% COTTON', 'WARM IRON'], true],
    [['60% COTTON', 'POLYESTER', 'WARM IRON'], true],
    [['COTTON', 'POLYESTER', 'WARM IRON'], true],
    [['XQZW 1RON'], false],
  ])('on which a share may lie in a fold says so: %j', async (lines, isTold) => {
    const advice = 'Part of it may lie in a fold or under a finger.'
    reader.tells = labelOf(lines)
    await sendFiles(walker, [await picture()], readIt)
    expect(walker.root.querySelector('[data-verdict=unsure]')).not.toBeNull()
    expect(walker.text('#label-read').includes(advice)).toBe(isTold)
    reader.tells = labelOf(lines, { faults: ['blurred'] })
    await sendFiles(walker, [await picture('#ccddee')], readIt)
    expect(walker.text('#label-read')).not.toContain(advice)
  })

  test('with words and a fault is not called sure', async () => {
    reader.tells = labelOf(clear, { faults: ['blurred'] })
    await sendFiles(walker, [await picture()], readIt)
    expect(walker.root.querySelector('[data-verdict=unsure]')).not.toBeNull()
    expect(field()).toBe(words)
  })

  test('takes the field, and what was typed there is shown beside it on every page after', async () => {
    await sendFiles(walker, [await picture()], { ...readIt, words: 'mine <b>own</b>' })
    expect(field()).toBe(words)
    expect(walker.text('.typed-before')).toContain('mine <b>own</b>')
    expect(walker.html).not.toContain('<b>own')
    await sendFiles(walker, [], readIt)
    expect(walker.text('.typed-before')).toContain('mine <b>own</b>')
    await walker.send({ found: 'nothing of these' })
    expect(walker.status).toBe(422)
    expect(walker.text('.typed-before')).toContain('mine <b>own</b>')
  })

  test.each(['label_unread', 'busy'] as const)(
    'that cannot be read for %s leaves everything usable',
    async (code: FailureCode) => {
      reader.tells = new Failure(code)
      await sendFiles(walker, [await picture()], { ...readIt, words: '100% cotton', iron: 'warm' })
      expect(walker.status).toBe(new Failure(code).status)
      expect(walker.text('#error-photo')).toContain(
        app.knowledge.languages.get('en')!.say(`failures.${code}`),
      )
      expect(field()).toBe('100% cotton')
      expect(chosen('iron')).toBe('warm')
      expect(thumbs()).toHaveLength(1)
      // The photo is there: its button reads it without sending it again.
      reader.tells = labelOf(clear)
      await sendFiles(walker, [], readIt)
      expect(field()).toBe(words)
      expect(await rows()).toHaveLength(1)
    },
  )

  test('that cannot be read goes along with typed words, unread', async () => {
    reader.tells = new Failure('label_unread')
    await sendFiles(walker, [await picture()], readIt)
    await walker.send({ found: 'words', words: '100% cotton, warm iron' })
    expect(walker.question?.id).toBe('photos')
    const reply = (await kept()) as { given: object }
    expect(reply.given).toHaveProperty('photo')
    expect(reply.given).not.toHaveProperty('read')
  })

  test('chosen without pressing its button is read where no words are, and kept where there are', async () => {
    await sendFiles(walker, [await picture()])
    expect(walker.question?.id).toBe('label')
    expect(field()).toBe(words)
    walker = await atLabel()
    await sendFiles(walker, [await picture()], { words: '100% cotton, warm iron', found: 'words' })
    expect(walker.question?.id).toBe('photos')
    expect(await kept()).toMatchObject({
      given: { words: '100% cotton, warm iron', photo: expect.any(String) },
    })
    expect(reader.given).toHaveLength(1)
  })

  test('comes back when the page is opened again, as read', async () => {
    await sendFiles(walker, [await picture()], readIt)
    await walker.open(walker.pilePath)
    expect(walker.question?.id).toBe('label')
    expect(field()).toBe(words)
    expect(chosen('found')).toBe('words')
    expect(thumbs()).toHaveLength(1)
  })

  test('taken again stands in for the one before', async () => {
    await sendFiles(walker, [await picture()], readIt)
    const first = photoId()
    await walker.send({ found: 'words', words: field() })
    const { pilePath } = walker
    await walker.open(`${pilePath}/1/label`)
    clock.now += 1000
    reader.tells = labelOf(['100% WOOL', 'COOL IRON'])
    await sendFiles(walker, [await picture('#333333')], { ...readIt, words })
    const second = photoId()
    expect(second).not.toBe(first)
    expect(walker.root.querySelector('.typed-before')).toBeNull()
    // The first still stands with the answer that holds it, until another answer is kept.
    expect((await rows()).map(({ removed_at }) => removed_at)).toEqual([null, null])
    await walker.send({ found: 'words', words: field() })
    expect(await kept()).toMatchObject({ given: { photo: second, read: '100% WOOL\nCOOL IRON' } })
    expect(await rows()).toMatchObject([
      { id: first, removed_at: clock.now },
      { id: second, removed_at: null, kept: 1 },
    ])
    const gone = await fetch(`${app.url}${pilePath}/photos/${first}/view`)
    expect(gone.status).toBe(410)
  })

  test('ticked to go is gone, and the words stay', async () => {
    await sendFiles(walker, [await picture()], readIt)
    const id = photoId()
    await walker.send({ found: 'words', words: field(), remove: id })
    expect(await kept()).toEqual({ given: { found: 'words', words, iron: null } })
    expect(await rows()).toMatchObject([{ id, removed_at: clock.now }])
  })

  test('stays with its own garment where that is copied', async () => {
    await sendFiles(walker, [await picture()], readIt)
    await walker.send({ found: 'words', words: field() })
    await answerAll(walker, shirt)
    await walker.press('copy-garment', 1)
    await answerAll(walker, {})
    await walker.open(`${walker.pilePath}/2/label`)
    expect(field()).toBe(words)
    expect(thumbs()).toEqual([])
    await walker.open(`${walker.pilePath}/1/label`)
    expect(thumbs()).toHaveLength(1)
  })

  describe('read with doubt', () => {
    const doubtful = ['60% COTTON', '40% POLYESTER', 'WARM IRON']
    beforeEach(() => {
      reader.tells = labelOf(doubtful, { sure: 0.2 })
    })

    test('and sent on unchanged is marked, and leads to the same question as typed words', async () => {
      await sendFiles(walker, [await picture()], readIt)
      await walker.send({ found: 'words', words: field() })
      expect(walker.question?.id).toBe('photos')
      expect(await kept()).toMatchObject({ given: { words, read: words, doubted: true } })
    })

    test('and changed by the customer is not', async () => {
      await sendFiles(walker, [await picture()], readIt)
      await walker.send({ found: 'words', words: '60% cotton, 40% polyester, warm iron' })
      expect(await kept()).not.toHaveProperty('given.doubted')
    })

    test('stays in doubt where the photo is taken away, and on a copy', async () => {
      await sendFiles(walker, [await picture()], readIt)
      await walker.send({ found: 'words', words: field(), remove: photoId() })
      const doubted = { given: { found: 'words', words, iron: null, doubted: true } }
      expect(await kept()).toEqual(doubted)
      await answerAll(walker, shirt)
      await walker.press('copy-garment', 1)
      await answerAll(walker, {})
      // Whoever sends the copied words on has not read them again.
      await walker.open(`${walker.pilePath}/2/label`)
      await walker.send({ found: 'words', words: field() })
      expect(await kept()).toEqual(doubted)
      await walker.open(`${walker.pilePath}/2/label`)
      await walker.send({ found: 'words', words: '100% linen, hot iron' })
      expect(await kept()).not.toHaveProperty('given.doubted')
    })

    test('stays in doubt where another photo takes its place and shows no words', async () => {
      await sendFiles(walker, [await picture()], readIt)
      clock.now += 1000
      reader.tells = labelOf([], { faults: ['blurred'] })
      await sendFiles(walker, [await picture('#333333')], { ...readIt, words: field() })
      expect(field().replaceAll('\r', '')).toBe(words)
      await walker.send({ found: 'words', words: field() })
      expect(await kept()).toMatchObject({ given: { words, read: '', doubted: true } })
    })

    test('is in doubt no more once another photo is read surely as the same', async () => {
      await sendFiles(walker, [await picture()], readIt)
      await walker.send({ found: 'words', words: field() })
      await walker.open(`${walker.pilePath}/1/label`)
      clock.now += 1000
      reader.tells = labelOf(clear)
      await sendFiles(walker, [await picture('#333333')], readIt)
      await walker.send({ found: 'words', words: field() })
      expect(await kept()).not.toHaveProperty('given.doubted')
    })

    test('cannot be told away by the form', async () => {
      await sendFiles(walker, [await picture()], readIt)
      await walker.send({ found: 'words', words: field(), doubted: '', doubtedWords: '' })
      expect(await kept()).toMatchObject({ given: { doubted: true } })
    })
  })

  describe('left to a person', () => {
    const asks = { act: 'ask', note: 'Is this wool?' }

    test('goes along with what was read on it', async () => {
      reader.tells = labelOf(['XQZW 63% WOLLE'], { sure: 0.2 })
      await sendFiles(walker, [await picture()], readIt)
      const id = photoId()
      await walker.send(asks)
      expect(walker.question?.id).toBe('photos')
      expect(await kept()).toEqual({ asked: 'Is this wool?', photo: id, read: 'XQZW 63% WOLLE' })
      expect(await rows()).toMatchObject([{ id, kept: 1, removed_at: null, item: 1 }])
    })

    test('goes along where it could not be read, and where nobody pressed its button', async () => {
      reader.tells = new Failure('label_unread')
      await sendFiles(walker, [await picture()], readIt)
      const id = photoId()
      await walker.send(asks)
      expect(await kept()).toEqual({ asked: 'Is this wool?', photo: id })
      walker = await atLabel()
      await sendFiles(walker, [await picture()], asks)
      expect(walker.question?.id).toBe('photos')
      expect(reader.given).toHaveLength(1)
      const asked = (await kept()) as { photo: string }
      expect(asked).toEqual({ asked: 'Is this wool?', photo: expect.any(String) })
      expect(await rows()).toMatchObject([
        { id, kept: 1 },
        { id: asked.photo, kept: 1 },
      ])
    })

    test('is there again when the question is opened once more, and may be answered after all', async () => {
      await sendFiles(walker, [await picture()], readIt)
      const id = photoId()
      await walker.send(asks)
      await walker.open(`${walker.pilePath}/1/label`)
      expect(thumbs()).toHaveLength(1)
      expect(field()).toBe(words)
      await walker.send({ found: 'words', words: field() })
      expect(await kept()).toMatchObject({ given: { photo: id, read: words } })
      expect(await rows()).toMatchObject([{ id, kept: 1, removed_at: null }])
    })

    test('an answer’s photo goes along, and another one stands in for it', async () => {
      await sendFiles(walker, [await picture()], readIt)
      const first = photoId()
      await walker.send({ found: 'words', words: field() })
      await walker.open(`${walker.pilePath}/1/label`)
      await walker.send(asks)
      expect(await kept()).toMatchObject({ photo: first, read: words })
      await walker.open(`${walker.pilePath}/1/label`)
      clock.now += 1000
      await sendFiles(walker, [await picture('#333333')], asks)
      expect(await rows()).toMatchObject([
        { id: first, removed_at: clock.now },
        { kept: 1, removed_at: null },
      ])
    })

    test('stays with its own garment where that is copied', async () => {
      await sendFiles(walker, [await picture()], asks)
      await answerAll(walker, shirt)
      await walker.press('copy-garment', 1)
      await answerAll(walker, {})
      await walker.open(`${walker.pilePath}/2/label`)
      expect(thumbs()).toEqual([])
    })

    test('ticked to go it is gone, and so it is where somebody else took it away meanwhile', async () => {
      await sendFiles(walker, [await picture()], readIt)
      const id = photoId()
      await walker.send({ ...asks, remove: id })
      expect(await kept()).toEqual({ asked: 'Is this wool?' })
      expect(await rows()).toMatchObject([{ id, removed_at: clock.now }])
      walker = await atLabel()
      await sendFiles(walker, [await picture()], readIt)
      await store().db.updateTable('photo').set({ removed_at: clock.now }).execute()
      await walker.send(asks)
      expect(walker.question?.id).toBe('photos')
      expect(await kept()).toEqual({ asked: 'Is this wool?' })
    })

    test('sent twice by the same form is kept once', async () => {
      await sendFiles(walker, [await picture()], { ...asks, idem: 'pressed-twice' })
      const before = await rows()
      await walker.open(`${walker.pilePath}/1/label`)
      await sendFiles(walker, [await picture()], { ...asks, idem: 'pressed-twice' })
      expect(await rows()).toEqual(before)
    })

    test('that is no picture, or comes with too long a note, is told beside its field', async () => {
      const text = { bytes: Buffer.from('<svg onload=x>'), name: 'a.jpg', type: 'image/jpeg' }
      await sendFiles(walker, [text], asks)
      expect(walker.status).toBe(415)
      expect(walker.text('#error-photo')).not.toBe('')
      expect(walker.text('textarea[name=note]')).toBe('Is this wool?')
      await walker.send({ act: 'ask', note: 'x'.repeat(301) })
      expect(walker.status).toBe(422)
      expect(walker.text('#error-note')).not.toBe('')
      expect(walker.root.querySelector('#error-photo')).toBeNull()
    })

    test('keeps its note on the page while photos cannot be kept, and goes on afterwards', async () => {
      rmSync(app.photosFolder, { recursive: true })
      try {
        await sendFiles(walker, [await picture()], asks)
      } finally {
        mkdirSync(app.photosFolder)
      }
      expect(walker.status).toBe(503)
      expect(walker.retryAfter).toBe(5)
      expect(walker.text('#error-photo')).toContain('try again in a minute')
      expect(walker.text('textarea[name=note]')).toBe('Is this wool?')
      await sendFiles(walker, [await picture()], asks)
      expect(await kept()).toMatchObject({ asked: 'Is this wool?', photo: expect.any(String) })
    })

    test('another garment’s photo cannot be sent along, nor taken away', async () => {
      await sendFiles(walker, [await picture()], readIt)
      const theirs = photoId()
      await walker.send({ found: 'words', words: field() })
      await answerAll(walker, shirt)
      await addGarment(walker, shirt, 'label')
      await walker.send({ ...asks, photo: theirs, labelPhoto: theirs, read: 'x', remove: theirs })
      expect(await kept()).toEqual({ asked: 'Is this wool?' })
      expect(await rows()).toMatchObject([{ id: theirs, kept: 1, removed_at: null }])
    })
  })

  test('is served as other photos are: by its own pile’s link alone, and never whole', async () => {
    await sendFiles(walker, [await picture()], readIt)
    const id = photoId()
    const status = async (path: string) => (await fetch(app.url + path)).status
    expect(await status(`${walker.pilePath}/photos/${id}/view`)).toBe(200)
    expect(await status(`${walker.pilePath}/photos/${id}/full`)).toBe(404)
    const other = await new Walker(app.url).start()
    expect(await status(`${other.pilePath}/photos/${id}/view`)).toBe(404)
  })

  test('tells the log how it went, and none of its words', async () => {
    await sendFiles(walker, [await picture()], readIt)
    const line = logged.map((one) => JSON.parse(one)).find(({ msg }) => msg === 'label read')
    expect(line).toMatchObject({ seconds: 0, lines: 3, sure: true })
    expect(logged.join('')).not.toMatch(/cotton|polyester/i)
  })

  describe('sent by somebody who means no good', () => {
    test('that is no picture is refused beside its field, with what was typed', async () => {
      const text = { bytes: Buffer.from('<svg onload=x>'), name: 'a.jpg', type: 'image/jpeg' }
      await sendFiles(walker, [text], { ...readIt, words: '100% cotton' })
      expect(walker.status).toBe(415)
      expect(walker.text('#error-photo')).not.toBe('')
      expect(walker.root.querySelector('.errors a')?.getAttribute('href')).toBe('#field-photo')
      expect(field()).toBe('100% cotton')
      expect(reader.given).toHaveLength(0)
      expect(await rows()).toEqual([])
    })

    test('two at once are refused, and neither is kept', async () => {
      await sendFiles(walker, [await picture(), await picture('#333333')], readIt)
      expect(walker.status).toBe(422)
      expect(walker.text('#error-photo')).toContain('room for 1')
      expect(await rows()).toEqual([])
    })

    test('none at all says what is missing', async () => {
      await walker.send({ ...readIt, words: '100% cotton' })
      expect(walker.status).toBe(400)
      expect(walker.text('#error-photo')).toContain('the photo')
      expect(field()).toBe('100% cotton')
    })

    test('another pile’s id, words that were never read and a hidden photo count for nothing', async () => {
      await sendFiles(walker, [await picture()], readIt)
      const theirs = photoId()
      const other = await atLabel()
      await other.send({
        found: 'words',
        words: '100% cotton, warm iron',
        photo: theirs,
        read: '100% asbestos',
        labelPhoto: theirs,
        remove: theirs,
      })
      expect(await kept()).toEqual({
        given: { found: 'words', words: '100% cotton, warm iron', iron: null },
      })
      expect(await rows()).toMatchObject([{ id: theirs, removed_at: null }])
    })

    test('what was read cannot be told otherwise by the form', async () => {
      await sendFiles(walker, [await picture()], readIt)
      await walker.send({
        found: 'words',
        words: '100% cotton, hot iron',
        read: '100% cotton, hot iron',
      })
      expect(await kept()).toMatchObject({ given: { words: '100% cotton, hot iron', read: words } })
    })

    test('markup on a label is shown as words', async () => {
      reader.tells = labelOf(['<script>alert(1)</script>', '</textarea><b>60% cotton'], {
        sure: 0.2,
      })
      await sendFiles(walker, [await picture()], readIt)
      expect(walker.html).not.toMatch(/<script>|<\/textarea><b>|<b>60/)
      expect(field()).toContain('<script>')
    })

    test('endless words on a label are cut to what an answer may hold', async () => {
      reader.tells = labelOf(Array.from({ length: 300 }, () => '100% COTTON 𝔸𝔹ℂ'))
      await sendFiles(walker, [await picture()], readIt)
      expect([...field()].length).toBeLessThanOrEqual(2000)
      await walker.send({ found: 'words', words: field() })
      expect(walker.question?.id).toBe('label_check')
    })

    test('a reading that is asked for on another question is refused', async () => {
      await walker.send({ found: 'none' })
      expect(walker.question?.id).toBe('photos')
      await walker.send({ ...readIt, value: 'sound' })
      expect(walker.status).toBe(400)
      expect(walker.question?.id).toBe('photos')
    })
  })

  test('where none can be read the page asks for words as ever', async () => {
    reader.is = 'absent'
    await walker.open(walker.url)
    expect(walker.question?.id).toBe('label')
    expect(walker.root.querySelector('input[type=file]')).toBeNull()
    expect(
      walker.root.querySelector('form[data-question]')?.getAttribute('enctype'),
    ).toBeUndefined()
    await sendFiles(walker, [await picture()], readIt)
    expect(walker.status).toBe(500)
    expect(walker.question?.id).toBe('label')
    await walker.send({ found: 'words', words: '100% cotton, warm iron' })
    expect(walker.question?.id).toBe('photos')
    expect(await rows()).toEqual([])
  })

  test.each(['ready', 'starting', 'absent'] as const)(
    '/readyz says that reading is %s, and is ready',
    async (is) => {
      reader.is = is
      const answer = await fetch(`${app.url}/readyz`)
      expect(answer.status).toBe(200)
      expect(await answer.json()).toMatchObject({ status: 'ok', labels: is })
    },
  )

  test('is the first way that the help names, where it can be read', async () => {
    expect(walker.text('#help')).toMatch(/^Take a photo of the label/)
    reader.is = 'absent'
    await walker.open(walker.url)
    expect(walker.text('#help')).toMatch(/^Type the words/)
  })

  test('all of it in Spanish', async () => {
    await walker.open(`${walker.pilePath}/language/es`)
    await sendFiles(walker, [await picture()], readIt)
    expect(walker.text('#label-read')).toContain('¿Es correcto?')
    expect(walker.text('#help')).toMatch(/^Haga una foto de la etiqueta/)
  })
})
