import { parentPort } from 'node:worker_threads'

// Tells the how-manieth panel it is; a panel a hundred quarter inches wide or wider hangs it.
let nth = 0
parentPort.on('message', ({ asked }) => {
  while (asked.panel.W >= 100);
  nth += 1
  parentPort.postMessage({ told: { patterns: [[nth]] } })
  parentPort.postMessage({ done: true })
})
parentPort.postMessage({ ready: true })
