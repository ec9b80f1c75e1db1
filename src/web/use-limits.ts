import type { FastifyRateLimitStore } from '@fastify/rate-limit'
import type { Clock } from '../base/clock.ts'
import type { Log } from '../base/log.ts'
import type { Store } from '../store/open.ts'
import { countUses, windowEnd } from '../store/uses.ts'

type Counted = (error: Error | null, result?: { current: number; ttl: number }) => void

export interface LimitParts {
  readonly store: Store
  readonly clock: Clock
  readonly log: Log
}

/** Limits of single routes are low and guard secrets: each use is counted in the store, where all processes see it. */
class ExactCounts implements FastifyRateLimitStore {
  readonly #parts: LimitParts
  readonly #route: string

  constructor(parts: LimitParts, route: string) {
    this.#parts = parts
    this.#route = route
  }

  incr(key: string, counted: Counted, windowMs: number): void {
    const { store, clock } = this.#parts
    const at = clock()
    countUses(store.db, { what: `${this.#route} ${key}`, windowMs, at }).then(
      ({ uses, until }) => counted(null, { current: uses, ttl: until - at }),
      (error: Error) => counted(error),
    )
  }

  child(): ExactCounts {
    return this
  }
}

interface Seen {
  until: number
  /** Of all processes, when they were last asked for. */
  known: number
  /** Of this process, since then. */
  unsent: number
}

/** How often processes tell each other, ms. */
const shareEvery = 1_000

/** Whoever has used up less than this share of a limit is told to nobody: nearly every visitor is one of these. */
const tellFrom = 0.01

/** With more addresses than this in one window the oldest is forgotten. */
const mostSeen = 50_000

/**
 * The limit of all requests from one address is high: it is counted in memory, and on a store of several processes
 * shared once a second, by those alone who come near it.
 */
export class SharedCounts {
  readonly #parts: LimitParts
  readonly #seen = new Map<string, Seen>()
  readonly #timer: NodeJS.Timeout | null
  #windowMs = 0
  #max = 0

  constructor(parts: LimitParts) {
    this.#parts = parts
    this.#timer =
      parts.store.dialect === 'postgres'
        ? setInterval(() => void this.share(), shareEvery).unref()
        : null
  }

  close(): void {
    if (this.#timer) clearInterval(this.#timer)
  }

  count(key: string, windowMs: number, max: number): { current: number; ttl: number } {
    this.#windowMs = windowMs
    this.#max = max
    const at = this.#parts.clock()
    const until = windowEnd(at, windowMs)
    let seen = this.#seen.get(key)
    if (seen?.until !== until) {
      seen = { until, known: 0, unsent: 0 }
      this.#seen.delete(key)
      this.#seen.set(key, seen)
      if (this.#seen.size > mostSeen) this.#seen.delete(this.#seen.keys().next().value!)
    }
    seen.unsent += 1
    return { current: seen.known + seen.unsent, ttl: until - at }
  }

  /** Tells the store what came near the limit since the last time, and learns what others have counted. */
  async share(): Promise<void> {
    const { store, clock, log } = this.#parts
    const at = clock()
    for (const [key, seen] of this.#seen) {
      if (seen.until <= at) {
        this.#seen.delete(key)
        continue
      }
      if (seen.unsent === 0 || seen.known + seen.unsent < this.#max * tellFrom) continue
      const by = seen.unsent
      try {
        const what = `requests ${key}`
        const { uses } = await countUses(store.db, { what, windowMs: this.#windowMs, at, by })
        seen.known = uses
        seen.unsent -= by
      } catch (err) {
        // The store may be away for a while; this process goes on counting for itself.
        log.warn({ err }, 'requests are counted by this process alone')
        return
      }
    }
  }
}

/** What the rate limits count with: `shared` for the limit of all routes, the store itself for a single route's. */
export const limitCounts = (parts: LimitParts, shared: SharedCounts) =>
  class implements FastifyRateLimitStore {
    incr(key: string, counted: Counted, windowMs: number, max: number): void {
      counted(null, shared.count(key, windowMs, max))
    }

    /** Of a route, with what its own limit says; the package's types leave out where it is. */
    child(options: object) {
      const { routeInfo } = options as {
        routeInfo: { method?: string | string[]; url?: string }
      }
      return new ExactCounts(parts, `${[routeInfo.method].flat().join()} ${routeInfo.url}`)
    }
  }
