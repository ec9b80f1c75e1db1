import type { PicturedLine } from '../textile/label-lines.ts'

/** What may be wrong with a photo of a label, so that it is better taken again. */
export type LabelFault = 'no-words' | 'blurred' | 'dark' | 'small'

export interface LabelWords {
  /** In reading order. */
  readonly lines: readonly PicturedLine[]
  readonly faults: readonly LabelFault[]
}

/** Letters stand as they were read; a dark or a small one may be read well all the same. */
export const isClear = ({ faults }: LabelWords): boolean => !faults.includes('blurred')

/** Reads the words on photos of labels, one photo at a time, in a process of its own. */
export interface LabelReader {
  /** `absent`: it cannot be had here, and whoever asks is asked for the words instead. */
  state(): 'starting' | 'ready' | 'absent'
  /**
   * The words on a photo that was made safe. Throws `label_unread` where the process is absent, died or was
   * slow, `busy` when too many wait.
   */
  read(jpeg: Uint8Array): Promise<LabelWords>
  close(): Promise<void>
}
