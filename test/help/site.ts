import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'

export interface Site {
  /** Of the same machine, and of another site than pages at 127.0.0.1. */
  readonly origin: string
  /** What the page is from now on, and the policy it is sent with. */
  show(body: string, policy?: string): void
  close(): Promise<void>
}

/** A page of somebody's own site, on another origin than ours. */
export async function openSite(): Promise<Site> {
  let shown = { body: '', policy: '' }
  const server = createServer((_, response) => {
    response.setHeader('content-type', 'text/html; charset=utf-8')
    if (shown.policy) response.setHeader('content-security-policy', shown.policy)
    response.end(
      `<!doctype html><html lang="en"><title>Site</title><main><h1>Our quilts</h1>${shown.body}</main></html>`,
    )
  })
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const { port } = server.address() as AddressInfo
  return {
    origin: `http://localhost:${port}`,
    show: (body, policy = '') => {
      shown = { body, policy }
    },
    close: () => new Promise((done) => server.close(() => done())),
  }
}
