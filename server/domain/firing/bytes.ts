/** UTF-8 without any library of a platform: a state is frozen as JSON, whose numbers come back bit for bit. */
export function toBytes(text: string): Uint8Array {
  let length = 0
  for (const char of text) {
    const code = char.codePointAt(0) ?? 0
    length += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4
  }
  const bytes = new Uint8Array(length)
  let i = 0
  for (const char of text) {
    const code = char.codePointAt(0) ?? 0
    if (code < 0x80) bytes[i++] = code
    else if (code < 0x800) {
      bytes[i++] = 0xc0 | (code >> 6)
      bytes[i++] = 0x80 | (code & 0x3f)
    } else if (code < 0x10000) {
      bytes[i++] = 0xe0 | (code >> 12)
      bytes[i++] = 0x80 | ((code >> 6) & 0x3f)
      bytes[i++] = 0x80 | (code & 0x3f)
    } else {
      bytes[i++] = 0xf0 | (code >> 18)
      bytes[i++] = 0x80 | ((code >> 12) & 0x3f)
      bytes[i++] = 0x80 | ((code >> 6) & 0x3f)
      bytes[i++] = 0x80 | (code & 0x3f)
    }
  }
  return bytes
}

export function toText(bytes: Uint8Array): string {
  const parts: string[] = []
  let chunk: number[] = []
  const next = (i: number): number => (bytes[i] ?? 0) & 0x3f
  for (let i = 0; i < bytes.length;) {
    const b = bytes[i] ?? 0
    if (b < 0x80) {
      chunk.push(b)
      i += 1
    } else if (b < 0xe0) {
      chunk.push(((b & 0x1f) << 6) | next(i + 1))
      i += 2
    } else if (b < 0xf0) {
      chunk.push(((b & 0x0f) << 12) | (next(i + 1) << 6) | next(i + 2))
      i += 3
    } else {
      chunk.push(((b & 0x07) << 18) | (next(i + 1) << 12) | (next(i + 2) << 6) | next(i + 3))
      i += 4
    }
    if (chunk.length > 4096) {
      parts.push(String.fromCodePoint(...chunk))
      chunk = []
    }
  }
  parts.push(String.fromCodePoint(...chunk))
  return parts.join('')
}
