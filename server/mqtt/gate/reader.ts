/** Walks through the body of one packet; any field that is not all there makes `short` true, and what follows is worthless. */
export class BodyReader {
  readonly #bytes: Buffer
  #at: number
  readonly #end: number
  short = false

  constructor(bytes: Buffer, from: number, to: number) {
    this.#bytes = bytes
    this.#at = from
    this.#end = to
  }

  get left(): number {
    return this.#end - this.#at
  }

  byte(): number {
    if (this.left < 1) return this.#none(1)
    return this.#bytes[this.#at++] ?? 0
  }

  word(): number {
    if (this.left < 2) return this.#none(2)
    const value = this.#bytes.readUInt16BE(this.#at)
    this.#at += 2
    return value
  }

  /** Bytes behind a length of two bytes. */
  field(): Buffer {
    const length = this.word()
    if (this.left < length) {
      this.short = true
      return Buffer.alloc(0)
    }
    this.#at += length
    return this.#bytes.subarray(this.#at - length, this.#at)
  }

  #none(bytes: number): number {
    this.short = true
    this.#at = Math.min(this.#at + bytes, this.#end)
    return 0
  }
}
