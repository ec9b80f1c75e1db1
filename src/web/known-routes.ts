import type { FastifyInstance } from 'fastify'

interface Known {
  readonly pattern: RegExp
  readonly methods: readonly string[]
}

const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** `/i/:key` as an expression for whole paths. */
const patternOf = (url: string): RegExp =>
  new RegExp(
    `^${url
      .split('/')
      .map((part) => (part.startsWith(':') ? '[^/]+' : part === '*' ? '.*' : escaped(part)))
      .join('/')}$`,
  )

/**
 * Remembers the routes that `app` is given from now on. Returns the methods that an address is known
 * for, so that a wrong method can be told from a wrong address.
 */
export function collectRoutes(app: FastifyInstance): (url: string) => string[] {
  const known: Known[] = []
  app.addHook('onRoute', ({ url, method }) => {
    known.push({ pattern: patternOf(url), methods: [method].flat() })
  })
  return (url) => {
    const path = url.split('?', 1)[0]!
    const methods = known.filter(({ pattern }) => pattern.test(path)).flatMap((one) => one.methods)
    return [...new Set(methods)].sort()
  }
}
