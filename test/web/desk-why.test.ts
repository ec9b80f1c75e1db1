import { parse } from 'node-html-parser'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { review } from '../../src/desk/review.ts'
import { domains, settings } from '../../src/garment/facts.ts'
import { figureOf } from '../../src/garment/panel-losses.ts'
import { kindOf, sourceKinds } from '../../src/intake/sources.ts'
import { readPageWords } from '../../src/words/words.ts'
import { tables } from '../help/knowledge.ts'
import { signedIn } from '../help/signed-in.ts'
import { oneStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, type Script, said, type Workshop } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)

const sweatshirt: Script = {
  name: said('Choir sweatshirt'),
  kind: said('sweatshirt'),
  size: said('M'),
  pattern: said('single'),
  print_make: said('film'),
  label: { given: { found: 'words', words: '92 % cotton 8 % elastane', iron: null } },
}
const cap: Script = { name: said('Cap'), kind: said('other') }

oneStore('why at the desk', (store) => {
  let workshop: Workshop
  beforeEach(async () => {
    workshop = await openWorkshop(store(), clock)
    await confirmPile(workshop.conversation, [sweatshirt, cap])
  })
  afterEach(() => workshop.close())

  async function pileIn(language: string) {
    const visitor = await signedIn(store(), clock, workshop.app, { name: 'Marta' })
    return parse((await visitor.get(`/desk/piles/1?lang=${language}`)).body)
  }

  const tidy = (text: string) => text.replaceAll(/\s+/g, ' ').trim()

  test('every flag has a closed "Why?" with rule, what was found, row and source', async () => {
    const page = await pileIn('en')
    const { garments } = await review(store().db, workshop.knowledge, '1')
    const { flags } = garments[0]!.garment.grading!
    expect(flags.length).toBeGreaterThan(2)
    const shown = page.querySelectorAll('#garment-1 .flag')
    expect(shown).toHaveLength(flags.length)
    for (const flag of shown) {
      const [why, ...more] = flag.querySelectorAll('details.why')
      expect(more).toEqual([])
      expect(why!.hasAttribute('open')).toBe(false)
      expect(tidy(why!.querySelector('summary')!.text)).toMatch(/^Why\? .+/)
      const row = why!.querySelector('code')!.text
      const { source } = tables
        .flatMap(({ table, rows }) =>
          rows.map((one) => ({ ...one, name: `tables/${table}/${one.id}` })),
        )
        .find(({ name }) => name === row)!
      expect(why!.querySelector('.why-found')!.text).toMatch(/^Found: .+: .+/)
      const kinds = {
        published: 'Published standard',
        secondary: 'Secondary source',
        'common practice': 'Common practice, no source',
        'from memory': 'From memory, unverified',
        own: 'The shop’s own',
      }
      expect(why!.querySelector('strong')!.text).toBe(kinds[kindOf(source)!])
    }
    const names = page.querySelectorAll('#garment-1 details.why summary').map(({ text }) => text)
    expect(new Set(names).size).toBe(names.length)
  })

  test('what was reckoned beside the flags tells its facts, figures and sources', async () => {
    const page = await pileIn('en')
    const parts = page.querySelectorAll('#garment-1 .reckoned > ul > li')
    const told = parts.map((part) => tidy(part.text))
    expect(told.map((text) => text.split('Why?')[0]!.trim())).toEqual([
      expect.stringMatching(/^Hottest sole 110 °C at most, set by/),
      expect.stringMatching(/^The most that may be done, heat apart Press/),
      expect.stringMatching(/^Backing /),
      expect.stringMatching(/^Interfacing none/),
      ...workshop.knowledge.layouts.map(() =>
        expect.stringMatching(/^Layout: .+ it (?:fits|does not fit)\./),
      ),
      expect.stringMatching(/^Cloth it gives enough/),
      // 500 g in L, 22 × 28 of 24 × 29 in (from memory, unverified): 500 × 616 / 696, rounded up.
      expect.stringMatching(/^Weight in the post 443 g/),
    ])
    const [heat] = told
    expect(heat).toContain('spandex (elastane), 8 %: 110 °C at most. It sets the heat.')
    expect(heat).toContain('Elastane counts here, though it is only 8 %')
    expect(heat).toContain('tables/limits/fibre-cool')
    const interfacing = told[3]
    expect(interfacing).toContain('115 °C at the sole and 10 °C to spare are 125 °C')
    expect(interfacing).toContain('press/spare under the ceiling')
    const cloth = told.at(-2)
    expect(cloth).toContain('laid flat: 22 × 28 in')
    expect(cloth).toContain('Front, one: 22 × 28 in, of which 20 × 26.5 in is left')
    expect(cloth).toContain('side seams 2 in off')
    for (const part of parts) {
      expect(part.querySelectorAll('details.why')).toHaveLength(1)
      expect(part.querySelector('details')!.hasAttribute('open')).toBe(false)
      expect(part.querySelectorAll('.why-source').length).toBeGreaterThan(0)
    }
  })

  test('what only measuring tells says so', async () => {
    const page = await pileIn('en')
    expect(tidy(page.querySelector('#garment-2 .reckoned')!.text)).toContain(
      'Only measuring tells what cloth it gives.',
    )
  })

  test('in Spanish too, what the files say in English marked as English', async () => {
    const page = await pileIn('es')
    const reckoned = page.querySelector('#garment-1 .reckoned')!
    expect(tidy(reckoned.text)).toContain('¿Por qué?')
    expect(tidy(reckoned.text)).toContain('Fuente secundaria')
    for (const words of reckoned.querySelectorAll('.why-source span')) {
      expect(words.getAttribute('lang')).toBe('en')
      words.remove()
    }
    for (const row of reckoned.querySelectorAll('code')) row.remove()
    expect(tidy(reckoned.text)).not.toMatch(/Where|Found|laid flat|small square|unverified/)
  })
})

const values = [
  ...['undecided', 'fits', 'misfit'].map((value) => `wish.${value}`),
  ...settings.map((value) => `setting.${value}`),
  'recipient.unknown',
]
const heatReasons = [
  'no-iron-fibre',
  'no-shares',
  'not-100-percent',
  'fibre-not-known',
  'too-many-others',
  'coldest-fibre',
  'nothing-counts',
]

test.each([...readPageWords()])('every "why" finds its words in %s', (_, sentences) => {
  const keys = [
    ...Object.keys(figureOf).map((what) => `losses.${what}`),
    ...sourceKinds.map((kind) => `kinds.${kind.replaceAll(' ', '_')}`),
    ...values.map((value) => `values.${value}`),
    ...heatReasons.map((reason) => `because.${reason}`),
    ...['left-out', 'more-than-allowed', 'label-allows-no-heat'].map((why) => `elastane.${why}`),
  ]
  expect(keys.filter((key) => !sentences.get(`desk.whys.${key}`)?.trim())).toEqual([])
  const columns = [...Object.keys(domains), 'recipient', 'wish', 'setting', 'ceiling']
  expect(columns.filter((column) => !sentences.get(`desk.facts.${column}.name`))).toEqual([])
})
