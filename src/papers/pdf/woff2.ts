import { brotliDecompressSync } from 'node:zlib'
import { Bytes } from './bytes.ts'
import { sfnt } from './sfnt.ts'
import { glyphTables } from './woff2-glyphs.ts'

/** The tags that a WOFF2 file names by number, in the order of its standard's table of known tags. */
const knownTags =
  'cmap head hhea hmtx maxp name OS/2 post cvt  fpgm glyf loca prep CFF  VORG EBDT EBLC gasp hdmx kern LTSH PCLT VDMX vhea vmtx BASE GDEF GPOS GSUB EBSC JSTF MATH CBDT CBLC COLR CPAL SVG  sbix acnt avar bdat bloc bsln cvar fdsc feat fmtx fvar gvar hsty just lcar mort morx opbd prop trak Zapf Silf Glat Gloc Feat Sill'

const tagOf = (n: number): string => knownTags.slice(n * 5, n * 5 + 4)

const headerLong = 48
const arbitraryTag = 63

interface Entry {
  readonly tag: string
  readonly transformed: boolean
  /** As it stands in the compressed stream, bytes. */
  readonly length: number
}

function readEntry(bytes: Bytes): Entry {
  const flags = bytes.u8()
  const known = flags & 0x3f
  const tag = known === arbitraryTag ? bytes.text(4) : tagOf(known)
  const version = flags >> 6
  const transformed = tag === 'glyf' || tag === 'loca' ? version !== 3 : version !== 0
  const long = bytes.base128()
  return { tag, transformed, length: transformed ? bytes.base128() : long }
}

/**
 * A WOFF2 font as the TrueType font it was made from, by the W3C's recommendation "WOFF File Format 2.0".
 * Hints are left out, as nothing that reads a PDF needs them. Throws on anything else.
 */
export function trueTypeOf(woff2: Uint8Array): Uint8Array {
  const bytes = new Bytes(woff2)
  if (bytes.text(4) !== 'wOF2') throw new Error('not a WOFF2 font')
  bytes.at = 12
  const count = bytes.u16()
  bytes.at = 20
  const compressed = bytes.u32()
  bytes.at = headerLong
  const entries = Array.from({ length: count }, () => readEntry(bytes))
  const whole = new Bytes(brotliDecompressSync(bytes.take(compressed)))

  const tables = new Map(
    entries.map((entry) => [entry.tag, { ...entry, data: whole.take(entry.length) }]),
  )
  const data = new Map([...tables].map(([tag, one]) => [tag, one.data]))
  if (tables.get('glyf')?.transformed) {
    const made = glyphTables({
      glyf: data.get('glyf')!,
      hmtx: data.get('hmtx')!,
      metrics: new Bytes(data.get('hhea')!, 34).u16(),
      bearingsLeftOut: tables.get('hmtx')!.transformed,
    })
    for (const [tag, table] of Object.entries(made)) data.set(tag, table)
    const head = new Uint8Array(data.get('head')!)
    new DataView(head.buffer).setInt16(50, 1)
    data.set('head', head)
  }
  for (const hint of ['fpgm', 'prep', 'cvt ', 'cvar']) data.delete(hint)
  return sfnt(data)
}
