import { parse } from 'node-html-parser'
import { expect, test } from 'vitest'
import { usualQuotas } from '../../src/web/quotas.ts'
import { oneStore } from '../help/stores.ts'
import { leadTo, openWorkshop, said } from '../help/workshop.ts'

const shirt = { kind: said('button-shirt') }

oneStore('photos beyond what one address may send in an hour', (store) => {
  test('are refused on the page of their question, what was typed stays, and nothing is kept', async () => {
    const workshop = await openWorkshop(store(), () => Date.UTC(2026, 5, 1, 9, 20), {
      quotas: { ...usualQuotas, photosPerAddress: 1 },
    })
    try {
      const key = await leadTo('review', workshop.conversation, [shirt])
      const body = new FormData()
      body.append('act', 'ask')
      body.append('note', 'Is the collar too thin?')
      for (const name of ['front.jpg', 'back.jpg']) {
        body.append('photo', new Blob(['any bytes'], { type: 'image/jpeg' }), name)
      }
      const sent = new Response(body)
      const answer = await workshop.app.inject({
        method: 'POST',
        url: `/i/${key}/1/photos`,
        headers: { accept: 'text/html', 'content-type': sent.headers.get('content-type')! },
        payload: Buffer.from(await sent.arrayBuffer()),
      })
      expect(answer.statusCode).toBe(409)
      const page = parse(answer.body)
      expect(page.querySelector('main')!.text).toContain('send it again in 40 minutes')
      expect(page.querySelector('textarea[name=note]')?.text ?? '').toContain('collar too thin')
      expect(await store().db.selectFrom('photo').select('id').execute()).toEqual([])
    } finally {
      await workshop.close()
    }
  })
})
