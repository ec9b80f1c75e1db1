import type { HTMLElement } from 'node-html-parser'
import type { Fields } from './walker.ts'

/** What a browser would send of a form, without its buttons: hidden fields, what is ticked, selects, texts. */
export function fieldsOf(form: HTMLElement): [name: string, value: string][] {
  return form.querySelectorAll('input, select, textarea').flatMap((field): [string, string][] => {
    const name = field.getAttribute('name')
    if (!name) return []
    if (field.tagName === 'SELECT') {
      const options = field.querySelectorAll('option')
      const one = options.find((option) => option.hasAttribute('selected')) ?? options[0]
      return one ? [[name, one.getAttribute('value') ?? one.text]] : []
    }
    if (field.tagName === 'TEXTAREA') return [[name, field.text]]
    const type = field.getAttribute('type') ?? 'text'
    if (['radio', 'checkbox'].includes(type) && !field.hasAttribute('checked')) return []
    if (['submit', 'image', 'file'].includes(type)) return []
    return [[name, field.getAttribute('value') ?? '']]
  })
}

/** The same with some fields changed; a list stands for a name sent several times, an empty one for none. */
export function bodyOf(form: HTMLElement, changes: Fields = {}): URLSearchParams {
  const body = new URLSearchParams(fieldsOf(form))
  for (const [name, value] of Object.entries(changes)) {
    body.delete(name)
    for (const one of typeof value === 'string' ? [value] : value) body.append(name, one)
  }
  return body
}
