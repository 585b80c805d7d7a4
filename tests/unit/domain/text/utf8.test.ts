import { describe, expect, it } from 'vitest'
import { decodeUtf8, encodeUtf8 } from '../../../../server/domain/text/utf8.ts'

// Outside source: the platform's own TextEncoder and TextDecoder (Encoding Standard), which the domain may not use.
const encoder = new TextEncoder()
const strict = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

const theirs = (bytes: Uint8Array): string | null => {
  try {
    return strict.decode(bytes)
  } catch {
    return null
  }
}

describe('UTF-8', () => {
  it('agrees with the platform on every code point of every plane, both ways', () => {
    for (let from = 0; from <= 0x10ffff; from += 0x400) {
      let text = ''
      for (let code = from; code < from + 0x400; code++) if (code < 0xd800 || code > 0xdfff) text += String.fromCodePoint(code)
      const bytes = encodeUtf8(text)
      expect(Buffer.compare(bytes, encoder.encode(text)), `block ${from.toString(16)}`).toBe(0)
      expect(decodeUtf8(bytes) === text, `block ${from.toString(16)}`).toBe(true)
    }
  })

  it('agrees on every pair of bytes, well-formed or not', () => {
    const different: string[] = []
    for (let first = 0; first < 256; first++) {
      for (let second = 0; second < 256; second++) {
        const bytes = Uint8Array.of(first, second)
        if (decodeUtf8(bytes) !== theirs(bytes)) different.push(`${first} ${second}`)
      }
    }
    expect(different).toEqual([])
  })

  it.each([
    ['overlong slash', [0xc0, 0xaf]],
    ['overlong of three', [0xe0, 0x80, 0xaf]],
    ['overlong of four', [0xf0, 0x80, 0x80, 0xaf]],
    ['a surrogate half', [0xed, 0xa0, 0x80]],
    ['above U+10FFFF', [0xf4, 0x90, 0x80, 0x80]],
    ['a lone continuation', [0x80]],
    ['a sequence cut short', [0x41, 0xe2, 0x82]],
    ['five bytes', [0xf8, 0x88, 0x80, 0x80, 0x80]],
  ])('refuses %s (RFC 3629, section 3)', (_, bytes) => {
    expect(decodeUtf8(Uint8Array.from(bytes))).toBeNull()
    expect(theirs(Uint8Array.from(bytes))).toBeNull()
  })

  it('makes U+FFFD of a lone surrogate half, as the Encoding Standard does', () => {
    for (const text of ['\ud800', 'a\udc00b', '\ud800\ud800\udc00', '\udfff\ud800']) {
      expect(Buffer.compare(encodeUtf8(text), encoder.encode(text))).toBe(0)
    }
  })

  it('carries texts longer than one piece', () => {
    const text = 'abc€𝄞'.repeat(5000)
    expect(decodeUtf8(encodeUtf8(text))).toBe(text)
  })
})
