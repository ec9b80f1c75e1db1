import { type HTMLElement, parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { LabelValue, Reply } from '../../src/flow/grammar.ts'
import { dropPhotos } from '../../src/intake/photos.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

oneStore('a label’s photo at the desk', (store) => {
  let workshop: Workshop
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterEach(() => workshop.close())

  const label = (value: Partial<LabelValue>): Reply => ({
    given: { found: 'words', words: '', iron: null, ...value },
  })

  /** A pile of one garment with this label, as the customer sent it, and the photo's row. */
  const sent = (value: Partial<LabelValue>, others: Script = {}): Promise<string> =>
    told({ ...others, label: label(value) }, value.photo)

  async function told(answers: Script, photo: string | undefined): Promise<string> {
    await confirmPile(workshop.conversation, [answers])
    const { id } = await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()
    if (photo) {
      await store()
        .db.insertInto('photo')
        .values({
          id: photo,
          pile_id: id,
          item: 1,
          question: 'label',
          hash: 'a'.repeat(64),
          width: 300,
          height: 300,
          bytes: 4,
          kept: 1,
          at: 1,
        })
        .execute()
    }
    return id
  }

  async function garmentIn(language: string): Promise<HTMLElement> {
    const visitor = await signedIn(store(), clock, workshop.app, { name: 'Marta' })
    return parse((await visitor.get(`/desk/piles/1?lang=${language}`)).body)
  }

  const seen = (page: HTMLElement) => page.querySelector('.label-seen')
  const texts = (page: HTMLElement, selector: string) =>
    page.querySelectorAll(`.label-seen ${selector}`).map(({ text }) => text)

  test('sent as it was read: photo, words and verdict stand together', async () => {
    await sent({ words: '100% COTTON\nWARM IRON', photo: 'p1', read: '100% COTTON\nWARM IRON' })
    const page = await garmentIn('en')
    expect(seen(page)!.querySelector('a')!.getAttribute('href')).toBe(
      '/desk/piles/1/photos/p1/view',
    )
    expect(seen(page)!.querySelector('img')!.getAttribute('src')).toBe(
      '/desk/piles/1/photos/p1/thumb',
    )
    expect(seen(page)!.text).toContain('The customer sent the words as we read them.')
    expect(texts(page, '.label-lines')).toEqual(['100% COTTON\nWARM IRON'])
  })

  test('changed: both are shown, as typed and never as markup', async () => {
    await sent({ words: '<b>100% linen</b>, warm iron', photo: 'p1', read: '100% L1NEN' })
    const page = await garmentIn('en')
    expect(seen(page)!.text).toContain('The customer changed what we read.')
    expect(texts(page, '.hint')).toEqual(['As we read it', 'As the customer sent it'])
    expect(page.querySelectorAll('.label-seen b')).toEqual([])
    expect(page.querySelectorAll('.label-lines').map(({ innerHTML }) => innerHTML)).toEqual([
      '<mark>100% L1NEN</mark>',
      '<mark>&lt;b>100% linen&lt;/b>, warm iron</mark>',
    ])
  })

  test('changed: the lines that differ are marked, and no others', async () => {
    const read = 'MADE IN INDIA\n100% L1NEN\nWARM IRON'
    await sent({ words: 'MADE IN INDIA\n100% LINEN\n\nWARM IRON', photo: 'p1', read })
    const page = await garmentIn('en')
    expect(texts(page, 'mark')).toEqual(['100% L1NEN', '100% LINEN'])
    expect(texts(page, '.label-lines')).toEqual([read, 'MADE IN INDIA\n100% LINEN\n\nWARM IRON'])
  })

  test.each<[string, Partial<LabelValue>, string, number]>([
    ['with no words on it', { words: 'wool', read: '' }, 'We found no words on the photo.', 1],
    ['never read', { words: 'wool' }, 'The photo was not read.', 1],
    ['of signs', { found: 'signs', read: 'XX' }, 'The customer found only signs.', 1],
    ['nobody can read', { found: 'none', read: '' }, 'could not read the label', 0],
  ])('a photo %s says so', async (_, value, sentence, lines) => {
    await sent({ ...value, photo: 'p1' })
    const page = await garmentIn('en')
    expect(seen(page)!.text).toContain(sentence)
    expect(texts(page, '.label-lines')).toHaveLength(lines)
  })

  const doubted = { words: '100% COTTON\nWARM IRON', photo: 'p1', read: '100% COTTON\nWARM IRON' }
  const check = 'Check the label'

  test('read with doubt and confirmed: one glance tells it, on the folded garment too', async () => {
    await sent({ ...doubted, doubted: true })
    const page = await garmentIn('en')
    expect(seen(page)!.text).toContain(
      `${check}. We read it with doubt, and the customer confirmed`,
    )
    expect(texts(page, '.label-lines')).toEqual(['100% COTTON\nWARM IRON'])
    expect(page.querySelector('[data-grade=sound] > summary')!.text).toContain(check)
    expect(page.querySelector('.noted')!.text).toContain('Label read off its photo with doubt')
  })

  test('read with doubt and changed, or read surely, asks for no such check', async () => {
    await sent({ ...doubted, words: '100% linen, warm iron' })
    const page = await garmentIn('en')
    expect(seen(page)!.text).toContain('The customer changed what we read.')
    expect(page.text).not.toContain(check)
    expect(page.text).not.toContain('with doubt:')
  })

  test('read with doubt, and called wrong on the next page: that is said', async () => {
    const others = { label_check: { given: 'no' } }
    await sent({ ...doubted, words: '60% C0TT', read: '60% C0TT', doubted: true }, others)
    expect(seen(await garmentIn('en'))!.text).toContain('the customer is not sure of it either')
  })

  test('read with doubt, on a copy without its photo, is to be checked as well', async () => {
    await sent({ words: '100% COTTON', doubted: true })
    const page = await garmentIn('en')
    expect(seen(page)!.querySelector('img')).toBeNull()
    expect(seen(page)!.text).toContain(check)
    expect(texts(page, '.label-lines')).toEqual(['100% COTTON'])
  })

  test.each<[string, object, string, string[]]>([
    ['with what was read', { read: '<b>63% WOLLE' }, 'with this photo.', ['<b>63% WOLLE']],
    ['unread', {}, 'It was not read.', []],
    ['without words', { read: '' }, 'We found no words on it.', []],
  ])('a label left to a person %s', async (_, read, sentence, lines) => {
    await told({ label: { asked: 'Is this wool?', photo: 'p1', ...read } }, 'p1')
    const page = await garmentIn('en')
    expect(seen(page)!.text).toContain('The customer left the label to a person')
    expect(seen(page)!.text).toContain(sentence)
    expect(seen(page)!.querySelector('img')!.getAttribute('src')).toBe(
      '/desk/piles/1/photos/p1/thumb',
    )
    expect(texts(page, '.label-lines')).toEqual(lines)
    expect(page.querySelectorAll('.label-seen b')).toEqual([])
    expect(page.querySelector('.notes')!.text).toContain('Is this wool?')
  })

  test('a label left to a person without a photo has no such place', async () => {
    await told({ label: { asked: 'Is this wool?' } }, undefined)
    expect(seen(await garmentIn('en'))).toBeNull()
  })

  test('a photo that was taken away leaves its words', async () => {
    const id = await sent({ words: 'wool', photo: 'p1', read: 'w00l' })
    await dropPhotos(store().db, id, ['p1'], 5)
    const page = await garmentIn('en')
    expect(seen(page)!.querySelector('img')).toBeNull()
    expect(texts(page, '.label-lines')).toEqual(['w00l', 'wool'])
  })

  test('a label that was typed alone has no such place', async () => {
    await sent({ words: '100% cotton, warm iron' })
    expect(seen(await garmentIn('en'))).toBeNull()
  })

  test('in Spanish', async () => {
    await sent({ words: 'wool', photo: 'p1', read: 'wool', doubted: true })
    expect(seen(await garmentIn('es'))!.text).toContain('Revisar la etiqueta. La leímos con dudas')
  })
})
