import { type HTMLElement, parse } from 'node-html-parser'

/** What a program may send for a question: field names and their values. */
export type Fields = Readonly<Record<string, string | readonly string[]>>

export interface Question {
  readonly id: string
  readonly kind: string
  readonly optional: boolean
  /** The garment's number, from the form's target; 0 for the pile's own. */
  readonly item: number
  /** Values offered by radios and checkboxes named `value`. */
  readonly offered: readonly string[]
}

/**
 * Walks the customer's pages over HTTP as a program would: it reads the attributes that pages carry and
 * sends their forms, hidden fields and all.
 */
export class Walker {
  readonly base: string
  readonly headers: Readonly<Record<string, string>>
  status = 0
  /** After how many seconds the same may be tried again, as the answer says; null: it does not. */
  retryAfter: number | null = null
  url = ''
  html = ''
  root: HTMLElement = parse('')

  constructor(base: string, headers: Readonly<Record<string, string>> = {}) {
    this.base = base
    this.headers = headers
  }

  async open(path: string, init: RequestInit = {}): Promise<this> {
    const url = path.startsWith('http') ? path : this.base + path
    const response = await fetch(url, {
      ...init,
      headers: { accept: 'text/html', ...this.headers, ...init.headers },
    })
    this.status = response.status
    const wait = response.headers.get('retry-after')
    this.retryAfter = wait === null ? null : Number(wait)
    this.url = response.url
    this.html = await response.text()
    this.root = parse(this.html)
    return this
  }

  /** The link of the pile that is walked: its key is the first part of the path after /i/. */
  get pilePath(): string {
    return new URL(this.url).pathname.split('/').slice(0, 3).join('/')
  }

  get question(): Question | null {
    const form = this.root.querySelector('form[data-question]')
    if (!form) return null
    const action = form.getAttribute('action') ?? ''
    return {
      id: form.getAttribute('data-question')!,
      kind: form.getAttribute('data-kind')!,
      optional: form.hasAttribute('data-optional'),
      item: Number(action.split('/')[3] ?? 0),
      offered: form
        .querySelectorAll('input[name=value]')
        .filter((input) => ['radio', 'checkbox'].includes(input.getAttribute('type') ?? ''))
        .map((input) => input.getAttribute('value')!),
    }
  }

  get confirmed(): boolean {
    return this.root.querySelector('[data-pile=confirmed]') !== null
  }

  text(selector: string): string {
    return (this.root.querySelector(selector)?.text ?? '').replaceAll(/\s+/g, ' ').trim()
  }

  /** Grades by garment number, as the tags show them. */
  get grades(): Map<number, string> {
    return new Map(
      this.root
        .querySelectorAll('[data-garment][data-grade]')
        .map((tag) => [Number(tag.getAttribute('data-garment')), tag.getAttribute('data-grade')!]),
    )
  }

  /** Sends the question's form. */
  async send(fields: Fields): Promise<this> {
    const form = this.root.querySelector('form[data-question]')
    if (!form) throw new Error(`no question on ${this.url}: ${this.text('h1')}`)
    const body = new URLSearchParams(hiddenOf(form))
    for (const [name, value] of Object.entries({ act: 'answer', ...fields })) {
      body.delete(name)
      for (const one of typeof value === 'string' ? [value] : value) body.append(name, one)
    }
    return this.open(form.getAttribute('action')!, { method: 'POST', body })
  }

  skip(): Promise<this> {
    return this.send({ act: 'skip' })
  }

  /** Presses a button by its `data-act`; with `item`, the one of that garment. */
  async press(act: string, item?: number): Promise<this> {
    const form = this.root
      .querySelectorAll('form')
      .find(
        (one) =>
          one.querySelector(`[data-act=${act}]`) &&
          (item === undefined || hiddenOf(one).item === String(item)),
      )
    if (!form) throw new Error(`no ${act} on ${this.url}: ${this.text('h1')}`)
    const body = new URLSearchParams({ ...hiddenOf(form), act })
    return this.open(form.getAttribute('action')!, { method: 'POST', body })
  }

  async start(language = 'en'): Promise<this> {
    await this.open(`/?lang=${language}`)
    return this.press('start')
  }
}

function hiddenOf(form: HTMLElement): Record<string, string> {
  return Object.fromEntries(
    form
      .querySelectorAll('input[type=hidden]')
      .map((input) => [input.getAttribute('name')!, input.getAttribute('value') ?? '']),
  )
}
