import { afterEach, beforeEach, expect, test } from 'vitest'
import { Visitor } from '../help/desk-visitor.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

const garments: readonly Script[] = [
  { name: said('Blue <b>flannel</b>'), kind: said('button-shirt') },
  { name: said('Shattered scarf'), kind: said('scarf'), wear: said('shattered') },
]

oneStore('teardown sheets at the desk', (store) => {
  let workshop: Workshop
  let visitor: Visitor
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
    await confirmPile(workshop.conversation, garments)
    visitor = await signedIn(store(), clock, workshop.app, { name: 'Marta' })
  })
  afterEach(() => workshop.close())

  test('a garment at the desk leads to its sheet, with its steps and no mark-up of the customer', async () => {
    const pile = await visitor.get('/desk/piles/1')
    expect(pile.body).toContain('href="/desk/piles/1/garments/1/teardown"')
    const sheet = await visitor.get('/desk/piles/1/garments/1/teardown')
    expect(sheet.status).toBe(200)
    expect(sheet.body).toContain('Take all buttons off by the thread')
    expect(sheet.body).toContain('Cut away from the body')
    expect(sheet.body).toContain('Blue &lt;b>flannel')
    expect(sheet.body).not.toContain('<b>flannel')
  })

  test('a sheet speaks the language of the desk', async () => {
    const sheet = await visitor.get('/desk/piles/1/garments/1/teardown?lang=es')
    expect(sheet.body).toContain('<html lang="es">')
    expect(sheet.body).toContain('Quite los botones por el hilo')
  })

  test('of what a person must decide the sheet says stop, and nothing else', async () => {
    const sheet = await visitor.get('/desk/piles/1/garments/2/teardown')
    expect(sheet.body).toContain('Stop: a person decides.')
    expect(sheet.body).not.toMatch(/seam ripper|shears|rotary/)
  })

  test.each(['/desk/piles/1/garments/99/teardown', '/desk/piles/7/garments/1/teardown'])(
    'there is no sheet at %s',
    async (url) => {
      expect((await visitor.get(url)).status).toBe(404)
    },
  )

  test('nobody reads a sheet without signing in', async () => {
    const stranger = new Visitor(workshop.app)
    const answer = await stranger.get('/desk/piles/1/garments/1/teardown')
    expect(answer.status).not.toBe(200)
    expect(answer.body).not.toContain('buttons')
  })
})
