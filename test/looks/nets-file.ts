import type { Net } from '../../src/photo/look/net.ts'
import type { OutlineNets } from '../../src/photo/look/outline.ts'
import type { PrintNets } from '../../src/photo/look/read-print.ts'

/** The source file that holds the nets: a line of JSON each, which is sooner read than thousands of literals. */
export function netsFile(nets: {
  outline: OutlineNets
  print: PrintNets
  fitness: readonly Net[]
}): string {
  const line = (value: unknown): string => `JSON.parse(\n  '${JSON.stringify(value)}',\n)`
  return `import type { Net } from './net.ts'
import type { OutlineNets } from './outline.ts'
import type { PrintNets } from './read-print.ts'

// Written by test/looks/train.ts; DEVELOPERS.md tells on what they were trained.

/** Tell a garment's pixels from the ground's. */
export const outlineNets: OutlineNets = ${line(nets.outline)}

/** Tell which groups of print are a picture, and the class of print. */
export const printNets: PrintNets = ${line(nets.print)}

/** Tell a photo's fault. */
export const fitnessNets: readonly Net[] = ${line(nets.fitness)}
`
}
