import { expect, test } from 'vitest'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { openWorkshop } from '../help/workshop.ts'

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
      for (const url of ['/desk/sign-out', '/desk/piles/1/sign-off', '/desk/piles/1/offer']) {
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
})
