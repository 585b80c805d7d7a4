import type { Estimator } from '../estimate/types.ts'
import { decodeUtf8, encodeUtf8 } from '../text/utf8.ts'
import type { KilnState } from './state.ts'

// Four bytes of length (little-endian), the state as JSON, the estimator's own bytes. JSON gives every finite number back bit for bit.

export function freezeState<M>(state: KilnState<M>, estimator: Estimator<M> | null): Uint8Array {
  const text = encodeUtf8(JSON.stringify({ ...state, model: null }))
  const model = estimator === null || state.model === null ? new Uint8Array(0) : estimator.freeze(state.model)
  const bytes = new Uint8Array(4 + text.length + model.length)
  new DataView(bytes.buffer).setUint32(0, text.length, true)
  bytes.set(text, 4)
  bytes.set(model, 4 + text.length)
  return bytes
}

export function thawState<M>(bytes: Uint8Array, estimator: Estimator<M> | null): KilnState<M> {
  const length = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength).getUint32(0, true)
  const state = JSON.parse(decodeUtf8(bytes.subarray(4, 4 + length)) ?? '') as KilnState<M>
  const model = bytes.subarray(4 + length)
  state.model = estimator === null || model.length === 0 ? null : estimator.thaw(model)
  return state
}
