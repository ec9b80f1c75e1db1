import type { Live } from '../../src/desk/live-files.ts'
import { type FlowFiles, readFlowFiles } from '../../src/intake/flow-files.ts'

const folder = new URL('../../flows', import.meta.url).pathname

export const liveFiles = (): FlowFiles => readFlowFiles(folder)

/** The files of this project as a start would have them, taken as proven. */
export const liveHere = (): Live => ({
  files: liveFiles(),
  folder,
  proof: {
    name: 'taken-as-such',
    found: true,
    counts: {
      flows: 1,
      questions: 1,
      longestPath: 1,
      paths: [],
      tables: 1,
      rows: 1,
      statements: 1,
      combinations: 1,
    },
  },
  since: 0,
})

/** The live files with one text replaced in one of them. Throws where it is not there. */
export function replaced(file: string, from: string | RegExp, to: string): FlowFiles {
  const live = liveFiles()
  const text = live.get(file)!.toString('utf8')
  const changed = text.replace(from, to)
  if (changed === text) throw new Error(`${file} does not hold ${from}`)
  return new Map([...live, [file, Buffer.from(changed)]])
}
