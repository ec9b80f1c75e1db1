import type { Names } from './types.ts'

export const seen = (...names: string[]): Names => ({ status: 'seen', names })
export const secondary = (...names: string[]): Names => ({ status: 'secondary', names })
export const memory = (...names: string[]): Names => ({ status: 'memory', names })

/** Words and phrases parted by bars, over as many lines as they need. */
export const list = (words: string): readonly string[] =>
  words.replaceAll(/\s+/g, ' ').trim().split(' | ')
