import { parentPort } from 'node:worker_threads'

parentPort.on('message', () => {
  parentPort.postMessage({ done: true })
  setImmediate(() => process.exit(0))
})
parentPort.postMessage({ ready: true })
