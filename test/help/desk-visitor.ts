import type { App } from './workshop.ts'

export interface Answer {
  readonly status: number
  readonly body: string
  readonly to: string | null
  readonly type: string
  /** The cookies it sets, as they were sent. */
  readonly cookies: readonly string[]
}

/** Somebody at the desk's pages, with cookies of their own and no script. */
export class Visitor {
  readonly cookies = new Map<string, string>()
  readonly #app: App
  readonly #from: string
  #page = ''

  /** `from`: the address they ask from. */
  constructor(app: App, { from = '127.0.0.1' }: { readonly from?: string } = {}) {
    this.#app = app
    this.#from = from
  }

  /** The same person with the same cookies in another browser: what a thief of a cookie has. */
  twin(): Visitor {
    const twin = new Visitor(this.#app)
    for (const [name, value] of this.cookies) twin.cookies.set(name, value)
    return twin
  }

  async get(url: string, headers: Record<string, string> = {}): Promise<Answer> {
    const answer = await this.#send('GET', url, undefined, headers)
    this.#page = answer.body
    return answer
  }

  /** Sends a form with the secret of the page that was last looked at. */
  async post(url: string, fields: Record<string, string>): Promise<Answer> {
    return this.postRaw(url, { csrf: this.field('csrf'), ...fields })
  }

  async postRaw(url: string, fields: Record<string, string> | URLSearchParams): Promise<Answer> {
    const answer = await this.#send('POST', url, new URLSearchParams(fields).toString(), {
      'content-type': 'application/x-www-form-urlencoded',
    })
    if (answer.body !== '') this.#page = answer.body
    return answer
  }

  /** The value of a hidden field of the page; empty where there is none. */
  field(name: string): string {
    return new RegExp(`name="${name}" value="([^"]*)"`).exec(this.#page)?.[1] ?? ''
  }

  async #send(
    method: 'GET' | 'POST',
    url: string,
    payload: string | undefined,
    headers: Record<string, string>,
  ): Promise<Answer> {
    const jar = [...this.cookies].map(([name, value]) => `${name}=${value}`).join('; ')
    const reply = await this.#app.inject({
      remoteAddress: this.#from,
      method,
      url,
      headers: { accept: 'text/html', ...(jar && { cookie: jar }), ...headers },
      ...(payload !== undefined && { payload }),
    })
    for (const { name, value } of reply.cookies) {
      if (value === '') this.cookies.delete(name)
      else this.cookies.set(name, value)
    }
    return {
      status: reply.statusCode,
      body: reply.body,
      to: (reply.headers.location as string | undefined) ?? null,
      type: String(reply.headers['content-type'] ?? ''),
      cookies: [reply.headers['set-cookie'] ?? []].flat(),
    }
  }
}
