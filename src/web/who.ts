import type { FastifyInstance } from 'fastify'
import { type Role, roles } from '../store/schema.ts'

/**
 * `anyone`: no key and no account is asked for. `customer`: whoever holds the key of the pile in the path. `operator`:
 * whoever runs the server.
 */
export type Who = 'anyone' | 'customer' | 'operator' | Role

declare module 'fastify' {
  interface FastifyContextConfig {
    /** Who may use the route; each one says so. */
    who?: readonly Who[]
  }
}

export const anyone: readonly Who[] = ['anyone']
export const customer: readonly Who[] = ['customer']
export const operator: readonly Who[] = ['operator']
/** Everybody with an account. */
export const workshop: readonly Who[] = roles
/** Those who see prices and how customers are reached. */
export const staff: readonly Who[] = ['staff', 'owner']
export const owner: readonly Who[] = ['owner']

export interface Guarded {
  readonly method: string
  /** With its parameters as `:name`. */
  readonly url: string
  readonly who: readonly Who[]
}

declare module 'fastify' {
  interface FastifyInstance {
    /** Every route that was given so far, but files for browsers. */
    guarded: Guarded[]
  }
}

/**
 * From now on every route that `app` is given names who may use it: one that does not stops the start. Files for
 * browsers are anybody's.
 */
export function requireWho(app: FastifyInstance): void {
  app.decorate('guarded', [])
  app.addHook('onRoute', ({ method, url, config }) => {
    if (url.startsWith('/assets/')) return
    if (!config?.who?.length) {
      throw new Error(`${[method].flat().join()} ${url} does not say who may use it`)
    }
    for (const one of [method].flat()) app.guarded.push({ method: one, url, who: config.who })
  })
}
