import { expect, test } from 'vitest'
import { Failure } from '../../src/base/failures.ts'
import { takeTurns } from '../../src/photo/turns.ts'
import type { Worker } from '../../src/photo/worker-process.ts'

/** Processes that answer each job with their own number and the job's. */
function processes() {
  const started: { readonly worker: Worker<number, string>; ended: boolean }[] = []
  const start = (): Worker<number, string> => {
    const own = { ended: false } as (typeof started)[number]
    const number = started.push(own)
    const worker: Worker<number, string> = {
      ask: async (job) => {
        await new Promise((done) => setImmediate(done))
        return own.ended ? null : `${job} by ${number}`
      },
      alive: () => !own.ended,
      pid: undefined,
      end: async () => {
        own.ended = true
        await new Promise((done) => setImmediate(done))
      },
    }
    Object.assign(own, { worker })
    return worker
  }
  return { start, started, living: () => started.filter(({ ended }) => !ended).length }
}

test('a spent process is replaced between two jobs, none of which is lost', async () => {
  const { start, started, living } = processes()
  const isSpent = (done: string) => /^[24] /.test(done)
  const turns = takeTurns<number, string>({ most: 8, limitMs: 1000, start, isSpent })
  const answers = await Promise.all([1, 2, 3, 4, 5].map((job) => turns.ask(job)))
  expect(answers).toEqual(['1 by 1', '2 by 1', '3 by 2', '4 by 2', '5 by 3'])
  expect([started.length, living()]).toEqual([3, 1])
})

test('whoever asked last does not wait for the new process, which stands ready for the next', async () => {
  const { start, started } = processes()
  const turns = takeTurns<number, string>({ most: 8, limitMs: 1000, start, isSpent: () => true })
  expect(await turns.ask(1)).toBe('1 by 1')
  expect(started).toHaveLength(1)
  while (started.length < 2) await new Promise((done) => setImmediate(done))
  expect(await turns.ask(2)).toBe('2 by 2')
})

test('a process that died while it stood ready is replaced as any other', async () => {
  const { start, started } = processes()
  const turns = takeTurns<number, string>({ most: 8, limitMs: 1000, start, isSpent: () => true })
  await turns.ask(1)
  while (started.length < 2) await new Promise((done) => setImmediate(done))
  await started[1]!.worker.end()
  expect(await turns.ask(2)).toBe('2 by 3')
})

test('closed while a process is replaced, no other is started', async () => {
  const { start, living, started } = processes()
  const turns = takeTurns<number, string>({ most: 8, limitMs: 1000, start, isSpent: () => true })
  await turns.ask(1)
  await turns.close()
  await new Promise((done) => setTimeout(done, 20))
  expect([started.length, living()]).toEqual([1, 0])
  await expect(turns.ask(2)).rejects.toMatchObject({ code: 'busy', status: 503 })
})

test('a job that the machine had no time for is told to come again, and the next has its turn', async () => {
  const { start } = processes()
  const starved = (): Worker<number, string> => {
    const worker = start()
    const ask = async (job: number, limitMs: number) => {
      if (job === 1) throw new Failure('busy')
      return worker.ask(job, limitMs)
    }
    return { ...worker, ask }
  }
  const turns = takeTurns<number, string>({ most: 8, limitMs: 1000, start: starved })
  const answers = await Promise.allSettled([1, 2].map((job) => turns.ask(job)))
  expect(answers).toMatchObject([
    { status: 'rejected', reason: { code: 'busy', status: 503 } },
    { status: 'fulfilled', value: '2 by 1' },
  ])
  expect(turns.waiting()).toBe(0)
})
