import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { FailureCode } from '../../src/base/failures.ts'
import { sha256 } from '../../src/base/ids.ts'
import { migrate } from '../../src/store/migrate.ts'
import { heldClock, openApp, type TestApp } from '../help/app.ts'
import {
  type Answers,
  addGarment,
  answerAll,
  closingAnswers,
  pileAnswers,
  sendFiles,
  shirt,
} from '../help/chat.ts'
import { plain } from '../help/pictures.ts'
import { eachBareStore, type TestStore } from '../help/stores.ts'
import { type Fields, Walker } from '../help/walker.ts'

const clock = heldClock(Date.UTC(2026, 5, 1, 12))
const day = 24 * 60 * 60 * 1000
const tongues = ['en', 'es'] as const
type Tongue = (typeof tongues)[number]

const signs: Answers = {
  ...shirt,
  label: { found: 'signs', words: '' },
  signs: { value: ['iron-warm'] },
}

const longText = 'cloth '.repeat(4_000).slice(0, 20_000).trim()
const needles = '\u{1faa1}'.repeat(20_000)

type Details = Readonly<Record<string, string | number>>

interface Refused {
  readonly what: string
  /** Item and question. */
  readonly at: string
  readonly fields: Fields
  readonly code: FailureCode
  readonly details?: Details
  readonly status?: number
  /** What must still stand in these fields of the page. */
  readonly kept?: Readonly<Record<string, string>>
  readonly ticked?: readonly string[]
}

