import type { Language } from '../../words/words.ts'
import { dress } from '../embed/dress.ts'
import type { Theme } from '../embed/spoken.ts'
import type { EmbedPage } from './view-embed.ts'

const fields = ['accent', 'ground', 'font', 'corner'] as const satisfies (keyof Theme)[]

/** As typed; what was left empty is ''. */
export type EmbedAsked = Readonly<Record<(typeof fields)[number], string>>

/** The name apart from the pile that the site's visitors have: what is tried here is the owner's own. */
const previewName = 'preview'

const escaped = (value: string): string =>
  value.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;')

/** The lines that a site needs, as HTML. */
export function snippetOf(
  home: string,
  attributes: Readonly<Record<string, string>>,
  label: string,
): string {
  const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${escaped(value)}"`)
  return [
    `<script src="${home}/embed.js" async></script>`,
    `<pieceworth-intake${written.join('')}>`,
    `  <a href="${escaped(startAt(home, attributes.lang))}">${escaped(label)}</a>`,
    '</pieceworth-intake>',
  ].join('\n')
}

const startAt = (home: string, language: string | undefined): string =>
  `${home}/${language ? `?lang=${language}` : ''}`

/** `home`: the address of this product, without a slash; `spoken`: the language the intake begins in. */
export function embedPage(
  asked: EmbedAsked,
  {
    language: { say, code },
    spoken,
    languages,
    home,
    origins,
  }: {
    language: Language
    spoken: Language
    languages: readonly Language[]
    home: string
    origins: readonly string[]
  },
): EmbedPage {
  const { wrong, pale } = dress(asked, false)
  const usable = fields.filter((name) => asked[name] && !wrong.includes(name))
  const theme = Object.fromEntries(usable.map((name) => [name, asked[name]]))
  const attributes = { lang: spoken.code, ...theme }
  const label = spoken.say('start.link')
  return {
    page: 'embed',
    title: say('desk.embed.title'),
    fields: fields.map((name) => ({
      name,
      label: say(`desk.embed.fields.${name}`),
      hint: say(`desk.embed.hints.${name}`),
      value: asked[name],
      error: wrong.includes(name) ? say(`desk.embed.wrong.${name}`) : null,
    })),
    languages: languages.map((one) => ({
      value: one.code,
      label: one.say('desk.own_name'),
      picked: one.code === spoken.code,
    })),
    advice: pale.map((name) => say(`desk.embed.advice.${name}`)),
    snippet: snippetOf(home, attributes, label),
    allowed: {
      sentence: say('desk.embed.allowed_now', { count: origins.length }),
      origins,
    },
    directives: [`script-src ${home}`, `frame-src ${home}`],
    preview: {
      script: '/embed.js',
      attributes: { ...attributes, name: `${previewName}-${code}` },
      href: startAt('', spoken.code),
      label,
    },
  }
}
