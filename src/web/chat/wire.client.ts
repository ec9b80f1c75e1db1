/**
 * Sends what a form holds until the server has said that it has it. Every form that is sent so bears an idempotency
 * key, so whatever the network drops, doubles or delays, it is taken once. What is not acknowledged yet is kept on the
 * device and goes out by itself, also after the page was left.
 */

export interface Letter {
  readonly to: string
  /** Text is kept on the device too; photos live as long as their page. */
  readonly body: string | FormData
}

/** What is told while a letter is under way; its sentences stand at `#live`, in the reader's language. */
export type Told = 'sending' | 'offline' | 'busy' | 'sent'

/** ms: told as slow after; tried again after, at least and at most; given up as unanswered after. */
const waits = { slow: 800, first: 1_000, longest: 15_000, words: 20_000, photos: 120_000 }

/** From these something on the way speaks, or a server that asks for patience. */
const comeBack = [429, 502, 503, 504]

/** The answer to a letter, be it good or bad, once there is one. */
export async function deliver(letter: Letter, tell: (told: Told) => void): Promise<Response> {
  const slow = setTimeout(() => tell('sending'), waits.slow)
  keep(letter)
  try {
    for (let wait = waits.first, again = false; ; wait = Math.min(wait * 2, waits.longest)) {
      const answer = await post(letter)
      if (answer && !comeBack.includes(answer.status)) {
        drop(letter)
        if (again) tell('sent')
        return answer
      }
      clearTimeout(slow)
      tell(answer ? 'busy' : 'offline')
      again = true
      const asked = Number(answer?.headers.get('retry-after')) * 1000
      await pause(Math.min(asked || wait, waits.longest))
    }
  } finally {
    clearTimeout(slow)
  }
}

/** Null where no answer came. */
async function post({ to, body }: Letter): Promise<Response | null> {
  const patience = new AbortController()
  const photos = typeof body !== 'string'
  const timer = setTimeout(() => patience.abort(), photos ? waits.photos : waits.words)
  try {
    return await fetch(to, {
      method: 'POST',
      body: photos ? body : new URLSearchParams(body),
      // The page that follows at once, and not where it is: RFC 7240.
      headers: { accept: 'text/html', prefer: 'return=representation' },
      signal: patience.signal,
    })
  } catch {
    return null
  } finally {
    clearTimeout(timer)
  }
}

/** Ends early when the device says that there is a network again. */
const pause = (length: number): Promise<void> =>
  new Promise((done) => {
    const end = () => {
      clearTimeout(timer)
      removeEventListener('online', end)
      done()
    }
    const timer = setTimeout(end, length)
    addEventListener('online', end)
  })

/** The path of the pile that a path is of. */
export const pileOf = (address: string): string | undefined => /^\/i\/[\w-]+/.exec(address)?.[0]

const placeOf = (address: string): string => `unsent ${pileOf(address)}`

/** What was kept for the pile of this page and never acknowledged. */
export function unsent(): Letter | null {
  try {
    return JSON.parse(localStorage.getItem(placeOf(location.pathname)) ?? 'null') as Letter | null
  } catch {
    return null
  }
}

// Some browsers refuse storage altogether; the letter then lives as long as its page.
function keep({ to, body }: Letter): void {
  if (typeof body !== 'string') return
  try {
    localStorage.setItem(placeOf(to), JSON.stringify({ to, body } satisfies Letter))
  } catch {}
}

/** Another one of this pile, from another page, stays. */
function drop({ to, body }: Letter): void {
  try {
    const kept = JSON.stringify({ to, body } satisfies Letter)
    if (localStorage.getItem(placeOf(to)) === kept) localStorage.removeItem(placeOf(to))
  } catch {}
}