const refused: readonly Refused[] = [
  { what: 'no choice', at: '0/recipient', fields: {}, code: 'empty_answer' },
  { what: 'nothing ticked', at: '2/signs', fields: {}, code: 'empty_answer' },
  {
    what: 'an option that is not there',
    at: '0/recipient',
    fields: { value: 'nobody' },
    code: 'answer_not_offered',
  },
  {
    what: 'an option that hangs on another kind',
    at: '1/size',
    fields: { value: '0-3m' },
    code: 'answer_not_offered',
  },
  {
    what: '__proto__ as an option',
    at: '0/recipient',
    fields: { value: '__proto__' },
    code: 'answer_not_offered',
  },
  {
    what: 'constructor as an option',
    at: '1/kind',
    fields: { value: 'constructor' },
    code: 'answer_not_offered',
  },
  {
    what: 'two choices of one',
    at: '0/recipient',
    fields: { value: ['adult', 'child'] },
    code: 'answer_not_offered',
  },
  {
    what: 'a number in words',
    at: '0/at_hand',
    fields: { value: 'about nine' },
    code: 'not_a_number',
    kept: { value: 'about nine' },
  },
  {
    what: 'a number that may mean two',
    at: '0/at_hand',
    fields: { value: '1,000' },
    code: 'not_a_number',
    kept: { value: '1,000' },
  },
  {
    what: 'an endless number',
    at: '0/at_hand',
    fields: { value: '9'.repeat(400) },
    code: 'not_a_number',
    kept: { value: '9'.repeat(400) },
  },
  {
    what: 'a number below',
    at: '0/at_hand',
    fields: { value: '0' },
    code: 'number_out_of_range',
    details: { min: 1, max: 300 },
    kept: { value: '0' },
  },
  {
    what: 'a number above',
    at: '0/at_hand',
    fields: { value: '301' },
    code: 'number_out_of_range',
    details: { min: 1, max: 300 },
    kept: { value: '301' },
  },
  {
    what: 'half a garment',
    at: '0/at_hand',
    fields: { value: '9.5' },
    code: 'number_too_fine',
    details: { step: 1 },
    kept: { value: '9.5' },
  },
  {
    what: 'a unit that is not asked for',
    at: '0/at_hand',
    fields: { value: '9', unit: 'miles' },
    code: 'answer_not_offered',
    kept: { value: '9' },
  },
  {
    what: '20,000 characters',
    at: '0/not_to_cut',
    fields: { value: longText },
    code: 'answer_too_long',
    details: { longest: 500 },
    kept: { value: longText },
  },
  {
    what: '20,000 needles',
    at: '0/not_to_cut',
    fields: { value: needles },
    code: 'answer_too_long',
    details: { longest: 500 },
    kept: { value: needles },
  },
  {
    what: 'a name that is too long',
    at: '1/name',
    fields: { value: 'x'.repeat(401) },
    code: 'answer_too_long',
    details: { longest: 400 },
    kept: { value: 'x'.repeat(401) },
  },
  {
    what: 'a label without words',
    at: '1/label',
    fields: { found: 'words', words: '' },
    code: 'empty_answer',
  },
  {
    what: 'a label of a third kind',
    at: '1/label',
    fields: { found: 'maybe', words: 'silk' },
    code: 'answer_not_offered',
    kept: { words: 'silk' },
  },
  {
    what: 'an ironing sign that is none',
    at: '1/label',
    fields: { found: 'words', words: 'silk', iron: 'white-hot' },
    code: 'answer_not_offered',
    kept: { words: 'silk' },
  },
  {
    what: 'a label like a book',
    at: '1/label',
    fields: { found: 'words', words: longText },
    code: 'answer_too_long',
    details: { longest: 2000 },
    kept: { words: longText },
  },
  {
    what: 'none and something',
    at: '1/history',
    fields: { value: ['none', 'stained'] },
    code: 'none_with_others',
    ticked: ['none', 'stained'],
  },
  {
    what: 'two ironing signs',
    at: '2/signs',
    fields: { value: ['iron-hot', 'iron-cool'] },
    code: 'signs_conflict',
    ticked: ['iron-cool', 'iron-hot'],
  },
  {
    what: 'no name',
    at: '0/contact',
    fields: { name: '', email: 'a@b.example', phone: '12' },
    code: 'form_incomplete',
    details: { field: 'name' },
    status: 400,
    kept: { email: 'a@b.example', phone: '12' },
  },
  {
    what: 'no address',
    at: '0/contact',
    fields: { name: 'Odo', email: '' },
    code: 'form_incomplete',
    details: { field: 'email' },
    status: 400,
    kept: { name: 'Odo' },
  },
  {
    what: 'an address that is none',
    at: '0/contact',
    fields: { name: 'Odo', email: 'odo at home' },
    code: 'email_not_valid',
    kept: { name: 'Odo', email: 'odo at home' },
  },
  {
    what: 'an address with a line break',
    at: '0/contact',
    fields: { name: 'Odo', email: 'odo@b.example\nBcc: all@b.example' },
    code: 'email_not_valid',
    kept: { name: 'Odo' },
  },
  {
    what: 'a note that is too long',
    at: '1/wear',
    fields: { act: 'ask', note: 'n'.repeat(301) },
    code: 'answer_too_long',
    details: { longest: 300 },
    kept: { note: 'n'.repeat(301) },
  },
  {
    what: 'a skip of what must be answered',
    at: '1/wear',
    fields: { act: 'skip' },
    code: 'empty_answer',
  },
  {
    what: 'an act that is none',
    at: '0/not_to_cut',
    fields: { act: '__proto__', value: 'My scarf' },
    code: 'bad_input',
    status: 400,
    kept: { value: 'My scarf' },
  },
  {
    what: 'a key with a null byte',
    at: '0/not_to_cut',
    fields: { idem: 'abcdefgh\0', value: 'My scarf' },
    code: 'bad_input',
    status: 400,
    kept: { value: 'My scarf' },
  },
]

const hostile =
  '"><script>alert(1)</script><img src=x onerror=alert(2)>\' {{7*7}} \u202egnp.exe\u2066 \u0000\u0007 \u{1f9f5} e\u0301'
const hostileKept =
  '"><script>alert(1)</script><img src=x onerror=alert(2)>\' {{7*7}} gnp.exe  \u{1f9f5} \u00e9'

