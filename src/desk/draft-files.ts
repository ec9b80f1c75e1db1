import { Failure } from '../base/failures.ts'
import type { FlowFiles } from '../intake/flow-files.ts'

/** A file of a draft: its name in the flows folder, and its whole text. */
export interface DraftFile {
  readonly name: string
  readonly text: string
}

/** Characters; and files in one draft. */
export const draftLimits = { longest: 200_000, files: 12 } as const

const folders = ['layouts', 'rates', 'tables', 'tables/words', 'intake/words'] as const

const isNew = (name: string): boolean =>
  folders.some(
    (folder) =>
      name.startsWith(`${folder}/`) &&
      /^[a-z0-9][\w-]{0,60}\.yaml$/.test(name.slice(folder.length + 1)),
  )

/**
 * A file as it was sent. Throws `file_name_wrong` for a name that is neither one of the live files nor one that the
 * flows folder may hold, and `file_too_long`.
 */
export function draftFile({ name, text }: DraftFile, live: FlowFiles): DraftFile {
  const plain = name.trim()
  if (!live.has(plain) && !isNew(plain)) throw new Failure('file_name_wrong')
  if (text.length > draftLimits.longest) {
    throw new Failure('file_too_long', { longest: draftLimits.longest })
  }
  // Browsers send line ends as two characters; files here have one.
  return { name: plain, text: text.replaceAll('\r\n', '\n') }
}

/** A draft with one file more, or with that file's text changed. Throws `file_too_long` where there are too many. */
export function withFile(files: readonly DraftFile[], file: DraftFile): DraftFile[] {
  const all = [...files.filter(({ name }) => name !== file.name), file]
  if (all.length > draftLimits.files) {
    throw new Failure('file_too_long', { longest: draftLimits.longest })
  }
  return all.toSorted((a, b) => (a.name < b.name ? -1 : 1))
}

/** The live files with the draft's in their places. */
export const over = (live: FlowFiles, draft: readonly DraftFile[]): FlowFiles =>
  new Map(
    [
      ...new Map([
        ...live,
        ...draft.map(({ name, text }) => [name, Buffer.from(text, 'utf8')] as const),
      ]),
    ].toSorted(([a], [b]) => (a < b ? -1 : 1)),
  )
