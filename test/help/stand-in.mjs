// Stands in for the built server where only its being started and ended is tested.
import { appendFileSync, readFileSync } from 'node:fs'
import { createServer } from 'node:http'

const { PORT, DATA_DIR, FAILS } = process.env
if (FAILS) {
  process.stderr.write(`${FAILS}\n`)
  process.exit(1)
}
appendFileSync(`${DATA_DIR}/starts`, 'start\n')
let asked = 0
const server = createServer((request, reply) => {
  if (request.url !== '/readyz') return reply.end(readFileSync(`${DATA_DIR}/starts`))
  asked += 1
  reply.writeHead(asked > 2 ? 200 : 503).end()
})
server.listen(Number(PORT), '127.0.0.1', () => {
  process.stdout.write(`listening http://127.0.0.1:${PORT}\n`)
  process.stdout.write(`owner: http://127.0.0.1:${PORT}/desk/welcome/abc_-1\n`)
})
process.on('SIGTERM', () => process.exit(0))
