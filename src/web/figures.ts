import { Counter, collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client'
import type { FailureCode } from '../base/failures.ts'
import type { Conversation } from '../intake/conversation.ts'
import type { PhotoStore } from '../photo/keep.ts'

/** What waits in this process, and in the store that all processes share. */
export interface Queues {
  readonly photos: () => number
  readonly plans: () => number
  /** Mails that have not gone out, by state. Rejects where the store does not answer. */
  readonly mails: () => Promise<Readonly<Record<string, number>>>
}

/** Counts what this process does. No label holds anything of a person: routes are patterns, failures are codes. */
export interface Figures {
  request(seen: {
    readonly method: string
    readonly route: string
    readonly status: number
    readonly seconds: number
  }): void
  /** A request that ended in a failure of the catalogue. */
  failed(code: FailureCode): void
  kept(what: 'answer' | 'photo'): void
  /** All of it in the text format that Prometheus reads, and that format's media type. */
  told(): Promise<{ readonly type: string; readonly text: string }>
}

/** Upper bounds, seconds: from a page out of memory to a photo over a slow line. */
const durations = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10, 30]

export function openFigures(queues: Queues): Figures {
  const registry = new Registry()
  const registers = [registry]
  collectDefaultMetrics({ register: registry })
  const requests = new Counter({
    name: 'pieceworth_http_requests_total',
    help: 'Requests that were answered, by method, pattern of the route and status',
    labelNames: ['method', 'route', 'status'],
    registers,
  })
  const took = new Histogram({
    name: 'pieceworth_http_request_duration_seconds',
    help: 'How long requests took until they were answered, by method and pattern of the route',
    labelNames: ['method', 'route'],
    buckets: durations,
    registers,
  })
  const failures = new Counter({
    name: 'pieceworth_failures_total',
    help: 'Requests that ended in a failure, by its code',
    labelNames: ['code'],
    registers,
  })
  const keptOf = {
    answer: new Counter({
      name: 'pieceworth_answers_kept_total',
      help: 'Answers and other acts of customers that were acknowledged',
      registers,
    }),
    photo: new Counter({
      name: 'pieceworth_photos_kept_total',
      help: 'Photos that the photo store has taken',
      registers,
    }),
  }
  const waiting = (name: string, help: string, length: () => number) =>
    new Gauge({
      name,
      help,
      registers,
      collect() {
        this.set(length())
      },
    })
  waiting('pieceworth_photos_waiting', 'Photos that wait to be made safe', queues.photos)
  waiting('pieceworth_plans_waiting', 'Piles and quilts that wait to be planned', queues.plans)
  const up = new Gauge({
    name: 'pieceworth_store_up',
    help: '1 where the store of records answered just now, else 0',
    registers,
  })
  const mails = new Gauge({
    name: 'pieceworth_mails',
    help: 'Mails in the outbox, by state',
    labelNames: ['state'],
    registers,
  })

  /** What the store cannot tell is left out, not told as it was before. */
  async function askStore(): Promise<void> {
    mails.reset()
    try {
      const counts = await queues.mails()
      for (const [state, count] of Object.entries(counts)) mails.set({ state }, count)
      up.set(1)
    } catch {
      up.set(0)
    }
  }

  return {
    request: ({ method, route, status, seconds }) => {
      requests.inc({ method, route, status })
      took.observe({ method, route }, seconds)
    },
    failed: (code) => failures.inc({ code }),
    kept: (what) => keptOf[what].inc(),
    told: async () => {
      await askStore()
      return { type: registry.contentType, text: await registry.metrics() }
    },
  }
}

/** The same conversation and photo store; what they keep is counted. */
export function counting(
  figures: Figures,
  { conversation, photos }: { conversation: Conversation; photos: PhotoStore },
): { conversation: Conversation; photos: PhotoStore } {
  return {
    conversation: {
      ...conversation,
      act: async (key, sent) => {
        const outcome = await conversation.act(key, sent)
        if (outcome.seq !== null) figures.kept('answer')
        return outcome
      },
    },
    photos: {
      ...photos,
      keep: async (photo) => {
        const name = await photos.keep(photo)
        figures.kept('photo')
        return name
      },
    },
  }
}
