import { expect, test } from 'vitest'
import { parse } from 'yaml'
import { shopAsItIs, withShopChange } from '../../src/desk/shop-draft.ts'
import { readShop } from '../../src/intake/shop.ts'
import { liveFiles } from '../help/drafts.ts'

const live = liveFiles().get('shop.yaml')!.toString('utf8')
const shop = readShop(parse(live))

test('a change of nothing leaves every value as it was', () => {
  expect(readShop(parse(withShopChange(live, shopAsItIs(shop))))).toEqual(shop)
})

test('what is changed is changed alone, and what the owner noted in the file stays', () => {
  const change = {
    ...shopAsItIs(shop),
    name: 'Harbour: "Quilts" & #more',
    look: { accent: '#2f6f73', corner: 6 },
  }
  const text = withShopChange(live, change)
  expect(readShop(parse(text))).toEqual({ ...shop, name: change.name, look: change.look })
  const notes = (of: string) => of.split('\n').filter((line) => line.trim().startsWith('#'))
  expect(notes(live).length).toBeGreaterThan(10)
  expect(notes(text)).toEqual(notes(live))
})

test.each([
  [{ accent: 'teal' }],
  [{ ground: '#fff' }],
  [{ font: 'Geo"rgia' }],
  [{ font: 'a;}body{display:none' }],
  [{ corner: 25 }],
  [{ shadow: 'large' }],
])('a look of %j is refused at the start', (look) => {
  expect(() => readShop({ ...shop, look })).toThrow('look')
})
