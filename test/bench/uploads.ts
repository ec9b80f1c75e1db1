import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { z } from 'zod'
import { addGarment, answerAll, pileAnswers, sendFiles, shirt } from '../help/chat.ts'
import { type RunningServer, startServer } from '../help/server.ts'
import { Walker } from '../help/walker.ts'
import { openSet } from '../looks/open-set.ts'
import { middle, timesOf } from './readings.ts'

const given = z.tuple([
  z.coerce.number().int().positive(),
  z.coerce.number().int().positive().default(20),
])

/** Customers who answer all the pile's questions while nobody uploads. */
const idleCustomers = 8

/**
 * How long other customers wait for an answer while so many send a photo of a seed's at the same time, side by
 * side with how long they wait when nobody does. The built product, in a process of its own.
 */
export async function benchUploads(told: readonly string[]): Promise<void> {
  const [seed, uploads] = given.parse([told[0], told[1]])
  const folder = fileURLToPath(new URL(`../.out/looks/${seed}/`, import.meta.url))
  if (!existsSync(folder))
    throw new Error(`Draw the photos first: npm run looks -- ${seed} ${uploads} --long=4000`)
  const photos = openSet(folder).map(({ path }) => readFileSync(path))
  const server = await startServer()
  try {
    await answersOf(server)
    const idle: number[] = []
    for (let n = 0; n < idleCustomers; n += 1) idle.push(...(await answersOf(server)))
    const senders = await Promise.all(Array.from({ length: uploads }, () => atPhotos(server)))
    const from = performance.now()
    let isDone = false
    const sent = Promise.all(
      senders.map(async (walker, n) => {
        const bytes = photos[n % photos.length]!
        await sendFiles(walker, [{ bytes, name: 'garment.jpg', type: 'image/jpeg' }])
        return { status: walker.status, ms: performance.now() - from }
      }),
    ).finally(() => {
      isDone = true
    })
    const meanwhile: number[] = []
    while (!isDone) meanwhile.push(...(await answersOf(server)))
    const all = await sent
    const taken = all.filter(({ status }) => status === 200)
    process.stdout.write(
      `${idle.length} answers while nobody uploads: ${timesOf(idle)}\n` +
        `${meanwhile.length} answers while ${uploads} upload: ${timesOf(meanwhile)}\n` +
        `median to median: ${(middle(meanwhile) / middle(idle)).toFixed(2)}\n` +
        `uploads: ${taken.length} answered with a page, ${all.length - taken.length} with ${[...new Set(all.filter((one) => one.status !== 200).map(({ status }) => status))].join(', ') || 'nothing else'}; ${timesOf(all.map(({ ms }) => ms))}\n`,
    )
  } finally {
    await server.remove()
  }
}

/** One customer who answers what is asked of the pile: ms until the next page is there, answer by answer. */
async function answersOf({ url }: RunningServer): Promise<number[]> {
  const walker = await new Walker(url).start()
  const took: number[] = []
  for (let { question } = walker; question; { question } = walker) {
    const fields = pileAnswers[question.id] ?? (question.optional ? { act: 'skip' } : null)
    if (!fields) break
    const from = performance.now()
    await walker.send(fields)
    took.push(performance.now() - from)
    if (walker.status !== 200) throw new Error(`${question.id}: ${walker.status}`)
  }
  return took
}

/** A customer whose first garment is asked for its photos. */
async function atPhotos({ url }: RunningServer): Promise<Walker> {
  const walker = await new Walker(url).start()
  await answerAll(walker, pileAnswers)
  return await addGarment(walker, shirt, 'photos')
}
