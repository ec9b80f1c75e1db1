import type { LabelFault, LabelReader, LabelWords } from '../../src/photo/label-words.ts'

/** A reader that gives what a test tells it to. */
export interface ToldReader extends LabelReader {
  /** What the next photos show, or what is thrown instead. */
  tells: LabelWords | Promise<LabelWords> | Error
  is: ReturnType<LabelReader['state']>
  /** Photos that were given to it. */
  readonly given: Uint8Array[]
}

export function toldReader(): ToldReader {
  const reader: ToldReader = {
    tells: labelOf([]),
    is: 'ready',
    given: [],
    state: () => reader.is,
    read: async (jpeg) => {
      reader.given.push(jpeg)
      if (reader.tells instanceof Error) throw reader.tells
      return reader.tells
    },
    close: () => Promise.resolve(),
  }
  return reader
}

/** Words as they are read, all of them as surely. */
export const labelOf = (
  lines: readonly string[],
  { sure = 0.99, faults = [] }: { sure?: number; faults?: readonly LabelFault[] } = {},
): LabelWords => ({ lines: lines.map((text) => ({ text, sure })), faults })
