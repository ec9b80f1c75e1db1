/** What is kept by its key, so many and so large; what nobody asked for the longest goes first. */
export class Kept<T> {
  readonly #most: number
  readonly #mostBytes: number
  readonly #bytesOf: (value: T) => number
  readonly #values = new Map<string, { readonly value: T; readonly bytes: number }>()
  #bytes = 0

  /** `bytesOf`: about how much memory a value takes; left out, only the number is bounded. */
  constructor(most: number, mostBytes = 0, bytesOf: (value: T) => number = () => 0) {
    this.#most = most
    this.#mostBytes = mostBytes
    this.#bytesOf = bytesOf
  }

  get size(): number {
    return this.#values.size
  }

  /** Without counting as asked for. */
  look(key: string): T | undefined {
    return this.#values.get(key)?.value
  }

  get(key: string): T | undefined {
    const one = this.#values.get(key)
    if (!one) return undefined
    this.#values.delete(key)
    this.#values.set(key, one)
    return one.value
  }

  set(key: string, value: T): void {
    this.delete(key)
    const bytes = this.#bytesOf(value)
    this.#values.set(key, { value, bytes })
    this.#bytes += bytes
    while (this.#values.size > this.#most || this.#bytes > this.#mostBytes) {
      const [oldest] = this.#values.keys()
      this.delete(oldest!)
    }
  }

  delete(key: string): void {
    const one = this.#values.get(key)
    if (!one) return
    this.#values.delete(key)
    this.#bytes -= one.bytes
  }
}
