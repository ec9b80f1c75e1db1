import sharp from 'sharp'

/** Invented pictures for tests, made as they are needed. */
export const plain = (width = 640, height = 480, background = '#a3543c') =>
  sharp({ create: { width, height, channels: 3, background } })

/** Coarse noise: as large as a photo once it is compressed. */
export async function grain(width: number, height: number): Promise<Buffer> {
  const noise = { type: 'gaussian' as const, mean: 128, sigma: 40 }
  return await sharp({ create: { width, height, channels: 3, background: '#888', noise } })
    .jpeg({ quality: 90 })
    .toBuffer()
}

/** Puts a segment right behind a JPEG's first two bytes. */
export function withSegment(jpeg: Buffer, marker: number, body: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0])
  head.writeUInt16BE(body.length + 2, 2)
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)])
}

/** Markers of a JPEG's segments in order, up to the first scan, and what follows the end of image. */
export function segments(jpeg: Uint8Array): { markers: number[]; after: number } {
  const bytes = Buffer.from(jpeg)
  const markers: number[] = []
  let at = 2
  for (let marker = 0; marker !== 0xda; at += 2 + bytes.readUInt16BE(at + 2)) {
    marker = bytes[at + 1]!
    markers.push(marker)
  }
  return { markers, after: bytes.length - (bytes.lastIndexOf(Buffer.from([0xff, 0xd9])) + 2) }
}
