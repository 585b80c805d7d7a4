/** Above this a payload stays bytes: leaving blanks out could bring it under the limit of a pack. */
const largestParsedBytes = 60_000

const tokens = /"(?:[^"\\]|\\.)*"|-?\d[\d.eE+-]*|\s+/g

/**
 * The payload as JSON, where writing it again says exactly the same: no name twice, no number out of range, no reordering.
 * Undefined where it does not; then the bytes themselves have to be kept.
 */
export function samePayload(bytes: Uint8Array): unknown {
  if (bytes.length > largestParsedBytes) return undefined
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes)
    const value: unknown = JSON.parse(text)
    const plain = text.replace(tokens, (token) => {
      if (token.startsWith('"')) return JSON.stringify(JSON.parse(token))
      return token.trim() === '' ? '' : String(Number(token))
    })
    return plain === JSON.stringify(value) ? value : undefined
  } catch {
    return undefined
  }
}
