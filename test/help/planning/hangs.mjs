import { parentPort } from 'node:worker_threads'

parentPort.on('message', () => {
  for (;;);
})
parentPort.postMessage({ ready: true })
