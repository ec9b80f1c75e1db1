import { foldersOf } from '../folders.ts'
import type { FlowFiles } from '../intake/flow-files.ts'
import { proofFolders } from '../intake/proofs.ts'
import { type Around, type Proven, proven } from '../intake/proven.ts'

/** What a proof by this process needs: names of drawings, today, and the folders of proofs. */
export const aroundHere = (): Around => ({
  drawings: async () => Object.keys((await import('../papers/drawings/index.ts')).drawings),
  today: new Date().toISOString().slice(0, 10),
  folders: proofFolders(foldersOf(process.env).dataDir),
})

export const provenHere = (files: FlowFiles): Promise<Proven> => proven(files, aroundHere())
