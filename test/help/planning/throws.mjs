import { parentPort } from 'node:worker_threads'

parentPort.on('message', () => {
  throw new Error('out of cloth')
})
parentPort.postMessage({ ready: true })
