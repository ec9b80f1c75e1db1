import type { Names } from './types.ts'

export const seen = (...names: string[]): Names => ({ status: 'seen', names })
export const secondary = (...names: string[]): Names => ({ status: 'secondary', names })
export const memory = (...names: string[]): Names => ({ status: 'memory', names })
