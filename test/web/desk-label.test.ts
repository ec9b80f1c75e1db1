import { type HTMLElement, parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { addAccount } from '../../src/desk/accounts.ts'
import type { LabelValue, Reply } from '../../src/flow/grammar.ts'
import { dropPhotos } from '../../src/intake/photos.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const password = 'needle and thimble'

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
  async function sent(value: Partial<LabelValue>): Promise<string> {
    await confirmPile(workshop.conversation, [{ label: label(value) }])
    const { id } = await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()
    if (value.photo) {
      await store()
        .db.insertInto('photo')
        .values({
          id: value.photo,
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
    const email = `${language}@lantern-street.example`
    await addAccount(store(), clock, { email, name: 'Marta', role: 'staff', password })
    const visitor = new Visitor(workshop.app)
    await visitor.get('/desk/sign-in')
    await visitor.post('/desk/sign-in', { email, password })
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
      '100% L1NEN',
      '&lt;b>100% linen&lt;/b>, warm iron',
    ])
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
    await sent({ words: 'wool', photo: 'p1', read: 'wool' })
    expect(seen(await garmentIn('es'))!.text).toContain('como las leímos')
  })
})
