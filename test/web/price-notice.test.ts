import { parse } from 'node-html-parser'
import { expect, test } from 'vitest'
import { newId } from '../../src/base/ids.ts'
import { openLog } from '../../src/base/log.ts'
import { openPlans } from '../../src/planning/plans.ts'
import { oneStore } from '../help/stores.ts'
import { leadTo, openWorkshop, type Script, said } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const shirt: Script = { kind: said('button-shirt'), size: said('L') }
const wish: Script = {
  recipient: said('adult'),
  quilts: said('one'),
  quilt_size: said('crib'),
  layout_wish: said('plain-squares'),
}
const garments: readonly Script[] = [
  { ...shirt, name: said('Blue <flannel>') },
  { ...shirt, name: said('Sunday shirt') },
]

const cents = (money: string): number => Math.round(Number(money.replace(/[$,]/g, '')) * 100)

oneStore('what a change does to the price', (store) => {
  test('leaving a garment out, putting it back and changing it say what that did to the price', async () => {
    // The planning at its leisure: a plan that gets better between two pages would change prices too.
    const patient = openPlans({ log: openLog('silent'), firstMs: 30_000, budgetMs: 30_000 })
    const workshop = await openWorkshop(store(), clock, {
      plans: { ...patient, of: (pile) => patient.of(pile) },
    })
    const { app, conversation } = workshop
    try {
      const key = await leadTo('review', conversation, garments, wish)
      const page = async (path: string) => {
        const answer = await app.inject({ url: path, headers: { accept: 'text/html' } })
        const root = parse(answer.body)
        return {
          notice: root.querySelector('.notice')?.text.trim() ?? null,
          likely: cents(root.querySelector('.estimate .likely strong')!.text),
        }
      }
      const press = async (act: string) => {
        const payload = { act, item: '1', idem: newId(), seq: '0' }
        const answer = await app.inject({ method: 'POST', url: `/i/${key}/garments`, payload })
        return String(answer.headers.location)
      }
      const all = await page(`/i/${key}`)
      expect(all.notice).toBeNull()

      const without = await page(await press('drop-garment'))
      expect(without.notice).toMatch(/^Without Blue <flannel>: .* in all\.$/)
      const [, amount, way] = /: (\$[\d.,]+) (more|less) in all\.$/.exec(without.notice!)!
      // The words and the two prices on the pages are one sum.
      expect(without.likely - all.likely).toBe(cents(amount!) * (way === 'more' ? 1 : -1))

      const back = await press('restore-garment')
      expect((await page(back)).notice).toMatch(/^With Blue <flannel>: .* in all\.$/)
      expect((await page(back)).likely).toBe(all.likely)

      const { row } = await conversation.open(key)
      const form = { act: 'answer', value: 'XL', idem: newId(), seq: String(row.seq) }
      const answer = await app.inject({ method: 'POST', url: `/i/${key}/1/size`, payload: form })
      const larger = await page(String(answer.headers.location))
      expect(larger.notice).toMatch(/^With what you changed of Blue <flannel>: /)

      // What is told belongs to the last act alone, and to no address that somebody made up.
      for (const since of [row.seq - 1, 0, -1, 'x', '1e3', '']) {
        expect((await page(`/i/${key}?since=${since}`)).notice).toBeNull()
      }
    } finally {
      await workshop.close()
    }
  })
})
