import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { setFlagsFromString } from 'node:v8'
import { crc32, deflateSync } from 'node:zlib'
import sharp from 'sharp'
import type { Pixels } from './cloth.ts'

/** What is used of libheif (github.com/strukturag/libheif, LGPL-3.0), as libheif-js hands it on. */
interface Libheif {
  heif_context_alloc(): object | null
  heif_context_read_from_memory(context: object, bytes: Uint8Array): Outcome
  heif_js_context_get_primary_image_handle(context: object): object & Partial<Outcome>
  heif_image_handle_has_alpha_channel(handle: object): number
  heif_js_decode_image2(handle: object, colourspace: object, chroma: object): Promise<Decoded>
  readonly heif_error_code: { readonly heif_error_Ok: object }
  readonly heif_colorspace: { readonly heif_colorspace_RGB: object }
  readonly heif_chroma: Readonly<
    Record<'heif_chroma_interleaved_RGB' | 'heif_chroma_interleaved_RGBA', object>
  >
}

interface Outcome {
  readonly code: object
  readonly message: string
}

interface Decoded extends Partial<Outcome> {
  readonly channels: readonly Plane[]
}

/** A view into the library's memory, `stride` bytes a row. */
interface Plane {
  readonly width: number
  readonly height: number
  readonly stride: number
  readonly data: Uint8Array
}

type MakeLibheif = (options: {
  instantiateWasm(
    imports: WebAssembly.Imports,
    done: (instance: WebAssembly.Instance, module: WebAssembly.Module) => void,
  ): WebAssembly.Exports
  print(): void
  printErr(): void
}) => Libheif

/** The most memory the library may take: whatever a file claims within, it is refused beyond. */
const mostPages = 512 * 16

const require = createRequire(import.meta.url)
let compiled: WebAssembly.Module | null = null

/** A library with a memory of its own, which goes when the photo is done. */
function freshLibheif(): Libheif {
  if (!compiled) {
    setFlagsFromString(`--wasm-max-mem-pages=${mostPages}`)
    const file = require.resolve('libheif-js/libheif-wasm/libheif.wasm')
    compiled = new WebAssembly.Module(readFileSync(file))
  }
  const library = compiled
  const make = require('libheif-js/libheif-wasm/libheif.js') as MakeLibheif
  return make({
    instantiateWasm(imports, done) {
      const instance = new WebAssembly.Instance(library, imports)
      done(instance, library)
      return instance.exports
    },
    print() {},
    printErr() {},
  })
}

/**
 * A HEIC's picture as a PNG, at most `side` pixels long, turned and mirrored as the file says and with its
 * colour profile. Throws where it cannot be read to its end.
 */
export async function pngOfHeic(bytes: Uint8Array, side: number): Promise<Uint8Array> {
  const { icc } = await sharp(bytes).metadata()
  const { data, ...raw } = await primaryIn(bytes)
  const png = await sharp(data, { raw })
    .resize(side, side, { fit: 'inside', withoutEnlargement: true })
    .png({ compressionLevel: 0 })
    .toBuffer()
  return icc ? withProfile(png, icc) : png
}

async function primaryIn(bytes: Uint8Array): Promise<Pixels> {
  const library = freshLibheif()
  const { heif_error_Ok: ok } = library.heif_error_code
  const context = library.heif_context_alloc()
  if (!context) throw new Error('no memory for a HEIC')
  const read = library.heif_context_read_from_memory(context, bytes)
  if (read.code !== ok) throw new Error(read.message)
  const handle = library.heif_js_context_get_primary_image_handle(context)
  if (handle.code) throw new Error(handle.message)
  const seeThrough = library.heif_image_handle_has_alpha_channel(handle) !== 0
  const decoded = await library.heif_js_decode_image2(
    handle,
    library.heif_colorspace.heif_colorspace_RGB,
    library.heif_chroma[
      seeThrough ? 'heif_chroma_interleaved_RGBA' : 'heif_chroma_interleaved_RGB'
    ],
  )
  if (decoded.code) throw new Error(decoded.message)
  const { width, height, stride, data } = decoded.channels[0]!
  const channels = seeThrough ? 4 : 3
  return { width, height, channels, data: closed(data, stride, width * channels) }
}

/** Rows without what fills them up to `stride` bytes. */
function closed(data: Uint8Array, stride: number, row: number): Uint8Array {
  if (stride === row) return data
  const height = Math.floor(data.length / stride)
  const rows = new Uint8Array(row * height)
  for (let y = 0; y < height; y += 1) {
    rows.set(data.subarray(y * stride, y * stride + row), y * row)
  }
  return rows
}

/** Length of a PNG's signature and first chunk (W3C PNG, 5.2 and 11.2.1), behind which a profile may stand. */
const header = 8 + 25

/** A PNG with a colour profile (W3C PNG, 11.3.2.3). */
function withProfile(png: Uint8Array, icc: Uint8Array): Uint8Array {
  const named = Buffer.concat([Buffer.from('iCCPphoto\0\0', 'latin1'), deflateSync(icc)])
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(named.length - 4)
  sum.writeUInt32BE(crc32(named))
  return Buffer.concat([png.subarray(0, header), length, named, sum, png.subarray(header)])
}
