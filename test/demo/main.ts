import { type RunningServer, startServer } from '../help/server.ts'
import type { Walker } from '../help/walker.ts'
import { play } from './play.ts'

const address = process.env.PIECEWORTH_URL ?? `http://127.0.0.1:${process.env.PORT ?? 8080}`
const tell = (line: string): void => void process.stdout.write(`${line}\n`)

const answers = (url: string): Promise<boolean> =>
  fetch(`${url}/readyz`).then(
    (response) => response.ok,
    () => false,
  )

/** The server that runs, or one of our own on the same data folder for as long as the demo lasts. */
async function running(): Promise<{ url: string; own: RunningServer | null }> {
  if (await answers(address)) return { url: address, own: null }
  const own = await startServer({
    dataDir: process.env.DATA_DIR ?? './data',
    env: { LOG_LEVEL: 'silent', FLOWS_DIR: './flows' },
  })
  return { url: own.url, own }
}

function listed(walker: Walker): string[] {
  return walker.root.querySelectorAll('[data-garment]').map((row) => {
    const words = (selector: string) =>
      (row.querySelector(selector)?.text ?? '').replaceAll(/\s+/g, ' ').trim()
    const steps = row.querySelectorAll('.small-steps li').map((step) => step.text.trim())
    const grade = (row.getAttribute('data-grade') ?? '').padEnd(5)
    return `  ${grade}  ${words('.packed-name')}${steps[0] ? `: ${steps[0]}` : ''}`
  })
}

const { url, own } = await running()
try {
  const walker = await play(url)
  tell(walker.text('.item'))
  for (const line of listed(walker)) tell(line)
  tell(`${walker.text('.estimate .likely')}. ${walker.text('.estimate .range')}`)
  tell('')
  if (own)
    tell(
      'No server was running, so one was started for the demo alone: "npm start" serves it again.',
    )
  tell(`The customer's page:  ${address}${walker.pilePath}`)
  tell(`The desk:             ${address}/desk`)
} finally {
  await own?.stop()
}