eachBareStore('the pages under hostile input', (open) => {
  let opened: TestStore
  let app: TestApp
  /** A pile in each language, told up to its contact, with two garments. */
  const piles = new Map<Tongue, string>()

  beforeAll(async () => {
    opened = await open()
    await migrate(opened.store)
    app = await openApp(opened.store, { clock: clock.read })
    for (const tongue of tongues) {
      const walker = await new Walker(app.url).start(tongue)
      await answerAll(walker, pileAnswers)
      await addGarment(walker, shirt)
      await addGarment(walker, signs)
      await walker.press('confirm-pile')
      await answerAll(walker, closingAnswers, 'contact')
      piles.set(tongue, walker.pilePath)
    }
  })
  afterAll(() => app?.close())

  // A browser that speaks the other language: the pile's own is what counts.
  const walkerIn = (tongue: Tongue) =>
    new Walker(app.url, { 'accept-language': tongue === 'en' ? 'es' : 'en' })

  const sentence = (tongue: Tongue, code: FailureCode, details: Details = {}): string =>
    app.knowledge.languages.get(tongue)!.say(`failures.${code}`, details)

  /** All that is kept, to see that nothing was half written. */
  async function everything(): Promise<string[]> {
    const { db } = app.store
    const rows = await Promise.all(
      (['pile', 'act', 'standing', 'garment', 'note', 'photo', 'agreed', 'pile_link'] as const).map(
        (table) => db.selectFrom(table).selectAll().execute(),
      ),
    )
    return rows.map((some) =>
      sha256(
        some
          .map((row) => JSON.stringify(row))
          .sort()
          .join(),
      ).slice(0, 8),
    )
  }

  async function unchanged(work: () => Promise<unknown>): Promise<void> {
    const before = await everything()
    await work()
    expect(await everything()).toEqual(before)
  }

  const fieldValue = (walker: Walker, name: string): string | undefined => {
    const field = walker.root.querySelector(`form[data-question] [name=${name}]`)
    return field?.tagName === 'TEXTAREA' ? field.text : field?.getAttribute('value')
  }
  const ticked = (walker: Walker): string[] =>
    walker.root
      .querySelectorAll('form[data-question] input[checked]')
      .map((input) => input.getAttribute('value')!)

  describe.each(tongues)('in %s', (tongue) => {
    test.each(refused)('$what at $at is refused where it was sent', async (one) => {
      const walker = await walkerIn(tongue).open(`${piles.get(tongue)}/${one.at}`)
      expect(walker.question?.id).toBe(one.at.split('/')[1])
      await unchanged(() => walker.send(one.fields))
      expect(walker.status).toBe(one.status ?? 422)
      expect(walker.question?.id).toBe(one.at.split('/')[1])
      expect(walker.text('.errors')).toContain(sentence(tongue, one.code, one.details))
      for (const [name, text] of Object.entries(one.kept ?? {})) {
        expect(fieldValue(walker, name)).toBe(text)
      }
      if (one.ticked) expect(ticked(walker)).toEqual(one.ticked)
    })
  })

  describe.each(tongues)('a page that cannot be had, in %s', (tongue) => {
    const post = (body: string, type = 'application/x-www-form-urlencoded'): RequestInit => ({
      method: 'POST',
      body,
      headers: { 'content-type': type },
    })
    const troubles: [
      what: string,
      path: string,
      init: RequestInit,
      status: number,
      code: FailureCode,
    ][] = [
      ['a garment that is not there', '/9/wear', post('value=sound'), 409, 'question_moved_on'],
      ['a question that is not there', '/1/nothing', post('value=x'), 409, 'question_moved_on'],
      ['__proto__ as a question', '/1/__proto__', post('value=x'), 409, 'question_moved_on'],
      ['constructor as a question', '/0/constructor', post('value=x'), 409, 'question_moved_on'],
      ['a null byte as a question', '/0/%00', post('value=x'), 409, 'question_moved_on'],
      ['a garment without a number', '/x/wear', post('value=sound'), 404, 'not_found'],
      ['a garment below none', '/-1/wear', post('value=sound'), 404, 'not_found'],
      ['half a garment', '/1.5/wear', post('value=sound'), 404, 'not_found'],
      ['a garment beyond counting', '/100001/wear', {}, 404, 'not_found'],
      ['an unknown button', '/garments', post('act=burn-garment&item=1'), 400, 'bad_input'],
      ['__proto__ as a button', '/garments', post('act=__proto__&item=1'), 400, 'bad_input'],
      ['a button for no garment', '/garments', post('act=drop-garment'), 400, 'bad_input'],
      [
        'a button for a garment that is not there',
        '/garments',
        post('act=copy-garment&item=99'),
        404,
        'not_found',
      ],
      [
        'a button with a broken key',
        '/confirm',
        post('idem=%00%00%00%00%00%00%00%00'),
        400,
        'bad_input',
      ],
      ['a photo that is not there', '/photos/abcdefgh/view', {}, 404, 'not_found'],
      ['a photo by a path', '/photos/..%2f..%2fpieceworth.db/view', {}, 404, 'not_found'],
      ['a photo with a null byte', '/photos/abc%00/view', {}, 404, 'not_found'],
      ['a language that is none', '/language/__proto__', {}, 404, 'not_found'],
      ['a wrong method', '/1/wear', { method: 'PUT' }, 405, 'method_not_allowed'],
      ['a page that is only posted to', '/confirm', {}, 405, 'method_not_allowed'],
      [
        'a body that is too much',
        '/1/wear',
        post(`value=${'x'.repeat(300_000)}`),
        413,
        'too_large',
      ],
      ['plain text', '/1/wear', post('<value/>', 'application/xml'), 400, 'bad_input'],
      ['broken JSON', '/1/wear', post('{"value":', 'application/json'), 400, 'bad_input'],
      ['a paper before there is one', '/paper', {}, 404, 'not_found'],
    ]
    test.each(troubles)('%s', async (_, path, init, status, code) => {
      const walker = walkerIn(tongue)
      await unchanged(() => walker.open(piles.get(tongue)! + path, init))
      expect([walker.status, walker.text('.card > .hint')]).toEqual([
        status,
        expect.stringContaining(code),
      ])
      expect(walker.root.querySelector('html')?.getAttribute('lang')).toBe(tongue)
      expect(walker.text('.help')).toContain(sentence(tongue, code))
      expect(walker.root.querySelectorAll('.acts a').length).toBeGreaterThan(0)
    })

    const lost: [
      what: string,
      path: (pile: string) => string,
      status: number,
      code: FailureCode,
    ][] = [
      ['a link that was cut', (pile) => pile.slice(0, -3), 404, 'link_unknown'],
      ['a link of one letter', () => '/i/x', 404, 'link_unknown'],
      ['a link with a null byte', () => '/i/%00', 404, 'link_unknown'],
      ['a link without a key', () => '/i/', 404, 'not_found'],
      ['an endless link', () => `/i/${'x'.repeat(5_000)}`, 404, 'not_found'],
      ['a deep path', (pile) => `${pile}${'/a'.repeat(500)}`, 404, 'not_found'],
      ['a path upwards', () => '/assets/%2e%2e/%2e%2e/package.json', 404, 'not_found'],
      ['an address that cannot be read', () => '/i/%zz', 404, 'not_found'],
      ['no page of ours', () => '/wp-login.php', 404, 'not_found'],
    ]
    test.each(lost)('%s', async (_, path, status, code) => {
      const walker = new Walker(app.url, { 'accept-language': `${tongue};q=0.9, fr` })
      await unchanged(() => walker.open(path(piles.get(tongue)!)))
      expect([walker.status, walker.text('.card > .hint')]).toEqual([
        status,
        expect.stringContaining(code),
      ])
      expect(walker.text('.help')).toContain(sentence(tongue, code))
    })

    test('a link that has run out says that the answers are kept', async () => {
      const walker = new Walker(app.url, { 'accept-language': tongue })
      clock.now += 5_000 * day
      await walker.open(piles.get(tongue)!)
      clock.now -= 5_000 * day
      expect(walker.status).toBe(410)
      expect(walker.text('.help')).toContain(sentence(tongue, 'link_expired'))
    })

    test('what was typed for a question that has moved on is given back', async () => {
      const one = await walkerIn(tongue).open(`${piles.get(tongue)}/1/pattern`)
      await one.send({ value: 'single' })
      await one.open(`${piles.get(tongue)}/1/print_make`)
      await one.send({ value: 'screen' })
      const stale = await walkerIn(tongue).open(`${piles.get(tongue)}/1/graphic_size`)
      await one.open(`${piles.get(tongue)}/1/pattern`)
      await one.send({ value: 'stripe-check' })
      await unchanged(() => stale.send({ value: '11 1/4' }))
      expect(stale.status).toBe(409)
      expect(stale.text('.help')).toContain(sentence(tongue, 'question_moved_on'))
      expect(stale.text('.help')).toContain('11 1/4')
    })
  })

  describe('photos', () => {
    const atPhotos = (tongue: Tongue) => walkerIn(tongue).open(`${piles.get(tongue)}/1/photos`)
    const file = (bytes: Uint8Array, name = 'a.jpg', type = 'image/jpeg') => ({ bytes, name, type })
    const jpeg = () => plain(400, 300).jpeg().toBuffer()

    const bad: [
      what: string,
      make: () => Promise<ReturnType<typeof file>[]>,
      status: number,
      code: FailureCode,
      details?: Details,
    ][] = [
      ['an empty file', async () => [file(Buffer.alloc(0))], 422, 'empty_file'],
      [
        'a page named as a photo',
        async () => [file(Buffer.from('<html>'))],
        415,
        'unsupported_type',
      ],
      [
        'a drawing with a script',
        async () => [file(Buffer.from('<svg onload="alert(1)"/>'), 'a.svg')],
        415,
        'unsupported_type',
      ],
      [
        'a photo that was cut off',
        async () => [file((await jpeg()).subarray(0, 300))],
        422,
        'corrupt_image',
      ],
      [
        'a photo like a stamp',
        async () => [file(await plain(60, 40).jpeg().toBuffer())],
        422,
        'too_small',
      ],
      [
        'more bytes than we take',
        async () => [file(Buffer.alloc(26 * 1024 * 1024, 0xff))],
        413,
        'too_large',
      ],
      [
        'seven at once',
        async () => Array(7).fill(file(await jpeg())),
        422,
        'too_many_photos',
        { most: 6 },
      ],
    ]
    describe.each(tongues)('in %s', (tongue) => {
      test.each(bad)('%s', async (_, make, status, code, details) => {
        const walker = await atPhotos(tongue)
        const files = await make()
        await unchanged(() => sendFiles(walker, files))
        expect(walker.status).toBe(status)
        expect(walker.question?.id).toBe('photos')
        expect(walker.text('.errors')).toContain(sentence(tongue, code, details))
      })
    })

    const boundary = 'multipart/form-data; boundary=edge'
    const head = '--edge\r\nContent-Disposition: form-data; name="photo"; filename="a.jpg"\r\n\r\n'
    const broken: [what: string, body: string, type: string][] = [
      ['without an end', `${head}abc`, boundary],
      ['without a boundary', head, 'multipart/form-data'],
      ['that is no multipart', 'value=x', boundary],
      ['with a header cut off', '--edge\r\nContent-Dispo', boundary],
      [
        'with fifty fields',
        '--edge\r\nContent-Disposition: form-data; name="value"\r\n\r\nx\r\n'
          .repeat(50)
          .concat('--edge--'),
        boundary,
      ],
      [
        'with a field named __proto__',
        '--edge\r\nContent-Disposition: form-data; name="__proto__"\r\n\r\nx\r\n--edge--',
        boundary,
      ],
    ]
    test.each(broken)('a form %s is refused in words', async (_, body, type) => {
      const walker = walkerIn('es')
      await unchanged(() =>
        walker.open(`${piles.get('es')}/1/photos`, {
          method: 'POST',
          body,
          headers: { 'content-type': type },
        }),
      )
      expect([400, 413, 422]).toContain(walker.status)
      expect(walker.html).toContain('<html lang="es"')
      expect(walker.text('.errors') || walker.text('.help')).toMatch(/[.]$/)
    })
  })

  describe('two tabs', () => {
    test('the later is told what the other answered, and both answers are kept', async () => {
      const path = `${piles.get('en')}/0/not_to_cut`
      const [one, two] = [new Walker(app.url), new Walker(app.url)]
      await Promise.all([one.open(path), two.open(path)])
      await one.send({ value: 'The <b>blue</b> scarf' })
      await two.send({ value: 'The red scarf' })
      expect(two.status).toBe(200)
      expect(two.text('.notice')).toContain('The <b>blue</b> scarf')
      expect(two.root.querySelector('.notice b')).toBeNull()
      const kept = await app.store.db.selectFrom('act').select('act').orderBy('seq').execute()
      expect(kept.map(({ act }) => act).join()).toMatch(/blue.*red/)
      await two.open(path)
      expect(fieldValue(two, 'value')).toBe('The red scarf')
    })

    test('the same answer twice is no news', async () => {
      const path = `${piles.get('en')}/0/recipient`
      const [one, two] = [new Walker(app.url), new Walker(app.url)]
      await Promise.all([one.open(path), two.open(path)])
      await one.send({ value: 'adult' })
      await two.send({ value: 'adult' })
      expect(two.text('.notice')).toBe('')
    })

    test('a double tap changes nothing, even where another answer was meant', async () => {
      const walker = await new Walker(app.url).open(`${piles.get('en')}/0/at_hand`)
      await walker.send({ idem: 'tap-tap-tap', value: '12' })
      await unchanged(async () => {
        for (const value of ['12', '13', 'none at all']) {
          await walker.open(`${piles.get('en')}/0/at_hand`, {
            method: 'POST',
            body: new URLSearchParams({ idem: 'tap-tap-tap', value }),
          })
          expect(walker.status).toBe(200)
        }
      })
    })

    test('what somebody makes up as news is not told', async () => {
      for (const told of ['overtaken', '999', '<script>', '1&told=2']) {
        const walker = await new Walker(app.url).open(`${piles.get('en')}?told=${told}`)
        expect([walker.status, walker.text('.notice')]).toEqual([200, ''])
      }
    })
  })

  describe('names that mean something to a program', () => {
    const strange = [
      '__proto__',
      'constructor',
      'prototype',
      'toString',
      '__proto__[polluted]',
      'hasOwnProperty',
    ]

    test('as fields beside an answer they do nothing', async () => {
      const path = `${piles.get('en')}/0/quilt_size`
      const body = new URLSearchParams({ value: 'throw' })
      for (const name of strange) body.append(name, 'polluted')
      const walker = new Walker(app.url)
      await walker.open(path, { method: 'POST', body })
      expect(walker.status).toBe(200)
      expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
    })

    test('in JSON they are refused or do nothing', async () => {
      for (const name of strange) {
        const walker = await new Walker(app.url).open(`${piles.get('en')}/0/quilt_size`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: `{"value":"throw","${name}":{"polluted":1}}`,
        })
        expect(walker.status).toBeLessThan(500)
        expect(({} as { polluted?: unknown }).polluted).toBeUndefined()
      }
    })

    test('JSON of another shape is refused where it was sent', async () => {
      for (const body of ['[]', '"x"', '7', 'null', '{"value":{"a":1}}', '{"value":[[1]]}']) {
        const walker = walkerIn('es')
        await unchanged(() =>
          walker.open(`${piles.get('es')}/0/recipient`, {
            method: 'POST',
            headers: { 'content-type': 'application/json' },
            body,
          }),
        )
        expect([400, 422]).toContain(walker.status)
        expect(walker.question?.id).toBe('recipient')
      }
    })

    test('a beginning in no language of ours begins in one of ours', async () => {
      for (const body of ['lang=__proto__', 'lang=en&lang=es', `lang=${'x'.repeat(900)}`, '']) {
        const walker = await new Walker(app.url).open('/i', {
          method: 'POST',
          body,
          headers: { 'content-type': 'application/x-www-form-urlencoded' },
        })
        expect([walker.status, walker.question?.id]).toEqual([200, 'recipient'])
      }
    })
  })

  test('markup, hidden marks and control characters in every text stay text on every page', async () => {
    const walker = await new Walker(app.url).start()
    const pages: string[] = []
    const visit = async (path: string) => {
      await walker.open(path)
      expect(walker.status).toBe(200)
      pages.push(walker.html)
    }
    await answerAll(walker, { ...pileAnswers, not_to_cut: { value: hostile } })
    const garment: Answers = {
      ...shirt,
      name: { value: hostile.slice(0, 60) },
      label: { found: 'words', words: `100% cotton, warm iron ${hostile}` },
      wear: { act: 'ask', note: hostile },
      where: { value: hostile },
      story: { value: hostile },
    }
    await addGarment(walker, garment)
    const { pilePath } = walker
    pages.push(walker.html)
    await visit(`${pilePath}/1/story`)
    expect(fieldValue(walker, 'value')).toBe(hostileKept)
    await visit(`${pilePath}/1/label`)
    await visit(`${pilePath}/review`)
    await walker.press('confirm-pile')
    await answerAll(walker, {
      ...closingAnswers,
      contact: { name: hostile, email: 'o@b.example', phone: hostile.slice(0, 40) },
      last_word: { value: hostile },
    })
    pages.push(walker.html)
    await walker.press('confirm-pile')
    expect(walker.confirmed).toBe(true)
    pages.push(walker.html)
    await visit(`${pilePath}/paper`)
    for (const page of pages) {
      for (const mark of ['<script>', '<img src=x', '\u202e', '\u2066', '\u0000', '\u0007']) {
        expect(page.includes(mark)).toBe(false)
      }
    }
    expect(pages.filter((page) => page.includes('&lt;script>')).length).toBeGreaterThan(4)
  })
})
