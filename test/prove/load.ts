import { setTimeout as pause } from 'node:timers/promises'
import { systemClock } from '../../src/base/clock.ts'
import { newId } from '../../src/base/ids.ts'
import { insertAccount } from '../../src/desk/accounts.ts'
import { openSession } from '../../src/desk/sessions.ts'
import type { StoreSettings } from '../../src/store/open.ts'
import { openStore } from '../../src/store/open.ts'
import type { Role } from '../../src/store/schema.ts'
import { sessionCookie } from '../../src/web/desk/cookies.ts'
import { type DemoGarment, garments } from '../demo/pile.ts'
import { photoOf, replyOf } from '../demo/reply.ts'
import { sendFiles } from '../help/chat.ts'
import { Walker } from '../help/walker.ts'

/** What one customer or clerk has done: told after each request, with how long it took, ms. */
export type Done = (what: string, ms: number, status: number) => void

/** A visitor who is told that it is too much now waits as long as was asked, and sends the same again, as pages do. */
class PatientWalker extends Walker {
  /** How often it was told so. */
  refused = 0

  override async open(path: string, init: RequestInit = {}): Promise<this> {
    for (let tries = 0; ; tries += 1) {
      await super.open(path, init)
      if (this.status !== 503 || this.retryAfter === null || tries === 20) return this
      this.refused += 1
      await pause(this.retryAfter * 1000)
    }
  }
}

async function timed(
  walker: PatientWalker,
  what: string,
  done: Done,
  work: () => Promise<unknown>,
) {
  const [from, before] = [performance.now(), walker.refused]
  await work()
  for (let n = before; n < walker.refused; n += 1) done(what, 0, 503)
  done(what, performance.now() - from, walker.status)
  if (walker.status >= 500) throw new Error(`${what}: ${walker.status} at ${walker.url}`)
}

const photos = new Map<DemoGarment, Buffer>()

async function photoBytes(garment: DemoGarment): Promise<Buffer> {
  const bytes = photos.get(garment) ?? (await photoOf(garment))
  photos.set(garment, bytes)
  return bytes
}

async function answerOpen(
  walker: PatientWalker,
  garment: DemoGarment | null,
  done: Done,
): Promise<void> {
  for (let { question } = walker; question; { question } = walker) {
    const asked = question
    if (asked.id === 'photos' && garment?.photo) {
      const bytes = await photoBytes(garment)
      await timed(walker, 'photo', done, () =>
        sendFiles(walker, [{ bytes, name: 'garment.jpg', type: 'image/jpeg' }]),
      )
      // Where the photo tells nothing surely the page says so once; it is sent on as it is.
      if (walker.question?.id === 'photos') {
        await timed(walker, 'photo as it is', done, () =>
          walker.send({ act: 'answer', anyway: '1' }),
        )
      }
      if (walker.question?.id === 'photos') {
        await timed(walker, 'no photo', done, () => walker.send({ act: 'skip' }))
      }
      continue
    }
    await timed(walker, 'answer', done, () => walker.send(replyOf(asked, garment)))
    if (walker.status >= 400) {
      throw new Error(`${asked.id}: ${walker.status} ${walker.text('.errors')}`)
    }
  }
}

/** Each from elsewhere: limits by address are not what is tried here. */
function fromElsewhere(): Readonly<Record<string, string>> {
  const part = () => Math.floor(Math.random() * 256)
  return { 'x-forwarded-for': `10.${part()}.${part()}.${part()}` }
}

/** A customer with so many of the invented garments, from hello to the packing list. */
export async function playPile(base: string, count: number, done: Done): Promise<Walker> {
  const walker = new PatientWalker(base, fromElsewhere())
  await timed(walker, 'start', done, () => walker.start())
  await answerOpen(walker, null, done)
  const first = Math.floor(Math.random() * garments.length)
  for (let n = 0; n < count; n += 1) {
    await timed(walker, 'add', done, () => walker.press('add-garment'))
    await answerOpen(walker, garments[(first + n) % garments.length]!, done)
  }
  await timed(walker, 'confirm', done, () => walker.press('confirm-pile'))
  await answerOpen(walker, null, done)
  await timed(walker, 'confirm', done, () => walker.press('confirm-pile'))
  return walker
}

/** The cookie of somebody new at the desk, whose account and session are written into the store of a running server. */
export async function clerkCookie(settings: StoreSettings, role: Role): Promise<string> {
  const store = await openStore(settings)
  try {
    const id = newId()
    await insertAccount(store.db, {
      id,
      email: `${id.toLowerCase()}@lantern-street.example`,
      name: 'Marta',
      role,
      password_hash: 'none',
      made_at: systemClock(),
      disabled_at: null,
      seen_at: null,
    })
    const { token } = await openSession(store.db, systemClock, id)
    return `${sessionCookie}=${token}`
  } finally {
    await store.close()
  }
}

/** A form of the page that is shown, sent with these fields over its own. */
export async function submit(
  walker: Walker,
  selector: string,
  fields: Readonly<Record<string, string>>,
): Promise<Walker> {
  const form = walker.root.querySelector(selector)
  if (!form) throw new Error(`no ${selector} on ${walker.url}: ${walker.text('h1')}`)
  const body = new URLSearchParams()
  for (const input of form.querySelectorAll('input[type=hidden]')) {
    body.append(input.getAttribute('name')!, input.getAttribute('value') ?? '')
  }
  for (const [name, value] of Object.entries(fields)) body.set(name, value)
  return walker.open(form.getAttribute('action')!, { method: 'POST', body })
}

/** A clerk who looks at the queue, opens its first piles, decides what waits and accepts the pile. */
export async function clerkTurn(base: string, cookie: string, done: Done): Promise<void> {
  const walker = new PatientWalker(base, { cookie, ...fromElsewhere() })
  await timed(walker, 'queue', done, () => walker.open('/desk'))
  const links = walker.root
    .querySelectorAll('a[href^="/desk/piles/"]')
    .map((link) => link.getAttribute('href')!.split('#')[0]!)
  const [pile] = [...new Set(links)].filter((link) => /^\/desk\/piles\/\d+$/.test(link))
  if (!pile) return
  await timed(walker, 'pile', done, () => walker.open(pile))
  for (;;) {
    const form = walker.root.querySelector('form[id^="decide-"][action$="/decision"]')
    const action = form?.getAttribute('action')
    if (!action) break
    const reason = 'Its coating would melt under any iron.'
    await timed(walker, 'decision', done, () =>
      submit(walker, `form[action="${action}"]`, { verdict: 'decline', reason }),
    )
    await timed(walker, 'pile', done, () => walker.open(pile))
    if (walker.root.querySelector(`form[id^="decide-"][action="${action}"]`)) break
  }
  if (walker.root.querySelector('form#decide')) {
    await timed(walker, 'decision of a pile', done, () =>
      submit(walker, 'form#decide', { verdict: 'accept', reason: 'We know these makes.' }),
    )
  }
  for (const rest of ['/plan', '/custody', '/messages', '/offer', '/what-if']) {
    await timed(walker, `desk ${rest}`, done, () => walker.open(`${pile}${rest}`))
  }
}
