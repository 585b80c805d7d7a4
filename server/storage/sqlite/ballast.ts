import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statfsSync, writeSync } from 'node:fs'
import { dirname } from 'node:path'

const chunkBytes = 1 << 20

/**
 * A file that does nothing but take up room. A full disk refuses even deletions in the database (reliability 0.8); removing this file
 * gives the events of a firing room while readings are refused.
 */
export class Ballast {
  readonly #file: string
  readonly #bytes: number

  constructor(file: string, bytes: number) {
    this.#file = file
    this.#bytes = bytes
  }

  get there(): boolean {
    return existsSync(this.#file)
  }

  free(): void {
    rmSync(this.#file, { force: true })
  }

  /** Writes it when there is twice its room; false when there is not. */
  restore(): boolean {
    if (this.there) return true
    const { bavail, bsize } = statfsSync(dirname(this.#file))
    if (bavail * bsize < 2 * this.#bytes) return false
    const part = `${this.#file}.part`
    try {
      this.#write(part)
      renameSync(part, this.#file)
      return true
    } catch {
      rmSync(part, { force: true })
      return false
    }
  }

  #write(part: string): void {
    const handle = openSync(part, 'w')
    try {
      const chunk = Buffer.alloc(Math.min(chunkBytes, this.#bytes))
      for (let left = this.#bytes; left > 0; left -= chunk.length) writeSync(handle, chunk, 0, Math.min(left, chunk.length))
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
  }
}
