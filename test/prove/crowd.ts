import { randomUUID } from 'node:crypto'
import { setTimeout as pause } from 'node:timers/promises'
import { parse } from 'node-html-parser'

export type What = 'answers' | 'photos' | 'decisions' | 'moves' | 'messages'

/** One answer to one try; `status` 0: the connection broke. */
export interface Heard {
  readonly path: string
  readonly status: number
  readonly text: string
  readonly retryAfter: boolean
  readonly ms: number
}

/** Where a crowd sends to, and until when. */
export interface Doors {
  /** Addresses of the processes that there are; the crowd goes from one to the next. */
  readonly urls: readonly string[]
  readonly over: () => boolean
  /** Hears of each thing that somebody was told is kept. */
  readonly told: (what: What) => void
  /** Hears of each request that a process took and never answered. */
  readonly broken: (why: string) => void
  /** Hears of each answer that is a fault of the server's and not put off. */
  readonly failed: (why: string) => void
  readonly heard?: (answer: Heard) => void
  /** Between one request of a person and the next, ms; left out: none. */
  readonly restMs?: number
  /** Statuses on which the same is sent again, beside those that say so. */
  readonly alsoLater?: readonly number[]
}

/** A request as it is sent, and sent again. */
export interface Sent {
  readonly path: string
  readonly headers?: Readonly<Record<string, string>>
  /** Left out: the page is opened. */
  readonly body?: URLSearchParams | FormData
}

export interface Answered {
  readonly status: number
  readonly text: string
  /** How often it was sent before somebody answered. */
  readonly unanswered: number
}

const patienceMs = 600_000

/** Answers of a server that cannot serve now, or of a balancer's that is gone: the same is to be sent again. */
const later = [429, 502, 503]

/** Sends the same again and again, to one door after the other, until somebody answers it for good. */
export function sender(doors: Doors) {
  let turn = 0
  const { heard = () => {}, restMs = 0, alsoLater = [] } = doors
  return async ({ path, headers, body }: Sent): Promise<Answered> => {
    let unanswered = 0
    if (restMs > 0) await pause(restMs)
    for (const until = Date.now() + patienceMs; Date.now() < until; ) {
      turn += 1
      const url = doors.urls[turn % doors.urls.length]!
      const from = performance.now()
      const told = (status: number, text: string, retryAfter: boolean) =>
        heard({ path, status, text, retryAfter, ms: performance.now() - from })
      try {
        const response = await fetch(url + path, {
          method: body ? 'POST' : 'GET',
          redirect: 'manual',
          headers: { accept: 'text/html', ...headers },
          ...(body && { body }),
        })
        const text = await response.text()
        const { status } = response
        const putOff = response.headers.has('retry-after')
        told(status, text, putOff)
        if (later.includes(status) && !putOff)
          doors.failed(`${path}: ${status} without Retry-After`)
        else if (status >= 500 && !later.includes(status)) doors.failed(`${path}: ${status}`)
        else if (![...later, ...alsoLater].includes(status)) return { status, text, unanswered }
      } catch (error) {
        if (!(error instanceof TypeError)) throw error
        unanswered += 1
        told(0, '', false)
        const { code = error.message } = (error.cause ?? {}) as { code?: string }
        // Nobody listens there: a balancer asks the next one.
        if (code !== 'ECONNREFUSED') doors.broken(`${path}: ${code}`)
      }
      await pause(Math.max(20, restMs))
    }
    throw new Error(`${path}: nobody answered for ${patienceMs / 1000} s`)
  }
}

export type Send = ReturnType<typeof sender>

/** What one of the crowd was told is kept, in the order in which it was told. */
export interface Acknowledged {
  readonly key: string
  readonly value: string
}

const newKey = () => `siege-${randomUUID()}`

function taken({ status, text }: Answered, what: string): void {
  if (status !== 303) throw new Error(`${what}: ${status} ${parse(text).text.slice(0, 300)}`)
}

