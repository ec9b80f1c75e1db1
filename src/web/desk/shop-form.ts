import { z } from 'zod'
import { type ShopChange, shopAsItIs } from '../../desk/shop-draft.ts'
import type { Shop } from '../../intake/shop.ts'
import { dress } from '../embed/dress.ts'
import type { Theme } from '../embed/spoken.ts'

export const lookFields = ['accent', 'ground', 'font', 'corner'] as const satisfies (keyof Theme)[]

/** A form as it was typed, by the names of its fields; those of words in a language end in its code. */
export type ShopTyped = Readonly<Record<string, string>>

export const taglineField = (code: string): string => `tagline_${code}`
export const policiesField = (code: string): string => `policies_${code}`

const linesIn = (text: string): string[] =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')

/** The form of what applies. */
export function shopTyped({ name, email, phone, address, look, ...shop }: Shop): ShopTyped {
  return {
    name,
    email,
    phone,
    address: address.join('\n'),
    ...Object.fromEntries(
      shop.languages.flatMap((code) => [
        [taglineField(code), shop.tagline[code] ?? ''],
        [policiesField(code), shop.policies.map((one) => one[code] ?? '').join('\n')],
      ]),
    ),
    ...Object.fromEntries(lookFields.map((one) => [one, String(look[one] ?? '')])),
  }
}

/** Fields that say what cannot be kept, each with a code of `desk.shop.wrong`. */
export type ShopWrong = ReadonlyMap<string, string>

const emptyLook = (typed: ShopTyped): Theme =>
  Object.fromEntries(lookFields.flatMap((one) => (typed[one] ? [[one, typed[one]]] : [])))

function wrongIn(typed: ShopTyped, { languages }: Shop): ShopWrong {
  const wrong = new Map<string, string>()
  const text = (field: string) => typed[field] ?? ''
  for (const field of ['name', 'phone', 'address', ...languages.map(taglineField)]) {
    if (text(field) === '') wrong.set(field, 'empty')
  }
  if (!z.email().safeParse(text('email')).success) wrong.set('email', 'email')
  const counts = languages.map((code) => linesIn(text(policiesField(code))).length)
  languages.forEach((code, at) => {
    if (counts[at] !== counts[0]) wrong.set(policiesField(code), 'policies')
  })
  for (const field of dress(emptyLook(typed), false).wrong) wrong.set(field, 'look')
  return wrong
}

/** The form's change of the shop, and what of it is wrong; a change with something wrong is not to be kept. */
export function shopChange(
  typed: ShopTyped,
  shop: Shop,
): { readonly change: ShopChange; readonly wrong: ShopWrong } {
  const { languages } = shop
  const text = (field: string) => typed[field] ?? ''
  const said = languages.map((code) => [code, linesIn(text(policiesField(code)))] as const)
  const count = Math.max(...said.map(([, lines]) => lines.length))
  const { accent, ground, font, corner } = emptyLook(typed)
  return {
    change: {
      ...shopAsItIs(shop),
      name: text('name'),
      email: text('email'),
      phone: text('phone'),
      address: linesIn(text('address')),
      tagline: {
        ...shop.tagline,
        ...Object.fromEntries(languages.map((code) => [code, text(taglineField(code))])),
      },
      policies: Array.from({ length: count }, (_, at) =>
        Object.fromEntries(said.map(([code, lines]) => [code, lines[at] ?? ''])),
      ),
      look: {
        ...(accent && { accent: accent.toLowerCase() }),
        ...(ground && { ground: ground.toLowerCase() }),
        ...(font && { font }),
        ...(corner && { corner: Number(corner) }),
      },
    },
    wrong: wrongIn(typed, shop),
  }
}
