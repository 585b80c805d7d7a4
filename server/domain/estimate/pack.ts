// Freezing: everything that is no typed array goes as JSON (16 bits a character), the arrays follow as they lie in memory.

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
    arrays.push(new Uint8Array(array.buffer, array.byteOffset, array.byteLength))
    return { $: kind, bytes: array.byteLength }
  })
  const total = arrays.reduce((sum, a) => sum + a.length, 4 + 2 * text.length)
  const bytes = new Uint8Array(total)
  const view = new DataView(bytes.buffer)
  view.setUint32(0, text.length)
  for (let i = 0; i < text.length; i++) view.setUint16(4 + 2 * i, text.charCodeAt(i))
  let to = 4 + 2 * text.length
  for (const a of arrays) {
    bytes.set(a, to)
    to += a.length
  }
  return bytes
}

/** Bytes back to a state, bit for bit; throws on bytes that were cut. */
export function thaw(bytes: Uint8Array): unknown {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const length = view.getUint32(0)
  if (4 + 2 * length > bytes.byteLength) throw new RangeError('frozen state is cut short')
  let text = ''
  for (let i = 0; i < length; i++) text += String.fromCharCode(view.getUint16(4 + 2 * i))
  let from = 4 + 2 * length
  // the reviver goes through the values in the order in which freezing wrote them
  return JSON.parse(text, (_key, value: unknown) => {
    if (typeof value !== 'object' || value === null || !('$' in value) || !('bytes' in value)) return value
    const size = Number(value.bytes)
    if (from + size > bytes.byteLength) throw new RangeError('frozen state is cut short')
    const part = bytes.slice(from, from + size)
    from += size
    return new kinds[value.$ as Kind](part.buffer)
  })
}
