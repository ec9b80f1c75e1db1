import type { Shop } from '../../intake/shop.ts'
import type { Language } from '../../words/words.ts'
import { dress } from '../embed/dress.ts'
import { deskPaths } from './paths.ts'
import { lookFields, policiesField, type ShopTyped, shopChange, taglineField } from './shop-form.ts'
import type { ShopField, ShopPage } from './view-shop.ts'

/** Apart from what the site's visitors have: what is tried here is the owner's own. */
const previewName = 'shop-preview'

/** Languages by their own names, as the desk's reader knows them. */
const languageName = (code: string, { code: reader }: Language): string =>
  new Intl.DisplayNames([reader], { type: 'language' }).of(code) ?? code

/** The page with what was typed; `tells`: what is wrong is said, because somebody asked for it to be kept or shown. */
export function shopPage(
  typed: ShopTyped,
  {
    shop,
    language,
    csrf,
    error,
  }: { shop: Shop; language: Language; csrf: string; error: string | null },
): ShopPage {
  const { say, code: reader } = language
  const { change, wrong } = shopChange(typed, shop)
  const spoken = shop.languages.includes(reader) ? reader : shop.languages[0]!
  const theme = Object.fromEntries(
    lookFields.filter((one) => typed[one] && !wrong.has(one)).map((one) => [one, typed[one]!]),
  )
  const field = (name: string, words: string, lines: number, code?: string): ShopField => {
    const why = wrong.get(name)
    return {
      name,
      label: say(
        `desk.shop.fields.${words}`,
        code ? { language: languageName(code, language) } : {},
      ),
      hint: ['address', 'policies'].includes(words) ? say(`desk.shop.hints.${words}`) : null,
      value: typed[name] ?? '',
      lines,
      error: why ? say(`desk.shop.wrong.${why}`) : null,
    }
  }
  const { pale } = dress(theme, false)
  return {
    page: 'shop',
    title: say('desk.shop.title'),
    postTo: deskPaths.shop,
    csrf,
    error,
    words: [
      field('name', 'name', 1),
      ...shop.languages.map((code) => field(taglineField(code), 'tagline', 1, code)),
      field('email', 'email', 1),
      field('phone', 'phone', 1),
      field('address', 'address', 4),
      ...shop.languages.map((code) => field(policiesField(code), 'policies', 6, code)),
    ],
    look: lookFields.map((name) => ({
      name,
      label: say(`desk.embed.fields.${name}`),
      hint: say(`desk.embed.hints.${name}`),
      value: typed[name] ?? '',
      error: wrong.has(name) ? say(`desk.embed.wrong.${name}`) : null,
    })),
    advice: pale.map((name) => say(`desk.embed.advice.${name}`)),
    shown: {
      name: change.name,
      tagline: change.tagline[spoken] ?? '',
      contact: `${change.email} · ${change.phone}`,
      address: change.address,
      policies: change.policies.map((one) => one[spoken] ?? ''),
    },
    preview: {
      script: '/embed.js',
      attributes: { lang: spoken, ...theme, name: `${previewName}-${spoken}` },
      href: `/?lang=${spoken}`,
      label: say('start.link'),
    },
  }
}
