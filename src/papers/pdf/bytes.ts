/** Reads numbers of a font file one after the other, the high byte first. */
export class Bytes {
  at: number
  readonly #data: Uint8Array
  readonly #view: DataView

  constructor(data: Uint8Array, at = 0) {
    this.#data = data
    this.#view = new DataView(data.buffer, data.byteOffset, data.byteLength)
    this.at = at
  }

  u8(): number {
    this.at += 1
    return this.#view.getUint8(this.at - 1)
  }

  u16(): number {
    this.at += 2
    return this.#view.getUint16(this.at - 2)
  }

  i16(): number {
    this.at += 2
    return this.#view.getInt16(this.at - 2)
  }

  u32(): number {
    this.at += 4
    return this.#view.getUint32(this.at - 4)
  }

  take(length: number): Uint8Array {
    if (this.at + length > this.#data.length) throw new Error('a font file ends too early')
    this.at += length
    return this.#data.subarray(this.at - length, this.at)
  }

  text(length: number): string {
    return String.fromCharCode(...this.take(length))
  }

  /** A number in groups of seven bits. */
  base128(): number {
    let value = 0
    for (let i = 0; i < 5; i += 1) {
      const byte = this.u8()
      value = value * 128 + (byte & 0x7f)
      if ((byte & 0x80) === 0) return value
    }
    throw new Error('a number of a font file does not end')
  }

  /** A short number in one to three bytes. */
  u16of255(): number {
    const code = this.u8()
    if (code === 253) return this.u16()
    if (code === 255) return this.u8() + 253
    if (code === 254) return this.u8() + 506
    return code
  }
}
