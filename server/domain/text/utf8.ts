/** Bytes of a text, UTF-8. A lone surrogate half becomes U+FFFD, as the Encoding Standard has it. */
export function encodeUtf8(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length * 3)
  let length = 0
  for (let i = 0; i < text.length; i++) {
    let code = text.charCodeAt(i)
    if (code >= 0xd800 && code <= 0xdfff) {
      const low = code <= 0xdbff && i + 1 < text.length ? text.charCodeAt(i + 1) : 0
      const paired = low >= 0xdc00 && low <= 0xdfff
      code = paired ? 0x10000 + ((code - 0xd800) << 10) + (low - 0xdc00) : 0xfffd
      if (paired) i++
    }
    if (code < 0x80) bytes[length++] = code
    else if (code < 0x800) {
      bytes[length++] = 0xc0 | (code >> 6)
      bytes[length++] = 0x80 | (code & 63)
    } else if (code < 0x10000) {
      bytes[length++] = 0xe0 | (code >> 12)
      bytes[length++] = 0x80 | ((code >> 6) & 63)
      bytes[length++] = 0x80 | (code & 63)
    } else {
      bytes[length++] = 0xf0 | (code >> 18)
      bytes[length++] = 0x80 | ((code >> 12) & 63)
      bytes[length++] = 0x80 | ((code >> 6) & 63)
      bytes[length++] = 0x80 | (code & 63)
    }
  }
  return bytes.slice(0, length)
}

/** Text of some bytes, or null when they are not well-formed UTF-8 (RFC 3629: no overlong form, no surrogate, nothing above U+10FFFF). */
export function decodeUtf8(bytes: Uint8Array): string | null {
  let text = ''
  let start = 0
  let i = 0
  while (i < bytes.length) {
    if ((bytes[i] ?? 0) < 0x80) {
      i++
      continue
    }
    text += asciiText(bytes, start, i)
    const length = sequenceLength(bytes, i)
    if (length === 0) return null
    text += String.fromCodePoint(codePoint(bytes, i, length))
    i += length
    start = i
  }
  return text + asciiText(bytes, start, i)
}

/** Arguments of one call are bounded by the engine's stack, so a long text is made in pieces. */
const pieceLength = 4096

function asciiText(bytes: Uint8Array, from: number, to: number): string {
  let text = ''
  for (let i = from; i < to; i += pieceLength) {
    // Spreading the bytes into the call is ten times slower; a typed array will do where an array of arguments is asked for.
    text += String.fromCharCode.apply(null, bytes.subarray(i, Math.min(to, i + pieceLength)) as unknown as number[])
  }
  return text
}

/** Length of the well-formed sequence at `i`, 0 when there is none (Unicode standard, table 3-7). */
function sequenceLength(bytes: Uint8Array, i: number): number {
  const first = bytes[i] ?? 0
  const length = first >= 0xf0 ? 4 : first >= 0xe0 ? 3 : 2
  if (first < 0xc2 || first > 0xf4 || i + length > bytes.length) return 0
  const second = bytes[i + 1] ?? 0
  const lowest = first === 0xe0 ? 0xa0 : first === 0xf0 ? 0x90 : 0x80
  const highest = first === 0xed ? 0x9f : first === 0xf4 ? 0x8f : 0xbf
  if (second < lowest || second > highest) return 0
  for (let k = 2; k < length; k++) if (((bytes[i + k] ?? 0) & 0xc0) !== 0x80) return 0
  return length
}

function codePoint(bytes: Uint8Array, i: number, length: number): number {
  let code = (bytes[i] ?? 0) & (length === 2 ? 0x1f : length === 3 ? 0x0f : 0x07)
  for (let k = 1; k < length; k++) code = (code << 6) | ((bytes[i + k] ?? 0) & 63)
  return code
}
