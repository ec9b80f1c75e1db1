import { parentPort } from 'node:worker_threads'

parentPort.on('message', () => {
  const hoard = []
  for (;;) hoard.push(Array.from({ length: 1000 }, (_, n) => ({ n })))
})
parentPort.postMessage({ ready: true })
