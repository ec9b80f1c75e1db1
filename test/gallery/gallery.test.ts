import { beforeAll, describe, expect, test } from 'vitest'
import { renderPage } from '../../src/web/chat/render.tsx'
import type { Frame } from '../../src/web/chat/view.ts'
import { language, missingWords, readPageWords } from '../../src/words/words.ts'
import { frame, samples } from './samples.ts'
import { plain, type Shown, shown, writeGallery } from './write.ts'

// Left behind to be looked at: open any of its pages in a browser.
const folder = new URL('../.out/gallery/', import.meta.url)

beforeAll(async () => {
  await writeGallery(folder)
})

const all = (html: string, pattern: RegExp): string[] =>
  [...html.matchAll(pattern)].map((match) => match[1]!)

const ids = (html: string) => all(html, /\sid="([^"]*)"/g)

test('every page speaks every language in full', () => {
  expect(missingWords(readPageWords())).toEqual([])
})

describe.each(shown())('$name in $language', ({ html, page, language: code }: Shown) => {
  test('is a whole document in its language with one heading and one main part', () => {
    expect(html).toMatch(new RegExp(`^<!doctype html><html lang="${code}">`))
    expect(html.match(/<h1[ >]/g)).toHaveLength(1)
    expect(html.match(/<main /g)).toHaveLength(1)
    expect(html).toContain('<a class="skip" href="#main">')
    expect(html).toContain('aria-live="polite"')
  })

  test('carries no style or script of its own', () => {
    expect(html).not.toMatch(/\sstyle=|<style|\son[a-z]+="|javascript:/)
    const marks = page.page === 'question' && page.question.answering.kind === 'spots'
    const own = page.page === 'sheet' ? ['sheet.js'] : marks ? ['spots.js'] : []
    const deferred = ['chat.js', ...own]
    expect(html.match(/<script[^>]*>/g)).toEqual([
      '<script src="framed.js">',
      ...deferred.map((name) => `<script src="${name}" defer>`),
    ])
  })

  test('uses each id once, and refers to none that is missing', () => {
    const present = ids(html)
    expect(new Set(present).size).toBe(present.length)
    const named = [
      ...all(html, /\sfor="([^"]*)"/g),
      ...all(html, /href="#([^"]*)"/g),
      ...all(html, /aria-(?:labelledby|describedby)="([^"]*)"/g).flatMap((list) => list.split(' ')),
    ]
    expect(named.filter((id) => !present.includes(id))).toEqual([])
  })

  test('labels every field', () => {
    const fors = all(html, /\sfor="([^"]*)"/g)
    const fields = html.match(/<(?:input|textarea)[^>]*>/g) ?? []
    const unlabelled = fields.filter((field) => {
      const isNamed = /\saria-label(?:ledby)?="[^"]/.test(field)
      // A picture that is a button is named by its words (HTML, 4.10.5.1.19).
      const isPicture = /type="image"[^>]*\salt="[^"]/.test(field)
      if (field.includes('type="hidden"') || isNamed || isPicture) return false
      return !fors.includes(field.match(/\sid="([^"]*)"/)?.[1] ?? '')
    })
    expect(unlabelled).toEqual([])
  })

  test('has a question form exactly where it asks, and says which', () => {
    const forms = html.match(/<form[^>]*data-question[^>]*>/g) ?? []
    if (page.page !== 'question') {
      expect(forms).toEqual([])
      return
    }
    const { question } = page
    expect(forms).toHaveLength(1)
    expect(forms[0]).toContain(`data-question="${question.id}"`)
    expect(forms[0]).toContain(`data-kind="${question.answering.kind}"`)
    expect(forms[0]).toContain('method="post"')
    expect(forms[0]!.includes('data-optional')).toBe(question.optional)
    expect(html.includes('data-skip')).toBe(question.optional)
    for (const [name, value] of Object.entries(question.hidden)) {
      expect(html).toContain(`<input type="hidden" name="${name}" value="${value}"/>`)
    }
    // The first button is the one that Enter presses.
    expect(html.slice(html.indexOf(forms[0]!)).match(/<button[^>]*>/)![0]).toContain(
      'value="answer"',
    )
  })

  test('shows every garment once, by number, with its grade', () => {
    if (!('tags' in page)) return
    const shownTags = all(html, /data-garment="(\d+)"/g).map(Number)
    const asked = page.page === 'question' && page.question.item > 0 ? [page.question.item] : []
    const expected = [...new Set([...page.tags.map(({ n }) => n), ...asked])]
    expect(shownTags.toSorted((a, b) => a - b)).toEqual(expected.toSorted((a, b) => a - b))
    const graded = page.tags.filter(({ grade }) => grade !== null).length
    expect(html.match(/data-grade=/g) ?? []).toHaveLength(graded)
  })
})

