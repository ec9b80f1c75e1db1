declare module 'autocannon' {
  import type { EventEmitter } from 'node:events'

  /** One connection's own, for as long as it goes through its requests once. */
  export interface Context {
    customer: number
  }

  export interface Request {
    readonly method?: 'GET' | 'POST'
    readonly path?: string
    readonly headers?: Readonly<Record<string, string>>
    readonly body?: string
    /** Gives the request to send now. */
    readonly setupRequest?: (request: Request, context: Context) => Request
  }

  export interface Options {
    readonly url: string
    readonly connections: number
    /** Seconds. */
    readonly duration: number
    readonly requests: readonly Request[]
  }

  export interface Result {
    readonly errors: number
    readonly timeouts: number
  }

  /** Emits `response` (client, status, bytes, ms) for each answer. */
  export interface Instance extends EventEmitter, PromiseLike<Result> {}

  export default function autocannon(options: Options): Instance
}
