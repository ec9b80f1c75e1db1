import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import sharp from 'sharp'
import type { Mask } from './reading.ts'
import type { Truth } from './truth.ts'

/** One photo of a set that lies in a folder. */
export interface Kept {
  readonly truth: Truth
  readonly path: string
  mask(): Promise<Mask>
}

/** The photos of a drawn set, all of them or those of one half. */
export function openSet(folder: string, split?: Truth['split']): Kept[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => JSON.parse(readFileSync(join(folder, name), 'utf8')) as Truth)
    .filter((truth) => split === undefined || truth.split === split)
    .map((truth) => ({
      truth,
      path: join(folder, truth.file),
      async mask() {
        const { data, info } = await sharp(join(folder, truth.mask))
          .toColourspace('b-w')
          .extractChannel(0)
          .raw()
          .toBuffer({ resolveWithObject: true })
        return { data: new Uint8Array(data), width: info.width, height: info.height }
      },
    }))
}