/** A customer who changes one answer again and again. */
export async function answering(send: Send, doors: Doors, pile: string): Promise<Acknowledged[]> {
  const kept: Acknowledged[] = []
  for (let n = 0; !doors.over(); n += 1) {
    const [key, value] = [newKey(), `Answer ${n}`]
    const body = new URLSearchParams({ act: 'answer', idem: key, value })
    taken(await send({ path: `${pile}/0/not_to_cut`, body }), 'an answer')
    doors.told('answers')
    kept.push({ key, value })
  }
  return kept
}

/** A customer who puts another photo in the place of the last again and again. */
export async function photographing(
  send: Send,
  doors: Doors,
  pile: string,
  photo: (n: number) => Promise<Buffer>,
): Promise<Acknowledged[]> {
  const kept: Acknowledged[] = []
  for (let n = 0; !doors.over(); n += 1) {
    const path = `${pile}/1/photos`
    const page = parse((await send({ path })).text)
    const key = newKey()
    const body = new FormData()
    for (const [name, value] of Object.entries({ act: 'answer', idem: key, anyway: '1' })) {
      body.append(name, value)
    }
    for (const input of page.querySelectorAll('input[name=order]')) {
      for (const name of ['order', 'remove']) body.append(name, input.getAttribute('value')!)
    }
    body.append(
      'photo',
      new Blob([new Uint8Array(await photo(n))], { type: 'image/jpeg' }),
      'a.jpg',
    )
    taken(await send({ path, body }), 'a photo')
    doors.told('photos')
    kept.push({ key, value: '1' })
  }
  return kept
}

/** Somebody at the desk who accepts one pile after the other, by their numbers. */
export async function deciding(
  send: Send,
  doors: Doors,
  cookie: string,
  piles: readonly number[],
): Promise<Acknowledged[]> {
  const kept: Acknowledged[] = []
  const headers = { cookie }
  const home = parse((await send({ path: '/desk/custody', headers })).text)
  const csrf = home.querySelector('input[name=csrf]')!.getAttribute('value')!
  for (const number of piles) {
    if (doors.over()) break
    const reason = 'We know these makes.'
    const body = new URLSearchParams({ csrf, seen: '0', verdict: 'accept', reason })
    const answered = await send({ path: `/desk/piles/${number}/decision`, headers, body })
    // Sent again, the decision that was kept before the answer was lost is found there.
    if (!(answered.status === 409 && answered.unanswered > 0)) taken(answered, 'a decision')
    doors.told('decisions')
    kept.push({ key: String(number), value: 'accept' })
  }
  return kept
}

/** Somebody at the desk who writes to the customer of a pile. */
export async function writing(
  send: Send,
  doors: Doors,
  cookie: string,
  number: number,
): Promise<Acknowledged[]> {
  const kept: Acknowledged[] = []
  const path = `/desk/piles/${number}/messages`
  const headers = { cookie }
  for (let n = 0; !doors.over(); n += 1) {
    const page = parse((await send({ path, headers })).text)
    const csrf = page.querySelector('input[name=csrf]')!.getAttribute('value')!
    const [key, value] = [newKey(), `Note ${n} of the workshop.`]
    const body = new URLSearchParams({ csrf, idem: key, text: value })
    taken(await send({ path, headers, body }), 'a message')
    doors.told('messages')
    kept.push({ key, value })
  }
  return kept
}

/** Somebody at the bench who puts one garment from place to place. */
export async function moving(
  send: Send,
  doors: Doors,
  cookie: string,
  number: number,
): Promise<Acknowledged[]> {
  const kept: Acknowledged[] = []
  const path = `/desk/piles/${number}/custody/1`
  const headers = { cookie }
  for (let n = 0; !doors.over(); n += 1) {
    const page = parse((await send({ path, headers })).text)
    const [key, value] = [newKey(), `shelf ${n}`]
    const body = new URLSearchParams()
    for (const name of ['csrf', 'seen']) {
      body.set(name, page.querySelector(`input[name=${name}]`)!.getAttribute('value')!)
    }
    for (const [name, text] of Object.entries({ act: 'put', place: value, idem: key })) {
      body.set(name, text)
    }
    taken(await send({ path, headers, body }), 'a move')
    doors.told('moves')
    kept.push({ key, value })
  }
  return kept
}
