import { once } from 'node:events'
import { createGzip } from 'node:zlib'
import type { Ms } from '../../contract/fold.ts'

const blockBytes = 512

/** One file of an archive, as it comes: it is compressed on the way, so that only its small form is ever whole in memory. */
export interface Member {
  name: string
  at: Ms
  pages: AsyncIterable<string>
}

/** A tar file (POSIX.1-1988, ustar) of compressed texts, each under its name with `.gz`. */
export async function* archiveOf(members: AsyncIterable<Member>): AsyncGenerator<Uint8Array> {
  for await (const { name, at, pages } of members) {
    const chunks = await compressed(pages)
    const size = chunks.reduce((sum, chunk) => sum + chunk.length, 0)
    yield headerOf(`${name}.gz`, size, at)
    yield* chunks
    yield new Uint8Array((blockBytes - (size % blockBytes)) % blockBytes)
  }
  yield new Uint8Array(2 * blockBytes)
}

async function compressed(pages: AsyncIterable<string>): Promise<Uint8Array[]> {
  const zip = createGzip()
  const chunks: Uint8Array[] = []
  zip.on('data', (chunk: Uint8Array) => chunks.push(chunk))
  const ended = once(zip, 'end')
  for await (const page of pages) if (!zip.write(page)) await once(zip, 'drain')
  zip.end()
  await ended
  return chunks
}

/** @throws Error for a name that is longer than the form allows */
function headerOf(name: string, size: number, at: Ms): Uint8Array {
  const header = new Uint8Array(blockBytes)
  const put = (from: number, text: string): void => header.set(new TextEncoder().encode(text), from)
  const octal = (value: number, digits: number): string => `${value.toString(8).padStart(digits, '0')}\0`
  if (new TextEncoder().encode(name).length > 100) throw new Error(`${name} is too long for an archive`)
  put(0, name)
  put(100, octal(0o644, 7))
  put(108, octal(0, 7))
  put(116, octal(0, 7))
  put(124, octal(size, 11))
  put(136, octal(Math.max(0, Math.floor(at / 1000)), 11))
  // the sum is taken with blanks in its own place
  put(148, '        ')
  put(156, '0')
  put(257, 'ustar\0')
  put(263, '00')
  const sum = header.reduce((all, byte) => all + byte, 0)
  put(148, `${octal(sum, 6)} `)
  return header
}
