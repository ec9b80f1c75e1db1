import { afterAll, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { decideGarment, decidePile } from '../../src/desk/decisions.ts'
import { openPlans } from '../../src/planning/plans.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { hostileTexts } from '../help/printed.ts'
import { readPdf, within } from '../help/read-pdf.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

const story = 'She wore it in the rain on the day we met, and it never quite dried.'
const shirt: Script = { kind: said('button-shirt'), size: said('L') }
const garments: readonly Script[] = [
  { ...shirt, name: said('Łukasz’s flannel'), story: said(story) },
  {
    ...shirt,
    name: said('Camp shirt'),
    pattern: said('single'),
    print_make: said('film'),
    graphic_size: { given: { amount: 5, unit: 'inches' } },
  },
  { ...shirt, name: said('Shattered scarf'), kind: said('scarf'), wear: said('shattered') },
  { kind: said('jeans'), size: said('L'), name: said(hostileTexts.markup!), wear: said('thin') },
]
const wish: Script = {
  recipient: said('under3'),
  quilts: said('one'),
  quilt_size: said('crib'),
  layout_wish: said('plain-squares'),
}

const isGrey = (colour: string): boolean => /^#(..)\1\1$/.test(colour)
const papers = ['tickets', 'quilting', 'care', 'keepsake'] as const

oneStore('papers of the bench', (store) => {
  const log = openLog('silent')
  const plans = openPlans({ log, firstMs: 30_000, budgetMs: 30_000 })
  let workshop: Workshop
  let bench: Visitor
  let key: string

  // One pile for all: what is looked at here changes nothing. Tables are emptied before each test.
  const prepare = async () => {
    workshop = await openWorkshop(store(), clock, { plans, publicUrl: 'https://quilts.example' })
    key = await confirmPile(workshop.conversation, garments, wish)
    bench = await signedIn(store(), clock, workshop.app, { name: 'Bea', role: 'bench' })
  }
  afterAll(async () => {
    await workshop.close()
  })

  /** What is still being planned or laid is asked for again. */
  const patiently = async (url: string, ready: (body: string) => boolean = () => true) => {
    const jar = [...bench.cookies].map(([name, value]) => `${name}=${value}`).join('; ')
    for (let turn = 0; turn < 60; turn += 1) {
      const reply = await workshop.app.inject({
        url,
        headers: { cookie: jar, accept: 'text/html' },
      })
      if (reply.statusCode === 200 && ready(reply.body)) return reply
      if (reply.statusCode !== 200) expect(reply.statusCode, reply.body.slice(0, 300)).toBe(409)
      await new Promise((resolve) => setTimeout(resolve, 500))
    }
    throw new Error(`${url} is not to be had`)
  }

  const pdf = async (url: string) => {
    const read = await readPdf((await patiently(url)).rawPayload)
    for (const page of read.pages) expect(within(page)).toEqual([])
    return read
  }
  const greyAll = ({ pages }: Awaited<ReturnType<typeof pdf>>) =>
    pages.every(({ colours }) => [...colours].every(isGrey))

  test('each paper has what the pile, its plan and its laid quilt say', async () => {
    await prepare()
    const { pile } = await workshop.conversation.open(key)
    const [flannel, camp, scarf, jeans] = pile.garments
    const en = workshop.knowledge.languages.get('en')!.say
    const tickets = await pdf('/desk/piles/1/papers/tickets.pdf')
    expect(greyAll(tickets)).toBe(true)

    // Every piece that the page of the quilt tells of a garment has its ticket, at the same row and column.
    const page = await patiently('/desk/piles/1/papers/tickets')
    const places = [...page.body.matchAll(/<strong>(R\d+ C\d+)<\/strong>/g)].map(([, at]) => at!)
    expect(places.length).toBeGreaterThan(5)
    expect(new Set(places).size).toBe(places.length)
    for (const at of places) expect(tickets.words).toContain(at)
    expect(tickets.words.match(/\bR\d+ C\d+/g)).toHaveLength(places.length)
    expect(tickets.words).toContain('cut 6 1/2 × 6 1/2 in')
    expect(tickets.words).toContain('sewn 6 × 6 in')

    const sheet = await patiently(
      '/desk/piles/1/garments/1/bench',
      (body) => !body.includes('not laid yet'),
    )
    const printed = await pdf('/desk/piles/1/garments/1/bench.pdf?paper=a4')
    expect(greyAll(printed)).toBe(true)
    expect(printed.words).toContain(`${flannel!.code} Łukasz’s flannel`)
    expect(printed.words).toContain(en('printed.bench.never_above'))
    expect(printed.words).toContain(`${flannel!.grading!.press.ceilingC} °C`)
    expect(printed.words).toContain('Cut away from the body')
    expect(printed.words).toContain(en('printed.measure.inches'))
    const own = [...sheet.body.matchAll(/R\d+ C\d+ \(/g)].map(([at]) => at)
    expect(own.length).toBeGreaterThan(0)
    for (const at of own) {
      expect(printed.words).toContain(at)
      expect(places).toContain(at.slice(0, -2))
    }
    const stopped = await pdf('/desk/piles/1/garments/3/bench.pdf')
    expect(stopped.words).toContain('Stop: a person decides.')
    expect(stopped.words).not.toMatch(/seam ripper|rotary/)

    const quilting = await pdf('/desk/piles/1/papers/quilting.pdf')
    expect(greyAll(quilting)).toBe(true)
    const used = [flannel!, camp!, jeans!].filter(({ code }) => tickets.words.includes(code))
    const coldest = Math.min(...used.map(({ grading }) => grading!.press.ceilingC ?? 0))
    expect(quilting.words).toContain(coldest > 0 ? `${coldest} °C or less` : 'No iron and no steam')
    expect(quilting.words).toContain('Never stitch through film')
    expect(quilting.words).toContain(en('cautions.small-parts'))
    expect(quilting.words.includes('Jeans, 100/16')).toBe(used.includes(jeans!))

    const care = await pdf('/desk/piles/1/papers/care.pdf')
    expect(greyAll(care)).toBe(true)
    expect(care.words).toContain('Hand wash only, 40 °C at most')
    expect(care.words).toContain('Do not bleach')

    const keepsake = await pdf('/desk/piles/1/papers/keepsake.pdf')
    expect(keepsake.pages).toHaveLength(1)
    expect(keepsake.words).toContain(`Łukasz’s flannel. ${story}`)
    expect(greyAll(keepsake)).toBe(false)

    // The shattered one is in none of them, and no paper of the bench names a price or an address.
    for (const { words } of [tickets, quilting, care, keepsake]) {
      expect(words).not.toContain(scarf!.code)
      expect(words).not.toMatch(/\$\s?\d|ana@ruiz/)
    }

    for (const name of papers) {
      const html = await patiently(`/desk/piles/1/papers/${name}?lang=es`)
      expect(html.body).toContain('<html lang="es">')
      expect(html.body).toContain(`/desk/piles/1/papers/${name}.pdf?paper=a4`)
      expect(html.body).not.toContain('<script>alert')
      const es = await pdf(`/desk/piles/1/papers/${name}.pdf?lang=es&paper=a4`)
      expect(es.language).toBe('es')
      expect(es.pages[0]!.box.map(Math.round)).toEqual([0, 0, 595, 842])
    }

    // A customer has the keepsake once the workshop has taken the pile.
    const mine = `/i/${key}/papers/keepsake`
    expect((await workshop.app.inject({ url: mine })).statusCode).toBe(404)
    const [who] = await store().db.selectFrom('account').select('id').execute()
    const [row] = await store().db.selectFrom('pile').select('id').execute()
    const accept = { verdict: 'accept', reason: 'fine', who: who!.id, seen: Date.now() } as const
    const decline = { verdict: 'decline', reason: 'falls apart', who: who!.id, seen: 0 } as const
    await decideGarment(store(), clock, row!.id, 3, decline)
    await decidePile(store(), clock, row!.id, accept)
    const shown = await patiently(mine)
    expect(shown.body).toContain('<svg')
    expect(shown.body).toContain(`${mine}.pdf?paper=letter`)
    expect((await pdf(`${mine}.pdf`)).words).toContain(story)
    expect((await new Visitor(workshop.app).get(`/i/${key}`)).body).toContain(`href="${mine}"`)
  }, 240_000)
})
