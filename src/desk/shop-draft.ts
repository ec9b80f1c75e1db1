import { parseDocument } from 'yaml'
import type { Shop } from '../intake/shop.ts'

/** What an owner changes of `shop.yaml` in a form; the rest of the file stays as it is. */
export type ShopChange = Pick<
  Shop,
  'name' | 'tagline' | 'email' | 'phone' | 'address' | 'policies' | 'look'
>

/** The change that changes nothing. */
export const shopAsItIs = (shop: Shop): ShopChange => ({
  name: shop.name,
  tagline: shop.tagline,
  email: shop.email,
  phone: shop.phone,
  address: shop.address,
  policies: shop.policies,
  look: shop.look,
})

const same = (one: unknown, other: unknown): boolean =>
  JSON.stringify(one) === JSON.stringify(other)

/** The file's text with what differs put in its place: comments and all other lines are kept. */
export function withShopChange(text: string, change: ShopChange): string {
  const document = parseDocument(text)
  const before = (document.toJS() ?? {}) as Readonly<Record<string, unknown>>
  for (const [name, value] of Object.entries(change)) {
    if (same(before[name], value)) continue
    document.set(name, document.createNode(value))
  }
  return document.toString({ lineWidth: 0 })
}
