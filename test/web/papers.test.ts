import { afterEach, beforeEach, expect, test } from 'vitest'
import { openLog } from '../../src/base/log.ts'
import { checkedTag } from '../../src/base/tag.ts'
import { openPrinter } from '../../src/web/printer.ts'
import { Visitor } from '../help/desk-visitor.ts'
import { paperWith } from '../help/printed.ts'
import { readPdf, within } from '../help/read-pdf.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

const garments: readonly Script[] = [
  { name: said('Łukasz’s <b>flannel</b>'), kind: said('button-shirt'), size: said('XL') },
  { name: said('Nguyễn’s apron'), kind: said('apron'), size: said('XL') },
  { name: said('Shattered scarf'), kind: said('scarf'), wear: said('shattered') },
]

oneStore('papers as PDF', (store) => {
  let workshop: Workshop
  let key: string
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock, { publicUrl: 'https://quilts.example' })
    key = await confirmPile(workshop.conversation, garments)
  })
  afterEach(() => workshop.close())

  const fetched = async (url: string, visitor?: Visitor) => {
    const jar = [...(visitor?.cookies ?? [])].map(([name, value]) => `${name}=${value}`).join('; ')
    const reply = await workshop.app.inject({ url, headers: { cookie: jar } })
    expect(reply.headers['content-type'], reply.body.slice(0, 200)).toBe('application/pdf')
    const read = await readPdf(reply.rawPayload)
    for (const page of read.pages) expect(within(page)).toEqual([])
    return { ...read, headers: reply.headers }
  }

  const atDesk = async (role: 'staff' | 'bench'): Promise<Visitor> => {
    return signedIn(store(), clock, workshop.app, { name: role, role })
  }

  const spaced = (html: string) =>
    html
      .replaceAll(/<[^>]*>/g, ' ')
      .replaceAll('&lt;', '<')
      .replaceAll('&amp;', '&')
      .replaceAll('&quot;', '"')
      .replaceAll(/\s+/g, ' ')

  test.each(['en', 'es'])('the packing list has all that the page says, in %s', async (code) => {
    await workshop.conversation.speak(key, code)
    const visitor = new Visitor(workshop.app)
    const page = spaced((await visitor.get(`/i/${key}`)).body)
    const { words, language, headers } = await fetched(`/i/${key}/papers/packing.pdf`)
    expect(language).toBe(code)
    expect(headers['cache-control']).toBe('no-store')
    const { say } = workshop.knowledge.languages.get(code)!
    for (const name of ['pockets', 'photograph', 'dry', 'bag', 'list', 'post']) {
      expect(page).toContain(say(`packing.${name}`))
      expect(words).toContain(say(`packing.${name}`))
    }
    expect(words).toContain('Łukasz’s <b>flannel</b>')
    expect(words).toContain('Nguyễn’s apron')
    expect(words).toContain('Shattered scarf')
    expect(words).toContain('8 Lantern Street')
    expect(words).toContain(say('estimate.noPromise'))
    // The page and the paper name the same amounts of money.
    const money = (text: string) => new Set(text.match(/\$[\d,]+\.\d\d/g))
    expect([...money(words)].length).toBeGreaterThan(5)
    for (const amount of money(page)) expect(words).toContain(amount)
    const box = /(\d+) × (\d+) × (\d+)/.exec(page)![0]
    expect(words).toContain(box)
    expect(page).toContain(`/i/${key}`)
  })

  test('a reader asks for the paper; else it is what the shop prints on', async () => {
    const boxOf = async (query: string) =>
      (await fetched(`/i/${key}/papers/tags.pdf${query}`)).pages[0]!.box.map(Math.round)
    expect(workshop.knowledge.shop.paper).toBe('letter')
    expect(await boxOf('')).toEqual([0, 0, 612, 792])
    expect(await boxOf('?paper=a4')).toEqual([0, 0, 595, 842])
    expect(await boxOf('?paper=wall')).toEqual([0, 0, 612, 792])
  })

  test('who travels gets a tag; who stays at home gets none', async () => {
    const { words } = await fetched(`/i/${key}/papers/tags.pdf`)
    const { pile } = await workshop.conversation.open(key)
    const [flannel, apron, scarf] = pile.garments.map(({ code }) => checkedTag(code))
    expect(words).toContain(`${flannel} Łukasz’s <b>flannel</b>`)
    expect(words).toContain(`${apron} Nguyễn’s apron`)
    expect(words).not.toContain(scarf)
  })

  test('an open pile has no papers yet', async () => {
    const open = await workshop.conversation.start('en')
    for (const name of ['packing', 'tags']) {
      const { statusCode } = await workshop.app.inject({ url: `/i/${open}/papers/${name}.pdf` })
      expect(statusCode).toBe(404)
    }
  })

  test('the confirmed page leads to both', async () => {
    const { body } = await new Visitor(workshop.app).get(`/i/${key}`)
    expect(body).toContain(`href="/i/${key}/papers/packing.pdf"`)
    expect(body).toContain(`href="/i/${key}/papers/tags.pdf"`)
  })

  test('the desk prints the list without prices, staff the estimate, the bench no estimate', async () => {
    const [staff, bench] = [await atDesk('staff'), await atDesk('bench')]
    const list = await fetched('/desk/piles/1/papers/packing.pdf', bench)
    expect(list.words).toContain('Nguyễn’s apron')
    expect(list.words).not.toMatch(/\$\s?\d/)
    expect(list.words).not.toContain('ana@ruiz.example')
    expect((await fetched('/desk/piles/1/papers/estimate.pdf', staff)).words).toMatch(/\$\d/)
    expect((await bench.get('/desk/piles/1/papers/estimate.pdf')).status).toBe(403)
    expect((await fetched('/desk/piles/1/papers/tags.pdf?lang=es', bench)).language).toBe('es')
  })
})

test('a printer on a thread makes what one without a thread makes, one paper after another', async () => {
  const printer = openPrinter({ log: openLog('silent') })
  try {
    const papers = ['one', 'two', 'three'].map((words) =>
      paperWith([{ block: 'words', words }], { title: words }),
    )
    const made = await Promise.all(papers.map((paper) => printer.print(paper, 'letter')))
    for (const [n, pdf] of made.entries()) {
      expect((await readPdf(pdf)).title).toBe(papers[n]!.title)
    }
  } finally {
    await printer.close()
  }
})
