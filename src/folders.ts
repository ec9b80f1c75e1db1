export interface Folders {
  readonly dataDir: string
  readonly flowsDir: string
}

/** Where records and the owner's files stand. Read by itself, as some commands need nothing else. */
export const foldersOf = (environment: Readonly<Record<string, string | undefined>>): Folders => ({
  dataDir: environment.DATA_DIR || './data',
  flowsDir: environment.FLOWS_DIR || './flows',
})