const html = (name: string): string =>
  shown().find((page) => page.name === name && page.language === 'en')!.html

test.each([
  ['start', 'data-start="intake"'],
  ['gather', 'data-act="add-garment"'],
  ['gather', 'data-act="review-pile"'],
  ['gather', 'data-act="copy-garment"'],
  ['gather', 'data-act="drop-garment"'],
  ['gather', 'data-act="restore-garment"'],
  ['review', 'data-act="confirm-pile"'],
  ['confirmed', 'data-pile="confirmed"'],
  ['confirmed-paper', 'class="look-paper"'],
  ['photo', 'enctype="multipart/form-data"'],
  ['photo', 'accept="image/jpeg,image/png,image/webp,image/avif,image/heic'],
  ['number', 'min="1" max="40"'],
  ['number', '<input type="hidden" name="unit" value="inches"/>'],
])('the page %s has %s', (name, part) => {
  expect(html(name)).toContain(part)
})

test.each(['words', 'signs', 'none'])('a label may be %s', (value) => {
  expect(html('label')).toMatch(new RegExp(`type="radio"[^>]*name="found" value="${value}"`))
})

test.each(['hot', 'warm', 'cool', 'none', 'absent'])(
  'an ironing line may be %s, drawn',
  (value) => {
    const label = html('label')
    expect(label).toMatch(new RegExp(`type="radio"[^>]*name="iron" value="${value}"`))
    expect(label).toMatch(new RegExp(`<label for="iron-${value}"><span class="picture[^<]*<svg`))
  },
)

test('a refused number keeps the words that were typed, in a field that can show them', () => {
  expect(html('number-refused')).toMatch(/<input[^>]*value="about twelve"[^>]*type="text"/)
})

test('typed words are shown as typed and never become part of the page', () => {
  expect(html('text-line')).toContain('value="Dad’s &lt;b>blue&lt;/b> &quot;flannel&quot;"')
})

test('a refusal stands beside its field, at the top as a link, and in the title', () => {
  const page = html('label-refused')
  expect(page).toContain('<a href="#field-words">')
  expect(page).toMatch(/<textarea[^>]*aria-describedby="words-hint error-words"/)
  expect(page).toMatch(/<title>Please look again: /)
})

test('a person can be asked on every question', () => {
  for (const page of shown().filter(({ page }) => page.page === 'question')) {
    expect(page.html).toMatch(/<button[^>]*value="ask"/)
    expect(page.html).toMatch(/<textarea[^>]*name="note"/)
  }
})

test('older garments fold into one line that counts them', () => {
  expect(html('choice-twelve-tags')).toContain('<summary>11 garments, 10 good to send</summary>')
})

test('a shop of one language offers no switch', () => {
  const whole = frame('en', plain)
  const { say } = language('en', readPageWords().get('en')!)
  const switches = (languages: Frame['languages']) =>
    renderPage(samples.start!, { ...whole, languages }, say).includes('hreflang')
  expect(switches(whole.languages)).toBe(true)
  expect(switches(whole.languages.slice(0, 1))).toBe(false)
})
