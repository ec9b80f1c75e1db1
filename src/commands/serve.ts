import { readConfig } from '../config.ts'
import { serve } from '../main.ts'

/** `serve`: listens until it is told to stop. */
export async function serveVerb(): Promise<number> {
  const serving = await serve(readConfig(process.env))
  process.stdout.write(`listening ${serving.url}\n`)
  if (serving.ownerUrl) {
    process.stdout.write(`make the owner's account here, once, within a day: ${serving.ownerUrl}\n`)
  }
  await new Promise<void>((resolve) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve())
  })
  await serving.close()
  return 0
}
