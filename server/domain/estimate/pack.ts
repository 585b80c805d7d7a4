import { decodeUtf8, encodeUtf8 } from '../text/utf8.ts'

// Freezing: everything that is no typed array goes as JSON, the arrays follow as they lie in memory, without the zeros at their ends.

const kinds = { Float64Array, Float32Array, Int32Array, Uint32Array } as const
type Kind = keyof typeof kinds
type Packed = InstanceType<(typeof kinds)[Kind]>

function kindOf(value: unknown): Kind | undefined {
  return (Object.keys(kinds) as Kind[]).find((kind) => value instanceof kinds[kind])
}

/** State to bytes; numbers outside typed arrays must be finite. */
export function freeze(state: unknown): Uint8Array {
  const arrays: Uint8Array[] = []
  const text = JSON.stringify(state, (_key, value: unknown) => {
    const kind = kindOf(value)
    if (kind === undefined) return value
    const array = value as Packed
    const whole = new Uint8Array(array.buffer, array.byteOffset, array.byteLength)
    let kept = whole.length
    while (kept > 0 && whole[kept - 1] === 0) kept--
    arrays.push(whole.subarray(0, kept))
    return { $: kind, length: array.length, bytes: kept }
  })
  const head = encodeUtf8(text)
  const total = arrays.reduce((sum, a) => sum + a.length, 4 + head.length)
  const bytes = new Uint8Array(total)
  new DataView(bytes.buffer).setUint32(0, head.length)
  bytes.set(head, 4)
  let to = 4 + head.length
  for (const a of arrays) {
    bytes.set(a, to)
    to += a.length
  }
  return bytes
}

/** Bytes back to a state, bit for bit; throws on bytes that were cut. */
export function thaw(bytes: Uint8Array): unknown {
  const length = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0)
  let from = 4 + length
  const text = from > bytes.byteLength ? null : decodeUtf8(bytes.subarray(4, from))
  if (text === null) throw new RangeError('frozen state is cut short')
  // the reviver goes through the values in the order in which freezing wrote them
  return JSON.parse(text, (_key, value: unknown) => {
    if (typeof value !== 'object' || value === null || !('$' in value) || !('bytes' in value) || !('length' in value)) return value
    const size = Number(value.bytes)
    if (from + size > bytes.byteLength) throw new RangeError('frozen state is cut short')
    const array = new kinds[value.$ as Kind](Number(value.length))
    new Uint8Array(array.buffer).set(bytes.subarray(from, from + size))
    from += size
    return array
  })
}
