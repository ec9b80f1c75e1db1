import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Canvas } from '@napi-rs/canvas'
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader'

// Its own file beside it: the package would fetch it otherwise.
const wasm = createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm')
prepareZXingModule({ overrides: { wasmBinary: readFileSync(wasm).buffer as ArrayBuffer } })

export interface Scanned {
  readonly text: string
  /** Corners, dots of the picture. */
  readonly corners: readonly { readonly x: number; readonly y: number }[]
}

/** The QR codes of a picture as a second program reads them, ordered by what they say. */
export async function scanCodes(canvas: Canvas): Promise<Scanned[]> {
  const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height)
  const found = await readBarcodes(
    { data, width: canvas.width, height: canvas.height, colorSpace: 'srgb' } as ImageData,
    { formats: ['QRCode'], maxNumberOfSymbols: 40, tryHarder: true },
  )
  return found
    .map(({ text, position: p }) => ({
      text,
      corners: [p.topLeft, p.topRight, p.bottomRight, p.bottomLeft],
    }))
    .sort((a, b) => (a.text < b.text ? -1 : 1))
}
