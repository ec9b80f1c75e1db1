import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { inflateSync } from 'node:zlib'
import sharp from 'sharp'
import type { Chance } from '../help/chance.ts'
import type { Raster } from './raster.ts'

const home = fileURLToPath(new URL('../../test/.out/fonts/', import.meta.url))

/** Faces of the font packages, with the name by which each is called. */
const faces = [
  { file: 'oswald', weight: 700, name: 'Oswald Bold' },
  { file: 'archivo-narrow', weight: 700, name: 'Archivo Narrow Bold' },
  { file: 'arimo', weight: 700, name: 'Arimo Bold' },
  { file: 'courier-prime', weight: 700, name: 'Courier Prime Bold' },
  { file: 'tinos', weight: 700, name: 'Tinos Bold' },
  { file: 'vt323', weight: 400, name: 'VT323' },
] as const

const first = [
  'RIVER',
  'MAPLE',
  'SUNNY',
  'HARBOUR',
  'NORTH',
  'LITTLE',
  'WILD',
  'COPPER',
  'WINTER',
  'SALT',
] as const
const second = [
  'FERN',
  'RUNNERS',
  'HOLLOW',
  'CHOIR',
  'CAMP',
  'LAKE',
  'KITCHEN',
  'PINES',
  'RELAY',
  'FOX',
] as const
const third = [
  'summer games',
  'est. 1987',
  'family picnic',
  'class of 2009',
  'no. 42',
  'since last week',
  'go slow',
] as const

/**
 * A font of a package as the file that is drawn with. A WOFF holds the tables of an OpenType font, each
 * packed by itself (W3C, WOFF File Format 1.0, sections 4 and 5).
 */
function opened({ file, weight }: (typeof faces)[number]): string {
  const path = join(home, `${file}-${weight}.ttf`)
  if (existsSync(path)) return path
  const sheet = new URL(import.meta.resolve(`@fontsource/${file}/${weight}.css`))
  const woff = readFileSync(new URL(`./files/${file}-latin-${weight}-normal.woff`, sheet))
  const count = woff.readUInt16BE(12)
  const head = Buffer.alloc(12 + 16 * count)
  woff.copy(head, 0, 4, 8)
  head.writeUInt16BE(count, 4)
  const power = Math.floor(Math.log2(count))
  head.writeUInt16BE(16 << power, 6)
  head.writeUInt16BE(power, 8)
  head.writeUInt16BE(16 * count - (16 << power), 10)
  const tables: Buffer[] = []
  let at = head.length
  for (let n = 0; n < count; n++) {
    const entry = 44 + 20 * n
    const [from, packed, whole] = [4, 8, 12].map((by) => woff.readUInt32BE(entry + by)) as [
      number,
      number,
      number,
    ]
    const body = woff.subarray(from, from + packed)
    const table = packed < whole ? inflateSync(body) : body
    woff.copy(head, 12 + 16 * n, entry, entry + 4)
    head.writeUInt32BE(woff.readUInt32BE(entry + 16), 16 + 16 * n)
    head.writeUInt32BE(at, 20 + 16 * n)
    head.writeUInt32BE(whole, 24 + 16 * n)
    const padded = Buffer.concat([table, Buffer.alloc(-whole & 3)])
    tables.push(padded)
    at += padded.length
  }
  mkdirSync(home, { recursive: true })
  writeFileSync(path, Buffer.concat([head, ...tables]))
  return path
}

/** Invented words in one colour, on one to three lines, four channels. */
export async function drawLettering(chance: Chance, ink: string): Promise<Raster> {
  const face = chance.one(faces)
  const lines = [
    `<span size="100%">${chance.one(first)}</span>`,
    ...(chance.happens(0.8) ? [`<span size="100%">${chance.one(second)}</span>`] : []),
    ...(chance.happens(0.5) ? [`<span size="38%">${chance.one(third)}</span>`] : []),
  ]
  const { data, info } = await sharp({
    text: {
      text: `<span foreground="${ink}">${lines.join('\n')}</span>`,
      font: face.name,
      fontfile: opened(face),
      align: 'centre',
      spacing: 2,
      width: 900,
      height: 700,
      rgba: true,
    },
  })
    .raw()
    .toBuffer({ resolveWithObject: true })
  return { data: new Uint8Array(data), width: info.width, height: info.height }
}
