import { type HTMLElement, parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import type { Look } from '../../src/photo/look/looked.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { lookOf } from '../help/told-lane.ts'
import { confirmPile, openWorkshop, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

oneStore('a garment’s photo at the desk', (store) => {
  let workshop: Workshop
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
  })
  afterEach(() => workshop.close())

  /** What the desk says under the photo of a garment that is said to be printed like this. */
  async function told(look: Look | null, pattern: string, language = 'en'): Promise<HTMLElement> {
    await confirmPile(workshop.conversation, [
      { photos: { given: ['p1'] }, pattern: { given: pattern } },
    ])
    const { id } = await store().db.selectFrom('pile').select('id').executeTakeFirstOrThrow()
    await store()
      .db.insertInto('photo')
      .values({
        id: 'p1',
        pile_id: id,
        item: 1,
        question: 'photos',
        hash: 'a'.repeat(64),
        width: 300,
        height: 300,
        bytes: 4,
        look: look && JSON.stringify(look),
        kept: 1,
        at: 1,
      })
      .execute()
    const visitor = await signedIn(store(), clock, workshop.app, { name: 'Marta' })
    const page = parse((await visitor.get(`/desk/piles/1?lang=${language}`)).body)
    return page.querySelector('.pictures')!
  }

  const plain = lookOf({ print: { ...lookOf().print, class: 'solid' }, graphic: null })

  const measured = (errorPct: number): Look => ({
    ...plain,
    scale: { by: 'a4', mmPerPx: 1, errorPct, corners: [] },
    size: {
      garmentWidthIn: 30.2,
      garmentLengthIn: 27.4,
      graphicWidthIn: null,
      graphicHeightIn: null,
    },
  })

  test('tells what it shows; what the customer says otherwise is marked', async () => {
    const shown = await told(lookOf(), 'allover')
    expect(shown.text).toContain('We see: One picture or lettering')
    expect(shown.text).toContain('blue')
    expect(shown.querySelector('mark')!.text).toContain('A print all over')
  })

  test('tells the garment’s size and how far that may be off, where a sheet told it', async () => {
    expect((await told(measured(1.2), 'solid')).text).toContain('about 30 × 27 inches (± 2 %)')
  })

  test('tells no size where the sheet lay badly', async () => {
    expect((await told(measured(3.4), 'solid')).text).not.toContain('inches')
  })

  test('marks nothing where both say the same', async () => {
    const shown = await told(plain, 'solid')
    expect(shown.text).toContain('We see: One plain colour')
    expect(shown.querySelector('mark')).toBeNull()
  })

  test('that is not fit tells why, in the reader’s language', async () => {
    const look = lookOf({ fitness: { ok: false, problems: ['dark', 'cut-off'] } })
    expect((await told(look, 'solid', 'es')).text).toContain(
      'La foto no lo dice: oscura y cortada.',
    )
  })

  test('that nobody looked at says nothing', async () => {
    expect((await told(null, 'solid')).querySelector('.hint')).toBeNull()
  })
})
