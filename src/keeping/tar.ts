import { createHash, type Hash } from 'node:crypto'
import type { FileHandle } from 'node:fs/promises'

// A tar archive of plain files, as POSIX pax/ustar lays it out (IEEE Std 1003.1, "ustar Interchange Format"): a block
// of 512 bytes with name, size and a sum over itself, the bytes, zeros up to the next whole block; two blocks of zeros
// at the end.

const block = 512
/** Longest name of an entry and largest size that its eleven octal figures hold. */
const longestName = 100
const largest = 8 ** 11 - 1
const piece = 1024 * 1024

/** What stands in an archive under one name. */
export interface Entry {
  readonly name: string
  readonly size: number
  /** Where its bytes begin in the file. */
  readonly at: number
}

/** The archive breaks off, or is none. */
export class NotWhole extends Error {}

const octal = (value: number, figures: number): string =>
  `${value.toString(8).padStart(figures, '0')}\0`

const sumOf = (header: Buffer): number => {
  const blank = Buffer.from(header)
  blank.fill(' ', 148, 156)
  return blank.reduce((sum, byte) => sum + byte, 0)
}

function headerOf(name: string, size: number, seconds: number): Buffer {
  if (!isPlainName(name) || size > largest) throw new RangeError(`no entry can be ${name}, ${size}`)
  const header = Buffer.alloc(block)
  header.write(name, 0, 'latin1')
  header.write(octal(0o600, 7), 100)
  header.write(octal(0, 7), 108)
  header.write(octal(0, 7), 116)
  header.write(octal(size, 11), 124)
  header.write(octal(seconds, 11), 136)
  header.write('0', 156)
  header.write('ustar\x0000', 257, 'latin1')
  header.write(`${octal(sumOf(header), 6)} `, 148)
  return header
}

/** Names of ours: folders below the archive's own, none of which leads out of it. */
export const isPlainName = (name: string): boolean =>
  name.length <= longestName && /^[a-z0-9][\w-]*(?:[./][a-z0-9_][\w-]*)*$/i.test(name)

/** Appends to a file that is empty so far. */
export class TarWriter {
  readonly #file: FileHandle
  readonly #seconds: number
  readonly #whole: Hash = createHash('sha256')
  #length = 0

  /** `at`: the time on every entry, ms. */
  constructor(file: FileHandle, at: number) {
    this.#file = file
    this.#seconds = Math.floor(at / 1000)
  }

  /** Bytes written so far. */
  get length(): number {
    return this.#length
  }

  async add(name: string, bytes: Uint8Array): Promise<void> {
    await this.#write(headerOf(name, bytes.byteLength, this.#seconds))
    await this.#write(bytes)
    await this.#write(Buffer.alloc(-bytes.byteLength & (block - 1)))
  }

  /** Ends the archive, durably. Gives the SHA-256 of all of it. */
  async end(): Promise<string> {
    await this.#write(Buffer.alloc(2 * block))
    await this.#file.sync()
    return this.#whole.digest('hex')
  }

  async #write(bytes: Uint8Array): Promise<void> {
    this.#whole.update(bytes)
    for (let done = 0; done < bytes.byteLength; ) {
      const { bytesWritten } = await this.#file.write(bytes, done, undefined, this.#length + done)
      done += bytesWritten
    }
    this.#length += bytes.byteLength
  }
}

async function readAt(file: FileHandle, at: number, size: number): Promise<Buffer> {
  const bytes = Buffer.alloc(size)
  for (let done = 0; done < size; ) {
    const { bytesRead } = await file.read(bytes, done, size - done, at + done)
    if (bytesRead === 0) throw new NotWhole('it breaks off')
    done += bytesRead
  }
  return bytes
}

const field = (header: Buffer, at: number, length: number): string =>
  header.toString('latin1', at, at + length).replace(/\0.*$/s, '')

const isZero = (bytes: Buffer): boolean => bytes.every((byte) => byte === 0)

function entryOf(header: Buffer, at: number): Entry {
  const [name, size, type] = [field(header, 0, 100), field(header, 124, 12), field(header, 156, 1)]
  const sum = Number.parseInt(field(header, 148, 8), 8)
  const plain = field(header, 257, 6) === 'ustar' && type === '0' && field(header, 345, 155) === ''
  if (!plain || sum !== sumOf(header) || !/^[0-7]{11}$/.test(size) || !isPlainName(name)) {
    throw new NotWhole('what stands there is no entry')
  }
  return { name, size: Number.parseInt(size, 8), at: at + block }
}

/**
 * The entries in their order; of their bytes nothing is read. Throws `NotWhole` where the archive breaks off or holds
 * anything but plain files under plain names. `upTo`: of an archive that is still being written, its length so far.
 */
export async function* entriesIn(
  file: FileHandle,
  upTo = Number.POSITIVE_INFINITY,
): AsyncGenerator<Entry> {
  for (let at = 0; at < upTo; ) {
    const header = await readAt(file, at, block)
    if (isZero(header)) {
      const { size } = await file.stat()
      if (size !== at + 2 * block || !isZero(await readAt(file, at + block, block))) {
        throw new NotWhole('it does not end where it says')
      }
      return
    }
    const entry = entryOf(header, at)
    yield entry
    const rest = -entry.size & (block - 1)
    at = entry.at + entry.size + rest
    if (!isZero(await readAt(file, at - rest, rest))) throw new NotWhole('something stands between')
  }
}

/** An entry's bytes; no more than `most` are ever taken into memory. Throws `NotWhole`. */
export async function bytesOf(file: FileHandle, entry: Entry, most: number): Promise<Buffer> {
  if (entry.size > most) throw new NotWhole('an entry is larger than any of ours')
  return readAt(file, entry.at, entry.size)
}

/** SHA-256 of an entry's bytes, read piece by piece. Throws `NotWhole`. */
export async function sumOfEntry(file: FileHandle, entry: Entry): Promise<string> {
  const hash = createHash('sha256')
  for (let done = 0; done < entry.size; done += piece) {
    hash.update(await readAt(file, entry.at + done, Math.min(piece, entry.size - done)))
  }
  return hash.digest('hex')
}
