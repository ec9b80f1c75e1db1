import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { promText } from '../help/prom-text.ts'
import { eachStore, openSqlite, type TestStore } from '../help/stores.ts'
import { confirmPile, openWorkshop, said } from '../help/workshop.ts'

const clock = () => Date.UTC(2026, 5, 1, 9)
const token = 'a-token-of-these-tests'

eachStore('the figures of a server', (store) => {
  test('can be read by any reader of the format, and count what was done', async () => {
    const workshop = await openWorkshop(store(), clock)
    try {
      const key = await confirmPile(workshop.conversation, [{ kind: said('button-shirt') }])
      const walked = await workshop.app.inject({
        url: `/i/${key}`,
        headers: { accept: 'text/html' },
      })
      expect(walked.statusCode).toBe(200)
      await workshop.app.inject({ url: '/nowhere/at-all' })
      const begun = await workshop.app.inject({ method: 'POST', url: '/i', payload: {} })
      const answered = {
        method: 'POST',
        url: `${begun.headers.location}/0/recipient`,
        payload: { act: 'answer', idem: 'an-answer-once', value: 'adult' },
      } as const
      // The same answer twice is one answer.
      for (const _ of ['sent', 'sent again']) {
        expect((await workshop.app.inject(answered)).statusCode).toBe(303)
      }

      const answer = await workshop.app.inject({ url: '/metrics' })
      expect(answer.statusCode).toBe(200)
      expect(answer.headers['content-type']).toMatch(/^text\/plain; version=0\.0\.4/)
      const told = promText(answer.body)
      const value = (name: string, labels: Record<string, string> = {}) =>
        told.find(
          (one) =>
            one.name === name && Object.entries(labels).every(([k, v]) => one.labels[k] === v),
        )?.value
      const pile = { method: 'GET', route: '/i/:key', status: '200' }
      expect(value('pieceworth_http_requests_total', pile)).toBe(1)
      expect(value('pieceworth_http_requests_total', { route: 'none', status: '404' })).toBe(1)
      expect(
        value('pieceworth_http_request_duration_seconds_bucket', { route: '/i/:key', le: '+Inf' }),
      ).toBe(1)
      expect(value('pieceworth_answers_kept_total')).toBe(1)
      expect(value('pieceworth_failures_total', { code: 'not_found' })).toBeUndefined()
      expect(value('pieceworth_store_up')).toBe(1)
      expect(value('pieceworth_mails', { state: 'waiting' })).toBe(0)
      expect(value('pieceworth_photos_waiting')).toBe(0)
      expect(value('pieceworth_plans_waiting')).toBe(0)
      expect(value('process_resident_memory_bytes')).toBeGreaterThan(1e6)
      expect(value('nodejs_eventloop_lag_p99_seconds')).toBeGreaterThanOrEqual(0)

      // Every label is a pattern or a code: nothing that was in an address or typed by a person.
      expect(answer.body).not.toContain(key)
      expect(answer.body).not.toContain('at-all')
      expect(answer.body).not.toMatch(/ana@|Ruiz|555 0100/)
    } finally {
      await workshop.close()
    }
  })
})

describe('who may read the figures', () => {
  let lost: TestStore
  beforeAll(async () => {
    lost = await openSqlite()
    await lost.store.close()
  })
  afterAll(() => lost.end())

  const ask = async (
    metricsToken: string | null,
    headers: Record<string, string>,
    from: string,
  ) => {
    const workshop = await openWorkshop(lost.store, clock, { metricsToken })
    try {
      return await workshop.app.inject({ url: '/metrics', headers, remoteAddress: from })
    } finally {
      await workshop.close()
    }
  }

  test.each<[string, string | null, Record<string, string>, string, number]>([
    ['this machine, where there is no token', null, {}, '127.0.0.1', 200],
    ['this machine over IPv6', null, {}, '::1', 200],
    ['another machine', null, {}, '192.0.2.7', 404],
    [
      'another one by way of a proxy here',
      null,
      { 'x-forwarded-for': '192.0.2.7' },
      '127.0.0.1',
      404,
    ],
    ['one that says it is here', null, { 'x-forwarded-for': '127.0.0.1' }, '192.0.2.7', 404],
    ['a proxy that says nothing but its name', null, { via: '1.1 gate' }, '127.0.0.1', 404],
    ['whoever bears the token', token, { authorization: `Bearer ${token}` }, '192.0.2.7', 200],
    ['this machine without the token', token, {}, '127.0.0.1', 404],
    ['a wrong token', token, { authorization: `Bearer ${token}x` }, '192.0.2.7', 404],
    ['a token of another kind', token, { authorization: `Basic ${token}` }, '192.0.2.7', 404],
  ])('%s', async (_, metricsToken, headers, from, status) => {
    const answer = await ask(metricsToken, headers, from)
    expect(answer.statusCode).toBe(status)
    if (status === 404) expect(answer.body).not.toContain('pieceworth_')
    // The store is lost: what it cannot tell is left out, the rest is told.
    else {
      expect(answer.body).toMatch(/^pieceworth_store_up 0$/m)
      expect(answer.body).not.toMatch(/^pieceworth_mails\{/m)
    }
  })
})
