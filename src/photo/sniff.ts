export type PhotoType = 'jpeg' | 'png' | 'webp' | 'avif' | 'heic'

const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  Buffer.from(bytes.subarray(from, to)).toString('latin1')

/** An ISO base media file one of whose brands, main or compatible, is one of these (ISO/IEC 14496-12, 4.3). */
const branded =
  (...wanted: readonly string[]) =>
  (bytes: Uint8Array): boolean => {
    if (ascii(bytes, 4, 8) !== 'ftyp') return false
    const length = Buffer.from(bytes.subarray(0, 4)).readUInt32BE()
    const brands: string[] = ascii(bytes, 8, Math.min(length, 256)).match(/.{4}/gs) ?? []
    return wanted.some((brand) => brands.includes(brand))
  }

const signatures: Record<PhotoType, (bytes: Uint8Array) => boolean> = {
  jpeg: (bytes) => ascii(bytes, 0, 3) === '\xff\xd8\xff',
  png: (bytes) => ascii(bytes, 0, 8) === '\x89PNG\r\n\x1a\n',
  webp: (bytes) => ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP',
  avif: branded('avif', 'avis'),
  // Single pictures in HEVC, of 8 bits and of more (ISO/IEC 23008-12, B.4.1); no sequences.
  heic: branded('heic', 'heix'),
}

/** The kind of photo these bytes begin like, or null if it is none we take. */
export function sniff(bytes: Uint8Array): PhotoType | null {
  const found = Object.entries(signatures).find(([, matches]) => matches(bytes))
  return found ? (found[0] as PhotoType) : null
}
