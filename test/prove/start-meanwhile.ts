import { setTimeout as pause } from 'node:timers/promises'
import type { RunningServer } from '../help/server.ts'
import type { Trouble } from './trouble.ts'

/** What came of starting a server while something was wrong. */
export interface StartSaid {
  /** `starts`, or the code and sentence it ended with. */
  readonly said: string
  /** What it should have said and did not; null: it was clear. */
  readonly wrong: string | null
}

const endsWithinMs = 60_000

/** What a server that refuses to start tells whoever runs it: a code and a sentence that names what to look at. */
function refusal(error: unknown): StartSaid {
  const text = String((error as Error).message)
  const line = text.split('\n').find((one) => one.includes('{"error":'))
  if (!line) return { said: text.slice(0, 200), wrong: `a start ended with ${text.slice(0, 400)}` }
  const told = JSON.parse(line.slice(line.indexOf('{"error":'))) as {
    error: { code: string; message: string }
  }
  const { code, message } = told.error
  const said = `${code}: ${message}`
  return {
    said,
    wrong: /[A-Z\d]+_(DIR|URL|ENDPOINT)/.test(message)
      ? null
      : `a start does not say what to do: ${said}`,
  }
}

/**
 * Ends all servers in the midst of a trouble and starts the first of them; then all is well again, and it starts and
 * ends once more. Leaves none running.
 */
export async function startMeanwhile(
  servers: RunningServer[],
  { begin, end }: Trouble,
): Promise<StartSaid> {
  await begin()
  const ended = Promise.all(servers.map((one) => one.stop()))
  const inTime = await Promise.race([ended, pause(endsWithinMs, null, { ref: false })])
  if (!inTime) {
    for (const one of servers) await one.kill()
  }
  let said: StartSaid = { said: 'starts', wrong: null }
  try {
    servers[0] = await servers[0]!.restart()
    await servers[0].stop()
  } catch (error) {
    said = refusal(error)
  }
  await end()
  servers[0] = await servers[0]!.restart()
  await servers[0].stop()
  return inTime ? said : { ...said, wrong: `a server did not end within ${endsWithinMs / 1000} s` }
}
