import { expect, test } from 'vitest'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 12)
const field = '--xx\r\ncontent-disposition: form-data; name="csrf"\r\n\r\n1\r\n'

oneStore('a form with files that is broken', (store) => {
  test.each([
    ['cut off', field, 'multipart/form-data; boundary=xx'],
    ['without its boundary', `${field}--xx--\r\n`, 'multipart/form-data'],
    ['that is no such form', 'csrf=1', 'multipart/form-data; boundary=xx'],
    ['in other letters', Buffer.from(field, 'utf16le'), 'multipart/form-data; boundary=xx'],
  ])('%s is refused at the desk as one that cannot be read', async (_, payload, type) => {
    const workshop = await openWorkshop(store(), clock)
    try {
      const visitor = await signedIn(store(), clock, workshop.app, { name: 'Marta', role: 'owner' })
      const cookie = [...visitor.cookies].map(([name, value]) => `${name}=${value}`).join('; ')
      for (const url of [
        '/desk/sign-out',
        '/desk/piles/1/sign-off',
        '/desk/piles/1/offer',
        '/desk/files/drafts',
      ]) {
        const { statusCode } = await workshop.app.inject({
          method: 'POST',
          url,
          headers: { cookie, 'content-type': type },
          payload,
        })
        expect({ url, statusCode }).toEqual({ url, statusCode: 400 })
      }
    } finally {
      await workshop.close()
    }
  })

  test('for a quilt whose number is none is answered as a page that is not there', async () => {
    const workshop = await openWorkshop(store(), clock)
    try {
      await confirmPile(workshop.conversation, [{ kind: said('button-shirt'), size: said('XL') }], {
        recipient: said('adult'),
        quilts: said('one'),
        quilt_size: said('crib'),
        layout_wish: said('plain-squares'),
      })
      const visitor = await signedIn(store(), clock, workshop.app, { name: 'Marta', role: 'owner' })
      const cookie = [...visitor.cookies].map(([name, value]) => `${name}=${value}`).join('; ')
      for (const quilt of ['2026-07-01', 'none', '-1']) {
        const { statusCode } = await workshop.app.inject({
          method: 'POST',
          url: `/desk/piles/1/quilt/${quilt}`,
          headers: {
            accept: 'text/html',
            cookie,
            'content-type': 'application/x-www-form-urlencoded',
          },
          payload: 'act=keep',
        })
        expect({ quilt, statusCode }).toEqual({ quilt, statusCode: 404 })
      }
    } finally {
      await workshop.close()
    }
  })
})
